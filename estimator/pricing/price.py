"""From cost to price: every step rounded to the cent before the next one uses it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from decimal import Decimal

from estimator.catalog.records import Books
from estimator.money import margin_from_markup, round_money
from estimator.pricing.allowances import allowance_lines, together
from estimator.pricing.contingency import contingency
from estimator.pricing.forms import price_form, rounded_offer
from estimator.pricing.materials_sold import Materials, materials_sold
from estimator.pricing.payment import payment
from estimator.pricing.price_records import ZERO, Contingency, SupplyRun
from estimator.pricing.rate_builder import built_rate, labor_rate
from estimator.pricing.records import Hours, PriceBuild, ShoppingLine
from estimator.pricing.supply_run import supply_run
from estimator.pricing.tax import MATERIALS, OTHER, WORK, PricedLine, build_tax
from estimator.settings import PriceTerms, Shop
from estimator.survey.records import Survey
from estimator.takeoff.records import Takeoff


@dataclass(frozen=True, slots=True)
class _Cost:
    """What the price is built on."""

    hours_charged: Decimal
    rate: Decimal
    run: SupplyRun
    labor: Decimal
    materials: Materials
    trips_count: int
    permit_visits: int
    trips: Decimal

    @property
    def base(self) -> Decimal:
        """Labor, materials, trips and a supply run as a line."""
        return self.labor + self.materials.sell + self.trips + self.run.amount


@dataclass(frozen=True, slots=True)
class _Offer:
    """From the base to what is offered."""

    overhead: Decimal
    profit: Decimal
    contingency: Contingency
    built_up: Decimal
    minimum: Decimal
    offered: Decimal

    @property
    def rounding(self) -> Decimal:
        """What rounding the offer adds or takes off."""
        return self.offered - max(self.built_up, self.minimum)


def build_price(
    survey: Survey,
    takeoff: Takeoff,
    shopping: tuple[ShoppingLine, ...],
    hours: Hours,
    books: Books,
    contingency_amount: Decimal | None = None,
) -> PriceBuild:
    """Build the price of one route.

    Items without a price are named and left out of the sum; the bid says so. The minimum
    charge stands in for everything built up when that is less; allowances, permit and tax come
    on top.

    Args:
        survey: for what the job states, and its allowances.
        takeoff: for the visits.
        shopping: what the materials cost.
        hours: what is charged.
        books: rates and terms.
        contingency_amount: what reaches the confidence that the shop asks for; None where no
            range was worked out. Used only where contingency_from is "confidence".
    """
    shop = books.shop
    cost = _cost(survey, takeoff, shopping, hours, shop)
    offer = _offer(cost, contingency_amount, shop)
    unpriced = tuple(line.item for line in shopping if line.cost is None)
    build = _with_parts(_before_tax(cost, offer, survey, shop), cost, offer, shop)
    return _with_tax(replace(build, unpriced_items=unpriced), shop)


def _cost(
    survey: Survey,
    takeoff: Takeoff,
    shopping: tuple[ShoppingLine, ...],
    hours: Hours,
    shop: Shop,
) -> _Cost:
    terms, currency, rate = shop.price, shop.currency, labor_rate(shop)
    run = supply_run(terms, rate, currency)
    stated = survey.overrides.trips
    visits = terms.permit_visits if stated is None else 0
    trips_count = len(takeoff.visits) + visits if stated is None else stated
    return _Cost(
        hours_charged=hours.charged,
        rate=rate,
        run=run,
        labor=round_money((hours.charged + run.labor_hours) * rate, currency),
        materials=materials_sold(survey, shopping, shop),
        trips_count=trips_count,
        permit_visits=visits,
        trips=round_money(trips_count * terms.trip_charge, currency),
    )


def _offer(cost: _Cost, from_range: Decimal | None, shop: Shop) -> _Offer:
    """Overhead on the base, profit on both, contingency, and no less than the minimum charge."""
    terms, currency = shop.price, shop.currency
    overhead = _share(cost.base, terms.overhead_pct, currency)
    profit = _share(cost.base + overhead, terms.profit_pct, currency)
    before = cost.base + overhead + profit
    put_by = contingency(terms, cost.labor, before, from_range, currency)
    built_up = before + put_by.amount
    minimum = round_money(terms.minimum_charge, currency)
    offered = rounded_offer(max(built_up, minimum), terms, currency)
    return _Offer(overhead, profit, put_by, built_up, minimum, offered)


def _before_tax(cost: _Cost, offer: _Offer, survey: Survey, shop: Shop) -> PriceBuild:
    """The price up to the tax; what follows the tax is zero."""
    terms, materials, currency = shop.price, cost.materials, shop.currency
    permit_cost, handling = _permit(terms, currency)
    allowances = allowance_lines(survey, currency)
    allowed = together(allowances, currency)
    return PriceBuild(
        hours_charged=cost.hours_charged,
        labor_rate_per_hour=cost.rate,
        labor=cost.labor,
        materials_listed=materials.listed,
        materials_overridden=materials.overridden,
        small_items_pct=materials.small_items_pct,
        small_items=materials.small_items,
        materials_cost=materials.cost,
        markup_pct=terms.materials_markup_pct,
        margin_pct=margin_from_markup(terms.materials_markup_pct),
        materials_sell=materials.sell,
        trips_count=cost.trips_count,
        trip_charge=terms.trip_charge,
        trips=cost.trips,
        base=cost.base,
        overhead_pct=terms.overhead_pct,
        overhead=offer.overhead,
        profit_pct=terms.profit_pct,
        profit=offer.profit,
        built_up=offer.built_up,
        minimum_charge=terms.minimum_charge,
        minimum_governs=offer.minimum > offer.built_up,
        offered=offer.offered,
        permit_cost=permit_cost,
        permit_handling=handling,
        before_tax=offer.offered + allowed + permit_cost + handling,
        tax_mode=shop.tax.mode,
        tax_rate_pct=shop.tax.rate_pct,
        tax=ZERO,
        total=ZERO,
        deposit_pct=shop.terms.deposit_pct,
        deposit=ZERO,
        balance=ZERO,
        unpriced_items=(),
        allowances=allowances,
        allowances_total=allowed,
    )


def _with_parts(build: PriceBuild, cost: _Cost, offer: _Offer, shop: Shop) -> PriceBuild:
    """The same with the parts that went into it."""
    return replace(
        build,
        labor_hours=cost.hours_charged + cost.run.labor_hours,
        rate_build=built_rate(shop),
        input_tax=cost.materials.input_tax,
        purchase_rate_pct=cost.materials.purchase_rate_pct,
        purchase_tax=cost.materials.purchase_tax,
        purchase_tax_how=shop.tax.purchase_tax,
        permit_visits=cost.permit_visits,
        permit_filed_by=shop.price.permit_filed_by,
        supply_run=cost.run,
        contingency=offer.contingency,
        offer_step=shop.price.offer_step,
        offer_rounding_how=shop.price.offer_rounding,
        offer_rounding=offer.rounding,
    )


def _with_tax(build: PriceBuild, shop: Shop) -> PriceBuild:
    """The tax on the lines of a price, and all that follows from it."""
    tax_build = build_tax(_taxable(build, shop), shop.tax, shop.currency)
    total = build.before_tax + tax_build.tax
    paid = payment(shop.terms, total, build.materials_sell, shop.currency)
    return replace(
        build,
        tax=tax_build.tax,
        total=total,
        deposit=paid.deposit,
        balance=total - paid.deposit,
        tax_build=tax_build,
        form=price_form(shop.terms, total, shop.currency),
        payment=paid,
    )


def price_lines(build: PriceBuild) -> Iterator[PricedLine]:
    """Every line before tax, with what it counts as; together they are before_tax."""
    yield "materials", MATERIALS, build.materials_sell
    yield "labor", WORK, build.labor
    yield "trips", WORK, build.trips
    yield "supply run", WORK, build.supply_run.amount
    yield "overhead", WORK, build.overhead
    yield "profit", WORK, build.profit
    yield "contingency", WORK, build.contingency.amount
    yield "minimum", WORK, build.offered - build.offer_rounding - build.built_up
    yield "offer rounding", WORK, build.offer_rounding
    for each in build.allowances:
        yield f"allowance: {each.name}", each.kind, each.amount
    yield "permit", OTHER, build.permit_cost
    yield "permit handling", OTHER, build.permit_handling


def _taxable(build: PriceBuild, shop: Shop) -> Iterator[PricedLine]:
    """The lines as they are taxed: materials may be taxed with their share of the overhead."""
    with_overhead = shop.tax.mode == "materials-sold" and shop.tax.materials_base != "sold"
    for name, kind, amount in price_lines(build):
        more = ZERO
        if with_overhead and name == "materials":
            more = _share(amount, build.overhead_pct, shop.currency)
        yield name, kind, amount + more


def _share(amount: Decimal, percent: Decimal, currency: str) -> Decimal:
    return round_money(amount * percent / 100, currency)


def _permit(terms: PriceTerms, currency: str) -> tuple[Decimal, Decimal]:
    """What the office charges and the fee for getting it; no fee where none is priced."""
    zero = round_money(ZERO, currency)
    if terms.permit_cost is None:
        return zero, zero
    return round_money(terms.permit_cost, currency), round_money(terms.permit_handling, currency)
