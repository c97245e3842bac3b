"""Fills cells of a workbook through LibreOffice's own scripting, the way they would be typed.

Run by the system's Python, which has the module `uno`:
    python3 fill_by_office.py SOFFICE IN.xlsx OUT.xlsx CELLS.json PROFILE-FOLDER
"""

from __future__ import annotations

import json
import subprocess
import sys
import time
from pathlib import Path

import uno
from com.sun.star.beans import PropertyValue
from com.sun.star.connection import NoConnectException

PIPE = "estimator-form"
TRIES, PAUSE_S = 120, 0.5


def desktop():
    local = uno.getComponentContext()
    resolver = local.ServiceManager.createInstanceWithContext(
        "com.sun.star.bridge.UnoUrlResolver", local
    )
    for _ in range(TRIES):
        try:
            context = resolver.resolve(f"uno:pipe,name={PIPE};urp;StarOffice.ComponentContext")
            return context.ServiceManager.createInstanceWithContext(
                "com.sun.star.frame.Desktop", context
            )
        except NoConnectException:
            time.sleep(PAUSE_S)
    raise SystemExit("LibreOffice did not answer")


def setting(name, value):
    made = PropertyValue()
    made.Name, made.Value = name, value
    return made


def main() -> None:
    soffice, source, target, cells, profile = sys.argv[1:]
    started = subprocess.Popen(
        [soffice, f"-env:UserInstallation={Path(profile).as_uri()}", "--headless", "--norestore",
         f"--accept=pipe,name={PIPE};urp;"]
    )  # fmt: skip
    try:
        found = desktop()
        book = found.loadComponentFromURL(
            Path(source).as_uri(), "_blank", 0, (setting("Hidden", True),)
        )
        for sheet, cell, typed in json.loads(Path(cells).read_text(encoding="utf-8")):
            book.Sheets.getByName(sheet).getCellRangeByName(cell).FormulaLocal = typed
        store = (setting("FilterName", "Calc MS Excel 2007 XML"),)
        book.storeToURL(Path(target).as_uri(), store)
        book.close(True)
        found.terminate()
    finally:
        started.wait(60)


main()
