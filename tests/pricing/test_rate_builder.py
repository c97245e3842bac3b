"""What an hour costs and has to be sold for, against published wages and worked sums."""

from __future__ import annotations

from decimal import Decimal

import pytest

from estimator.money import margin_from_markup, markup_from_margin, round_money
from estimator.pricing.rate_builder import (
    BURDEN_BASE,
    build_rate,
    built_rate,
    burden_pct_of,
    labor_rate,
    required_markup_pct,
    yearly_wages,
)
from estimator.settings import RateTerms
from tests.pricing.made_books import plain
from tests.pricing.made_price import price

VECTOR = RateTerms(
    wage_per_hour=Decimal("30.38"),
    burden_pct=Decimal("43.34"),
    paid_hours=Decimal(2080),
    billable_pct=Decimal(70),
    overhead_per_year=Decimal(25000),
    profit_margin_pct=Decimal(10),
)
"""Wage: BLS OEWS, electricians, May 2025. Burden: 43.56 / 30.39 (BLS ECEC, June 2022)."""


def test_the_worked_rate_of_88_20() -> None:
    """43.55; 1,456 h; 62.21 + 17.17 = 79.38; / 0.90 = 88.20."""
    got = build_rate(VECTOR, "USD")
    assert (got.burdened, got.billable_hours) == (Decimal("43.55"), 1456)
    assert (got.labor_per_hour, got.overhead_per_hour) == (Decimal("62.21"), Decimal("17.17"))
    assert (got.cost_per_hour, got.rate) == (Decimal("79.38"), Decimal("88.20"))


def test_the_rate_says_what_it_was_built_of() -> None:
    got = build_rate(VECTOR, "USD")
    assert got.burden_base == BURDEN_BASE == "the straight wage for an hour worked"
    assert (got.wage_per_hour, got.burden_pct) == (Decimal("30.38"), Decimal("43.34"))
    assert (got.paid_hours, got.billable_pct, got.overhead_per_year) == (2080, 70, 25000)
    assert got.profit_margin_pct == 10


def test_a_built_rate_is_charged() -> None:
    """The shipped figures are those of the worked rate; 10 h are 882.00."""
    got = price("10", labor_rate_per_hour=None)
    assert (got.labor_rate_per_hour, got.labor) == (Decimal("88.20"), Decimal("882.00"))
    assert got.rate_build == build_rate(VECTOR, "USD")


def test_a_stated_rate_is_not_built() -> None:
    shop = plain(labor_rate_per_hour=Decimal(85)).shop
    assert (labor_rate(shop), built_rate(shop)) == (85, None)
    assert price("1", labor_rate_per_hour="85").rate_build is None


def test_own_figures_make_another_rate() -> None:
    """20 x 1.5 = 30; 2000 h, half billable: 60; 10,000 / 1000 = 10; 70 / 0.8 = 87.50."""
    shop = plain(
        labor_rate_per_hour=None, wage_per_hour=Decimal(20), burden_pct=Decimal(50),
        paid_hours=Decimal(2000), billable_pct=Decimal(50), overhead_per_year=Decimal(10000),
        profit_margin_pct=Decimal(20),
    ).shop  # fmt: skip
    assert labor_rate(shop) == Decimal("87.50")


def test_a_rate_in_a_currency_without_cents() -> None:
    """30.38 x 1.4334 = 43.55 -> 44; 62.86 -> 63; 17.17 -> 17; 80 / 0.9 = 88.89 -> 89."""
    got = build_rate(VECTOR, "JPY")
    assert [str(each) for each in (got.burdened, got.labor_per_hour, got.rate)] == [
        "44",
        "63",
        "89",
    ]
    assert str(got.overhead_per_hour) == "17"


def test_b1_burden_on_the_straight_wage() -> None:
    """B1, B2, G14 (BLS ECEC June 2022, table 4 by EPI): parts 43.55, printed 43.56; 1.4334."""
    parts = (Decimal(each) for each in ("30.39", "1.61", "1.97", "5.55", "4.03"))
    assert sum(parts) == Decimal("43.55")
    burden = burden_pct_of(Decimal("43.56"), Decimal("30.39"))
    assert round(1 + burden / 100, 4) == Decimal("1.4334")


