"""Pieces that all sheets of a form share: fonts, lines, text cells, drop-downs and paper."""

from __future__ import annotations

from collections.abc import Hashable, Iterable, Mapping, Sequence
from copy import copy
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any
from weakref import WeakKeyDictionary

from openpyxl.styles import Alignment, Border, Font, PatternFill, Protection, Side
from openpyxl.utils import get_column_letter
from openpyxl.worksheet.datavalidation import DataValidation
from openpyxl.worksheet.properties import PageSetupProperties

from estimator.outputs.book import table_of
from estimator.outputs.book_parts import LANGUAGE
from estimator.outputs.book_styles import FONT
from estimator.outputs.cells import Table
from estimator.outputs.xlsx_values import as_text, clean_text

if TYPE_CHECKING:
    from openpyxl import Workbook
    from openpyxl.cell.cell import Cell, MergedCell
    from openpyxl.worksheet.worksheet import Worksheet

    BookCell = Cell | MergedCell

AS_TEXT = "@"
"""The number format that keeps a spreadsheet program from making a date of 12-6."""
LISTS_SHEET = "Lists"
_SIZE, _SMALL, _LARGE = 10, 9, 14
_THIN = Side(style="thin", color="FF808080")
_LINE = Side(style="thin", color="FF000000")
_GRAY = PatternFill("solid", fgColor="FFE7E7E7")
_ENTRY = PatternFill("solid", fgColor="FFFFFBE6")
_WRAP = Alignment(wrap_text=True, vertical="top")
_RUNS_ON = Alignment(wrap_text=False)
_BASE = Alignment(wrap_text=True, vertical="center")
_STRANGER = "This word is not in the list. Choose one from the list, or leave the cell empty."
_MARGIN_IN, _EDGE_IN = 0.5, 0.3
_EMPTY_CELL = "BZ1"

TITLE = Font(name=FONT, size=_LARGE, bold=True)
HEAD = Font(name=FONT, size=_SIZE, bold=True)
BODY = Font(name=FONT, size=_SIZE)
NOTE = Font(name=FONT, size=_SMALL, italic=True)

_HEAD_LOOK = {"font": HEAD, "alignment": _WRAP, "fill": _GRAY, "border": Border(bottom=_LINE)}
_ENTRY_LOOK = {
    "font": BODY,
    "number_format": AS_TEXT,
    "fill": _ENTRY,
    "border": Border(bottom=_LINE, left=_THIN, right=_THIN),
    "alignment": _BASE,
    "protection": Protection(locked=False),
}
_LOOKS: WeakKeyDictionary[Workbook, dict[Hashable, Any]] = WeakKeyDictionary()


@dataclass(slots=True)
class Lists:
    """The words of all drop-downs, on a sheet of their own: a column for each list."""

    page: Worksheet
    places: dict[tuple[str, ...], str] = field(default_factory=dict)

    def place(self, words: tuple[str, ...]) -> str:
        """The range that holds a list."""
        if words not in self.places:
            at = len(self.places) + 1
            column = get_column_letter(at)
            for row, word in enumerate(words, start=1):
                set_text(self.page.cell(row=row, column=at), word, BODY)
            self.places[words] = f"{LISTS_SHEET}!${column}$1:${column}${len(words)}"
        return self.places[words]


def new_book(title: str) -> tuple[Workbook, Lists]:
    """A workbook with no sheet yet but the hidden one of the drop-downs."""
    from openpyxl import Workbook

    book = Workbook()
    page = book.worksheets[0]
    page.title = LISTS_SHEET
    page.sheet_state = "hidden"
    book.properties.title = title
    book.properties.creator = "estimator"
    book.properties.language = LANGUAGE
    return book, Lists(page)


def set_text(cell: BookCell, text: str, font: Font = BODY, *, wrap: bool = True) -> None:
    """Write a text as text, whatever it begins with."""
    _write(cell, text)
    _dress(cell, (id(font), wrap), {"font": font, "alignment": _WRAP if wrap else _RUNS_ON})


def _write(cell: BookCell, text: str) -> None:
    stored: Any = cell
    if text:
        stored._value, cell.data_type = as_text(clean_text(text)), "s"


def _dress(cell: BookCell, name: Hashable, parts: Mapping[str, object]) -> None:
    """Give a cell its look; the same look is worked out once in a workbook."""
    stored: Any = cell
    known = _LOOKS.setdefault(stored.parent.parent, {})
    if name not in known:
        for part, value in parts.items():
            setattr(cell, part, value)
        known[name] = stored._style
    stored._style = copy(known[name])


def heading(cell: BookCell, text: str) -> None:
    """Write the heading of a column."""
    _write(cell, text)
    _dress(cell, "heading", _HEAD_LOOK)


def table(page: Worksheet, rows: tuple[int, int], headers: Sequence[str]) -> None:
    """Make a named table of what stands from its row of headings to its last row.

    A screen reader then says the heading with each cell, and the name of the table.
    """
    name = f"Form_{page.title.replace(' ', '_')}"
    letters = [get_column_letter(at) for at in range(1, len(headers) + 1)]
    page.add_table(table_of(Table(name, tuple(headers), *rows), letters))


def entry(cell: BookCell, text: str = "") -> None:
    """Make a cell to write in, with a ruled line under it; what is typed there stays text."""
    _write(cell, text)
    _dress(cell, "entry", _ENTRY_LOOK)


def boxed(cell: BookCell) -> None:
    """Make a square of a grid to draw on."""
    _dress(cell, "boxed", {"border": Border(top=_THIN, bottom=_THIN, left=_THIN, right=_THIN)})


def framed(cell: BookCell, *, first: bool, last: bool) -> None:
    """Make a piece of a wide frame."""
    left, right = (_LINE if first else None), (_LINE if last else None)
    cell.border = Border(top=_LINE, bottom=_LINE, left=left, right=right)


def drop_down(page: Worksheet, cells: str, words: Iterable[str], lists: Lists) -> None:
    """Offer a list of words in cells; other words give a warning, and may still be kept."""
    made = DataValidation(type="list", formula1=lists.place(tuple(words)), allow_blank=True)
    made.error, made.errorStyle, made.showErrorMessage = _STRANGER, "warning", True
    made.add(cells)
    page.add_data_validation(made)


def paper(page: Worksheet, *, size: int, wide: bool, tall_pages: int = 0) -> None:
    """Set a sheet up for paper: its width on one page, its length on some or on any number."""
    page.sheet_properties.pageSetUpPr = PageSetupProperties(fitToPage=True)
    page.page_setup.orientation = "landscape" if wide else "portrait"
    page.page_setup.paperSize = size
    page.page_setup.fitToWidth, page.page_setup.fitToHeight = 1, tall_pages
    edges = page.page_margins
    edges.left = edges.right = edges.top = edges.bottom = _MARGIN_IN
    edges.header = edges.footer = _EDGE_IN
    foot: Any = page.oddFooter
    foot.left.text, foot.right.text = "&A", "Page &P of &N"


def unprinted(page: Worksheet) -> None:
    """Keep a sheet without facts off paper: what is printed of it is one empty cell."""
    page.print_area = _EMPTY_CELL


def write_over(cell: BookCell, text: str) -> None:
    """Write a text and leave lines and filling of the cell as they are."""
    _write(cell, text)
    cell.font = HEAD
