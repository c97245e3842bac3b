"""Materials as sold for each unit listed, and hours that a job states; worked by hand."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

import pytest

from estimator.pricing.risk_inputs import ALWAYS_PCT, ZERO, Case, case_of
from estimator.pricing.risk_records import RangeInput
from tests.pricing.made_books import bid, plain
from tests.pricing.made_price import figures

TERMS = {"small_items_pct": "5", "materials_markup_pct": "30", "labor_rate_per_hour": "80"}


def case(**terms: object) -> Case:
    """The case of a small house with materials; 5 % of small items, sold at 30 % more."""
    made = bid(plain(**figures(TERMS | terms)))
    return case_of(made.survey, made.labor, made.hours, made.price, made.books)


@pytest.mark.parametrize(
    ("how", "factor"),
    [("before-markup", "1.4469"), ("after-markup", "1.428"), ("not-recovered", "1.365")],
)
def test_tax_of_the_counter_in_what_materials_are_sold_for(how: str, factor: str) -> None:
    """1.05 and 6 % of it, 0.063: 1.113 x 1.3; 1.365 + 0.063; 1.05 x 1.3."""
    got = case(mode="paid-at-purchase", purchase_rate_pct="6", purchase_tax=how)
    assert got.sell_factor == Fraction(factor)


@pytest.mark.parametrize("how", ["before-markup", "after-markup"])
def test_vat_that_comes_back_is_in_no_price(how: str) -> None:
    """1.05 / 1.2 = 0.875; x 1.3 = 1.1375."""
    got = case(mode="vat", rate_pct="20", prices_include_tax=True, purchase_tax=how)
    assert got.sell_factor == Fraction("1.1375")


def test_hours_stated_where_the_tasks_have_none() -> None:
    """3 h x 80 from low to high is nothing: no end differs."""
    made = bid(plain(**figures(TERMS)))
    hours = replace(made.hours, likely=ZERO, charged=Decimal(3), basis="override")
    got = case_of(made.survey, made.labor, hours, made.price, made.books)
    three = Decimal(3)
    assert got.of_kind("hours") == (
        RangeInput(
            "hours", "hours as the job states them", three, three, three, ZERO, ZERO, ZERO,
            ALWAYS_PCT, three, ZERO, Decimal("0.00"), "the job",
        ),
    )  # fmt: skip
    assert (got.scale, got.likely_hours) == (Fraction(1), three)


def test_without_a_likely_hour_the_tasks_still_stand_unless_the_job_states_them() -> None:
    made = bid(plain(**figures(TERMS)))
    hours = replace(made.hours, likely=ZERO, basis="likely")
    got = case_of(made.survey, made.labor, hours, made.price, made.books)
    assert len(got.of_kind("hours")) == len(made.labor)
