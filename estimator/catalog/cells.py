"""Readers for single cells of the books: stripped text in, a checked value out."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from datetime import date
from decimal import Decimal
from typing import NamedTuple

from estimator.catalog.numbers import read_number
from estimator.money import read_money
from estimator.reading import MeasureError

CellReader = Callable[[str], object]

MATERIAL_UNITS = ("ea", "ft", "m", "ft2", "m2", "gal", "L", "application")
LABOR_UNITS = ("ea", "job", "ft", "m", "ft2", "m2")
MOUNTS = ("old-work", "ceiling-old-work", "fan-old-work", "new-work", "surface")
_UNIT_WORDS = {
    "each": "ea", "piece": "ea", "pieces": "ea", "pc": "ea", "pcs": "ea",
    "foot": "ft", "feet": "ft", "metre": "m", "metres": "m", "meter": "m", "meters": "m",
    "sq ft": "ft2", "sqft": "ft2", "ft²": "ft2", "sq m": "m2", "sqm": "m2", "m²": "m2",
    "gallon": "gal", "gallons": "gal", "l": "L", "litre": "L", "litres": "L", "liter": "L",
    "liters": "L", "applications": "application", "jobs": "job",
}  # fmt: skip
_YEAR_FIRST = re.compile(r"(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[ T][\d:.]+)?", re.ASCII)
_YEAR_LAST = re.compile(r"(\d{1,2})([-/.])(\d{1,2})\2(\d{4}|\d{2})", re.ASCII)
_CENTURY = 2000
_MONTHS = 12
_HOLDS = re.compile(r"([\w.]+):(\d{1,2})-(\d{1,2})", re.ASCII)
_COMMA_DECIMALS = re.compile(r"\d+,(?:\d{1,2}|\d{4,})|0,\d+|\d{1,3}(?:\.\d{3})+,\d+", re.ASCII)
_POINT_DECIMALS = re.compile(r"\d+\.(?:\d{1,2}|\d{4,})|0\.\d+|\d{1,3}(?:,\d{3})+\.\d+", re.ASCII)


class Habits(NamedTuple):
    """How one file writes what may be written in several ways.

    Attributes:
        decimal_comma: a comma stands before the decimals.
        day_first: 3/9/2026 is the third of September.
        currency: ISO 4217 code; a price with another currency's sign is refused.
    """

    decimal_comma: bool = False
    day_first: bool = False
    currency: str = "USD"


def has_decimal_comma(numbers: Iterable[str], *, expected: bool) -> bool:
    """Judge by its numbers whether a file writes decimals with a comma.

    Args:
        numbers: texts of the number columns.
        expected: what to take where they do not show it: a comma where the shop's settings
            say so or where the cells are separated by semicolons. Never true otherwise.
    """
    if not expected:
        return False
    texts = set(numbers)
    points = any(_POINT_DECIMALS.fullmatch(text) for text in texts)
    return not points or any(_COMMA_DECIMALS.fullmatch(text) for text in texts)


def shows_decimal_comma(numbers: Iterable[str]) -> bool:
    """Tell whether some number can only be read with a decimal comma, and none with a point."""
    texts = set(numbers)
    points = any(_POINT_DECIMALS.fullmatch(text) for text in texts)
    return not points and any(_COMMA_DECIMALS.fullmatch(text) for text in texts)


def has_day_first(dates: Iterable[str], *, expected: bool) -> bool:
    """Judge by its dates whether a file writes the day before the month.

    Dates with the year first, and dates with full stops (always day first), show nothing.
    """
    found = [_YEAR_LAST.fullmatch(text) for text in set(dates)]
    parts = [(int(one[1]), int(one[3])) for one in found if one and one[2] != "."]
    if any(first > _MONTHS for first, _ in parts):
        return True
    return expected and not any(second > _MONTHS for _, second in parts)


def filled(text: str) -> str:
    """Read a text that must be there."""
    if not text:
        raise _refuse(text, "is empty", "Fill it in, or delete the row.")
    return text


def item_key(text: str) -> str:
    """Read the key of an item or a task; capitals do not count."""
    return filled(text).lower()


def words(text: str) -> tuple[str, ...]:
    """Read keys with spaces or commas between them."""
    return tuple(text.lower().replace(",", " ").split())


def unit(*allowed: str) -> Callable[[str], str]:
    """Make a reader of units; full words are taken too."""

    def read(text: str) -> str:
        lower = text.lower()
        name = _UNIT_WORDS.get(lower, lower)
        if name not in allowed:
            reason = "is not a unit of this book" if text else "is empty where a unit is needed"
            raise _refuse(text, reason, f"Write one of {', '.join(allowed)}.")
        return name

    return read


def choice(*allowed: str, empty: str | None = None) -> Callable[[str], str]:
    """Make a reader of one word out of several; an empty cell is `empty` where that is given."""

    def read(text: str) -> str:
        if not text and empty is not None:
            return empty
        if text.lower() not in allowed:
            reason = "is not one of the words of this column" if text else "is empty"
            raise _refuse(text, reason, f"Write {' or '.join(allowed)}.")
        return text.lower()

    return read


def amount(habits: Habits, *, thing: str, above_zero: bool = False) -> Callable[[str], Decimal]:
    """Make a reader of numbers of zero or more, or above zero."""

    def read(text: str) -> Decimal:
        value = read_number(text, decimal_comma=habits.decimal_comma, thing=thing)
        if above_zero and not value:
            raise _refuse(text, "is zero", f"Write {thing} above zero.")
        return value

    return read


def price(habits: Habits) -> Callable[[str], Decimal | None]:
    """Make a reader of prices; an empty cell is a price that nobody knows."""

    def read(text: str) -> Decimal | None:
        if not text:
            return None
        return read_money(text, currency=habits.currency, decimal_comma=habits.decimal_comma)

    return read


def day(habits: Habits) -> Callable[[str], date | None]:
    """Make a reader of dates; an empty cell is a date that nobody knows."""

    def read(text: str) -> date | None:
        if not text:
            return None
        try:
            return date(*_year_month_day(text, day_first=habits.day_first))
        except ValueError:
            raise _refuse(text, "is not a date", "Write it as 2026-11-30.") from None

    return read


def _year_month_day(text: str, *, day_first: bool) -> tuple[int, int, int]:
    """Take a date apart; ValueError where it is none."""
    found = _YEAR_FIRST.fullmatch(text)
    if found:
        return int(found[1]), int(found[2]), int(found[3])
    found = _YEAR_LAST.fullmatch(text)
    if not found:
        raise ValueError(text)
    first, second, year = int(found[1]), int(found[3]), int(found[4])
    year += _CENTURY if len(found[4]) == 2 else 0
    if day_first or found[2] == ".":
        return year, second, first
    return year, first, second


def number_text(habits: Habits, *, thing: str) -> Callable[[str], str]:
    """Make a reader of numbers that stay text, with a point before the decimals."""
    read_amount = amount(habits, thing=thing)

    def read(text: str) -> str:
        return str(read_amount(text)) if text else ""

    return read


def holds(text: str) -> str:
    """Read what a wire connector holds: "14:2-3 12:2-2", conductor size and how many of it."""
    parts = text.replace(", ", " ").replace(",", ".").split()
    for part in parts:
        found = _HOLDS.fullmatch(part)
        if not found or not 0 < int(found[2]) <= int(found[3]):
            hint = "Write size:least-most, with spaces between, such as 14:2-3 12:2-2."
            raise _refuse(text, "does not say how many conductors of which size", hint)
    return " ".join(parts)


def _refuse(text: str, reason: str, hint: str) -> MeasureError:
    """Make the error for a cell that does not fit its column."""
    return MeasureError(text, "reject", reason, hint)
