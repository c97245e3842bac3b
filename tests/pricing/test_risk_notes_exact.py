"""A range where only the minimum moves the price, and what is said of it; worked by hand."""

from __future__ import annotations

from decimal import Decimal

from estimator.pricing.risk import price_range
from tests.pricing.risk_case import bid_with
from tests.pricing.test_risk_range import BARE

MINIMUM = BARE.replace("minimum_charge = 0", "minimum_charge = 9000")
TAX = '\n[settings.tax]\nmode = "whole-price"\nrate_pct = 10\n'
STATED = "\n[overrides]\nlabor_hours = 3\nmaterials_cost = 100\n"


def test_a_minimum_above_all_draws_is_taxed_whole() -> None:
    """9,000.00 and 10 % of it."""
    found = price_range(bid_with(MINIMUM + TAX + STATED), draws=1000)
    assert {level.total for level in found.levels} == {Decimal("9900.00")}
    assert found.notes == (
        "Only 1000 draws: the percentiles are rough. Use 100000 or more to rely on them.",
        "The job states its hours; the ranges of its tasks were scaled to them.",
        "The minimum charge stands in for the price in 100.0 % of the draws.",
        "No risks are named, in the job or in the shop's settings.",
    )


def test_draws_and_seed_are_those_asked_for_else_the_shops() -> None:
    bid = bid_with(BARE + STATED)
    found = price_range(bid, draws=500, seed=3)
    assert (found.draws, found.seed) == (500, 3)
    terms = bid.books.shop.risk
    usual = price_range(bid)
    assert (usual.draws, usual.seed) == (terms.draws, terms.seed)
