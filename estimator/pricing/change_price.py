"""The price of a change: what is added less what is given back, on the terms for changes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from decimal import Decimal

from estimator.money import round_money
from estimator.pricing.change_records import ChangedLine, ChangePrice, ItemChange, Sold
from estimator.pricing.materials_sold import tax_at_counter
from estimator.pricing.price_records import TaxBuild
from estimator.pricing.records import Bid, PriceBuild
from estimator.pricing.tax import (
    MATERIALS,
    OTHER,
    WORK,
    PricedLine,
    build_tax,
    counter_rate_pct,
    tax_inside,
)
from estimator.settings import ChangeTerms, TaxTerms

_ZERO = Decimal(0)


@dataclass(frozen=True, slots=True)
class _Terms:
    """What the change is priced by: its own terms, and those of the bid where it has none."""

    before: PriceBuild
    after: PriceBuild
    own: ChangeTerms
    tax: TaxTerms
    currency: str

    @property
    def rate(self) -> Decimal:
        own = self.own.labor_rate_per_hour
        return self.after.labor_rate_per_hour if own is None else own

    @property
    def markup_pct(self) -> Decimal:
        own = self.own.materials_markup_pct
        return self.after.markup_pct if own is None else own

    @property
    def trip_charge(self) -> Decimal:
        """For trips more, the change's own; for trips fewer, what the bid charged."""
        own = self.own.trip_charge
        if self.trips_more < 0:
            return self.before.trip_charge
        return self.after.trip_charge if own is None else own

    @property
    def trips_more(self) -> int:
        return self.after.trips_count - self.before.trips_count

    def to_cent(self, amount: Decimal) -> Decimal:
        return round_money(amount, self.currency)

    def share(self, amount: Decimal, percent: Decimal) -> Decimal:
        return self.to_cent(amount * percent / 100)

    def credit(self, amount: Decimal) -> Decimal:
        return self.share(amount, self.own.credit_pct)

    def sold(self, listed: Decimal, markup_pct: Decimal, small_pct: Decimal) -> Sold:
        """Take materials from cost to price as the bid does."""
        listed = self.to_cent(listed)
        small = self.share(listed, small_pct)
        rate_pct = counter_rate_pct(self.tax)
        taken_out = rate_pct if self.tax.prices_include_tax else _ZERO
        input_tax = tax_inside(listed + small, taken_out, self.currency)
        cost = listed + small - input_tax
        paid = tax_at_counter(cost, input_tax, rate_pct, self.tax, self.currency)
        inside = paid if self.tax.purchase_tax == "before-markup" else _ZERO
        after = paid if self.tax.purchase_tax == "after-markup" else _ZERO
        sell = self.to_cent((cost + inside) * (1 + markup_pct / 100)) + after
        return Sold(listed, small_pct, small, input_tax, cost, paid, markup_pct, sell)


def price_change(
    before: Bid, after: Bid, lines: tuple[ChangedLine, ...], items: tuple[ItemChange, ...]
) -> ChangePrice:
    """Price a change.

    Args:
        before: the bid that was accepted.
        after: the changed job bid anew; its settings hold the terms of the change.
        lines: parts and work that differ.
        items: what their parts cost more or less.

    Raises:
        InputError: a currency that is not on file.
    """
    shop = after.books.shop
    terms = _Terms(before.price, after.price, shop.change, shop.tax, shop.currency)
    hours_added, hours_dropped = _hours(before, after, lines)
    cost_added, cost_dropped = _costs(before, after, items)
    added = terms.sold(cost_added, terms.markup_pct, after.price.small_items_pct)
    dropped = terms.sold(cost_dropped, before.price.markup_pct, before.price.small_items_pct)
    unpriced = tuple(each.item for each in items if each.cost_added is None)
    return _built(terms, (hours_added, hours_dropped), (added, dropped), unpriced)


def _hours(before: Bid, after: Bid, lines: tuple[ChangedLine, ...]) -> tuple[Decimal, Decimal]:
    """Hours added and dropped: line by line, or of the whole where a job states its hours."""
    if "override" in (before.hours.basis, after.hours.basis):
        return _two_ways(after.hours.charged - before.hours.charged)
    added = sum((line.hours_added for line in lines), _ZERO)
    return added, sum((line.hours_dropped for line in lines), _ZERO)


def _costs(before: Bid, after: Bid, items: tuple[ItemChange, ...]) -> tuple[Decimal, Decimal]:
    """Cost added and dropped: item by item, or of the whole where a job states its cost."""
    if before.price.materials_overridden or after.price.materials_overridden:
        return _two_ways(after.price.materials_listed - before.price.materials_listed)
    added = sum((each.cost_added or _ZERO for each in items), _ZERO)
    return added, sum((each.cost_dropped for each in items), _ZERO)


def _two_ways(more: Decimal) -> tuple[Decimal, Decimal]:
    return max(more, _ZERO), max(-more, _ZERO)


@dataclass(frozen=True, slots=True)
class _Moved:
    """Labor, materials and trips that a change adds and gives back, in money."""

    labor: Decimal
    labor_credit: Decimal
    materials_credit: Decimal
    trips: Decimal
    handling: Decimal

    def base(self, added: Sold) -> Decimal:
        credits = self.labor_credit + self.materials_credit
        return self.labor + added.sell - credits + self.trips + self.handling


@dataclass(frozen=True, slots=True)
class _Steps:
    """From the base of a change to what is asked for it."""

    overhead: Decimal
    profit: Decimal
    built_up: Decimal
    minimum: Decimal
    offered: Decimal


