"""Every workbook that the tool writes, each written once: samples, full ones, and empty ones."""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal
from functools import cache, partial
from io import BytesIO
from typing import Any
from zipfile import ZipFile

from openpyxl import Workbook
from openpyxl.cell.cell import Cell
from openpyxl.utils import range_boundaries
from openpyxl.worksheet.table import Table
from openpyxl.worksheet.worksheet import Worksheet

from estimator.language import ENGLISH, Language
from estimator.outputs import (
    batch_book,
    change_book,
    close_out_workbook,
    crew_book,
    form_book,
    ledger_workbook,
    workbook,
)
from estimator.outputs.batch import BatchRow
from estimator.outputs.batch_totals import BatchTotals
from tests.form.made_form import sample
from tests.outputs.bid_factory import NAMES, full_bid, full_file, sample_file
from tests.outputs.crew_made import BOTH
from tests.outputs.spreadsheet import opened
from tests.outputs.test_books_workbook import written as ledger_books
from tests.outputs.test_change_book import orders

WRITERS = {
    "bid": workbook.bid_workbook,
    "change": change_book.change_workbook,
    "close-out": close_out_workbook.close_out_workbook,
    "books": ledger_workbook.books_workbook,
    "batch": batch_book.batch_workbook,
    "crew": crew_book.crew_workbook,
    "form": form_book.form_workbook,
}
"""Each function that makes a workbook, by the first word of the names in `BOOKS`."""

JOBS = (
    BatchRow("a.toml", "priced", "A", "Outlet", "USD", Decimal("10.10"), Decimal(12),
             Decimal("1.5"), 1, 0),
    BatchRow("b.toml", "priced", "B", "Lounge", "GBP", Decimal("5.05"), None, Decimal(1), 1, 0),
    BatchRow("c.toml", "not priced", problem="c.toml: line 3: nonsense", problems=2),
)  # fmt: skip


def _changed(name: str) -> bytes:
    return change_book.change_workbook(orders()[name])


def _ledger(name: str) -> bytes:
    return ledger_books()[name]


def _batch(*jobs: BatchRow) -> bytes:
    totals = BatchTotals()
    for each in jobs:
        totals.add(each)
    return batch_book.batch_workbook(jobs, totals)


def _crew(languages: tuple[Language, ...]) -> bytes:
    return crew_book.crew_workbook(full_bid(), languages)


def _form(name: str) -> bytes:
    return form_book.form_workbook(sample(name) if name else None)


BOOKS: dict[str, Callable[[], bytes]] = {
    **{f"bid of {name}": partial(sample_file, name) for name in NAMES},
    "bid with everything": full_file,
    **{
        f"change, {name}": partial(_changed, name)
        for name in ("more", "less", "bought", "unpriced", "vat")
    },
    "close-out with odd words": partial(_ledger, "s19"),
    "close-out without lines": partial(_ledger, "example"),
    "close-out of a sample": partial(_ledger, "sample"),
    "books": partial(_ledger, "books"),
    "books with a map": partial(_ledger, "mapped"),
    "batch": partial(_batch, *JOBS),
    "batch of nothing": _batch,
    "crew in one language": partial(_crew, (ENGLISH,)),
    "crew in two languages": partial(_crew, BOTH),
    "form, empty": partial(_form, ""),
    "form, filled": partial(_form, "nightstand"),
}

EMU_PER_PT = 12_700
LOWEST_ROW_PT = 12.75
"""A row whose height is not stated, in the program that makes it lowest."""


@cache
def data_of(name: str) -> bytes:
    """The file."""
    return BOOKS[name]()


@cache
def book(name: str) -> Workbook:
    """The file as a spreadsheet library opens it, with the values behind its formulas."""
    return opened(data_of(name), values=True)


@cache
def formulas(name: str) -> Workbook:
    """The same with its formulas."""
    return opened(data_of(name))


def shown(name: str) -> list[Worksheet]:
    """The sheets that a person meets."""
    return [sheet for sheet in book(name).worksheets if sheet.sheet_state == "visible"]


@cache
def said(sheet: Worksheet) -> list[Cell]:
    """The cells that say something, in reading order."""
    return [cell for row in sheet.iter_rows() for cell in row
            if isinstance(cell, Cell) and cell.value not in (None, "")]  # fmt: skip


def tables(sheet: Worksheet) -> list[Table]:
    """The named tables of a sheet, from the top."""
    return sorted(sheet.tables.values(), key=lambda table: edges(table)[1])


def edges(table: Table) -> tuple[int, int, int, int]:
    """First column and row, last column and row."""
    left, top, right, bottom = range_boundaries(table.ref)
    assert left and top and right and bottom
    return left, top, right, bottom


def parts(name: str, ending: str) -> dict[str, bytes]:
    """Parts of the file whose names end so, in order."""
    with ZipFile(BytesIO(data_of(name))) as archive:
        return {part: archive.read(part) for part in archive.namelist() if part.endswith(ending)}


def charts(name: str) -> dict[str, bytes]:
    """The charts of a file."""
    return {part: data for part, data in parts(name, ".xml").items() if "charts/chart" in part}


def drawings(name: str) -> dict[str, bytes]:
    """The parts that say where charts lie, and what they are called."""
    return {part: data for part, data in parts(name, ".xml").items() if "/drawings/" in part}


def under_charts(sheet: Worksheet) -> list[int]:
    """The rows that charts cover."""
    return [row for chart in sheet._charts for row in _covered(sheet, chart.anchor)]  # type: ignore[attr-defined]


def _covered(sheet: Worksheet, anchor: Any) -> list[int]:
    """Rows from where a chart begins to where its height ends."""
    rows, row, left = [], anchor._from.row + 1, anchor.ext.height / EMU_PER_PT
    while left > 0:
        rows.append(row)
        left -= sheet.row_dimensions[row].height or LOWEST_ROW_PT
        row += 1
    return rows
