"""Lengths, areas and volumes the way people write them, as exact fractions of inches.

The one place to import measures from: what `estimator.measures` holds is handed on here.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from itertools import pairwise
from typing import NamedTuple

from estimator.measures import (
    AREA_IN2,
    AREA_WORDS,
    IN_PER_FT,
    LENGTH_IN,
    LENGTH_WORDS,
    MAX_LENGTH_FT,
    MAX_LENGTH_IN,
    VOLUME_IN3,
    VOLUME_WORDS,
    AreaUnit,
    Exact,
    LengthUnit,
    System,
    VolumeUnit,
    ceil_to_step,
    cm3_to_in3,
    ft2_to_in2,
    ft_to_in,
    gal_to_in3,
    in2_to_ft2,
    in2_to_m2,
    in3_to_cm3,
    in3_to_gal,
    in3_to_l,
    in_to_ft,
    in_to_m,
    in_to_mm,
    m2_to_in2,
    m_to_in,
    mm_to_in,
    show_area,
    show_length,
    show_volume,
    to_decimal,
    write_length,
)
from estimator.reading import (
    MeasureError,
    Part,
    Typed,
    as_text,
    exact,
    read_one,
    read_parts,
    take_in,
)

__all__ = [
    "AreaUnit", "Exact", "LengthReading", "LengthUnit", "MeasureError", "System", "VolumeUnit",
    "ceil_to_step", "cm3_to_in3", "ft2_to_in2", "ft_to_in", "gal_to_in3", "in2_to_ft2",
    "in2_to_m2", "in3_to_cm3", "in3_to_gal", "in3_to_l", "in_to_ft", "in_to_m", "in_to_mm",
    "m2_to_in2", "m_to_in", "mm_to_in", "read_area", "read_length", "read_volume", "show_area",
    "show_length", "show_volume", "to_decimal", "write_length",
]  # fmt: skip

LENGTH_EXAMPLE = "Write a length such as 12'-6\", 150 in or 3800 mm."


class _Kind(NamedTuple):
    """What areas and volumes differ in: words for messages, units, and the largest amount."""

    thing: str
    example: str
    words: dict[str, str]
    sizes: dict[str, Fraction]
    limit: Fraction
    too_much: str


_AREA = _Kind(
    "an area",
    "Write an area such as 2.5 ft2, 360 in2 or 0.3 m2.",
    AREA_WORDS,
    AREA_IN2,
    ft2_to_in2(1_000_000),
    "is more than 1,000,000 ft2",
)
_VOLUME = _Kind(
    "a volume",
    "Write a volume such as 18 in3, 295 mL or 1.5 gal.",
    VOLUME_WORDS,
    VOLUME_IN3,
    gal_to_in3(10_000),
    "is more than 10,000 gal",
)

_SMALLER = {"ft": {"in": 12}, "m": {"cm": 100, "mm": 1000}, "cm": {"mm": 10}}
_NAMES = {"ft": "foot", "m": "metre", "cm": "centimetre"}
_METRIC = frozenset(("mm", "cm", "m"))
_AREA_LIKE = re.compile(r"[a-z][23]$")
_EACH_UNIT = "Write the unit after each number, such as 12'-6\" or 3 m 50 cm."
_LENGTH_RATIO = {unit: inches.as_integer_ratio() for unit, inches in LENGTH_IN.items()}


@dataclass(frozen=True, slots=True)
class LengthReading:
    """A length as read.

    Attributes:
        inches: exact, never rounded.
        echo: the length as understood, shown to 1/16 in or 1 mm.
        notes: what the person should look at once more, each a sentence; often none.
    """

    inches: Fraction
    echo: str
    notes: tuple[str, ...]


def read_length(
    typed: str | Exact, *, bare_unit: LengthUnit, decimal_comma: bool = False
) -> LengthReading:
    r"""Read a length the way people write it.

    Args:
        typed: text, or an exact number of `bare_unit`.
        bare_unit: the unit of a number without one.
        decimal_comma: whether a comma stands before the decimals.

    Raises:
        MeasureError: not a length, more than 10,000 ft, or more than one likely reading.
        TypeError: a float or bool; a binary float has lost what was typed.

    >>> read_length("12' 6-1/2\"", bare_unit="in").inches
    Fraction(301, 2)
    """
    if isinstance(typed, str):
        return _length_from_text(typed, bare_unit, decimal_comma=decimal_comma)
    length = exact(typed, "a length", LENGTH_EXAMPLE)
    notes: tuple[str, ...] = ()
    if bare_unit == "ft" and isinstance(typed, Decimal) and length.denominator > 1:
        notes = (_decimal_feet_note(format(typed, "f")),)
    return _reading(typed, length * LENGTH_IN[bare_unit], bare_unit, notes)


def _length_from_text(raw: str, bare_unit: LengthUnit, *, decimal_comma: bool) -> LengthReading:
    """Read a length from text: one number, or a chain such as feet and inches."""
    typed = take_in(raw, "a length", LENGTH_EXAMPLE, decimal_comma=decimal_comma)
    parts = read_parts(typed, LENGTH_WORDS)
    if len(parts) == 1:
        unit = parts[0].unit or _bare(typed, parts[0], bare_unit)
        units, notes = [unit], _lone_notes(typed, parts[0], bare_unit)
    else:
        units = _chain_units(typed, parts)
        notes = tuple(_chain_notes(parts, units))
    over, under = 0, 1
    for part, unit in zip(parts, units, strict=True):
        top, bottom = _LENGTH_RATIO[unit]
        over = over * part.bottom * bottom + part.top * top * under
        under *= part.bottom * bottom
    return _reading(raw, Fraction(over, under), units[0], notes)


def _bare(typed: Typed, part: Part, bare_unit: LengthUnit) -> str:
    """Give a number without a unit the field's unit, where that is the only likely reading."""
    if part.shape == "fraction" and part.top > part.bottom:
        raise typed.ask("is a fraction larger than one, without a unit", _EACH_UNIT)
    if part.shape == "dashed" and bare_unit == "ft":
        raise typed.ask(
            "may be feet and a fraction of an inch, or a fraction of a foot", _EACH_UNIT
        )
    return bare_unit


