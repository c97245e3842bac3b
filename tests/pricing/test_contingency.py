"""Contingency: of labor or of everything, from a percentage or from a range; worked by hand."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import Any

import pytest

from estimator.pricing.contingency import WITHOUT_RANGE, contingency
from estimator.pricing.price import build_price
from estimator.pricing.records import PriceBuild
from tests.pricing.made_books import bid, plain
from tests.pricing.made_price import figures, price

JOB: dict[str, Any] = {
    "hours": "10", "materials": "100", "labor_rate_per_hour": "50", "materials_markup_pct": "20",
    "overhead_pct": "10", "profit_pct": "10", "contingency_pct": "15",
}  # fmt: skip
"""Labor 500, materials 120: base 620.00, overhead 62.00, profit 68.20; together 750.20."""


def from_range(amount: str | None, **terms: Any) -> PriceBuild:
    """The job priced with what a range says."""
    own = {key: JOB[key] for key in JOB if key not in ("hours", "materials")} | terms
    books = plain(**figures(own), contingency_from="confidence")
    stated = {"labor_hours": Decimal(10), "materials_cost": Decimal(100), "trips": 0}
    made = bid(books, overrides=stated)
    known = None if amount is None else Decimal(amount)
    return build_price(made.survey, made.takeoff, made.shopping, made.hours, books, known)


def test_of_labor() -> None:
    """15 % of 500.00; it comes after overhead and profit, and neither lies on it."""
    got = price(**JOB)
    assert (got.contingency.basis_amount, got.contingency.amount) == (500, 75)
    assert (got.profit, got.built_up) == (Decimal("68.20"), Decimal("825.20"))
    assert got.contingency.why == "15 % of labor"


def test_of_the_built_up_price() -> None:
    """15 % of 750.20 is 112.53."""
    put_by = price(**JOB, contingency_on="built-up").contingency
    assert (put_by.basis_amount, put_by.amount) == (Decimal("750.20"), Decimal("112.53"))
    assert put_by.why == "15 % of the built-up price"


def test_hours_of_a_supply_run_in_labor_are_labor() -> None:
    own = JOB | {"supply_run_hours": "2"}
    assert price(**own, supply_run_policy="in-labor").contingency.amount == 90
    assert price(**own, supply_run_policy="line").contingency.amount == 75


def test_none_is_put_by_unless_asked() -> None:
    put_by = price(**JOB | {"contingency_pct": "0"}).contingency
    assert (put_by.amount, put_by.why, put_by.source) == (0, "", "percent")


@pytest.mark.parametrize("shown", [True, False])
def test_shown_or_inside_the_amount_is_the_same(shown: bool) -> None:
    got = price(**JOB, contingency_shown=shown)
    assert (got.contingency.shown, got.total) == (shown, Decimal("825.20"))


def test_from_a_range() -> None:
    """93.456 -> 93.46; of 500.00 that is 18.69 %."""
    got = from_range("93.456")
    assert (got.contingency.amount, got.contingency.pct) == (Decimal("93.46"), Decimal("18.69"))
    assert (got.contingency.source, got.contingency.confidence_pct) == ("confidence", 80)
    assert got.built_up == Decimal("843.66")
    assert got.contingency.why == "enough in 80 of 100 such jobs"


def test_half_a_hundredth_of_a_percent_goes_up() -> None:
    """0.625 % of 1,000.00 is 6.25, shown as 0.63 %."""
    terms = plain(contingency_from="confidence").shop.price
    got = contingency(terms, Decimal(1000), Decimal(1000), Decimal("6.25"), "USD")
    assert (got.amount, got.pct) == (Decimal("6.25"), Decimal("0.63"))


@pytest.mark.parametrize("on", ["labor", "built-up"])
def test_it_says_what_it_lies_on(on: str) -> None:
    assert price(**JOB, contingency_on=on).contingency.on == on


def test_a_range_below_the_price_puts_nothing_by() -> None:
    assert from_range("-5").contingency.amount == 0


def test_without_a_range_it_says_so() -> None:
    put_by = from_range(None).contingency
    assert (put_by.amount, put_by.pct, put_by.why) == (0, 0, WITHOUT_RANGE)


def test_a_percentage_takes_no_notice_of_a_range() -> None:
    terms = replace(plain(contingency_pct=Decimal(10)).shop.price)
    got = contingency(terms, Decimal(200), Decimal(300), Decimal(99), "USD")
    assert (got.amount, got.pct) == (20, 10)


def test_a_range_on_no_labor_has_no_percentage() -> None:
    terms = plain(contingency_from="confidence").shop.price
    got = contingency(terms, Decimal(0), Decimal(300), Decimal(9), "USD")
    assert (got.amount, got.pct, got.basis_amount) == (9, 0, 0)


def test_the_minimum_is_held_against_the_price_with_it() -> None:
    """750.20 + 75.00 = 825.20 reaches a minimum of 825.20."""
    got = price(**JOB, minimum_charge="825.20")
    assert (got.minimum_governs, got.offered) == (False, Decimal("825.20"))
    assert price(**JOB, minimum_charge="825.21").minimum_governs
