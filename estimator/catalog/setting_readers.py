"""Readers for single settings: from what a TOML file gives to the value a stage works with."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from decimal import Decimal
from fractions import Fraction
from typing import Any, NamedTuple, get_args

from estimator.catalog.numbers import LARGEST, read_number
from estimator.money import minor_unit
from estimator.problems import InputError
from estimator.reading import MeasureError, as_text
from estimator.settings import Consumable, PerWhat
from estimator.units import (
    AreaUnit,
    LengthUnit,
    VolumeUnit,
    ft_to_in,
    read_area,
    read_length,
    read_volume,
)

ALL_PCT = 100
MOST_PCT = 1000
FOOT_IN = ft_to_in(1)


class Manner(NamedTuple):
    """How bare numbers and decimals are meant in one shop's settings."""

    units: str = "us"
    decimal_comma: bool = False

    @property
    def bare_length(self) -> LengthUnit:
        """Unit of a length without one."""
        return "mm" if self.units == "metric" else "in"


class ElementError(MeasureError):
    """A refused value inside a list, with its position from 0."""

    def __init__(self, error: MeasureError, element: int) -> None:
        self.element = element
        super().__init__(error.text, error.kind, error.reason, error.hint)


Reader = Callable[[object, Manner], Any]


def refuse(value: object, reason: str, hint: str) -> MeasureError:
    """Make the error for a value that does not fit its setting."""
    if isinstance(value, bool):
        return MeasureError("true" if value else "false", "reject", reason, hint)
    shown = as_text(value) if isinstance(value, str | int | Decimal) else type_word(value)
    return MeasureError(shown, "reject", reason, hint)


def type_word(value: object) -> str:
    """Name what a TOML value is, for messages."""
    words = {dict: "a table", list: "a list", bool: "true or false", str: "text"}
    return words.get(type(value), "a number" if isinstance(value, int | Decimal) else "a date")


def length(value: object, manner: Manner) -> Fraction:
    """Read a length of zero or more, in inches."""
    if isinstance(value, bool) or not isinstance(value, str | int | Decimal):
        raise refuse(value, "is not a length", 'Write a length in quotes, such as "12 in".')
    return read_length(
        value, bare_unit=manner.bare_length, decimal_comma=manner.decimal_comma
    ).inches


def some_length(value: object, manner: Manner) -> Fraction:
    """Read a length above zero, in inches."""
    inches = length(value, manner)
    if inches == 0:
        raise refuse(value, "is no length", "Write a length above zero.")
    return inches


def number(value: object, manner: Manner) -> Decimal:
    """Read a number of zero or more, written bare or in quotes."""
    if isinstance(value, str):
        return read_number(value.strip(), decimal_comma=manner.decimal_comma)
    if isinstance(value, bool) or not isinstance(value, int | Decimal):
        raise refuse(value, "is not a number", "Write a number, such as 12.5.")
    if value < 0:
        raise refuse(value, "is below zero", "Write a number of zero or more.")
    if value > LARGEST:
        raise refuse(value, "is too large", f"Write a number up to {LARGEST:,}.")
    return Decimal(value)


def percent(most: int) -> Reader:
    """Make a reader of percentages from 0 up to `most`."""

    def read(value: object, manner: Manner) -> Decimal:
        text = value.removesuffix("%").strip() if isinstance(value, str) else value
        pct = number(text, manner)
        if pct > most:
            raise refuse(value, f"is more than {most} %", f"Write 10 for 10 %, at most {most}.")
        return pct

    return read


def margin(value: object, manner: Manner) -> Decimal:
    """Read a share of the selling price, below 100 %."""
    pct: Decimal = percent(ALL_PCT)(value, manner)
    if pct >= ALL_PCT:
        raise refuse(value, "leaves nothing for the cost", "Write a margin below 100.")
    return pct


def factor(value: object, manner: Manner) -> Decimal:
    """Read a factor above zero."""
    times = number(value, manner)
    if times == 0:
        raise refuse(value, "would leave no hours", "Write 1 for no change, 1.5 for half more.")
    return times


def whole(least: int, most: int) -> Reader:
    """Make a reader of whole numbers from `least` to `most`."""

    def read(value: object, manner: Manner) -> int:
        count = number(value, manner)
        if count != int(count) or not least <= count <= most:
            hint = f"Write a whole number from {least} to {most}."
            raise refuse(value, "is not a number that fits here", hint)
        return int(count)

    return read


def flag(value: object, _manner: Manner) -> bool:
    """Read true or false."""
    if not isinstance(value, bool):
        raise refuse(value, "is not true or false", "Write true or false, without quotes.")
    return value


def text(value: object, _manner: Manner) -> str:
    """Read a text; it may be empty."""
    if not isinstance(value, str):
        raise refuse(value, "is not text", 'Put the text in "quotes".')
    return value.strip()


