"""The steps from hours and cost to the total, each with its name, formula, value and wording."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from estimator.measures import to_decimal
from estimator.outputs import looks
from estimator.outputs.cells import Cell, blank, formula, number, words
from estimator.outputs.draft import Draft, percent, price

GOVERNS = "The larger of the two: the minimum charge governs."
DOES_NOT_GOVERN = "The larger of the two: the built-up price governs."
LISTED, OVERRIDE = "list", "override"
FILL_IN = "fill in the override"
HOURS_CHOICE = "likely,expected,override"
MATERIALS_CHOICE = f"{LISTED},{OVERRIDE}"
TAX_CHOICE = "materials-sold,none"
_MARGIN_PLACES = 4


@dataclass(frozen=True, slots=True)
class Step:
    """One row of the build-up.

    Attributes:
        name: the defined name of its cell. how: words, or a formula that finds them.
        amount: whether it stands with the amounts, and not with rates and counts.
        choice: the words that may stand in the cell, where only some may.
    """

    name: str
    label: str
    cell: Cell
    how: str | Cell
    amount: bool = True
    choice: str = ""


def steps(draft: Draft) -> Iterator[Step]:
    """All steps in order; the amounts are the engine's."""
    yield from _labor(draft)
    yield from _materials(draft)
    yield from _base(draft)
    yield from _offer(draft)
    yield from _tax(draft)
    yield from _payment(draft)


def _rate(name: str, label: str, cell: Cell, how: str = "", choice: str = "") -> Step:
    return Step(name, label, cell, how, amount=False, choice=choice)


def _hours(text: str, value: Decimal) -> Cell:
    return formula(text, value, looks.figure(looks.HOURS))


def _labor(draft: Draft) -> Iterator[Step]:
    hours, build = draft.bid.hours, draft.bid.price
    typed = hours.basis == OVERRIDE
    own = looks.entry(looks.HOURS)
    charged = (
        f'IF(hours_basis="{OVERRIDE}",IF(hours_override="","{FILL_IN}",hours_override),'
        'IF(hours_basis="expected",hours_expected,hours_likely))'
    )
    basis = words(hours.basis, looks.ENTRY_WORD)
    yield _rate(
        "hours_basis", "Hours to charge", basis, "likely, expected or override", HOURS_CHOICE
    )
    override = number(build.hours_charged, own) if typed else blank(own)
    yield _rate(
        "hours_override", "Hours, if override", override, "used only with the word override"
    )
    yield _rate(
        "hours_charged", "Hours charged", _hours(charged, build.hours_charged), "from Labor"
    )
    rate = price(build.labor_rate_per_hour)
    yield _rate("labor_rate", "Labor rate per hour", rate, "one person")
    amount = draft.money(draft.round_to("hours_charged*labor_rate"), build.labor)
    yield Step("labor_amount", "Labor", amount, "hours charged x labor rate")


def _materials(draft: Draft) -> Iterator[Step]:
    build, typed = draft.bid.price, draft.bid.price.materials_overridden
    basis = words(OVERRIDE if typed else LISTED, looks.ENTRY_WORD)
    yield _rate(
        "materials_basis", "Materials to charge", basis, "list or override", MATERIALS_CHOICE
    )
    override = price(build.materials_listed) if typed else blank(looks.entry(looks.MONEY))
    yield _rate(
        "materials_override", "Materials, if override", override, "used only with the word override"
    )
    own = f'IF(materials_override="","{FILL_IN}",materials_override)'
    chosen = f'IF(materials_basis="{OVERRIDE}",{own},shopping_cost)'
    how = "everything on the Shopping list that has a price"
    yield Step(
        "materials_listed", "Materials listed", draft.money(chosen, build.materials_listed), how
    )
    small = percent(build.small_items_pct)
    yield _rate("small_items_rate", "Small items", small, "on materials listed")
    amount = draft.money(draft.round_to("materials_listed*small_items_rate"), build.small_items)
    yield Step("small_items", "Small items", amount, "materials listed x small items rate")
    cost = draft.money("materials_listed+small_items", build.materials_cost)
    yield Step("materials_cost", "Materials, cost", cost, "listed + small items")
    yield _rate("markup_rate", "Markup on materials", percent(build.markup_pct), "on their cost")
    margin = to_decimal(Fraction(build.margin_pct) / 100, _MARGIN_PLACES)
    same = formula(
        f"ROUND(markup_rate/(1+markup_rate),{_MARGIN_PLACES})", margin, looks.figure(looks.PERCENT)
    )
    yield _rate("margin_rate", "The same as a margin", same, "share of what they are sold for")
    sold = draft.money(draft.round_to("materials_cost*(1+markup_rate)"), build.materials_sell)
    yield Step("materials_sold", "Materials, as sold", sold, "cost x (1 + markup)")


