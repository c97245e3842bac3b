"""Opens a workbook that came from anywhere: only cells are read, and nothing large or active."""

from __future__ import annotations

import zipfile
import zlib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING, Any

from estimator.problems import InputError, Problem
from estimator.text_files import read_bytes

if TYPE_CHECKING:
    from openpyxl import Workbook

MOST_BYTES = 20_000_000
MOST_UNPACKED_BYTES = 100_000_000
MOST_PARTS = 500
MOST_ROWS, MOST_COLUMNS = 2_000, 200

_ZIP_START, _OLD_START = b"PK\x03\x04", b"\xd0\xcf\x11\xe0"
_MACRO_PARTS = ("vbaproject.bin", "macrosheets/", "vbadata.xml")
_TYPES = "[Content_Types].xml"
_SAVE_AS = 'Save it as "Excel workbook (.xlsx)", without macros and without a password.'
_ENTITIES = (b"<!DOCTYPE", b"<!ENTITY", b"\x00")
_CHUNK = 1_000_000
_BROKEN = (ArithmeticError, OSError, zlib.error, zipfile.BadZipFile)
"""What the library lets through of a damaged file, besides its own complaints."""


@dataclass(frozen=True, slots=True)
class Found:
    """What stands in one cell.

    Attributes:
        value: text, a number, a date or time, True or False, as the workbook stores it.
        form: how numbers are shown there ("0.0%").
        formula: a formula stands there, and `value` is what it came to when it was saved; None
            where nothing was saved.
    """

    value: Any
    form: str = ""
    formula: bool = False
    error: bool = False


@dataclass(slots=True)
class Grid:
    """The filled cells of one sheet by row and column, both from 1."""

    name: str
    cells: dict[tuple[int, int], Found] = field(default_factory=dict)
    cut: bool = False

    @property
    def last_row(self) -> int:
        """The last row that holds anything."""
        return max((row for row, _ in self.cells), default=0)

    def row(self, number: int) -> dict[int, Found]:
        """The filled cells of one row, by column."""
        return {column: each for (row, column), each in self.cells.items() if row == number}


def read_grids(path: Path) -> list[Grid]:
    """Read the cells of every sheet.

    Raises:
        InputError: not a workbook of this kind, one with macros or a password, or too large.
    """
    data = read_bytes(path, str(path))
    unpacked = _checked(data, str(path))
    formulas = any(b"<f" in part for name, part in unpacked.items() if "worksheets/" in name)
    try:
        return list(_grids(data, formulas=formulas))
    except (LookupError, ValueError, TypeError, AttributeError, SyntaxError, *_BROKEN):
        raise _refused(path, "is damaged, or no workbook of this kind.", _SAVE_AS) from None


def _checked(data: bytes, name: str) -> dict[str, bytes]:
    """The XML parts of a file, once it is known that they may be read."""
    if data.startswith(_OLD_START):
        raise _refused(name, "is of the old kind (.xls) or has a password.", _SAVE_AS)
    if not data.startswith(_ZIP_START):
        raise _refused(name, "is not a workbook.", _SAVE_AS)
    if len(data) > MOST_BYTES:
        raise _too_large(name)
    try:
        with zipfile.ZipFile(BytesIO(data)) as archive:
            return _parts(archive, name)
    except (zlib.error, zipfile.BadZipFile, NotImplementedError, RuntimeError, EOFError, OSError):
        raise _refused(name, "is damaged, or has a password.", _SAVE_AS) from None
    except ValueError:
        raise _refused(name, "is damaged.", _SAVE_AS) from None


