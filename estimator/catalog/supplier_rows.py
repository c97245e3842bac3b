"""A supplier's file as offers of items of ours, read by a column map."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any, NamedTuple

from estimator.catalog.cells import Habits, shows_decimal_comma
from estimator.catalog.columns import Fault, fault_at, habits_of, refused, too_wide
from estimator.catalog.csv_table import Table, column_key, read_table
from estimator.catalog.materials import material_readers
from estimator.catalog.supplier_map import NUMBER, PRICE, SupplierMap
from estimator.problems import InputError, Problem
from estimator.reading import MeasureError
from estimator.text_files import decode_any, read_bytes

GUARDED = ("description", "supplier", "aisle", "source")
NOT_NAMED = "the map names no item of ours for it"
NO_PRICE = "it has no price"
_LIKE_FORMULA = re.compile(r"\s*[=+\-@]|[\t\r]")


@dataclass(frozen=True, slots=True)
class LeftRow:
    """A row of the supplier's file that is not taken: their row, words and why."""

    row: int
    number: str
    description: str
    why: str


class Offer(NamedTuple):
    """One item at one price.

    Attributes:
        row: of the supplier's file. values: by our column, read; those of the map with them.
    """

    row: int
    item: str
    values: Mapping[str, Any]


class Offers(NamedTuple):
    """What a supplier's file holds, and a place in it for problems that show later."""

    name: str
    table: Table
    offers: tuple[Offer, ...]
    left: tuple[LeftRow, ...]
    places: Mapping[str, str]

    def problem(self, offer: Offer, ours: str, read: str, write: str) -> Problem:
        """Say what is wrong with an offer, at their column for one of ours."""
        told = (ours, NUMBER, "description") if ours == "item" else (ours,)
        key = next((self.places[each] for each in told if each in self.places), ours)
        fault = fault_at(self.table.heading, offer.row, key, read, write)
        return fault.problem(self.name, self.table.heading)


def read_offers(path: Path, made: SupplierMap, expected: Habits) -> Offers:
    """Read a supplier's file.

    Args:
        path: CSV with any delimiter, in UTF-8, UTF-16 or Windows-1252.
        made: the column map.
        expected: how the shop writes decimals and dates, where the file does not show it.

    Raises:
        InputError: columns of the map that the file lacks, and all cells that cannot be read,
            in rows that the map names an item for.
    """
    name, theirs = str(path), {column_key(text): ours for text, ours in made.columns.items()}
    table = read_table(decode_any(read_bytes(path, name), name), name, theirs, ())
    problems = list(_lacking(table, made))
    if problems:
        raise InputError(problems)
    places = {ours: key for key, ours in theirs.items()}
    fixed = _fixed(made, expected, problems)
    reader = _Reader(table, places, material_readers(_habits(table, places, expected)), made)
    offers, left, faults = reader.read(fixed)
    problems += [fault.problem(name, table.heading) for fault in sorted(faults)]
    if problems:
        raise InputError(problems)
    return Offers(name, table, tuple(offers), tuple(left), places)


def guarded(text: str) -> str:
    """Text that no spreadsheet program takes for a formula."""
    return f"'{text}" if _LIKE_FORMULA.match(text) else text


def _lacking(table: Table, made: SupplierMap) -> Iterator[Problem]:
    for theirs in made.columns:
        if column_key(theirs) not in table.heading.keys:
            read = f'{table.name} has no column "{theirs}".'
            write = f"Its columns: {', '.join(filter(None, table.heading.texts))}."
            yield Problem(made.where("columns", theirs), read, write)


def _habits(table: Table, places: Mapping[str, str], expected: Habits) -> Habits:
    """Judge how their file writes decimals and dates."""
    numbers = [text for ours in (PRICE, "pack_size") if ours in places
               for text in table.column(places[ours])]  # fmt: skip
    dates = list(table.column(places["priced_on"])) if "priced_on" in places else []
    comma = expected.decimal_comma or shows_decimal_comma(numbers)
    return habits_of(expected._replace(decimal_comma=comma), table.heading, numbers, dates)


def _fixed(made: SupplierMap, expected: Habits, problems: list[Problem]) -> dict[str, Any]:
    """Read what the map says of every row."""
    readers = material_readers(expected)
    values: dict[str, Any] = {}
    for ours, text in made.fixed.items():
        try:
            values[ours] = readers[ours](text) if ours in readers else guarded(text)
        except MeasureError as error:
            problems.append(Problem(made.where("fixed", ours), f"{error.read}.", error.hint))
    if made.supplier:
        values["supplier"] = guarded(made.supplier)
    if made.priced_on is not None:
        values["priced_on"] = made.priced_on
    return values


class _Reader(NamedTuple):
    """Reads row after row of one table."""

    table: Table
    places: Mapping[str, str]
    readers: Mapping[str, Any]
    made: SupplierMap

    def read(self, fixed: Mapping[str, Any]) -> tuple[list[Offer], list[LeftRow], list[Fault]]:
        """Give the offers, the rows that are left, and what is wrong with cells."""
        items = {_plain(theirs): ours.lower() for theirs, ours in self.made.items.items()}
        faults = [too_wide(row) for row in self.table.wide]
        offers: list[Offer] = []
        left: list[LeftRow] = []
        keys = self.table.heading.keys
        for row, cells in self.table.rows:
            texts = {ours: cells[keys.index(key)] for ours, key in self.places.items()}
            item, why = self._item(texts, items), NOT_NAMED
            if item and not texts[PRICE]:
                item, why = "", NO_PRICE
            if not item:
                left.append(LeftRow(row, texts.get(NUMBER, ""), texts.get("description", ""), why))
                continue
            values = self._values(row, texts, faults)
            offers.append(Offer(row, item, {**fixed, **values, "item": item}))
        return offers, left, faults

    def _item(self, texts: Mapping[str, str], items: Mapping[str, str]) -> str:
        """Find the item of a row: by their number, by description, or as it stands there."""
        for ours in (NUMBER, "description"):
            found = items.get(_plain(texts.get(ours, "")))
            if found:
                return found
        return texts.get("item", "").lower()

    def _values(self, row: int, texts: Mapping[str, str], faults: list[Fault]) -> dict[str, Any]:
        values: dict[str, Any] = {}
        for ours, text in texts.items():
            if not text or ours in (NUMBER, "item"):
                continue
            try:
                values[ours] = self.readers[ours](text) if ours in self.readers else guarded(text)
            except MeasureError as error:
                column = self.table.heading.keys.index(self.places[ours])
                faults.append(refused(row, column, error))
        return values


def _plain(text: str) -> str:
    """Their words without a difference of capitals and blanks."""
    return " ".join(text.casefold().split())
