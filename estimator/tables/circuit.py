"""Ampacity, adjustment, receptacle ratings and ground sizes: one limit a question."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from functools import cache

from estimator.tables.facts import NotOnFile, Row, rows
from estimator.tables.limits import ALL, Limit


def _in_edition(table: str, edition: str) -> tuple[Row, ...]:
    """Rows of one edition; those for all editions where it has none of its own."""
    own = tuple(row for row in rows(table) if row["edition"] == edition)
    return own or tuple(row for row in rows(table) if row["edition"] == ALL)


def _limit(figure: str, row: Row, column: str, unit: str) -> Limit:
    value = Fraction(row[column])
    return Limit(figure, value, unit, row["source"], row["where"], row["confidence"])


@cache
def ampacity(wire: str, rating_c: int, edition: str) -> Limit | None:
    """Amperes of a copper wire by the column of its insulation (60, 75, 90 C); None if not on file.

    Sizes are never interpolated.
    """
    for row in _in_edition("ampacity", edition):
        if (row["wire"], row["rating_c"]) == (wire, str(rating_c)):
            return _limit(f"ampacity-{wire}-{rating_c}", row, "ampacity_a", "A")
    return None


@cache
def wires_on_file() -> tuple[str, ...]:
    """Wire sizes of the ampacity table, the thinnest first; larger AWG numbers are thinner."""
    return tuple(sorted({row["wire"] for row in rows("ampacity")}, key=int, reverse=True))


@cache
def adjustment(wires_count: int, edition: str) -> Limit:
    """Share of the ampacity left, percent, with so many wires that carry current together."""
    fitting = [
        row
        for row in _in_edition("ampacity_adjustment", edition)
        if int(row["least_wires"]) <= max(1, wires_count)
    ]
    return _limit("ampacity-adjustment", fitting[-1], "share_pct", "%")


@cache
def ambient_factor(ambient_f: Decimal, edition: str) -> Limit | None:
    """Factor of a 90 C wire at an air temperature, degrees F; None above the table.

    Cooler than the table's first row counts as that row, whose factor is 1.
    """
    for row in _in_edition("ambient_factors", edition):
        if ambient_f <= Decimal(row["most_f"]):
            return _limit("ambient-factor", row, "factor", "x")
    return None


def hottest_f(edition: str) -> Decimal:
    """The highest air temperature on file, degrees F."""
    return Decimal(_in_edition("ambient_factors", edition)[-1]["most_f"])


def usual_f(edition: str) -> Decimal:
    """The highest air temperature, degrees F, that takes nothing off."""
    return Decimal(_in_edition("ambient_factors", edition)[0]["most_f"])


@cache
def receptacle_ratings(circuit_a: int, edition: str) -> tuple[Limit, ...]:
    """Ratings, amperes, of receptacles on a circuit with two or more; empty if not on file."""
    return tuple(
        _limit("receptacle-rating", row, "receptacle_a", "A")
        for row in _in_edition("receptacle_ratings", edition)
        if row["circuit_a"] == str(circuit_a)
    )


@cache
def receptacle_load(circuit_a: int, receptacle_a: int, edition: str) -> Limit | None:
    """Most amperes plugged into one of several receptacles; None if not on file."""
    for row in _in_edition("receptacle_loads", edition):
        if (row["circuit_a"], row["receptacle_a"]) == (str(circuit_a), str(receptacle_a)):
            return _limit("receptacle-load", row, "most_a", "A")
    return None


@cache
def ground_size(breaker_a: int, material: str, edition: str) -> Limit | None:
    """AWG size of the ground wire behind a breaker: the first row that holds it, else None."""
    for row in _in_edition("ground_sizes", edition):
        if row["material"] == material and int(row["breaker_a"]) >= breaker_a:
            return _limit("ground-size", row, "wire", "AWG")
    return None


@dataclass(frozen=True, slots=True)
class GroundEnd:
    """Where a separate ground wire goes: in words, what it is fastened with, if the code lets it.

    Attributes:
        allowed: one of the places that the code names.
        where, confidence: where that stands, and how well it is known.
    """

    words: str
    items: tuple[str, ...]
    allowed: bool
    where: str
    confidence: str


@cache
def ground_end(to: str) -> GroundEnd:
    """One of the ends that the survey lists.

    Raises:
        NotOnFile: an end without a row.
    """
    for row in rows("ground_ends"):
        if row["to"] == to:
            allowed = row["allowed"] == "yes"
            items = tuple(row["items"].split())
            return GroundEnd(row["words"], items, allowed, row["where"], row["confidence"])
    raise NotOnFile("ground_ends", to, tuple(row["to"] for row in rows("ground_ends")))


@cache
def circular_mils(wire: str) -> Fraction | None:
    """Area of a wire in circular mils; None where none is on file."""
    for row in rows("wire_resistance"):
        if row["wire"] == wire:
            return Fraction(row["circular_mils"])
    return None


@cache
def least_device_rating_a(device: str, units: str) -> int | None:
    """The smallest rating that a device is sold in, amperes; None where it has none."""
    return min(_ratings(device, units), default=0) or None


def _ratings(device: str, units: str) -> Iterator[int]:
    for row in rows("devices"):
        if (row["device"], row["units"]) == (device, units):
            yield int(row["rating_a"])
