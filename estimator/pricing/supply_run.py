"""Hours for fetching materials, under three policies."""

from __future__ import annotations

from decimal import Decimal

from estimator.money import round_money
from estimator.pricing.price_records import ZERO, SupplyRun
from estimator.settings import PriceTerms

WHY = {
    "line": "charged at the labor rate, as a line of its own",
    "in-labor": "added to the hours charged, no line of its own",
    "in-markup": "nothing is added: the markup on materials is taken to hold it",
}
"""Each policy in words."""


def supply_run(terms: PriceTerms, rate_per_hour: Decimal, currency: str) -> SupplyRun:
    """What the supply run is worth, and where it goes."""
    hours, policy = terms.supply_run_hours, terms.supply_run_policy
    worth = round_money(hours * rate_per_hour, currency)
    return SupplyRun(
        policy=policy,
        hours=hours,
        worth=worth,
        amount=worth if policy == "line" else round_money(ZERO, currency),
        labor_hours=hours if policy == "in-labor" else ZERO,
        why=WHY[policy] if hours else "",
    )
