"""Reads whole columns of a book: each text once, however many rows hold it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Any, NamedTuple

from estimator.catalog.cells import CellReader, Habits, has_day_first, has_decimal_comma
from estimator.catalog.csv_table import Heading, Table
from estimator.problems import Problem
from estimator.reading import MeasureError

Values = Mapping[str, Any]


class Fault(NamedTuple):
    """A problem in a row, sorted by row and then by column."""

    row: int
    column: int
    read: str
    write: str

    def problem(self, name: str, heading: Heading) -> Problem:
        """Give the problem with its place as a spreadsheet shows it."""
        return Problem(self.place(name, heading), self.read, self.write)

    def place(self, name: str, heading: Heading) -> str:
        """Say where: file, row and column."""
        known = 0 <= self.column < len(heading.texts)
        column = f", column {heading.texts[self.column]}" if known else ""
        return f"{name}: row {self.row}{column}"


def too_wide(row: int) -> Fault:
    """Say that a row has more cells than headings."""
    write = "Put text that holds the delimiter in quotes, or give its column a heading."
    return Fault(row, -1, "has more cells than there are headings.", write)


def fault_at(heading: Heading, row: int, key: str, read: str, write: str) -> Fault:
    """Make a fault at the column of a key; a column that is not there is named by its key."""
    column = heading.keys.index(key) if key in heading.keys else -1
    return Fault(row, column, read, write)


def refused(row: int, column: int, error: MeasureError) -> Fault:
    """Say what is wrong with one cell."""
    read = error.read if error.text.strip() else error.reason
    return Fault(row, column, f"{read}.", error.hint)


def read_texts(reader: CellReader, texts: Iterable[str]) -> dict[str, object]:
    """Read each text once: its value, or the error that it gives."""
    values: dict[str, object] = {}
    for text in texts:
        if text not in values:
            try:
                values[text] = reader(text)
            except MeasureError as error:
                values[text] = error
    return values


def habits_of(
    expected: Habits, heading: Heading, numbers: Iterable[str], dates: Iterable[str]
) -> Habits:
    """Judge how one file writes decimals and dates, starting from what the shop expects."""
    comma = expected.decimal_comma or heading.delimiter == ";"
    return expected._replace(
        decimal_comma=has_decimal_comma(numbers, expected=comma),
        day_first=has_day_first(dates, expected=expected.day_first),
    )


def read_rows(
    table: Table, readers: Mapping[str, CellReader], faults: list[Fault]
) -> Iterator[tuple[int, Values]]:
    """Read every row of a small table; a row with faults is left out.

    Columns without a reader stay text, and those without a heading are passed over.
    """
    keys = table.heading.keys
    read = {key: read_texts(reader, table.column(key)) for key, reader in readers.items()}
    faults += [too_wide(row) for row in table.wide]
    places = [(place, key, read.get(key)) for place, key in enumerate(keys) if key]
    for row, cells in table.rows:
        values: dict[str, Any] = {}
        wrong = len(faults)
        for place, key, known in places:
            value = cells[place] if known is None else known[cells[place]]
            if isinstance(value, MeasureError):
                faults.append(refused(row, place, value))
            else:
                values[key] = value
        if len(faults) == wrong:
            yield row, values
