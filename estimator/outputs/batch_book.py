"""The summary workbook of a batch: rows go to disk as they come, so memory stays flat."""

from __future__ import annotations

import json
import tempfile
from collections.abc import Iterable, Iterator
from dataclasses import asdict
from decimal import Decimal
from io import BytesIO
from typing import TYPE_CHECKING, Any, cast

from estimator.outputs import looks
from estimator.outputs.batch import NO_JOB, PRICED, BatchRow
from estimator.outputs.batch_totals import BatchTotals
from estimator.outputs.cells import Cell, Sheet, Table, formula, number, words
from estimator.outputs.formats import LETTER

if TYPE_CHECKING:
    from openpyxl import Workbook

    from estimator.outputs.book_styles import Styles

SUMMARY, JOBS = "Summary", "Jobs"
TITLE = "Jobs priced together"
NOTE = (
    "Sums are of the jobs whose status is priced; they follow the sheet Jobs. "
    "Amounts are in the currency of each job."
)
JOBS_NOTE = "One row a job. A job that is stopped or not priced says why in the last column."
COLUMNS = {
    "File": 36, "Id": 16, "Title": 36, "Status": 20, "Currency": 9, "Total": 13,
    "Second total": 13, "Hours": 9, "Visits": 7, "Findings": 9, "First problem": 60,
}  # fmt: skip
HEADERS = ("Currency", "Jobs", "Total", "Second total", "Hours", "Visits")
_WIDTHS = "24 10 16 16 12 10"
_AMOUNT = "#,##0.00"
_TOP = len((TITLE, JOBS_NOTE, ""))
_FIRST = _TOP + 2
_LETTERS = dict(zip(COLUMNS, "ABCDEFGHIJK", strict=True))
_KINDS = {"total": Decimal, "second_total": Decimal, "hours": Decimal}


class Spool:
    """Rows of a batch in a file of their own that nobody sees, until the workbook is made."""

    def __init__(self) -> None:
        """Begin with no row."""
        self._file = tempfile.TemporaryFile("w+", encoding="ascii")  # noqa: SIM115 - see close

    def add(self, row: BatchRow) -> None:
        """Keep one row; files that are no job have none."""
        if row.status != NO_JOB:
            self._file.write(json.dumps(asdict(row), default=str) + "\n")

    def rows(self) -> Iterator[BatchRow]:
        """Give the rows back, in order."""
        self._file.seek(0)
        for line in self._file:
            raw = json.loads(line)
            kept = {key: _KINDS[key](raw[key]) for key in _KINDS if raw[key] is not None}
            yield BatchRow(**{**raw, **kept})

    def close(self) -> None:
        """Let the file go."""
        self._file.close()


def batch_workbook(rows: Iterable[BatchRow], totals: BatchTotals) -> bytes:
    """Make the summary, as the bytes of an .xlsx file; sums are live, with their values beside.

    The second total of a job without one is its total, so that both sums are of the same jobs.
    """
    from openpyxl import Workbook  # and only here

    from estimator.outputs.book import results_of, table_of
    from estimator.outputs.book_parts import Properties, finished

    book = Workbook(write_only=True)
    summary = _summary(totals)
    styles = _put(book, summary)
    page: Any = book.create_sheet(JOBS)
    for letter, width in zip(_LETTERS.values(), COLUMNS.values(), strict=True):
        page.column_dimensions[letter].width = width
    page.freeze_panes = f"A{_FIRST}"
    page.print_title_rows = f"{_TOP + 1}:{_TOP + 1}"
    _paper(page)
    for cells in _lines(rows):
        page.append([_cell(page, styles, cell) for cell in cells])
    if totals.jobs:
        jobs = Table("Batch_jobs", tuple(COLUMNS), _TOP + 1, _FIRST + totals.jobs - 1)
        page._tables.add(table_of(jobs, list(_LETTERS.values())))  # columns are given: no warning
    file = BytesIO()
    book.save(file)
    return finished(file.getvalue(), [results_of(summary)], (), Properties(TITLE, TITLE, "", None))


