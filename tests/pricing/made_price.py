"""The price of stated hours, materials and trips, under plain terms and the terms of a test."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

from estimator.pricing.records import PriceBuild
from tests.pricing.made_books import bid, plain

BASE: dict[str, Any] = {
    "hours": "4", "materials": "120.00", "labor_rate_per_hour": "100", "materials_markup_pct": "25",
    "rate_pct": "7.25",
}  # fmt: skip
"""The base job of the tax examples: materials 120.00 sold at 150.00, labor 400.00, rate 7.25 %."""

STACK: dict[str, Any] = {
    "hours": "6.25", "materials": "118.40", "trips": 1, "labor_rate_per_hour": "92.00",
    "trip_charge": "45.00", "supply_run_hours": "0.75", "materials_markup_pct": "35",
    "permit_cost": "75", "permit_handling": "25", "deposit_pct": "30",
}  # fmt: skip
"""S23, worked by hand, but for the way of its tax."""


def figures(terms: dict[str, Any]) -> dict[str, Any]:
    """Terms with their numbers as Decimals; words stay words."""
    return {
        key: Decimal(value) if isinstance(value, str) and value[:1].isdigit() else value
        for key, value in terms.items()
    }


def price(
    hours: str = "0",
    materials: str = "0",
    trips: int = 0,
    allowances: tuple[tuple[str, str], ...] = (),
    **terms: object,
) -> PriceBuild:
    """The price; allowances as (kind, amount)."""
    stated = {"labor_hours": Decimal(hours), "materials_cost": Decimal(materials), "trips": trips}
    lines = [
        {"name": f"{kind} {place}", "kind": kind, "amount": Decimal(amount)}
        for place, (kind, amount) in enumerate(allowances, start=1)
    ]
    return bid(plain(**figures(terms)), overrides=stated, allowances=lines).price