def _base(draft: Draft) -> Iterator[Step]:
    build = draft.bid.price
    yield _rate("trip_count", "Trips", number(build.trips_count), "visits to the job")
    yield _rate("trip_charge", "Charge for one trip", price(build.trip_charge))
    trips = draft.money(draft.round_to("trip_count*trip_charge"), build.trips)
    yield Step("trips_amount", "Trips", trips, "trips x charge")
    base = draft.money("labor_amount+materials_sold+trips_amount", build.base)
    yield Step("base_amount", "Labor, materials and trips", base, "added up")
    yield _rate(
        "overhead_rate", "Overhead", percent(build.overhead_pct), "on labor, materials and trips"
    )
    overhead = draft.money(draft.round_to("base_amount*overhead_rate"), build.overhead)
    yield Step("overhead_amount", "Overhead", overhead, "labor, materials and trips x overhead")
    yield _rate("profit_rate", "Profit", percent(build.profit_pct), "on these and the overhead")
    profit = draft.money(draft.round_to("(base_amount+overhead_amount)*profit_rate"), build.profit)
    yield Step("profit_amount", "Profit", profit, "(the same + overhead) x profit")
    built_up = draft.money("base_amount+overhead_amount+profit_amount", build.built_up)
    yield Step("built_up", "Built-up price", built_up, "added up")


def _offer(draft: Draft) -> Iterator[Step]:
    build = draft.bid.price
    yield _rate(
        "minimum_charge", "Minimum charge", price(build.minimum_charge), "the least a job costs"
    )
    governs = formula(
        f'IF(offered>built_up,"{GOVERNS}","{DOES_NOT_GOVERN}")',
        GOVERNS if build.minimum_governs else DOES_NOT_GOVERN,
        looks.TEXT,
    )
    least = draft.round_to("minimum_charge")
    offered = draft.money(f"MAX(built_up,{least})", build.offered)
    yield Step("offered", "Price offered", offered, governs)
    how = "charged by the permit office"
    yield _rate("permit_cost", "Permit", price(build.permit_cost), how)
    handling = price(build.permit_handling)
    yield _rate("permit_handling", "Handling of the permit", handling, "for getting it")
    before = draft.money("offered+permit_cost+permit_handling", build.before_tax)
    yield Step("before_tax", "Price before tax", before, "price offered + permit + handling")


def _tax(draft: Draft) -> Iterator[Step]:
    build = draft.bid.price
    mode = words(build.tax_mode, looks.ENTRY_WORD)
    yield _rate("tax_mode", "Sales tax", mode, "materials-sold or none", TAX_CHOICE)
    yield _rate("tax_rate", "Tax rate", percent(build.tax_rate_pct), "on materials as sold")
    taxed = draft.round_to("materials_sold*tax_rate")
    tax = draft.money(f'IF(tax_mode="materials-sold",{taxed},0)', build.tax)
    yield Step("tax_amount", "Sales tax", tax, "materials as sold x tax rate")
    total = draft.money("before_tax+tax_amount", build.total, total=True)
    yield Step("bid_total", "Total", total, "price before tax + sales tax")


def _payment(draft: Draft) -> Iterator[Step]:
    bid, build = draft.bid, draft.bid.price
    if bid.second_total is not None:
        more = price(bid.second_total - build.total)
        yield _rate(
            "unknowns_extra", "More, if unknowns turn out badly", more, bid.second_total_why
        )
        worse = draft.money("bid_total+unknowns_extra", bid.second_total)
        yield Step("second_total", "Total in that case", worse, "total + more")
    yield _rate("deposit_rate", "Deposit", percent(build.deposit_pct), "of the total")
    deposit = draft.money(draft.round_to("bid_total*deposit_rate"), build.deposit)
    yield Step("deposit_amount", "Deposit", deposit, "total x deposit")
    balance = draft.money("bid_total-deposit_amount", build.balance)
    yield Step("balance_amount", "Balance", balance, "total - deposit")
    days = number(bid.books.shop.terms.validity_days)
    yield _rate("validity_days", "Days that the bid stays open", days, "from its date")