def _summary(totals: BatchTotals) -> Sheet:
    """How many of each, and the sums of each currency."""
    widths = map(float, _WIDTHS.split())
    sheet = Sheet(SUMMARY, dict(zip("ABCDEF", widths, strict=True)), wide=True)
    sheet.title(TITLE)
    sheet.note(NOTE)
    sheet.section("Jobs")
    rows = (
        [words(status), formula(f'COUNTIFS({_span("Status", totals)},"{status}")', count)]
        for status, count in totals.counts.items()
        if status != NO_JOB
    )
    sheet.table("Batch_counts", ("Status", "Jobs"), rows)
    sheet.section("Sums of the priced jobs")
    sums = [_sums(totals, currency) for currency in totals.by_currency]
    if sums:
        sheet.table("Batch_sums", HEADERS, sums)
    else:
        sheet.note("None.")
    return sheet


def _sums(totals: BatchTotals, currency: str) -> list[Cell]:
    each = totals.by_currency[currency]
    status, money = _span("Status", totals), _span("Currency", totals)
    which = f'{status},"{PRICED}",{money},"{currency}"'
    total, second = _span("Total", totals), _span("Second total", totals)
    amount, plain = looks.total(_AMOUNT), looks.figure()
    return [
        words(currency),
        formula(f"COUNTIFS({which})", each.jobs, plain),
        formula(f"SUMIFS({total},{which})", each.total, amount),
        formula(f"SUMIFS({second},{which})", each.second_total, amount),
        formula(f"SUMIFS({_span('Hours', totals)},{which})", each.hours, looks.figure(looks.HOURS)),
        formula(f"SUMIFS({_span('Visits', totals)},{which})", each.visits, plain),
    ]


def _span(column: str, totals: BatchTotals) -> str:
    letter, last = _LETTERS[column], max(_FIRST, _FIRST + totals.jobs - 1)
    return f"'{JOBS}'!${letter}${_FIRST}:${letter}${last}"


def _lines(rows: Iterable[BatchRow]) -> Iterator[list[Cell | None]]:
    """The sheet of jobs from its title on."""
    yield [words("Jobs", looks.TITLE)]
    yield [words(JOBS_NOTE, looks.NOTE)]
    yield []
    yield [words(header, looks.HEAD) for header in COLUMNS]
    for row in rows:
        second = row.total if row.second_total is None else row.second_total
        yield [
            words(row.file), words(row.id), words(row.title), words(row.status),
            words(row.currency), _figure(row.total, _AMOUNT), _figure(second, _AMOUNT),
            _figure(row.hours, looks.HOURS), _figure(row.visits), _figure(row.findings),
            words(row.problem),
        ]  # fmt: skip


def _figure(value: Decimal | int | None, form: str = looks.GENERAL) -> Cell:
    """A figure that may be changed; empty where it is not known, never zero."""
    return words("") if value is None else number(value, looks.entry(form))


def _put(book: Workbook, sheet: Sheet) -> Styles:
    """Write a whole sheet row by row; gives the styles, for the next."""
    from estimator.outputs.book import table_of
    from estimator.outputs.book_styles import Styles

    page: Any = book.create_sheet(sheet.name)
    styles = Styles(page, {})
    for column, width in sheet.widths.items():
        page.column_dimensions[column].width = width
    _paper(page)
    rows: dict[int, list[Any]] = {}
    for each in sheet.placed:
        line = rows.setdefault(each.row, [])
        line += [None] * (each.column - 1 - len(line))
        shown = isinstance(each.value, str) and not each.formula
        text = each.value if shown else None
        value = None if shown else each.value
        line.append(
            _cell(
                page, styles, Cell(each.look, cast("Any", text), cast("Any", value), each.formula)
            )
        )
    for row in range(1, sheet.next_row):
        page.append(rows.get(row, []))
    for table in sheet.tables:
        page._tables.add(table_of(table, list(sheet.widths)))  # as below
    return styles


def _cell(page: object, styles: Styles, cell: Cell | None) -> object:
    """One cell for a sheet that is written once; text can never become a formula."""
    from openpyxl.cell import WriteOnlyCell

    from estimator.outputs.book import set_value

    if cell is None:
        return None
    made = WriteOnlyCell(cast("Any", page))
    placed = Sheet.placed_at(0, 0, cell)
    styles.put_on(made, placed.look)
    set_value(made, placed)
    return made


def _paper(page: Any) -> None:  # noqa: ANN401 - the library's sheet that is written once
    """Across the paper's long side, as wide as the page."""
    from openpyxl.worksheet.properties import PageSetupProperties

    page.sheet_properties.pageSetUpPr = PageSetupProperties(fitToPage=True)
    page.page_setup.orientation, page.page_setup.paperSize = "landscape", LETTER
    page.page_setup.fitToWidth, page.page_setup.fitToHeight = 1, 0