def _parts(archive: zipfile.ZipFile, name: str) -> dict[str, bytes]:
    listed = archive.infolist()
    names = [part.filename.lower() for part in listed]
    if len(listed) > MOST_PARTS or sum(part.file_size for part in listed) > MOST_UNPACKED_BYTES:
        raise _too_large(name)
    if _TYPES.lower() not in names or "xl/workbook.xml" not in names:
        raise _refused(name, "is not a workbook of this kind.", _SAVE_AS)
    if any(mark in part for part in names for mark in _MACRO_PARTS):
        raise _refused(name, "holds macros, which are not read.", _SAVE_AS)
    parts: dict[str, bytes] = {}
    left = MOST_UNPACKED_BYTES
    for part in listed:
        content = _unpacked(archive, part, left)
        if content is None:
            raise _too_large(name)
        left -= len(content)
        if part.filename.lower().endswith((".xml", ".rels", ".vml")):
            parts[part.filename] = content
    if b"macroenabled" in parts.get(_TYPES, b"").lower():
        raise _refused(name, "is a workbook with macros, which are not read.", _SAVE_AS)
    if any(mark in content for content in parts.values() for mark in _ENTITIES):
        raise _refused(name, "holds declarations that no form needs.", _SAVE_AS)
    return parts


def _unpacked(archive: zipfile.ZipFile, part: zipfile.ZipInfo, most: int) -> bytes | None:
    """The bytes of one part, whatever its head says of its size; None where they are too many."""
    pieces: list[bytes] = []
    size = 0
    with archive.open(part) as stream:
        while piece := stream.read(_CHUNK):
            size += len(piece)
            if size > most:
                return None
            pieces.append(piece)
    return b"".join(pieces)


def _grids(data: bytes, *, formulas: bool) -> Iterator[Grid]:
    """Stored values, and where formulas stand beside them."""
    book = _opened(data, values=True)
    written = _opened(data, values=False) if formulas else None
    for page in book.worksheets:
        grid = _grid(page)
        if written is not None:
            _mark_formulas(grid, written[page.title])
        yield grid


def _opened(data: bytes, *, values: bool) -> Workbook:
    from openpyxl import load_workbook

    return load_workbook(BytesIO(data), read_only=True, data_only=values, keep_links=False)


def _grid(page: Any) -> Grid:  # noqa: ANN401 - the library's read-only sheet has no types
    grid = Grid(page.title)
    page.reset_dimensions()
    before = None
    for row in page.iter_rows(max_col=MOST_COLUMNS + 1):
        if row is before:  # the library gives one and the same row for all that are left out
            continue
        before = row
        for cell in row:
            if cell.value is None:
                continue
            if cell.row > MOST_ROWS:
                grid.cut = True
                return grid
            if cell.column > MOST_COLUMNS:
                grid.cut = True
                continue
            found = Found(cell.value, str(cell.number_format), error=cell.data_type == "e")
            grid.cells[cell.row, cell.column] = found
    return grid


def _mark_formulas(grid: Grid, page: Any) -> None:  # noqa: ANN401 - as above
    page.reset_dimensions()
    for row in page.iter_rows(max_row=MOST_ROWS, max_col=MOST_COLUMNS):
        for cell in row:
            if cell.value is None or cell.data_type != "f":
                continue
            place = cell.row, cell.column
            old = grid.cells.get(place, Found(None))
            grid.cells[place] = Found(old.value, old.form, formula=True, error=old.error)


def place_name(sheet: str, row: int, column: int) -> str:
    """Name a cell as spreadsheet programs do.

    >>> place_name("Box contents", 7, 28)
    "'Box contents'!AB7"
    """
    letters = ""
    while column:
        column, rest = divmod(column - 1, _LETTERS)
        letters = chr(ord("A") + rest) + letters
    plain = sheet.isalnum()
    return f"{sheet if plain else repr_sheet(sheet)}!{letters}{row}"


def repr_sheet(sheet: str) -> str:
    """A sheet's name in quotes."""
    doubled = sheet.replace("'", "''")
    return f"'{doubled}'"


_LETTERS = 26


def _too_large(name: str) -> InputError:
    return _refused(name, "is too large for a form.", "Use the form as it was made.")


def _refused(name: object, read: str, write: str) -> InputError:
    return InputError([Problem(str(name), read, write)])


def notes_of(grids: Mapping[str, Grid]) -> list[str]:
    """Say which sheets hold more rows or columns than are read."""
    return [
        f"{name}: only {MOST_ROWS} rows and {MOST_COLUMNS} columns are read."
        for name, grid in grids.items()
        if grid.cut
    ]
