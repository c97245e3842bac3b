"""Man-days and durations, after the Navy's builder manuals; exact fractions, round up at the end.

Sources: NAVEDTRA 14045 (Builder Advanced), chapter 2, and NAVEDTRA 14233 (Seabee planning),
chapter 2. A man-day is always 8 hours. The two manuals differ on how a working day compares with
it; both are here under their own names.
"""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal
from fractions import Fraction
from math import ceil

from estimator.settings_risk import DayMeasure

Exact = Decimal | Fraction | int
MAN_DAY_H = 8
AVERAGE_EFFICIENCY_PCT = 67


def man_days(
    quantity: Exact, unit_size: Exact, hours_per_unit: Exact, delay_factor: Exact = 1
) -> Fraction:
    """Man-days for a quantity: quantity / unit size x man-hours / 8 x delay factor.

    >>> man_days(16_000, 1_000, 33)
    Fraction(66, 1)
    """
    units = Fraction(quantity) / Fraction(unit_size)
    return units * Fraction(hours_per_unit) / MAN_DAY_H * Fraction(delay_factor)


def efficiency_pct(elements_pct: Sequence[Exact]) -> Fraction:
    """The plain average of the scored elements of production, each 25 to 100."""
    return sum((Fraction(each) for each in elements_pct), Fraction(0)) / len(elements_pct)


def delay_factor(production_efficiency_pct: Exact) -> Fraction:
    """How much longer work takes at an efficiency: 1 at the average of 67 %.

    67 / efficiency is a reading of the manual's graph from its two known points, not a quote.
    """
    return AVERAGE_EFFICIENCY_PCT / Fraction(production_efficiency_pct)


def day_equivalent(day_h: Exact, lost_h: Exact, measure: DayMeasure) -> Fraction:
    """One working day of one person in man-days.

    "whole-day" is the length of the day / 8 (14233); "on-the-tools" takes lunch, travel and breaks
    off first (14045). The two manuals disagree, and the shop chooses.
    """
    lost = Fraction(lost_h) if measure == "on-the-tools" else Fraction(0)
    return (Fraction(day_h) - lost) / MAN_DAY_H


def capability(
    direct_labor: Exact, workdays: Exact, equivalent: Exact, availability: Exact
) -> Fraction:
    """Man-days a crew can do: direct labor x workdays x day equivalent x availability."""
    return (
        Fraction(direct_labor) * Fraction(workdays) * Fraction(equivalent) * Fraction(availability)
    )


def duration(needed: Exact, crew: Exact, availability: Exact, equivalent: Exact) -> Fraction:
    """Working days: man-days / (crew x availability x day equivalent), not rounded."""
    return Fraction(needed) / (Fraction(crew) * Fraction(availability) * Fraction(equivalent))


def whole_days(days: Exact) -> int:
    """Working days to plan: rounded up."""
    return ceil(Fraction(days))
