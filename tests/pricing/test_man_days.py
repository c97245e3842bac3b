"""Man-day arithmetic against the worked examples printed in the Navy's builder manuals."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest

from estimator.pricing.man_days import (
    capability,
    day_equivalent,
    delay_factor,
    duration,
    efficiency_pct,
    man_days,
    whole_days,
)


def test_g1_l4_sixteen_thousand_feet_of_board_are_66_man_days() -> None:
    """NAVEDTRA 14045: 16,000 ft2 at 33 man-hours per 1,000 ft2."""
    assert man_days(16_000, 1_000, 33) == 66
    assert man_days(16_000, 1_000, 33) * 8 == 528


def test_l3_a_rate_for_one_foot_gives_the_same() -> None:
    assert man_days(16_000, 1, Decimal("0.033")) == 66


def test_g2_l5_seventy_man_days_take_nine_working_days() -> None:
    """NAVEDTRA 14045: crew 12, availability 0.75, man-day equivalent 0.9375; 8.3, plan 9."""
    days = duration(70, 12, Decimal("0.75"), Decimal("0.9375"))
    assert round(days, 3) == Fraction("8.296")
    assert whole_days(days) == 9


@pytest.mark.parametrize(("days", "want"), [("8", 8), ("8.0001", 9), ("0.1", 1), ("0", 0)])
def test_a_part_of_a_day_is_planned_as_a_day(days: str, want: int) -> None:
    assert whole_days(Decimal(days)) == want


def test_l6_the_printed_delay_factor_is_1_06() -> None:
    assert round(Fraction(70, 66), 2) == Fraction("1.06")
    assert round(man_days(16_000, 1_000, 33, Decimal("1.06"))) == 70


@pytest.mark.parametrize(("efficiency", "want"), [("67", "1"), ("63", "1.06"), ("100", "0.67")])
def test_l8_delay_factor_from_the_efficiency(efficiency: str, want: str) -> None:
    """0.67 / efficiency: 67 % is the average, and 63 % gives the 1.06 of the printed example."""
    assert round(delay_factor(Decimal(efficiency)), 2) == Fraction(want)


def test_l7_efficiency_is_the_plain_average_of_eight() -> None:
    assert efficiency_pct([25, 50, 60, 70, 75, 80, 90, 86]) == 67


def test_g5_x9_the_older_text_averages_factors_the_same_way() -> None:
    """0.9, 1.3, 1.0, 0.8, 0.7, 0.8, 1.3, 1.0: sum 7.8, / 8 = 0.975."""
    factors = [Fraction(tenths, 10) for tenths in (9, 13, 10, 8, 7, 8, 13, 10)]
    assert efficiency_pct(factors) == Fraction("0.975")


def test_l13_the_two_manuals_disagree_on_the_day() -> None:
    """14233: 9 h / 8 = 1.125. 14045: the same day less 1.5 h of lunch and breaks is 7.5 / 8."""
    assert day_equivalent(9, Decimal("1.5"), "whole-day") == Fraction("1.125")
    assert day_equivalent(9, Decimal("1.5"), "on-the-tools") == Fraction("0.9375")


def test_l14_the_equivalent_of_the_printed_example() -> None:
    """Lunch 1 h, travel 1 h and breaks 0.5 h off a day of 10 h leave 7.5 / 8."""
    assert day_equivalent(10, 1 + 1 + Decimal("0.5"), "on-the-tools") == Fraction("0.9375")


def test_l12_l15_capability_and_duration_are_each_the_other_turned_round() -> None:
    """12 x 9 x 0.9375 x 0.75 = 75.9375 man-days, which take those 12 nine days."""
    able = capability(12, 9, Decimal("0.9375"), Decimal("0.75"))
    assert able == Fraction("75.9375")
    assert duration(able, 12, Decimal("0.75"), Decimal("0.9375")) == 9


@pytest.mark.parametrize(("availability", "want"), [("0.75", 8), ("0.85", Fraction(120, 17))])
def test_l11_availability_moves_the_duration_and_not_the_man_days(
    availability: str, want: Fraction
) -> None:
    """6 man-days of one person at 0.75: 8 days; at 0.85: 6 / 0.85 = 120/17."""
    assert duration(6, 1, Decimal(availability), 1) == want


@pytest.mark.parametrize(
    ("hours", "quantity", "want"), [(170, 10_000, "0.017"), (170, 1_700, "0.1")]
)
def test_g4_x7_a_rate_is_hours_by_quantity(hours: int, quantity: int, want: str) -> None:
    """The rate that a text prints gives its hours back."""
    assert man_days(quantity, 1, Decimal(want)) * 8 == hours