def _lone_notes(typed: Typed, part: Part, bare_unit: LengthUnit) -> tuple[str, ...]:
    """Say what may have been meant otherwise by one number."""
    if part.unit is None and part.shape == "decimal" and bare_unit == "ft":
        return (_decimal_feet_note(part.token.replace(",", ".")),)
    if part.shape == "fraction" and part.top > part.bottom:
        return ("This fraction is larger than one; a whole number stands apart, such as 1 1/2.",)
    if typed.text.endswith('"') and len(set(typed.raw.rstrip()[-2:])) == 1:
        return ("Two apostrophes are read as inches.",)
    return ()


def _decimal_feet_note(token: str) -> str:
    """Say that decimals of feet are not inches, and how to write the inches they look like."""
    feet, _, decimals = token.partition(".")
    note = f"{token} is read as decimal feet."
    inches = int(decimals)
    if not 0 < inches < IN_PER_FT:
        return note
    whole = int(feet or 0)
    total = whole * IN_PER_FT + inches
    return f"{note} For {whole} feet {inches} inches write {whole}'-{inches}\" or {total} in."


def _chain_units(typed: Typed, parts: list[Part]) -> list[str]:
    """Find the unit of each number in a chain; only a bare number after feet needs none."""
    units = [parts[0].unit or ""]
    for upper, lower in pairwise(parts):
        if upper.unit is None:
            raise typed.ask("has numbers without a unit between them", _chain_hint(parts))
        if upper.shape != "whole":
            raise typed.ask("has a part of a unit before a smaller unit", _EACH_UNIT)
        unit = lower.unit or _unit_after(typed, upper.unit)
        if unit not in _SMALLER.get(upper.unit, {}):
            raise typed.ask("does not go from a larger unit to a smaller one", _EACH_UNIT)
        units.append(unit)
    return units


def _unit_after(typed: Typed, upper: str) -> str:
    """Give the unit of a bare number that follows feet; refuse to guess elsewhere."""
    if upper != "ft":
        raise typed.ask("ends in a number without a unit", _EACH_UNIT)
    if _AREA_LIKE.search(typed.text):
        raise typed.ask("looks like an area or volume", _EACH_UNIT)
    return "in"


def _chain_hint(parts: list[Part]) -> str:
    """Say how to write two bare whole numbers as feet and inches, where they look like it."""
    feet, inches = parts[0], parts[1]
    if any(part.shape != "whole" for part in parts) or inches.top >= IN_PER_FT:
        return _EACH_UNIT
    total = feet.top * IN_PER_FT + inches.top
    return f"Write {feet.top}'-{inches.top}\" or {total} in."


def _chain_notes(parts: list[Part], units: list[str]) -> list[str]:
    """Point out a smaller unit that holds a whole larger one, such as 14 inches after feet."""
    return [
        f"{lower.token} after {upper.token} is a whole {_NAMES[larger]} or more."
        for (upper, lower), (larger, smaller) in zip(pairwise(parts), pairwise(units), strict=True)
        if lower.top >= lower.bottom * _SMALLER[larger][smaller]
    ]


def _reading(
    raw: str | Exact, inches: Fraction, unit: str, notes: tuple[str, ...]
) -> LengthReading:
    """Check the size of a length and echo it in the system of its unit."""
    over, under = inches.as_integer_ratio()
    if over > MAX_LENGTH_IN * under:
        raise MeasureError(
            as_text(raw), "reject", f"is longer than {MAX_LENGTH_FT:,} ft", LENGTH_EXAMPLE
        )
    return LengthReading(inches, show_length(inches, "metric" if unit in _METRIC else "us"), notes)


def read_area(typed: str | Exact, *, bare_unit: AreaUnit, decimal_comma: bool = False) -> Fraction:
    """Read an area such as 2.5 sq ft, 360 in2 or 0.3 m2, as exact square inches.

    The arguments and errors are those of `read_length`; the limit is 1,000,000 ft2.
    """
    return _amount(_AREA, typed, bare_unit, decimal_comma=decimal_comma)


def read_volume(
    typed: str | Exact, *, bare_unit: VolumeUnit, decimal_comma: bool = False
) -> Fraction:
    """Read a volume such as 18 cu in, 295 mL or 1.5 gal (US), as exact cubic inches.

    The arguments and errors are those of `read_length`; the limit is 10,000 gal.

    >>> read_volume("1.5 gal", bare_unit="in3")
    Fraction(693, 2)
    """
    return _amount(_VOLUME, typed, bare_unit, decimal_comma=decimal_comma)


def _amount(kind: _Kind, typed: str | Exact, bare_unit: str, *, decimal_comma: bool) -> Fraction:
    """Read one number with an optional unit of a kind, in square or cubic inches."""
    if isinstance(typed, str):
        field = take_in(typed, kind.thing, kind.example, decimal_comma=decimal_comma)
        part = read_one(field, kind.words)
        amount = Fraction(part.top, part.bottom) * kind.sizes[part.unit or bare_unit]
    else:
        amount = exact(typed, kind.thing, kind.example) * kind.sizes[bare_unit]
    if amount > kind.limit:
        raise MeasureError(as_text(typed), "reject", kind.too_much, kind.example)
    return amount
