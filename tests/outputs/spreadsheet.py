"""Workbooks as others see them: read by openpyxl, reckoned again by LibreOffice, printed to PDF."""

from __future__ import annotations

import re
import shutil
import subprocess
import tempfile
import zipfile
from collections.abc import Mapping
from dataclasses import dataclass
from io import BytesIO
from pathlib import Path
from xml.etree.ElementTree import Element, fromstring

from openpyxl import Workbook, load_workbook

from tests.outside import need_program

SECONDS = 540
_RESULT = re.compile(r"( t=\"str\")?(><f>[^<]*</f>)<v>[^<]*</v>")

_NS = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"
_SHEET, _CELL, _FORMULA = f"{_NS}sheet", f"{_NS}c", f"{_NS}f"

Place = tuple[str, str]


NEAR_ENOUGH = 0.000_000_5
"""Far below a cent: what is left is binary arithmetic."""


def opened(data: bytes, *, values: bool = False) -> Workbook:
    """The workbook as openpyxl reads it: formulas, or the values stored beside them."""
    return load_workbook(BytesIO(data), data_only=values)


@dataclass(frozen=True, slots=True)
class Read:
    """One cell: its formula, without the equals sign, and what stands in it."""

    formula: str
    value: str | float | None


def cells(data: bytes) -> dict[Place, Read]:
    """Every cell that is not empty, straight from the sheets' XML; a date is its day number."""
    with zipfile.ZipFile(BytesIO(data)) as archive:
        shared = _shared_texts(archive)
        names = [sheet.get("name", "") for sheet in _xml(archive, "xl/workbook.xml").iter(_SHEET)]
        return {
            (name, cell.get("r", "")): Read(cell.findtext(_FORMULA) or "", _value(cell, shared))
            for at, name in enumerate(names, start=1)
            for cell in _xml(archive, f"xl/worksheets/sheet{at}.xml").iter(_CELL)
            if len(cell)
        }


def _xml(archive: zipfile.ZipFile, name: str) -> Element:
    return fromstring(archive.read(name))


def _shared_texts(archive: zipfile.ZipFile) -> list[str]:
    if "xl/sharedStrings.xml" not in archive.namelist():
        return []
    items = _xml(archive, "xl/sharedStrings.xml").findall(f"{_NS}si")
    return ["".join(text.text or "" for text in item.iter(f"{_NS}t")) for item in items]


def _value(cell: Element, shared: list[str]) -> str | float | None:
    kind, stored = cell.get("t", "n"), cell.findtext(f"{_NS}v")
    if kind == "inlineStr":
        return "".join(text.text or "" for text in cell.iter(f"{_NS}t"))
    if stored is None or kind == "e":
        return None
    if kind == "s":
        return shared[int(stored)]
    return stored if kind == "str" else float(stored)


def differences(made: bytes, again: bytes) -> list[tuple[Place, Read, object]]:
    """Formula cells whose stored value is not what a spreadsheet program finds."""
    found = cells(again)
    return [
        (place, stored, found[place].value)
        for place, stored in cells(made).items()
        if stored.formula and not same(stored.value, found[place].value)
    ]


def same(stored: object, found: object) -> bool:
    """Texts equal, numbers near enough; a missing value is never the same."""
    if isinstance(stored, float) and isinstance(found, float):
        return abs(stored - found) <= NEAR_ENOUGH
    return stored is not None and stored == found


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
