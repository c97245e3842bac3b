"""From cost to price: every step rounded to the cent before the next one uses it."""

from __future__ import annotations

from decimal import Decimal

from estimator.catalog.records import Books
from estimator.money import margin_from_markup, round_money
from estimator.pricing.records import Hours, PriceBuild, ShoppingLine
from estimator.survey.records import Survey
from estimator.takeoff.records import Takeoff

_ZERO = Decimal(0)


def build_price(
    survey: Survey,
    takeoff: Takeoff,
    shopping: tuple[ShoppingLine, ...],
    hours: Hours,
    books: Books,
) -> PriceBuild:
    """Build the price of one route.

    Items without a price are named and left out of the sum; the bid says so. The minimum
    charge stands in for everything built up when that is less; permit and tax come on top.
    """
    terms, tax_terms, currency = books.shop.price, books.shop.tax, books.shop.currency

    def cents(amount: Decimal) -> Decimal:
        return round_money(amount, currency)

    def share(amount: Decimal, percent: Decimal) -> Decimal:
        return round_money(amount * percent / 100, currency)

    labor = cents(hours.charged * terms.labor_rate_per_hour)
    stated = survey.overrides.materials_cost
    listed = sum((line.cost for line in shopping if line.cost is not None), _ZERO)
    listed = cents(listed if stated is None else stated)
    small_pct = terms.small_items_pct if stated is None else _ZERO
    small_items = share(listed, small_pct)
    materials_cost = listed + small_items
    materials_sell = cents(materials_cost * (1 + terms.materials_markup_pct / 100))
    trips_count = len(takeoff.visits) if survey.overrides.trips is None else survey.overrides.trips
    trips = cents(trips_count * terms.trip_charge)
    base = labor + materials_sell + trips
    overhead = share(base, terms.overhead_pct)
    profit = share(base + overhead, terms.profit_pct)
    built_up = base + overhead + profit
    offered = max(built_up, cents(terms.minimum_charge))
    permit_cost = cents(terms.permit_cost or _ZERO)
    handling = cents(terms.permit_handling) if terms.permit_cost is not None else cents(_ZERO)
    before_tax = offered + permit_cost + handling
    taxed = tax_terms.mode == "materials-sold"
    tax = share(materials_sell, tax_terms.rate_pct) if taxed else cents(_ZERO)
    total = before_tax + tax
    deposit = share(total, books.shop.terms.deposit_pct)
    return PriceBuild(
        hours_charged=hours.charged,
        labor_rate_per_hour=terms.labor_rate_per_hour,
        labor=labor,
        materials_listed=listed,
        materials_overridden=stated is not None,
        small_items_pct=small_pct,
        small_items=small_items,
        materials_cost=materials_cost,
        markup_pct=terms.materials_markup_pct,
        margin_pct=margin_from_markup(terms.materials_markup_pct),
        materials_sell=materials_sell,
        trips_count=trips_count,
        trip_charge=terms.trip_charge,
        trips=trips,
        base=base,
        overhead_pct=terms.overhead_pct,
        overhead=overhead,
        profit_pct=terms.profit_pct,
        profit=profit,
        built_up=built_up,
        minimum_charge=terms.minimum_charge,
        minimum_governs=offered > built_up,
        offered=offered,
        permit_cost=permit_cost,
        permit_handling=handling,
        before_tax=before_tax,
        tax_mode=tax_terms.mode,
        tax_rate_pct=tax_terms.rate_pct,
        tax=tax,
        total=total,
        deposit_pct=books.shop.terms.deposit_pct,
        deposit=deposit,
        balance=total - deposit,
        unpriced_items=tuple(line.item for line in shopping if line.cost is None),
    )
