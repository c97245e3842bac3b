"""Doing it yourself: parts at retail, tools, permit, time at your own pace, a mistake put right."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from estimator.money import round_money
from estimator.pricing.compare_parts import (
    PATCH_AND_PAINT,
    PHASES,
    consumable_items,
    cost_of,
    items_of,
    likely_hours,
    range_hours,
)
from estimator.pricing.compare_records import CostLine, LineKind, OwnWork, Taken
from estimator.pricing.hours import hours as six_places
from estimator.pricing.records import Bid
from estimator.settings import TaxTerms

FIRST_TIME = "first-time"
STATED = "stated in the job"
UNKNOWN = "unknown"
NO_TAX_AT_THE_COUNTER = ("none", "gross-receipts", "paid-at-purchase")
TOOL_WORDS = {"borrow": "borrowed", "own": "yours already"}


def counter_tax(bid: Bid) -> Taken:
    """Sales tax that an owner pays at the counter, in percent."""
    stated = bid.survey.compare.tax_pct
    if stated is not None:
        return Taken(stated, True, STATED)
    return Taken(counter_tax_pct(bid.books.shop.tax), False, "from the shop's tax settings")


def counter_tax_pct(tax: TaxTerms) -> Decimal:
    """The rate at the counter by the shop's settings; none where its prices hold the tax."""
    if tax.prices_include_tax:
        return Decimal(0)
    if tax.purchase_rate_pct:
        return tax.purchase_rate_pct
    return Decimal(0) if tax.mode in NO_TAX_AT_THE_COUNTER else tax.rate_pct


def permit_for_owner(bid: Bid) -> Taken:
    """What a permit costs: as stated, else what the shop pays for one, else nobody knows."""
    stated, price = bid.survey.compare.permit, bid.price
    if stated is not None:
        return Taken(stated, True, STATED)
    if price.permit_cost:
        return Taken(price.permit_cost, False, "the office's charge, by the shop's settings")
    if bid.survey.house.permit == "not needed":
        return Taken(Decimal(0), False, "the job says that none is needed")
    return Taken(None, False, UNKNOWN)


def own_work(bid: Bid) -> OwnWork:
    """Gather what doing it yourself is reckoned from."""
    said = bid.survey.compare
    bought = () if said.own_patch_paint is None else PHASES[PATCH_AND_PAINT]
    tax = counter_tax(bid)
    pace = _pace(bid)
    parts, used_up = _items(bid, bought)
    return OwnWork(
        pace=pace,
        hours=_hours(bid, said.own_hours, pace, bought, "likely"),
        hours_low=_hours(bid, said.own_hours_low, pace, bought, "low"),
        hours_high=_hours(bid, said.own_hours_high, pace, bought, "high"),
        tax_pct=tax,
        parts=_parts(bid, parts, tax),
        consumables=_consumables(bid, parts, used_up, tax),
        permit=permit_for_owner(bid),
        patch_paint=said.own_patch_paint,
        rework_chance_pct=_stated(said.rework_chance_pct),
        rework_cost=_stated(said.rework_cost),
        bought_phases=bought,
        parts_items=parts,
        consumable_items=used_up,
    )


def _stated(figure: Decimal | None) -> Taken:
    return Taken(figure, figure is not None, UNKNOWN if figure is None else STATED)


def _pace(bid: Bid) -> Taken:
    stated = bid.survey.compare.pace
    if stated is not None:
        return Taken(stated, True, STATED)
    factor = bid.books.shop.conditions.get(FIRST_TIME, Decimal(1))
    return Taken(factor, False, "the shop's factor for a first time")


def _hours(
    bid: Bid, stated: Decimal | None, pace: Taken, bought: tuple[str, ...], end: str
) -> Taken:
    """Hours as stated, else those of the takeoff at the owner's pace, less what is bought.

    Where the job states only the hours in between, nothing is said of a range: both ends are
    those hours.
    """
    middle = bid.survey.compare.own_hours
    stated = middle if stated is None else stated
    if stated is not None:
        return Taken(stated, True, STATED)
    hours = six_places(_book_hours(bid, bought, end) * (pace.value or Decimal(1)))
    return Taken(hours, False, f"{end} hours of the takeoff x pace")


def _book_hours(bid: Bid, bought: tuple[str, ...], end: str) -> Decimal:
    """Hours of somebody used to the work; those a job states in all cannot be parted."""
    if bid.hours.basis == "override":
        return bid.hours.charged
    low, high = range_hours(bid, bought)
    less = {"low": low, "likely": likely_hours(bid, bought), "high": high}
    return Decimal(getattr(bid.hours, end)) - less[end]


