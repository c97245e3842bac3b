"""Workbooks as others see them: read by openpyxl, reckoned again by LibreOffice, printed to PDF."""

from __future__ import annotations

import re
import shutil
import subprocess
import tempfile
import zipfile
from collections.abc import Mapping
from io import BytesIO
from pathlib import Path
from typing import Any

from openpyxl import Workbook, load_workbook

from tests.outside import need_program

SECONDS = 540
_RESULT = re.compile(r"( t=\"str\")?(><f>[^<]*</f>)<v>[^<]*</v>")

Place = tuple[str, str]


def opened(data: bytes, *, values: bool = False) -> Workbook:
    """The workbook as openpyxl reads it: formulas, or the values stored beside them."""
    return load_workbook(BytesIO(data), data_only=values)


def formulas(data: bytes) -> dict[Place, str]:
    """Every formula by sheet and cell."""
    return {
        (sheet.title, cell.coordinate): cell.value
        for sheet in opened(data)
        for row in sheet.iter_rows()
        for cell in row
        if cell.data_type == "f"
    }


def values(data: bytes) -> dict[Place, Any]:
    """What stands in every cell, as stored."""
    return {
        (sheet.title, cell.coordinate): cell.value
        for sheet in opened(data, values=True)
        for row in sheet.iter_rows()
        for cell in row
        if cell.value is not None
    }


def without_results(data: bytes) -> bytes:
    """The same file with every value behind a formula taken out."""
    stripped = BytesIO()
    with zipfile.ZipFile(BytesIO(data)) as old, zipfile.ZipFile(stripped, "w") as new:
        for name in old.namelist():
            part = old.read(name)
            if name.startswith("xl/worksheets/sheet"):
                part = _RESULT.sub(r"\2", part.decode()).encode()
                assert b"</f><v>" not in part
            new.writestr(name, part)
    return stripped.getvalue()


def reckoned(files: Mapping[str, bytes]) -> dict[str, bytes]:
    """Let LibreOffice open every file, reckon and save it; one start for all of them."""
    return _converted(files, "xlsx", {name: without_results(data) for name, data in files.items()})


def printed(files: Mapping[str, bytes]) -> dict[str, bytes]:
    """Every file as the PDF that LibreOffice prints, all sheets."""
    return _converted(files, "pdf", files)


def _converted(
    names: Mapping[str, bytes], kind: str, files: Mapping[str, bytes]
) -> dict[str, bytes]:
    soffice = need_program("soffice")
    with tempfile.TemporaryDirectory() as folder:
        into, out = Path(folder, "in"), Path(folder, "out")
        into.mkdir()
        paths = []
        for name, data in files.items():
            paths.append(into / f"{name}.xlsx")
            paths[-1].write_bytes(data)
        own = f"-env:UserInstallation={Path(folder, 'profile').as_uri()}"
        command = [soffice, own, "--headless", "--convert-to", kind, "--outdir", str(out)]
        subprocess.run(
            [*command, *map(str, paths)], check=True, timeout=SECONDS, capture_output=True
        )
        made = {name: (out / f"{name}.{kind}").read_bytes() for name in names}
        shutil.rmtree(Path(folder, "profile"), ignore_errors=True)
    return made
