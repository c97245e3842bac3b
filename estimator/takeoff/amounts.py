"""The units a takeoff line is written in, and sums written so that a reader can redo them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from functools import lru_cache

from estimator.measures import AREA_IN2, LENGTH_IN, MM_PER_IN, VOLUME_IN3, System, to_decimal

PLACES = 6
_SHOWN_PLACES = 4


@dataclass(frozen=True, slots=True)
class Units:
    """Units of one job's takeoff: ft, ft2, gal or m, m2, L; sums are said in in or mm."""

    system: System
    length: str
    area: str
    volume: str

    def lengths(self, length_in: Fraction) -> Decimal:
        """Inches as feet or metres, to six places."""
        return exact(length_in / LENGTH_IN[self.length])

    def areas(self, area_in2: Fraction) -> Decimal:
        """Square inches as ft2 or m2, to six places."""
        return exact(area_in2 / AREA_IN2[self.area])

    def volumes(self, volume_in3: Fraction) -> Decimal:
        """Cubic inches as gal or L, to six places."""
        return exact(volume_in3 / VOLUME_IN3[self.volume])

    def say(self, length_in: Fraction) -> str:
        """A length inside a sum: plain inches or millimetres, without the unit."""
        return _plain(length_in if self.system == "us" else length_in * MM_PER_IN)

    def say_unit(self, length_in: Fraction) -> str:
        """A length with its unit."""
        return f"{self.say(length_in)} {self.small}"

    def say_per(self, per_ft: Decimal) -> str:
        """How many there are of something for each foot or metre of length.

        >>> METRIC.say_per(Decimal("2.1336")), US.say_per(Decimal("2"))
        ('7 for each metre', '2 for each foot')
        """
        if self.system == "us":
            return f"{trim(per_ft)} for each foot"
        per_m = Fraction(per_ft) * LENGTH_IN["m"] / LENGTH_IN["ft"]
        return f"{exact(per_m)} for each metre"

    def add_up(self, lengths_in: Iterable[Fraction]) -> str:
        """A sum of lengths as text: "12 + 71 + 12"."""
        return " + ".join(self.say(each) for each in lengths_in)

    @property
    def small(self) -> str:
        """The unit that sums are said in."""
        return "in" if self.system == "us" else "mm"


US = Units("us", "ft", "ft2", "gal")
METRIC = Units("metric", "m", "m2", "L")


def units_of(system: System) -> Units:
    """The takeoff units of a job."""
    return US if system == "us" else METRIC


@lru_cache(maxsize=4096)
def exact(amount: Fraction) -> Decimal:
    """A quantity as a Decimal: exact where it ends within six places, else rounded half up."""
    return trim(to_decimal(amount, PLACES))


def trim(amount: Decimal) -> Decimal:
    """The same number without trailing zeros or an exponent.

    >>> trim(Decimal("11.000"))
    Decimal('11')
    """
    plain = amount.normalize()
    return plain.quantize(Decimal(1)) if plain == plain.to_integral() else plain


@lru_cache(maxsize=4096)
def _plain(amount: Fraction) -> str:
    if amount.denominator == 1:
        return str(amount.numerator)
    return str(trim(to_decimal(amount, _SHOWN_PLACES)))


def plural(count: int | Decimal, word: str) -> str:
    """A count with its word: "1 joint", "3 joints".

    >>> plural(1, "joint"), plural(4, "grid stud")
    ('1 joint', '4 grid studs')
    """
    return f"{count} {word}" if count == 1 else f"{count} {word}s"