def texts(value: object, manner: Manner) -> tuple[str, ...]:
    """Read a list of texts; empty ones are left out."""
    if not isinstance(value, Sequence) or isinstance(value, str):
        raise refuse(value, "is not a list", 'Write a list, such as ["one line", "another"].')
    return tuple(line for line in each_of(text, value, manner) if line)


def choice(*allowed: str) -> Reader:
    """Make a reader of one word out of several."""

    def read(value: object, _manner: Manner) -> str:
        if value not in allowed:
            words = " or ".join(f'"{word}"' for word in allowed)
            raise refuse(value, "is not one of the words for this setting", f"Write {words}.")
        return str(value)

    return read


def currency(value: object, manner: Manner) -> str:
    """Read the code of a currency on file."""
    code = text(value, manner)
    try:
        minor_unit(code)
    except InputError as error:
        raise refuse(value, "is not a currency on file", error.problems[0].write) from None
    return code


def amount_or_none(value: object, manner: Manner) -> Decimal | None:
    """Read an amount of money, or "none"."""
    if value == "none":
        return None
    try:
        return number(value, manner)
    except MeasureError:
        raise refuse(
            value, "is not an amount", 'Write an amount such as 65.00, or "none".'
        ) from None


def same_or(read: Reader) -> Reader:
    """Make a reader that also takes "same", for what is as in the bid; that gives None."""

    def read_it(value: object, manner: Manner) -> object:
        return None if value == "same" else read(value, manner)

    return read_it


def burdened_or(read: Reader) -> Reader:
    """Make a reader that also takes "burdened", the wage with its burden; that gives None."""

    def read_it(value: object, manner: Manner) -> object:
        return None if value == "burdened" else read(value, manner)

    return read_it


def _two_parts(value: object, example: str) -> tuple[str, str]:
    """Split "X per Y"; what follows "per" without a number gets a 1."""
    left, found, right = value.partition(" per ") if isinstance(value, str) else ("", "", "")
    if not found or not left.strip() or not right.strip():
        raise refuse(value, "is not an amount per unit", f"Write it as {example}.")
    right = right.strip()
    return left.strip(), right if right[0].isdigit() else f"1 {right}"


def volume_per_length(value: object, manner: Manner) -> Fraction:
    """Read "0.04 gal per ft" or "0.4 L per m", in cubic inches for each inch."""
    amount, along = _two_parts(value, '"0.04 gal per ft" or "0.4 L per m"')
    return _volume(amount, manner) / some_length(along, manner)


def area_per_volume(value: object, manner: Manner) -> Fraction:
    """Read "350 ft2 per gal" or "14 m2 per L", in square inches for each cubic inch."""
    area, volume = _two_parts(value, '"350 ft2 per gal" or "14 m2 per L"')
    bare: AreaUnit = "m2" if manner.units == "metric" else "ft2"
    covered = read_area(area, bare_unit=bare, decimal_comma=manner.decimal_comma)
    used = _volume(volume, manner)
    if covered == 0 or used == 0:
        raise refuse(value, "covers nothing", "Write a coverage above zero.")
    return covered / used


def _volume(typed: str, manner: Manner) -> Fraction:
    """Read a volume, in cubic inches."""
    bare: VolumeUnit = "L" if manner.units == "metric" else "gal"
    return read_volume(typed, bare_unit=bare, decimal_comma=manner.decimal_comma)


def count_per_length(value: object, manner: Manner) -> Decimal:
    """Read "2 per ft" or "7 per m", as a count for each foot."""
    count, along = _two_parts(value, '"2 per ft" or "7 per m"')
    per_ft = Fraction(number(count, manner)) * FOOT_IN / some_length(along, manner)
    return Decimal(per_ft.numerator) / Decimal(per_ft.denominator)


def consumables(value: object, manner: Manner) -> tuple[Consumable, ...]:
    """Read the list of things used up on a job."""
    if not isinstance(value, Sequence) or isinstance(value, str):
        raise refuse(value, "is not a list of tables", "Write [[practice.consumables]] for each.")
    return tuple(each_of(_consumable, value, manner))


def each_of(read: Reader, values: Sequence[object], manner: Manner) -> Iterator[Any]:
    """Read the elements of a list; a refused one is named by its position."""
    for element, value in enumerate(values):
        try:
            yield read(value, manner)
        except MeasureError as error:
            raise ElementError(error, element) from None


def _consumable(row: object, manner: Manner) -> Consumable:
    """Read one thing used up: item, quantity, per."""
    example = 'Write item = "blade-saw", quantity = 1 and per = "job" in each.'
    if not isinstance(row, Mapping) or set(row) != {"item", "quantity", "per"}:
        raise refuse(row, "does not hold item, quantity and per", example)
    per = choice(*get_args(PerWhat))(row["per"], manner)
    return Consumable(text(row["item"], manner), number(row["quantity"], manner), per)
