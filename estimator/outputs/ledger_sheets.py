"""What the sheets of the books share: columns, ranges that formulas add up, formats."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from estimator.ledger.entries import Entry
from estimator.outputs import looks
from estimator.outputs.cells import Cell, Sheet, formula
from estimator.outputs.formats import Formats
from estimator.outputs.ledger_csv import COLUMNS, MAP_COLUMNS

ENTRIES = "Entries"
ALL_COLUMNS = (*COLUMNS, *MAP_COLUMNS)
_LETTERS = 26
BALANCED, UNBALANCED = "debits equal credits", "debits and credits differ"


def letters(count: int) -> list[str]:
    """Names of the first columns of a sheet: A to Z, then AA and on."""
    return [
        (chr(ord("A") + at // _LETTERS - 1) if at >= _LETTERS else "")
        + chr(ord("A") + at % _LETTERS)
        for at in range(count)
    ]


def sized_sheet(name: str, widths: str) -> Sheet:
    """Begin a wide sheet; `widths` lists its columns, in characters."""
    sizes = [float(width) for width in widths.split()]
    return Sheet(name, dict(zip(letters(len(sizes)), sizes, strict=True)))


@dataclass(frozen=True, slots=True)
class EntryRange:
    """Where the entries stand, for the formulas of the other sheets."""

    first: int
    last: int

    def of(self, column: str) -> str:
        """The range of one column, by its heading."""
        letter = letters(len(ALL_COLUMNS))[ALL_COLUMNS.index(column)]
        return f"'{ENTRIES}'!${letter}${self.first}:${letter}${self.last}"

    def same(self, column: str, place: str) -> str:
        """1 for the entries whose text is exactly that of a cell, else 0."""
        return f"(EXACT({self.of(column)},{place})*1)"

    def added(self, amount: str, *conditions: str) -> str:
        """Sum of one column of amounts over the entries that meet the conditions."""
        return f"SUMPRODUCT({'*'.join(conditions)},{self.of(amount)})"


@dataclass(frozen=True, slots=True)
class Booked:
    """What a workbook of the books is made from."""

    entries: tuple[Entry, ...]
    formats: Formats
    at: EntryRange

    def amount(self, text: str, value: Decimal, *, total: bool = False) -> Cell:
        """Money that follows from other cells, rounded so that sums of cents stay cents."""
        look = looks.total(looks.MONEY) if total else looks.figure(looks.MONEY)
        return formula(f"ROUND({text},{self.formats.places})", value, look)
