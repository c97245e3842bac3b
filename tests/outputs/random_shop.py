"""Settings of price, tax and payment by chance, for workbooks of random jobs."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from random import Random
from typing import get_args

from estimator.settings import (
    PlannedPayment,
    PriceFormKind,
    PriceTerms,
    Shop,
    SupplyRunPolicy,
    TaxMode,
    TaxRounding,
    TaxTerms,
    Terms,
)

PLAN = tuple(
    PlannedPayment(f"part {at}", Decimal(pct))
    for at, pct in enumerate(("33.3", "33.3", "12.6", "20.8"))
)


def decimal(rng: Random, low: int, high: int) -> Decimal:
    """A figure with two decimals."""
    return Decimal(rng.randrange(low * 100, high * 100)) / 100


def random_shop(rng: Random, shop: Shop) -> Shop:
    """The shop with other rates, modes and policies."""
    return replace(
        shop, price=_price(rng, shop.price), tax=_tax(rng, shop.tax), terms=_terms(rng, shop.terms)
    )


def _price(rng: Random, price: PriceTerms) -> PriceTerms:
    return replace(
        price,
        labor_rate_per_hour=rng.choice([None, decimal(rng, 40, 140), decimal(rng, 40, 140)]),
        hours_basis=rng.choice(["likely", "expected"]),
        materials_markup_pct=decimal(rng, 0, 60),
        small_items_pct=decimal(rng, 0, 12),
        minimum_charge=decimal(rng, 0, 900),
        trip_charge=decimal(rng, 0, 90),
        overhead_pct=rng.choice([Decimal(0), decimal(rng, 0, 20)]),
        profit_pct=rng.choice([Decimal(0), decimal(rng, 0, 20)]),
        permit_cost=rng.choice([None, decimal(rng, 20, 200)]),
        permit_visits=rng.choice([0, 1]),
        supply_run_hours=rng.choice([Decimal(0), decimal(rng, 0, 3)]),
        supply_run_policy=rng.choice(get_args(SupplyRunPolicy)),
        contingency_pct=rng.choice([Decimal(0), decimal(rng, 0, 25)]),
        contingency_on=rng.choice(["labor", "built-up"]),
        contingency_shown=rng.choice([True, False]),
        offer_step=rng.choice([Decimal(0), Decimal(5), decimal(rng, 0, 60)]),
        offer_rounding=rng.choice(["nearest", "up"]),
    )


def _tax(rng: Random, tax: TaxTerms) -> TaxTerms:
    return replace(
        tax,
        mode=rng.choice(get_args(TaxMode)),
        rate_pct=decimal(rng, 0, 12),
        purchase_rate_pct=rng.choice([Decimal(0), decimal(rng, 0, 12)]),
        purchase_tax=rng.choice(["before-markup", "after-markup", "not-recovered"]),
        taxed_share_pct=decimal(rng, 20, 100),
        materials_base=rng.choice(["sold", "before-profit"]),
        gross_factor_pct=rng.choice([None, decimal(rng, 0, 12)]),
        basis=rng.choice(["invoice", "line"]),
        rounding=rng.choice(get_args(TaxRounding)),
        prices_include_tax=rng.choice([True, False]),
    )


def _terms(rng: Random, terms: Terms) -> Terms:
    return replace(
        terms,
        price_form=rng.choice(get_args(PriceFormKind)),
        not_to_exceed_pct=decimal(rng, 0, 30),
        deposit_of=rng.choice(["total", "materials"]),
        deposit_pct=decimal(rng, 0, 60),
        deposit_cap_pct=rng.choice([None, decimal(rng, 0, 40)]),
        deposit_cap_amount=rng.choice([None, decimal(rng, 50, 1000)]),
        payment_steps=rng.choice([(), (), PLAN]),
    )
