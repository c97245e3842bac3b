"""The workbook of the books: every entry, and the year by account, by month and by job."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from decimal import Decimal

from estimator.ledger.account_map import AccountMap
from estimator.ledger.entries import Entry
from estimator.ledger.roll_up import RollUp, Total, roll_up
from estimator.outputs import looks
from estimator.outputs.cells import Cell, Row, Sheet, blank, day, formula, number, words
from estimator.outputs.formats import formats
from estimator.outputs.ledger_csv import COLUMNS, MAP_COLUMNS, Value, entry_values
from estimator.outputs.ledger_sheets import (
    BALANCED,
    ENTRIES,
    UNBALANCED,
    Booked,
    EntryRange,
    sized_sheet,
)
from estimator.outputs.looks import DATE, MONEY

MEMO = "A bid posts nothing: bids are left out. Every amount here comes from a close-out file."
FOLLOWS = "Every figure follows from the sheet Entries."
_MONEY_COLUMNS = ("unit_cost", "amount_net", "tax_amount", "amount_gross", "debit", "credit")
_ENTRY_WIDTHS = "25 14 13 12 22 12 10 24 12 10 24 7 30 9 7 11 12 11 8 11 13 9 12 12 8 9 12 32 16 10"
_MAP_WIDTHS = " 34 8 8 16"
_ACCOUNT_HEADS = ("Account", "Account name")
_SUM_HEADS = ("Debit", "Credit", "Net")
_GROUPS = ("income", "cost", "expense")
_TITLE = "Books"


def books_workbook(
    entries: Sequence[Entry], locale: str, account_map: AccountMap | None = None
) -> bytes:
    """Make the workbook of entries of one currency, as the bytes of an .xlsx file.

    Roll-ups are formulas over the entries, with the engine's value beside each.

    Raises:
        InputError: kinds of line that the map has no name for.
    """
    added = roll_up(entries, account_map)
    shown = formats(added.currency or "USD", locale)
    first = _first_row()
    booked = Booked(tuple(entries), shown, EntryRange(first, max(first, first + len(entries) - 1)))
    sheets = [
        _entries(booked, account_map, added),
        _by_account(booked, added),
        _by_month(booked, added),
        _by_job(booked, added),
    ]
    if account_map is not None:
        sheets.append(_by_map(booked, added, account_map))
    from estimator.outputs.book import Contents, book_bytes  # openpyxl, and only here

    return book_bytes(
        Contents(
            sheets=tuple(sheets),
            names={},
            forms={MONEY: shown.money, DATE: shown.date},
            paper=shown.paper,
            job_id=_TITLE,
            title=_TITLE,
            subject=_TITLE,
            creator="",
            dated=max((entry.date for entry in entries), default=None),
        )
    )


def _first_row() -> int:
    """Row of the first entry: below title, note, check, an empty row and the headings."""
    return len((_TITLE, MEMO, BALANCED, "", COLUMNS)) + 1


def _entries(booked: Booked, account_map: AccountMap | None, added: RollUp) -> Sheet:
    """Every entry, under a check that debits equal credits."""
    sheet = sized_sheet(ENTRIES, _ENTRY_WIDTHS + (_MAP_WIDTHS if account_map else ""))
    sheet.begin_block()
    sheet.title("Entries")
    sheet.note(MEMO)
    sheet.put(_check(booked, added))
    sheet.skip()
    heads = (*COLUMNS, *(MAP_COLUMNS if account_map else ()))
    rows = (_entry(entry, account_map) for entry in booked.entries)
    made = sheet.table("Book_entries", heads, rows)
    sheet.frozen_rows = made.first_row
    return sheet


def _check(booked: Booked, added: RollUp) -> Row:
    """Both sums, and whether they are the same."""
    debit, credit = booked.at.of("debit"), booked.at.of("credit")
    places = booked.formats.places
    same = f'IF(ROUND(SUM({debit})-SUM({credit}),{places})=0,"{BALANCED}","{UNBALANCED}")'
    said = BALANCED if added.debit == added.credit else UNBALANCED
    return [
        words("Check", looks.LABEL), None, words("Debits", looks.LABEL),
        booked.amount(f"SUM({debit})", added.debit, total=True),
        words("Credits", looks.LABEL),
        booked.amount(f"SUM({credit})", added.credit, total=True), None,
        formula(same, said, looks.TEXT),
    ]  # fmt: skip


def _entry(entry: Entry, account_map: AccountMap | None) -> Row:
    heads = (*COLUMNS, *MAP_COLUMNS)
    values = entry_values(entry, account_map)
    return [_cell(name, value) for name, value in zip(heads, values, strict=False)]


def _cell(name: str, value: Value) -> Cell:
    """One value of an entry; text is never more than text."""
    if value is None:
        return blank()
    if isinstance(value, str):
        return words(value)
    if isinstance(value, int | Decimal):
        return number(value, looks.figure(MONEY if name in _MONEY_COLUMNS else looks.GENERAL))
    return day(value, looks.TEXT_DATE)


def _sums(booked: Booked, total: Total, conditions: tuple[str, ...]) -> list[Cell]:
    """Debit, credit and net over the entries that meet the conditions."""
    debit = booked.at.added("debit", *conditions)
    credit = booked.at.added("credit", *conditions)
    return [
        booked.amount(debit, total.debit),
        booked.amount(credit, total.credit),
        booked.amount(f"{debit}-{credit}", total.net),
    ]


def _begin(name: str, title: str, widths: str) -> Sheet:
    sheet = sized_sheet(name, widths)
    sheet.title(title)
    sheet.note(FOLLOWS)
    sheet.freeze()
    sheet.begin_block()
    return sheet


def _by_account(booked: Booked, added: RollUp) -> Sheet:
    sheet = _begin("By account", "Books by account", "12 34 16 16 16")

    def rows() -> Iterator[Row]:
        for total in added.by_account:
            row = sheet.next_row
            conditions = _of_account(booked, "A", "B", row)
            yield [*_named(total), *_sums(booked, total, conditions)]

    made = sheet.table("By_account", (*_ACCOUNT_HEADS, *_SUM_HEADS), rows())
    _last(booked, sheet, (made.first_row + 1, made.last_row), added)
    return sheet


def _named(total: Total) -> Row:
    return [words(total.account_code), words(total.account_name)]


def _of_account(booked: Booked, code: str, name: str, row: int) -> tuple[str, ...]:
    """The entries of the account that two cells of a row name."""
    at = booked.at
    return (at.same("account_code", f"{code}{row}"), at.same("account_name", f"{name}{row}"))


def _last(booked: Booked, sheet: Sheet, rows: tuple[int, int], added: RollUp) -> None:
    """The sums of a roll-up, and whether they are those of the entries."""
    letters = list(sheet.widths)[-3:]
    values = (added.debit, added.credit, added.debit - added.credit)
    sums = [
        booked.amount(f"SUM({letter}{rows[0]}:{letter}{rows[1]})", value, total=True)
        for letter, value in zip(letters, values, strict=True)
    ]
    before: Row = [None] * (len(sheet.widths) - len(sums) - 1)
    sheet.put([words("All entries", looks.LABEL), *before, *sums])


def _by_month(booked: Booked, added: RollUp) -> Sheet:
    """Each account month by month; year and month are numbers, so no language changes them."""
    sheet = _begin("By month", "Books by month", "8 8 12 34 16 16 16")
    dates = booked.at.of("date")

    def rows() -> Iterator[Row]:
        for total in added.by_month:
            row = sheet.next_row
            year, _, month = total.month.partition("-")
            when = f"((YEAR({dates})=A{row})*(MONTH({dates})=B{row}))"
            conditions = (when, *_of_account(booked, "C", "D", row))
            figures = [number(int(each), looks.figure()) for each in (year, month)]
            yield [*figures, *_named(total), *_sums(booked, total, conditions)]

    heads = ("Year", "Month", *_ACCOUNT_HEADS, *_SUM_HEADS)
    made = sheet.table("By_month", heads, rows())
    _last(booked, sheet, (made.first_row + 1, made.last_row), added)
    return sheet


def _by_job(booked: Booked, added: RollUp) -> Sheet:
    """What each job brought and cost, then its accounts."""
    sheet = _begin("By job", "Books by job", "14 28 12 34 16 16 16")
    sheet.section("Income, costs and margin")
    sheet.table(
        "Jobs",
        ("Job", "Name", "Lines", "Currency", "Income", "Costs", "Margin"),
        _jobs(booked, added, sheet),
    )
    sheet.section("Accounts of each job")

    def rows() -> Iterator[Row]:
        for total in added.by_job:
            row = sheet.next_row
            job = booked.at.same("job_no", f"A{row}")
            conditions = (job, *_of_account(booked, "C", "D", row))
            named = [words(total.job_no), words(total.job_name), *_named(total)]
            yield [*named, *_sums(booked, total, conditions)]

    sheet.table("By_job", ("Job", "Name", *_ACCOUNT_HEADS, *_SUM_HEADS), rows())
    return sheet


def _jobs(booked: Booked, added: RollUp, sheet: Sheet) -> Iterator[Row]:
    at = booked.at
    for total in added.jobs:
        row = sheet.next_row
        job = at.same("job_no", f"A{row}")
        sold, cost, expense = (at.same("group", f'"{each}"') for each in _GROUPS)
        spent = f"({cost}+{expense})"
        income = f"{at.added('credit', job, sold)}-{at.added('debit', job, sold)}"
        costs = f"{at.added('debit', job, spent)}-{at.added('credit', job, spent)}"
        yield [
            words(total.job_no), words(total.job_name),
            formula(f"SUMPRODUCT({job})", total.lines_count), words(added.currency),
            booked.amount(income, total.income), booked.amount(costs, total.costs),
            booked.amount(f"E{row}-F{row}", total.margin),
        ]  # fmt: skip


def _by_map(booked: Booked, added: RollUp, account_map: AccountMap) -> Sheet:
    """Each name of the map; the entries' own columns after the last say which is which."""
    sheet = _begin("By map", f"Books by {account_map.title}", "10 44 8 18 16 16 16")
    at = booked.at
    sheet.note("Rows marked memory were not read on the form itself: check them before use.")

    def rows() -> Iterator[Row]:
        for total in added.by_map:
            row = sheet.next_row
            same = (at.same("map_name", f"B{row}"), at.same("map_year", f"C{row}"))
            sums = Total("", "", "", "", "", total.debit, total.credit, total.net)
            named = [total.line, total.name, total.year, total.confidence]
            yield [*map(words, named), *_sums(booked, sums, same)]

    made = sheet.table("By_map", ("Line", "Name", "Year", "Marked", *_SUM_HEADS), rows())
    _last(booked, sheet, (made.first_row + 1, made.last_row), added)
    return sheet
