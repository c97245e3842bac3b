"""The workbook file, written by the spreadsheet library, each formula with its value beside it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from io import BytesIO
from typing import Any, cast
from zipfile import ZIP_STORED, ZipFile

from openpyxl import Workbook
from openpyxl.cell.cell import Cell as BookCell
from openpyxl.workbook.defined_name import DefinedName
from openpyxl.workbook.properties import CalcProperties
from openpyxl.worksheet.datavalidation import DataValidation
from openpyxl.worksheet.pagebreak import Break
from openpyxl.worksheet.properties import PageSetupProperties
from openpyxl.worksheet.table import Table as BookTable
from openpyxl.worksheet.table import TableColumn
from openpyxl.worksheet.worksheet import Worksheet
from openpyxl.writer.excel import ExcelWriter

from estimator.language import Language
from estimator.outputs.book_chart import bar_chart
from estimator.outputs.book_lines import line_chart
from estimator.outputs.book_parts import LANGUAGE, Properties, finished
from estimator.outputs.book_styles import Styles
from estimator.outputs.cells import Placed, Sheet, Table
from estimator.outputs.paging import page_breaks
from estimator.outputs.xlsx_values import as_text, clean_text, plain_number
from estimator.saying import said

LONGEST_FOOTER_ID = 80
"""A footer holds 255 characters in all; a job id longer than this is cut."""
_FOOTER_SIZE = 8
_SIDE_IN, _BOTTOM_IN, _EDGE_IN = 0.5, 0.7, 0.3
_CHOICE_ADVICE = "Choose one of the words in the list."
_TEXT, _FORMULA = "s", "f"


@dataclass(frozen=True, slots=True)
class Contents:
    """What goes into one file.

    Attributes:
        names: defined names and the cell each stands for. forms: the job's format codes.
        paper: number of the paper size. job_id: shown at the foot of every page.
        title, subject, creator, dated, language: the document's properties.
    """

    sheets: tuple[Sheet, ...]
    names: Mapping[str, str]
    forms: Mapping[str, str]
    paper: int
    job_id: str
    title: str
    subject: str
    creator: str
    dated: date | None
    language: str = LANGUAGE


def book_bytes(contents: Contents) -> bytes:
    """Write an .xlsx file. The same contents give the same bytes: no clock, fixed dates inside."""
    book = Workbook()
    book.remove(book.worksheets[0])
    book.calculation = CalcProperties(fullCalcOnLoad=True)
    for name, cell in contents.names.items():
        book.defined_names[name] = DefinedName(name, attr_text=cell)
    styles: Styles | None = None
    for sheet in contents.sheets:
        page = book.create_sheet(sheet.name)
        styles = styles or Styles(page, contents.forms)
        _fill(page, sheet, styles)
        _set_up(page, sheet, contents)
    results = [results_of(sheet) for sheet in contents.sheets]
    properties = Properties(
        contents.title, contents.subject, contents.creator, contents.dated, contents.language
    )
    charts = [said for sheet in contents.sheets if (said := _charts_said(sheet))]
    return finished(_saved(book), results, charts, properties)


def _charts_said(sheet: Sheet) -> list[tuple[str, str]]:
    """Name and words of each chart of a sheet, in the order they are added to it."""
    bars = [] if sheet.picture is None else [(sheet.picture.title, sheet.picture.said)]
    return [*bars, *((drawing.title, drawing.said) for drawing in sheet.drawings)]


def _saved(book: Workbook) -> bytes:
    """Let the library write all parts, uncompressed: they are packed once, at the end."""
    file = BytesIO()
    with ZipFile(file, "w", ZIP_STORED) as archive:
        ExcelWriter(book, archive).save()
    return file.getvalue()


def results_of(sheet: Sheet) -> dict[str, str | Decimal]:
    """The engine's value for every formula of a sheet, by place; a number as plain text."""
    letters = list(sheet.widths)
    return {
        f"{letters[each.column - 1]}{each.row}": (
            each.value if isinstance(each.value, str) else Decimal(plain_number(each.value or 0))
        )
        for each in sheet.placed
        if each.formula
    }