def _moved(terms: _Terms, hours: tuple[Decimal, Decimal], added: Sold, dropped: Sold) -> _Moved:
    trips = terms.to_cent(abs(terms.trips_more) * terms.trip_charge)
    trips = trips if terms.trips_more >= 0 else -terms.credit(trips)
    anything = any((*hours, added.listed, dropped.listed, trips))
    return _Moved(
        labor=terms.to_cent(hours[0] * terms.rate),
        labor_credit=terms.credit(terms.to_cent(hours[1] * terms.before.labor_rate_per_hour)),
        materials_credit=terms.credit(dropped.sell),
        trips=trips,
        handling=terms.to_cent(terms.own.handling) if anything else _ZERO,
    )


def _steps(terms: _Terms, base: Decimal) -> _Steps:
    """Overhead and profit as in the bid; a change that costs anything costs the minimum."""
    overhead = terms.share(base, terms.after.overhead_pct)
    profit = terms.share(base + overhead, terms.after.profit_pct)
    built_up = base + overhead + profit
    minimum = terms.to_cent(terms.own.minimum_charge)
    offered = max(built_up, minimum) if built_up > 0 else built_up
    return _Steps(overhead, profit, built_up, minimum, offered)


def _built(
    terms: _Terms,
    hours: tuple[Decimal, Decimal],
    materials: tuple[Sold, Sold],
    unpriced: tuple[str, ...],
) -> ChangePrice:
    """Build the price up, step by step."""
    before, after = terms.before, terms.after
    added, dropped = materials
    moved = _moved(terms, hours, added, dropped)
    base = moved.base(added)
    steps = _steps(terms, base)
    permit = _permit(after) - _permit(before)
    allowances = _moved_allowances(before, after)
    moved_allowances = sum(allowances.values(), _ZERO)
    before_tax = steps.offered + permit + moved_allowances
    net = added.sell - moved.materials_credit
    tax = _tax(terms, tuple(_taxed(terms, net, steps.offered, permit, allowances)))
    total = before_tax + tax.tax
    return ChangePrice(
        hours_added=hours[0],
        hours_dropped=hours[1],
        labor_rate=terms.rate,
        labor_rate_before=before.labor_rate_per_hour,
        credit_pct=terms.own.credit_pct,
        labor_added=moved.labor,
        labor_credit=moved.labor_credit,
        counter_rate_pct=counter_rate_pct(terms.tax),
        counter_how=terms.tax.purchase_tax,
        added=added,
        dropped=dropped,
        materials_credit=moved.materials_credit,
        trips_more=terms.trips_more,
        trip_charge=terms.trip_charge,
        trips=moved.trips,
        handling=moved.handling,
        base=base,
        overhead_pct=after.overhead_pct,
        overhead=steps.overhead,
        profit_pct=after.profit_pct,
        profit=steps.profit,
        built_up=steps.built_up,
        minimum_charge=steps.minimum,
        offered=steps.offered,
        permit=permit,
        allowances_materials=allowances[MATERIALS],
        allowances_labor=allowances[WORK],
        allowances_other=allowances[OTHER],
        before_tax=before_tax,
        tax_mode=terms.tax.mode,
        tax_share_pct=tax.share_pct,
        tax_rounding=tax.rounding,
        tax_factor_pct=tax.factor_pct,
        taxed=tax.base,
        tax=tax.tax,
        total=total,
        job_total_before=before.total,
        job_total=before.total + total,
        not_to_exceed_pct=after.form.not_to_exceed_pct,
        cap=_cap(terms, before.total + total),
        unpriced_items=unpriced,
    )


def _cap(terms: _Terms, job_total: Decimal) -> Decimal | None:
    """The cap of the job as it now stands, where its price has one."""
    if terms.after.form.cap is None:
        return None
    return job_total + terms.share(job_total, terms.after.form.not_to_exceed_pct)


def _tax(terms: _Terms, lines: tuple[PricedLine, ...]) -> TaxBuild:
    """Tax on the change as a whole; a change that gives back gives its tax back too."""
    whole = replace(terms.tax, basis="invoice")
    charged = build_tax(lines, whole, terms.currency)
    turned = ((name, kind, -amount) for name, kind, amount in lines)
    back = build_tax(turned, whole, terms.currency)
    return replace(charged, base=charged.base - back.base, tax=charged.tax - back.tax)


def _permit(price: PriceBuild) -> Decimal:
    return price.permit_cost + price.permit_handling


def _moved_allowances(before: PriceBuild, after: PriceBuild) -> dict[str, Decimal]:
    """How far the allowances of each kind differ."""
    moved = dict.fromkeys((MATERIALS, WORK, OTHER), _ZERO)
    for price, sign in ((after, 1), (before, -1)):
        for each in price.allowances:
            moved[each.kind] += sign * each.amount
    return moved


def _taxed(
    terms: _Terms,
    materials: Decimal,
    offered: Decimal,
    permit: Decimal,
    allowances: dict[str, Decimal],
) -> Iterator[PricedLine]:
    """The change as lines for the tax: materials, all other work, allowances, permit."""
    with_overhead = terms.tax.mode == "materials-sold" and terms.tax.materials_base != "sold"
    more = terms.share(materials, terms.after.overhead_pct) if with_overhead else _ZERO
    yield "materials", MATERIALS, materials + more
    yield "work", WORK, offered - materials - more
    for kind, amount in allowances.items():
        yield f"allowances for {kind}", kind, amount
    yield "permit", OTHER, permit
