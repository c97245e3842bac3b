"""The price build-up over many draws gives the engine's own price, to the cent."""

from __future__ import annotations

from decimal import Decimal

import numpy as np
import pytest

from estimator.money import minor_unit
from estimator.pricing.records import PriceBuild
from estimator.pricing.risk_price import price_draws, rounded
from tests.pricing.risk_case import bid_with

TAXES = {
    "none": "",
    "paid": 'mode = "paid-at-purchase"\npurchase_rate_pct = 8.25',
    "paid, after": 'mode = "paid-at-purchase"\npurchase_rate_pct = 8.25\n'
    'purchase_tax = "after-markup"',
    "paid, lost": 'mode = "paid-at-purchase"\npurchase_rate_pct = 8.25\n'
    'purchase_tax = "not-recovered"',
    "paid, in the prices": 'mode = "paid-at-purchase"\npurchase_rate_pct = 8.25\n'
    "prices_include_tax = true",
    "materials": 'mode = "materials-sold"\nrate_pct = 7.25',
    "materials before profit": 'mode = "materials-sold"\nrate_pct = 7.25\n'
    'materials_base = "before-profit"',
    "whole": 'mode = "whole-price"\nrate_pct = 8.875',
    "whole, by line": 'mode = "whole-price"\nrate_pct = 8.875\nbasis = "line"',
    "labor": 'mode = "purchase-and-labor"\nrate_pct = 7.5\npurchase_rate_pct = 6',
    "gross": 'mode = "gross-receipts"\nrate_pct = 2\npurchase_rate_pct = 4.2',
    "gross, printed factor": 'mode = "gross-receipts"\nrate_pct = 2\ngross_factor_pct = 2.041',
    "part": 'mode = "part-of-price"\nrate_pct = 8.6\ntaxed_share_pct = 65',
    "part, by line": 'mode = "part-of-price"\nrate_pct = 8.6\ntaxed_share_pct = 65\nbasis = "line"',
    "vat, down": 'mode = "vat"\nrate_pct = 20\nprices_include_tax = true\nrounding = "down"',
    "vat, even": 'mode = "vat"\nrate_pct = 20\nrounding = "half-even"',
}
PRICES = {
    "plain": "",
    "loaded": "overhead_pct = 12.5\nprofit_pct = 8\nsupply_run_hours = 0.75\n"
    "contingency_pct = 15\npermit_cost = 75\npermit_handling = 25\npermit_visits = 1",
    "run in the labor, stepped": 'supply_run_hours = 0.75\nsupply_run_policy = "in-labor"\n'
    'offer_step = 5\ncontingency_pct = 10\ncontingency_on = "built-up"',
    "stepped up": 'offer_step = 25\noffer_rounding = "up"\nprofit_pct = 3',
    "at the minimum": "minimum_charge = 1500\nprofit_pct = 3",
}
ALLOWANCES = """
[[allowances]]
name = "light"
kind = "materials"
amount = 80

[[allowances]]
name = "carpenter"
kind = "labor"
amount = 120.50
"""
# Hours, and cost of materials: each priced by the engine as overrides of the job.
POINTS = (("5.25", "118.40"), ("6.666667", "97.13"), ("3.1", "0.01"), ("19", "1234.56"))


def settings(price: str, tax: str) -> str:
    return f"\n[settings.price]\n{price}\n[settings.tax]\n{tax}\n"


def total_at(build: PriceBuild, hours: str, listed: str, places: int) -> Decimal:
    drawn = price_draws(
        build, np.array([float(hours)]), np.array([float(listed)]), places,
        build.contingency.amount,
    ).total  # fmt: skip
    return Decimal(repr(float(drawn[0]))).quantize(Decimal(1).scaleb(-places))


@pytest.mark.parametrize("tax", TAXES)
@pytest.mark.parametrize("price", PRICES)
def test_the_bids_own_point_gives_the_bids_own_total(price: str, tax: str) -> None:
    bid = bid_with(settings(PRICES[price], TAXES[tax]) + ALLOWANCES)
    build = bid.price
    point = (str(build.hours_charged), str(build.materials_listed))
    assert total_at(build, *point, 2) == build.total


@pytest.mark.parametrize(
    "sample", ["closet-charger", "lounge", "printer-corner", "door-in-the-way"]
)
def test_the_point_of_every_sample_gives_its_total(sample: str) -> None:
    bid = bid_with(sample=sample)
    places = minor_unit(bid.books.shop.currency)
    point = (str(bid.price.hours_charged), str(bid.price.materials_listed))
    assert total_at(bid.price, *point, places) == bid.price.total


@pytest.mark.parametrize("tax", TAXES)
@pytest.mark.parametrize("price", ["stepped up", "at the minimum", "free of contingency"])
def test_other_points_are_what_the_engine_makes_of_them(price: str, tax: str) -> None:
    """From the price of one bid, the totals of others that differ in hours and materials."""
    loaded = "overhead_pct = 12.5\nprofit_pct = 8\nsupply_run_hours = 0.75\npermit_cost = 75"
    said = settings(PRICES.get(price, loaded), TAXES[tax]) + ALLOWANCES
    bids = [
        bid_with(f"{said}\n[overrides]\nlabor_hours = {hours}\nmaterials_cost = {listed}\n")
        for hours, listed in POINTS
    ]
    for (hours, listed), bid in zip(POINTS, bids, strict=True):
        assert total_at(bids[0].price, hours, listed, 2) == bid.price.total


def test_s23_in_its_lump_sum_form_is_not_a_cent_short() -> None:
    """S23, worked by hand: (118.40 + 7.10) x 1.35 = 169.425 is sold for 169.43; 958.43."""
    said = settings(
        "labor_rate_per_hour = 92\nsupply_run_hours = 0.75\nmaterials_markup_pct = 35\n"
        "permit_cost = 75\npermit_handling = 25\nminimum_charge = 0",
        'mode = "paid-at-purchase"\npurchase_rate_pct = 6',
    )
    bid = bid_with(f"{said}\n[overrides]\nlabor_hours = 6.25\nmaterials_cost = 118.40\ntrips = 1\n")
    assert total_at(bid.price, "6.25", "118.40", 2) == Decimal("958.43")


# E11, E12, T6, T7: halves that binary floats hold a trace too small or too large.
@pytest.mark.parametrize(
    ("amount", "how", "want"),
    [(2.675, "half-up", 2.68), (1.15 * 0.10, "half-up", 0.12), (0.735, "half-up", 0.74),
     (0.004375, "half-up", 0.0), (0.005, "half-up", 0.01), (-2.675, "half-up", -2.68),
     (2.674, "half-up", 2.67), (0.672, "down", 0.67), (0.679, "down", 0.67),
     (0.29 * 100 / 100, "down", 0.29), (2.665, "half-even", 2.66), (2.675, "half-even", 2.68)],
)  # fmt: skip
def test_cents_are_rounded_as_decimals_round(amount: float, how: str, want: float) -> None:
    assert rounded(np.array([amount]), 2, how)[0] == want  # type: ignore[arg-type]


def test_a_currency_without_cents_is_rounded_to_the_whole() -> None:
    assert list(rounded(np.array([1234.5, 1234.4]), 0)) == [1235.0, 1234.0]
