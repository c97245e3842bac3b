"""Reads the table that the shopping list page gives: which rows count as bought, or were there."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal

from estimator.catalog.cells import has_decimal_comma
from estimator.catalog.csv_table import Table, column_key, read_table
from estimator.catalog.numbers import read_number
from estimator.language import CODES, Language
from estimator.ledger.list_columns import COLUMNS, NO, YES
from estimator.pricing.change_bought import PaidFile, PaidLine, unit_of
from estimator.pricing.records import Bid
from estimator.problems import InputError, Problem
from estimator.reading import MeasureError
from estimator.survey.messages import printable

_NEEDED = ("item", "quantity", "paid", "got")
_NUMBERS = ("quantity", "paid")
_SEMICOLON = ";"
_GUARD = "'"
"""The page puts it before a cell that a spreadsheet program would take for a formula."""


@dataclass(frozen=True, slots=True)
class _Rows:
    """The table with the names that its columns have here, and its habits."""

    table: Table
    before: Bid
    headings: Mapping[str, str]
    decimal_comma: bool

    def where(self, row: int, column: str) -> str:
        return f"{self.table.name}: row {row}, column {self.headings[column]}"

    def cells(self, values: tuple[str, ...]) -> dict[str, str]:
        """The cells of one row by our names; empty where the table has no such column."""
        by_key = dict(zip(self.table.heading.keys, values, strict=True))
        return {
            str(column): by_key[column_key(self.headings[column])].removeprefix(_GUARD)
            if column in self.headings
            else ""
            for column in COLUMNS
        }

    def number(self, row: int, column: str, text: str) -> Decimal:
        try:
            return read_number(text, decimal_comma=self.decimal_comma)
        except MeasureError as error:
            raise InputError([error.problem(self.where(row, column))]) from None

    def flag(self, row: int, column: str, text: str) -> bool:
        """Yes or no in any language of the page; an empty cell is no."""
        if text.casefold() in _in_every_language(YES, self.before):
            return True
        if not text or text.casefold() in _in_every_language(NO, self.before):
            return False
        read = f'"{printable(text)}" is neither yes nor no'
        raise InputError([Problem(self.where(row, column), read, "Write yes or no.")])


def unknown_item(item: str) -> tuple[str, str]:
    """What to say of a thing that neither the list nor the book has."""
    read = f'"{printable(item)}" is neither on the shopping list nor in the materials book'
    return read, "Write an item key of materials.csv, such as the page has it."


def no_quantity(before: Bid, item: str) -> tuple[str, str]:
    """What to say of a thing of which nobody knows how much was bought."""
    unit = unit_of(before, item)
    return f'"{item}" has no quantity', f"Write how much was bought, in its unit ({unit})."


def paid_table(text: str, name: str, before: Bid) -> PaidFile:
    """Read the table, in whatever language the page was.

    A row counts as bought where a price stands in it or it is ticked as got, and as there where
    it was had already. What came from the truck is in the job file.

    Raises:
        InputError: with every problem of the file.
    """
    table = read_table(text, name, _known(before), ())
    headings = _headings(table, before)
    problems = [
        Problem(f"{name}: row {row}", "there are more cells than headings", "Quote the commas.")
        for row in table.wide
    ]
    rows = _Rows(table, before, headings, _comma(table, headings, before))
    lines: list[PaidLine] = []
    for row, values in table.rows:
        try:
            lines += _line(rows, row, rows.cells(values))
        except InputError as error:
            problems += error.problems
    if problems:
        raise InputError(problems)
    return PaidFile(name, tuple(lines))


def _comma(table: Table, headings: Mapping[str, str], before: Bid) -> bool:
    """Whether a comma stands before the decimals, as a spreadsheet program may have saved it."""
    keys = [column_key(headings[column]) for column in _NUMBERS]
    numbers = [text for key in keys for text in table.column(key)]
    expected = table.heading.delimiter == _SEMICOLON or before.books.shop.decimal_comma
    return has_decimal_comma(numbers, expected=expected)


def _languages(before: Bid) -> Iterator[Language]:
    yield before.books.language
    yield from map(Language, CODES)


def _in_every_language(word: str, before: Bid) -> set[str]:
    return {language.say(word).casefold() for language in _languages(before)}


def _known(before: Bid) -> set[str]:
    return {column_key(each.say(column)) for each in _languages(before) for column in COLUMNS}


def _headings(table: Table, before: Bid) -> dict[str, str]:
    """What each of our columns is called in this table, by the language that names most."""
    told = [
        {str(column): language.say(column) for column in COLUMNS} for language in _languages(before)
    ]
    found = [
        {column: text for column, text in each.items() if column_key(text) in table.heading.keys}
        for each in told
    ]
    best = max(found, key=len)
    if missing := [column for column in _NEEDED if column not in best]:
        place = f"{table.name}: row {table.heading.row}"
        write = f"Keep the headings of the page's table: {', '.join(COLUMNS)}."
        raise InputError(
            Problem(place, f"the column {column} is missing", write) for column in missing
        )
    return best


def _line(rows: _Rows, row: int, cell: Mapping[str, str]) -> Iterator[PaidLine]:
    """What one row says was bought, or was there already; nothing where it was not got."""
    had = rows.flag(row, "had", cell["had"])
    got = rows.flag(row, "got", cell["got"])
    if not (had or got or cell["paid"]):
        return
    item, before = cell["item"], rows.before
    if not unit_of(before, item):
        raise InputError([Problem(rows.where(row, "item"), *unknown_item(item))])
    quantity = rows.number(row, "quantity", cell["quantity"]) if cell["quantity"] else Decimal(0)
    if not quantity:
        raise InputError([Problem(rows.where(row, "quantity"), *no_quantity(before, item))])
    if not cell["paid"] and not cell["shop"] and _is_drawn(before, item, quantity):
        return
    paid = rows.number(row, "paid", cell["paid"]) if cell["paid"] and not had else None
    yield PaidLine(item, printable(cell["what"]), quantity, paid, printable(cell["shop"]), had)


def _is_drawn(before: Bid, item: str, quantity: Decimal) -> bool:
    """Whether a row is truck stock of the first list, which the job file has already."""
    lines = (line for line in before.shopping if line.item == item)
    return any(drawn.quantity == quantity for line in lines for drawn in line.stock)