def _items(bid: Bid, bought: tuple[str, ...]) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Keys of the parts, and of what is used up, that the owner buys."""
    theirs = items_of(bid, PATCH_AND_PAINT) if bought else ()
    used_up = consumable_items(bid)
    own = [line.item for line in bid.shopping if line.item not in theirs]
    parts = tuple(item for item in own if item not in used_up)
    return parts, tuple(item for item in own if item in used_up)


def _parts(bid: Bid, items: tuple[str, ...], tax: Taken) -> Taken:
    stated, price = bid.survey.compare.materials, bid.price
    if stated is not None:
        return Taken(stated, True, STATED)
    cost = price.materials_listed if price.materials_overridden else cost_of(bid, items)
    return Taken(_with_tax(bid, cost, tax), False, "the shopping list, with tax at the counter")


def _consumables(bid: Bid, parts: tuple[str, ...], used_up: tuple[str, ...], tax: Taken) -> Taken:
    """What is used up, and the shop's share for small items on all that is bought."""
    stated, price = bid.survey.compare.consumables, bid.price
    if stated is not None:
        return Taken(stated, True, STATED)
    if price.materials_overridden:
        return Taken(Decimal(0), False, "in the parts")
    cost = cost_of(bid, used_up)
    listed = cost + cost_of(bid, parts)
    small = round_money(listed * price.small_items_pct / 100, bid.books.shop.currency)
    why = "the shopping list and small items, with tax at the counter"
    return Taken(_with_tax(bid, cost + small, tax), False, why)


def _with_tax(bid: Bid, cost: Decimal, tax: Taken) -> Decimal:
    return round_money(cost * (1 + (tax.value or Decimal(0)) / 100), bid.books.shop.currency)


def own_lines(bid: Bid, own: OwnWork, own_hour: Taken) -> Iterator[CostLine]:
    """The lines of the column, in order."""
    currency = bid.books.shop.currency
    yield _plain(currency, "parts", "Parts", own.parts)
    yield _plain(currency, "consumables", "Consumables and small items", own.consumables)
    yield from _tools(bid)
    yield _plain(currency, "permit", "Permit", own.permit)
    if own.patch_paint is not None:
        paid = Taken(own.patch_paint, True, STATED)
        yield _plain(currency, "patch and paint", "Patch and paint, bought", paid)
    yield _rework(bid, own)
    yield time_line(bid, own.hours, own_hour)


def _plain(currency: str, kind: LineKind, name: str, taken: Taken) -> CostLine:
    amount = None if taken.value is None else round_money(taken.value, currency)
    return CostLine(kind, name, amount, amount, taken.why)


def _tools(bid: Bid) -> Iterator[CostLine]:
    """Each tool: paid in full, and all in only the share of it that does not stay yours."""
    currency, nothing = bid.books.shop.currency, Decimal(0)
    for tool in bid.survey.compare.tools:
        name = f"Tool: {tool.name}"
        if tool.have != "buy":
            yield CostLine("tool", name, nothing, nothing, TOOL_WORDS[tool.have], nothing)
        elif tool.price is None:
            yield CostLine("tool", name, None, None, UNKNOWN, tool.keep_pct)
        else:
            price = round_money(tool.price, currency)
            gone = round_money(price * (1 - tool.keep_pct / 100), currency)
            how = "bought; all in, less the share that stays yours"
            yield CostLine("tool", name, price, gone, how, tool.keep_pct)


def _rework(bid: Bid, own: OwnWork) -> CostLine:
    chance, cost = own.rework_chance_pct.value, own.rework_cost.value
    name, nothing = "A mistake put right", Decimal(0)
    if chance is None or cost is None:
        return CostLine("rework", name, nothing, None, UNKNOWN)
    weighed = round_money(chance * cost / 100, bid.books.shop.currency)
    return CostLine("rework", name, nothing, weighed, "chance x cost")


def time_line(bid: Bid, own_hours: Taken, own_hour: Taken) -> CostLine:
    """Hours of the owner's at what an hour is worth; nothing is paid out for them."""
    worth = (own_hours.value or Decimal(0)) * (own_hour.value or Decimal(0))
    amount = round_money(worth, bid.books.shop.currency)
    return CostLine("time", "Your time", Decimal(0), amount, "your hours x worth of an hour")


def unpriced_of_list(bid: Bid, own: OwnWork) -> Iterator[str]:
    """Items that nobody knows the price of, among those reckoned from the list."""
    listed = set() if own.parts.stated else set(own.parts_items)
    listed |= set() if own.consumables.stated else set(own.consumable_items)
    if not bid.price.materials_overridden:
        yield from (item for item in bid.price.unpriced_items if item in listed)