def _fill(page: Worksheet, sheet: Sheet, styles: Styles) -> None:
    """Write all cells. They go straight to the sheet: its own look-up costs more than the cell."""
    cells = cast("Any", page)._cells
    for each in sheet.placed:
        cell = BookCell(page, row=each.row, column=each.column)
        styles.put_on(cell, each.look)
        set_value(cell, each)
        cells[each.row, each.column] = cell
    for row, height_pt in sheet.heights_pt.items():
        page.row_dimensions[row].height = height_pt
    for column, width in sheet.widths.items():
        page.column_dimensions[column].width = width


def set_value(cell: BookCell, each: Placed) -> None:
    """Give a cell its value: text is set as text, so that it can never become a formula.

    The library's own setter would guess the kind from the text, and search the text, clean
    already, for what a cell cannot hold.
    """
    stored: Any = cell
    if each.formula:
        stored._value, cell.data_type = f"={each.formula}", _FORMULA
    elif isinstance(each.value, str):
        stored._value, cell.data_type = as_text(each.value), _TEXT
    elif each.value is not None:
        stored._value = Decimal(plain_number(each.value))


def _set_up(page: Worksheet, sheet: Sheet, contents: Contents) -> None:
    """What is not a cell: tables, chart, choices, frozen rows, paper."""
    for table in sheet.tables:
        page.add_table(table_of(table, list(sheet.widths)))
    if sheet.picture is not None:
        page.add_chart(bar_chart(sheet.picture), f"A{sheet.picture.row}")
    for drawing in sheet.drawings:
        page.add_chart(line_chart(drawing), f"A{drawing.row}")
    for place, choice in sheet.choices:
        offer = DataValidation(type="list", formula1=f'"{choice}"', error=_CHOICE_ADVICE)
        offer.showErrorMessage = True
        offer.add(place)
        page.add_data_validation(offer)
    page.sheet_view.showGridLines = False
    if sheet.frozen_rows:
        page.freeze_panes = f"A{sheet.frozen_rows + 1}"
        page.print_title_rows = f"1:{sheet.frozen_rows}"
    page.print_area = sheet.used
    _paper(page, sheet, contents)


def _paper(page: Worksheet, sheet: Sheet, contents: Contents) -> None:
    """Paper, margins, page breaks, and a footer with job, sheet and page."""
    page.sheet_properties.pageSetUpPr = PageSetupProperties(fitToPage=True)
    page.page_setup.orientation = "landscape" if sheet.wide else "portrait"
    page.page_setup.paperSize = contents.paper
    page.page_setup.fitToWidth = 1
    page.page_setup.fitToHeight = 1 if sheet.one_page else 0
    page.print_options.horizontalCentered = True
    margins = page.page_margins
    margins.left = margins.right = margins.top = _SIDE_IN
    margins.bottom, margins.header, margins.footer = _BOTTOM_IN, _EDGE_IN, _EDGE_IN
    for row in page_breaks(sheet, contents.paper):
        page.row_breaks.append(Break(id=row - 1))
    _footer(page, contents.job_id, sheet.language)


def _footer(page: Worksheet, job_id: str, language: Language) -> None:
    """An ampersand begins a code in footers, so a typed one is doubled."""
    name = " ".join(clean_text(job_id).split())[:LONGEST_FOOTER_ID].replace("&", "&&")
    job, at = (
        said("Job {number}", number=name),
        said("Page {page} of {pages}", page="&P", pages="&N"),
    )
    texts: Sequence[str] = (language.say(job), "&A", language.say(at))
    foot = cast("Any", page.oddFooter)
    for part, text in zip((foot.left, foot.center, foot.right), texts, strict=True):
        part.text, part.size = text, _FOOTER_SIZE


def table_of(table: Table, columns: Sequence[str]) -> BookTable:
    """A named table; its columns are given, or the library would add filter buttons."""
    last = columns[len(table.headers) - 1]
    made = BookTable(
        displayName=table.name,
        ref=f"A{table.first_row}:{last}{table.last_row}",
        totalsRowShown=False,
    )
    made.tableColumns = [
        TableColumn(id=at, name=header) for at, header in enumerate(table.headers, start=1)
    ]
    return made
