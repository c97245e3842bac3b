"""The form's sheets with one table of the job file each."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, Any

from openpyxl.utils import get_column_letter

from estimator.form.layout import Column, Table, tables
from estimator.form.tables_in import SETTINGS_SHEET
from estimator.form.tables_out import rows_for, setting_rows
from estimator.outputs import form_page as page_of
from estimator.outputs.form_page import Lists

if TYPE_CHECKING:
    from openpyxl import Workbook
    from openpyxl.worksheet.worksheet import Worksheet

SPARE_ROWS = 20
_TITLE_ROW, _NOTE_ROW, _ABOUT_ROW, _HEAD_ROW = 1, 2, 3, 4
_FIRST_ROW = 5
_WIDTH, _OWN_WIDTH = 17, 13
_ABOUT_PT = 105
_ONE_WIDTHS = (26, 30, 12, 40, 60, 20)
_ONE_HEADS = ("Fact", "Answer", "Unit", "Choices", "What it is", "If left blank")
_SETTING_HEADS = ("Setting", "Value")
_NEEDED = "*"
_LIST_NOTE = (
    "One row for each. Leave empty what does not apply; write unknown where nobody knows. "
    "Several in one cell: commas between. * is needed."
)
_ONE_NOTE = (
    "Write in the column Answer. Leave empty what does not apply; write unknown where nobody knows."
)
_SETTING_NOTE = "Settings of this job alone, by section and name as in shop.toml."


def add_tables(
    book: Workbook, lists: Lists, raw: Mapping[str, Any], *, comma: bool, paper: int
) -> None:
    """Add a sheet for every table of a job file, filled in with what `raw` holds."""
    for table in tables():
        page = book.create_sheet(table.sheet)
        rows = rows_for(table, raw, comma=comma)
        if table.is_list:
            _list_sheet(page, table, rows, lists)
        else:
            _one_sheet(page, table, rows, lists)
        page_of.paper(page, size=paper, wide=True)
        if not rows:
            page_of.unprinted(page)
    page = book.create_sheet(SETTINGS_SHEET)
    settings = setting_rows(raw)
    _settings_sheet(page, settings)
    page_of.paper(page, size=paper, wide=False)
    if not settings:
        page_of.unprinted(page)


def _head(page: Worksheet, title: str, note: str) -> None:
    page_of.set_text(page.cell(_TITLE_ROW, 1), title, page_of.TITLE, wrap=False)
    page_of.set_text(page.cell(_NOTE_ROW, 1), note, page_of.NOTE, wrap=False)


def _list_sheet(
    page: Worksheet, table: Table, rows: Sequence[Mapping[str, str]], lists: Lists
) -> None:
    """A row for each record, under headings with what they mean above them."""
    _head(page, table.sheet, _LIST_NOTE)
    owners = [Column(table.owner, table.owner, "text", about=f"which {table.owner}", needed=True)]
    columns = [*(owners if table.owner else ()), *table.columns]
    last = _FIRST_ROW + len(rows) + SPARE_ROWS - 1
    for at, column in enumerate(columns, start=1):
        letter = get_column_letter(at)
        page.column_dimensions[letter].width = _WIDTH if at > 1 else _OWN_WIDTH
        page_of.set_text(page.cell(_ABOUT_ROW, at), _about(column), page_of.NOTE)
        page_of.heading(page.cell(_HEAD_ROW, at), _headed(column))
        for row in range(_FIRST_ROW, last + 1):
            given = rows[row - _FIRST_ROW] if row - _FIRST_ROW < len(rows) else {}
            page_of.entry(page.cell(row, at), given.get(column.heading, ""))
        if column.choices and column.kind != "list":
            cells = f"{letter}{_FIRST_ROW}:{letter}{last}"
            page_of.drop_down(page, cells, column.choices, lists)
    page_of.table(page, (_HEAD_ROW, last), [_headed(column) for column in columns])
    page.row_dimensions[_ABOUT_ROW].height = _ABOUT_PT
    page.freeze_panes = f"B{_FIRST_ROW}"
    page.print_title_rows = f"{_HEAD_ROW}:{_HEAD_ROW}"


def _headed(column: Column) -> str:
    return column.heading + (_NEEDED if column.needed else "")


def _about(column: Column) -> str:
    """What a column holds, in a few words."""
    of = f"{column.unit}: " if column.unit else ""
    words = ""
    if column.kind == "list" and column.choices:
        words = f"any of: {', '.join(column.choices)}"
    elif column.kind == "list":
        words = "several, with commas"
    elif column.kind == "pairs":
        words = "such as king = 2, nog = 1" if column.key == "members" else "name = number, ..."
    blank = f"blank: {column.blank}" if column.blank and not column.needed else ""
    return "; ".join(part for part in (of + column.about, words, blank) if part).strip(": ")


def _one_sheet(
    page: Worksheet, table: Table, rows: Sequence[Mapping[str, str]], lists: Lists
) -> None:
    """A row for each fact of a single record."""
    _head(page, table.sheet, _ONE_NOTE)
    _heads(page, _ONE_HEADS, _ONE_WIDTHS)
    page_of.table(page, (_ABOUT_ROW, _ABOUT_ROW + len(table.columns)), _ONE_HEADS)
    given = rows[0] if rows else {}
    for row, column in enumerate(table.columns, start=_HEAD_ROW):
        _fact(page, row, column, given.get(column.heading, ""))
        if column.choices and column.kind != "list":
            page_of.drop_down(page, f"B{row}", column.choices, lists)


def _fact(page: Worksheet, row: int, column: Column, text: str) -> None:
    several = column.kind == "list"
    choices = ", ".join(column.choices)
    texts = ("", "", column.unit, f"any of: {choices}" if several and choices else choices,
             column.about, column.blank)  # fmt: skip
    for at, words in enumerate(texts, start=1):
        page_of.set_text(page.cell(row, at), words)
    page_of.set_text(page.cell(row, 1), column.heading, page_of.HEAD)
    page_of.entry(page.cell(row, 2), text)


def _heads(page: Worksheet, names: Sequence[str], widths: Sequence[float]) -> None:
    """A row of headings in row 3, kept in sight."""
    for at, (name, width) in enumerate(zip(names, widths, strict=True), start=1):
        page_of.heading(page.cell(_ABOUT_ROW, at), name)
        page.column_dimensions[get_column_letter(at)].width = width
    page.freeze_panes = f"A{_HEAD_ROW}"
    page.print_title_rows = f"{_ABOUT_ROW}:{_ABOUT_ROW}"


def _settings_sheet(page: Worksheet, rows: Sequence[tuple[str, str]]) -> None:
    _head(page, SETTINGS_SHEET, _SETTING_NOTE)
    _heads(page, _SETTING_HEADS, (48, 40))
    spare = [("", "")] * SPARE_ROWS
    page_of.table(page, (_ABOUT_ROW, _ABOUT_ROW + len(rows) + SPARE_ROWS), _SETTING_HEADS)
    for row, (name, value) in enumerate([*rows, *spare], start=_HEAD_ROW):
        page_of.entry(page.cell(row, 1), name)
        page_of.entry(page.cell(row, 2), value)