def test_b3_the_same_money_on_another_base() -> None:
    """B3 (EPI): on pay with leave and supplements, 33.97, it is 128.2 % in all."""
    burden = burden_pct_of(Decimal("43.56"), Decimal("33.97"))
    assert round(100 + burden, 1) == Decimal("128.2")


@pytest.mark.parametrize("base", ["0", "-1"])
def test_a_burden_needs_a_base(base: str) -> None:
    with pytest.raises(ValueError, match=r"^the base of a burden is above zero$"):
        burden_pct_of(Decimal(1), Decimal(base))


def test_a_base_of_less_than_one_is_a_base() -> None:
    assert burden_pct_of(Decimal(1), Decimal("0.5")) == 100
    assert required_markup_pct(Decimal(1), Decimal("0.5")) == 200


def test_b10_labor_cost_is_hours_by_the_full_cost_of_one() -> None:
    """B10 (BYU-Idaho, Construction Estimating, ch. 4): production rate x wage rate, in full."""
    assert price("33", labor_rate_per_hour="43.56").labor == Decimal("1437.48")


def test_b11_b12_taxable_wages_and_payroll_tax() -> None:
    """B11, G13 (BYU-Idaho): 20,800 + 1,800 + 3,500 = 26,100; B12: 7.65 % is 1,996.65."""
    wages = yearly_wages(Decimal(10), Decimal(2080), Decimal(15), Decimal(120), Decimal(3500))
    assert wages == 26100
    assert round_money(wages * Decimal("7.65") / 100) == Decimal("1996.65")


def test_b13_overhead_and_profit_are_not_in_the_burdened_rate() -> None:
    """B13: pay, payroll taxes, insurance, paid time off and benefits; the rest comes after."""
    richer = VECTOR.__class__(
        VECTOR.wage_per_hour, VECTOR.burden_pct, VECTOR.paid_hours, VECTOR.billable_pct,
        Decimal(50000), Decimal(20),
    )  # fmt: skip
    assert build_rate(richer, "USD").burdened == Decimal("43.55")


def test_m3_the_markup_that_a_year_asks_for() -> None:
    """M3, G7 (JLC): 300,000 of overhead and profit on 600,000 of direct cost; proof 900,000."""
    markup = required_markup_pct(Decimal(300000), Decimal(600000))
    assert markup == 50
    assert 600000 * (1 + markup / 100) == 900000


def test_no_direct_cost_earns_nothing() -> None:
    with pytest.raises(ValueError, match=r"^a markup needs direct cost above zero$"):
        required_markup_pct(Decimal(1), Decimal(0))


@pytest.mark.parametrize(
    ("margin", "markup"),
    [
        ("10", "11.11"), ("15", "17.65"), ("20", "25.00"), ("25", "33.33"), ("30", "42.86"),
        ("33.33", "49.99"), ("40", "66.67"), ("50", "100.00"),
    ],
)  # fmt: skip
def test_m9_margin_to_markup(margin: str, markup: str) -> None:
    """M9, by hand from M1; a third is printed there as 33.33 -> 50, which 33.33 itself is not."""
    assert round(markup_from_margin(Decimal(margin)), 2) == Decimal(markup)


@pytest.mark.parametrize(
    ("markup", "margin"),
    [
        ("10", "9.09"), ("15", "13.04"), ("20", "16.67"), ("25", "20.00"), ("33.33", "25.00"),
        ("50", "33.33"), ("66.67", "40.00"), ("100", "50.00"),
    ],
)  # fmt: skip
def test_m10_markup_to_margin(markup: str, margin: str) -> None:
    """M10, by hand from M1; M7 (Remodeling): 25 % on cost is a gross margin of 20 %."""
    assert round(margin_from_markup(Decimal(markup)), 2) == Decimal(margin)


def test_m2_the_published_pair() -> None:
    """M2, G6 (JLC): cost 1,000 sold at 1,500: markup 50 %, margin 33.3 %."""
    got = price(materials="1000", materials_markup_pct="50")
    assert got.materials_sell == 1500
    assert round(got.margin_pct, 1) == Decimal("33.3")
