"""From cost to price: every step rounded to the cent before the next one uses it."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from estimator.catalog.records import Books
from estimator.money import margin_from_markup, round_money
from estimator.pricing.rate_builder import labor_rate
from estimator.pricing.records import Hours, PriceBuild, ShoppingLine
from estimator.settings import PriceTerms, TaxTerms
from estimator.survey.records import Survey
from estimator.takeoff.records import Takeoff

_ZERO = Decimal(0)


@dataclass(frozen=True, slots=True)
class _Materials:
    """Materials from what they cost to what they are sold for."""

    listed: Decimal
    small_items_pct: Decimal
    small_items: Decimal
    cost: Decimal
    sell: Decimal


@dataclass(frozen=True, slots=True)
class _Steps:
    """From the base to what is offered."""

    overhead: Decimal
    profit: Decimal
    built_up: Decimal
    offered: Decimal


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
    deposit_pct = books.shop.terms.deposit_pct
    rate = labor_rate(books.shop)
    labor = round_money(hours.charged * rate, currency)
    materials = _materials(survey, shopping, terms, currency)
    trips_count = len(takeoff.visits) if survey.overrides.trips is None else survey.overrides.trips
    trips = round_money(trips_count * terms.trip_charge, currency)
    base = labor + materials.sell + trips
    steps = _steps(base, terms, currency)
    permit_cost, handling = _permit(terms, currency)
    before_tax = steps.offered + permit_cost + handling
    tax = _tax(materials.sell, tax_terms, currency)
    total = before_tax + tax
    deposit = _share(total, deposit_pct, currency)
    return PriceBuild(
        hours_charged=hours.charged,
        labor_rate_per_hour=rate,
        labor=labor,
        materials_listed=materials.listed,
        materials_overridden=survey.overrides.materials_cost is not None,
        small_items_pct=materials.small_items_pct,
        small_items=materials.small_items,
        materials_cost=materials.cost,
        markup_pct=terms.materials_markup_pct,
        margin_pct=margin_from_markup(terms.materials_markup_pct),
        materials_sell=materials.sell,
        trips_count=trips_count,
        trip_charge=terms.trip_charge,
        trips=trips,
        base=base,
        overhead_pct=terms.overhead_pct,
        overhead=steps.overhead,
        profit_pct=terms.profit_pct,
        profit=steps.profit,
        built_up=steps.built_up,
        minimum_charge=terms.minimum_charge,
        minimum_governs=steps.offered > steps.built_up,
        offered=steps.offered,
        permit_cost=permit_cost,
        permit_handling=handling,
        before_tax=before_tax,
        tax_mode=tax_terms.mode,
        tax_rate_pct=tax_terms.rate_pct,
        tax=tax,
        total=total,
        deposit_pct=deposit_pct,
        deposit=deposit,
        balance=total - deposit,
        unpriced_items=tuple(line.item for line in shopping if line.cost is None),
        labor_hours=hours.charged,
    )


def _share(amount: Decimal, percent: Decimal, currency: str) -> Decimal:
    return round_money(amount * percent / 100, currency)


def _materials(
    survey: Survey, shopping: tuple[ShoppingLine, ...], terms: PriceTerms, currency: str
) -> _Materials:
    """What the list costs, with small items, and what it is sold for; or what the job states."""
    stated = survey.overrides.materials_cost
    listed = sum((line.cost for line in shopping if line.cost is not None), _ZERO)
    listed = round_money(listed if stated is None else stated, currency)
    small_pct = terms.small_items_pct if stated is None else _ZERO
    small_items = _share(listed, small_pct, currency)
    cost = listed + small_items
    sell = round_money(cost * (1 + terms.materials_markup_pct / 100), currency)
    return _Materials(listed, small_pct, small_items, cost, sell)


def _steps(base: Decimal, terms: PriceTerms, currency: str) -> _Steps:
    """Overhead on the base, profit on both, and no less than the minimum charge."""
    overhead = _share(base, terms.overhead_pct, currency)
    profit = _share(base + overhead, terms.profit_pct, currency)
    built_up = base + overhead + profit
    minimum = round_money(terms.minimum_charge, currency)
    return _Steps(overhead, profit, built_up, max(built_up, minimum))


def _permit(terms: PriceTerms, currency: str) -> tuple[Decimal, Decimal]:
    """What the office charges and the fee for getting it; no fee where none is priced."""
    zero = round_money(_ZERO, currency)
    if terms.permit_cost is None:
        return zero, zero
    return round_money(terms.permit_cost, currency), round_money(terms.permit_handling, currency)


def _tax(materials_sell: Decimal, terms: TaxTerms, currency: str) -> Decimal:
    """Sales tax on the materials as sold, or none."""
    rate_pct = terms.rate_pct if terms.mode == "materials-sold" else _ZERO
    return _share(materials_sell, rate_pct, currency)
