"""The form's sheet with an example of a sketch, and squares to draw one's own on.

On paper the sketch goes under the questions, so that the form takes two pages.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from openpyxl.styles import Border, PatternFill, Side
from openpyxl.utils import get_column_letter

from estimator.form.reader import SKETCH
from estimator.outputs import form_page as page_of
from estimator.tables.local_words import Say

if TYPE_CHECKING:
    from openpyxl import Workbook
    from openpyxl.worksheet.worksheet import Worksheet

SQUARES_ACROSS = 36
_SQUARE_WIDTH, _SQUARE_PT = 2.3, 14
_TOP, _ROWS = 5, 16
_LEFT, _RIGHT = 2, 34
_OWN_ROWS = 22
_HEAVY = Side(style="medium", color="FF000000")
_STUD = PatternFill("lightUp", fgColor="FF808080")
_BOX = PatternFill("solid", fgColor="FFBFBFBF")
_STUDS = (2, 10, 18, 26, 34)
_WORDS = (
    (1, 14, "ceiling"),
    (13, 19, "floor"),
    (10, 4, "1"),
    (12, 5, "A"),
    (12, 29, "B"),
    (11, 6, "2"),
    (11, 30, "2"),
    (13, 15, "3"),
    (6, 6, "4"),
)
_BOXES = ((12, 5), (12, 29))
_CABLE_ROW, _CABLE = 14, (5, 29)
KEY = (
    "Face the wall from inside its room. Draw floor, ceiling, both ends, boxes, doors and windows.",
    "A  the box that is there (source)      B  the new box      "
    "hatched: studs      heavy line: the cable",
    "1  from the wall's left end to the middle of each box      "
    "2  from the floor to the middle of each box",
    "3  how high the cable lies, and each straight piece of it      "
    "4  left end to the first stud, and stud to stud",
    "Write also: length and height of the wall, baseboard, doors and windows "
    "(left edge, width, top), and what is behind: pipes, ducts, blocks.",
)
_OWN = "Your own sketch. One square is ______________"


def add_sketch(book: Workbook, paper: int, say: Say = str) -> None:
    """Add the sheet: an example made of cells, what to measure, and an empty grid.

    `say` says what to measure in the words of the country.
    """
    page = book.create_sheet(SKETCH)
    for at in range(1, SQUARES_ACROSS + 1):
        page.column_dimensions[get_column_letter(at)].width = _SQUARE_WIDTH
    _line(page, 1, "Sketch: what to draw and which measures to write", large=True)
    _line(page, 2, KEY[0])
    _example(page)
    row = _TOP + _ROWS + 1
    for words in KEY[1:]:
        _line(page, row, say(words))
        row += 1
    _line(page, row + 1, _OWN, large=True)
    for down in range(row + 2, row + 2 + _OWN_ROWS):
        page.row_dimensions[down].height = _SQUARE_PT
        for at in range(1, SQUARES_ACROSS + 1):
            page_of.boxed(page.cell(down, at))
    page.sheet_view.showGridLines = False
    page_of.paper(page, size=paper, wide=False, tall_pages=1)
    page_of.unprinted(page)


def _line(page: Worksheet, row: int, words: str, *, large: bool = False) -> None:
    cell = page.cell(row, 1)
    page_of.set_text(cell, words, page_of.HEAD if large else page_of.BODY, wrap=False)


def _example(page: Worksheet) -> None:
    """A wall seen from its room, drawn with borders and filled cells."""
    for row in range(_TOP, _TOP + _ROWS):
        page.row_dimensions[row].height = _SQUARE_PT
        for column in range(_LEFT, _RIGHT + 1):
            cell = page.cell(row, column)
            if column in _STUDS:
                cell.fill = _STUD
            cell.border = _edges(row, column)
    for down, column in _BOXES:
        page.cell(_TOP + down, column).fill = _BOX
    for down, column, words in _WORDS:
        page_of.write_over(page.cell(_TOP + down, column), words)


def _edges(row: int, column: int) -> Border:
    """Floor, ceiling and ends of the wall, and the cable from box to box."""
    on_way = _CABLE[0] <= column <= _CABLE[1]
    drop = column in _CABLE and _TOP + _BOXES[0][0] < row <= _TOP + _CABLE_ROW
    bottom = row == _TOP + _ROWS - 1 or (row == _TOP + _CABLE_ROW and on_way)
    return Border(
        top=_HEAVY if row == _TOP else None,
        bottom=_HEAVY if bottom else None,
        left=_HEAVY if column == _LEFT or drop else None,
        right=_HEAVY if column == _RIGHT else None,
    )
