"""Means and spreads in closed form, against published tables and sums worked by hand."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest

from estimator.pricing.risk_moments import (
    Moments,
    Range,
    added,
    by_chance,
    moments,
    root,
    scaled,
)
from estimator.settings_risk import Shape

# GAO-20-195G, table 12: least, likely and most of seven elements, thousands of dollars.
GAO = tuple(
    Range(*map(Decimal, row.split()))
    for row in (
        "17955 19645 21785", "8500 10553 13000", "4000 4306 5100", "4100 4305 4650",
        "550 600 650", "32300 35547 52500", "1950 2136 2600",
    )
)  # fmt: skip


def ranged(text: str) -> Range:
    low, likely, high = map(Decimal, text.split())
    return Range(low, likely, high)


def places(amount: Decimal | Fraction, digits: int) -> Decimal:
    exact = Fraction(amount)
    return round(Decimal(exact.numerator) / Decimal(exact.denominator), digits)


def test_g8_the_published_five_eight_fourteen() -> None:
    found = moments(ranged("5 8 14"), "pert")
    assert (found.mean, found.sd) == (Decimal("8.5"), Decimal("1.5"))


# P4: standard deviations 0.5, 1.5, 0.5 and 0.33 and a path of 17.83 are published; the ranges
# besides 5/8/14 are made to have them.
def test_p4_spreads_of_a_path_add_up_by_their_squares() -> None:
    parts = [moments(ranged(each), "pert") for each in ("2 3 5", "5 8 14", "1 2 4", "3 4 5")]
    assert [places(part.sd, 2) for part in parts] == [
        Decimal(sd) for sd in ("0.50", "1.50", "0.50", "0.33")
    ]
    path = added(parts)
    assert (places(path.mean, 2), places(path.sd, 2)) == (Decimal("17.83"), Decimal("1.69"))


@pytest.mark.parametrize(
    ("shape", "mean", "sd"),
    [("triangular", "82244.0", "4599.6"), ("pert", "79668.0", "3515.5")],
)
def test_g10_gao_table_12_in_closed_form(shape: Shape, mean: str, sd: str) -> None:
    whole = added([moments(each, shape) for each in GAO])
    assert (whole.mean, places(whole.sd, 1)) == (Decimal(mean), Decimal(sd))


def test_g9_likely_values_of_gao_table_12() -> None:
    likely = sum(each.likely for each in GAO)
    assert (likely, likely * 32) == (77_092, 2_466_944)
    assert (sum(each.low for each in GAO), sum(each.high for each in GAO)) == (69_355, 100_285)


def test_a_triangle_worked_by_hand() -> None:
    """0, 3, 6: mean 9/3; variance (0 + 9 + 36 - 0 - 0 - 18)/18 = 27/18."""
    assert moments(ranged("0 3 6"), "triangular") == Moments(Fraction(3), Fraction(3, 2))
    assert moments(ranged("1 2 6"), "triangular") == Moments(Fraction(3), Fraction(21, 18))


@pytest.mark.parametrize("shape", ["triangular", "pert"])
def test_a_range_without_width_has_no_spread(shape: Shape) -> None:
    assert moments(ranged("2.5 2.5 2.5"), shape) == Moments(Fraction(5, 2), Fraction(0))


def test_what_happens_one_time_in_four() -> None:
    """Mean 1/4 x 3; variance 1/4 x (3/2 + 9) - 9/16 = 42/16 - 9/16."""
    found = by_chance(Moments(Fraction(3), Fraction(3, 2)), Decimal(25))
    assert found == Moments(Fraction(3, 4), Fraction(33, 16))


def test_what_never_and_what_always_happens() -> None:
    inside = Moments(Fraction(3), Fraction(3, 2))
    assert by_chance(inside, Decimal(0)) == Moments(Fraction(0), Fraction(0))
    assert by_chance(inside, Decimal(100)) == inside


def test_a_factor_counts_once_in_the_mean_and_twice_in_the_variance() -> None:
    assert scaled(Moments(Fraction(3), Fraction(2)), Fraction(5)) == Moments(
        Fraction(15), Fraction(50)
    )


@pytest.mark.parametrize(
    ("correlation", "variance"), [("0", 25), ("50", 37), ("100", 49), ("25", 31)]
)
def test_spreads_that_run_together_add_up_to_more(correlation: str, variance: int) -> None:
    """Standard deviations 3 and 4: 9 + 16 + 2 x r x 12, worked by hand."""
    parts = [Moments(Fraction(1), Fraction(9)), Moments(Fraction(2), Fraction(16))]
    assert added(parts, Decimal(correlation)) == Moments(Fraction(3), Fraction(variance))


def test_nothing_adds_up_to_nothing() -> None:
    assert added([], Decimal(30)) == Moments(Fraction(0), Fraction(0))


def test_a_root_has_34_digits() -> None:
    """The square root of 2, as in any table."""
    assert root(Fraction(2)) == Decimal("1.414213562373095048801688724209698")
