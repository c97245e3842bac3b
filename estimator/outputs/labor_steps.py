"""Steps of the price build-up from a wage to the labor, and the supply run."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from estimator.outputs import looks
from estimator.outputs.cells import Cell, blank, formula, number
from estimator.outputs.draft import Draft, percent, price
from estimator.outputs.price_step import HOURS_PLACES, Step, by_word, choice, hours, rate, text
from estimator.pricing.rate_builder import build_rate

OVERRIDE = "override"
FILL_IN, FILL_IN_RATE = "fill in the override", "fill in the rate"
STATED, BUILT = "stated", "built"
LINE, IN_MARKUP, IN_LABOR = "line", "in-markup", "in-labor"
HOURS_BASIS = {
    "likely": "the likely hours of every task",
    "expected": "(low + 4 x likely + high) / 6",
    OVERRIDE: "the hours in the next row",
}
RATE_FROM = {STATED: "the rate in the next row", BUILT: "the rate built up further down"}
RUN_POLICIES = {
    LINE: "hours x labor rate, a line of its own; the markup does not pay for it",
    IN_LABOR: "its hours are added to the hours charged; there is no line for it",
    IN_MARKUP: "nothing is added: the markup on materials is taken to pay for it",
}
_BURDEN = "on the straight wage: taxes, insurance, paid leave, benefits"


def rate_steps(draft: Draft) -> Iterator[Step]:
    """What one hour costs, and what it must be sold for; every step rounded to the cent."""
    built = build_rate(draft.bid.books.shop.rate, draft.bid.books.shop.currency)
    yield rate("rate_wage", "Wage per hour", price(built.wage_per_hour), "paid to one person")
    yield rate("rate_burden", "Burden", percent(built.burden_pct), _BURDEN)
    burdened = draft.money(draft.round_to("rate_wage*(1+rate_burden)"), built.burdened)
    yield Step("rate_burdened", "Wage with its burden", burdened, "wage x (1 + burden)")
    yield rate("rate_paid_hours", "Paid hours in a year", number(built.paid_hours), "")
    share = percent(built.billable_pct)
    yield rate("rate_billable", "Share that customers pay", share, "of the paid hours")
    sold = formula(
        f"ROUND(rate_paid_hours*rate_billable,{HOURS_PLACES})", built.billable_hours,
        looks.figure(looks.HOURS),
    )  # fmt: skip
    yield rate("rate_billable_hours", "Billable hours in a year", sold, "paid hours x share")
    each = draft.round_to("rate_burdened*rate_paid_hours/rate_billable_hours")
    labor = draft.money(each, built.labor_per_hour)
    how = "wage with burden x paid hours / billable hours"
    yield Step("rate_labor", "Pay for one billable hour", labor, how)
    yearly = price(built.overhead_per_year)
    yield rate("rate_overhead_year", "Overhead in a year", yearly, "office, vehicle, tools")
    spread = draft.round_to("rate_overhead_year/rate_billable_hours")
    overhead = draft.money(spread, built.overhead_per_hour)
    yield Step("rate_overhead", "Overhead for one billable hour", overhead, "/ billable hours")
    cost = draft.money("rate_labor+rate_overhead", built.cost_per_hour)
    yield Step("rate_cost", "Cost of one billable hour", cost, "pay + overhead")
    yield rate("rate_profit", "Profit in the rate", percent(built.profit_margin_pct), "a margin")
    made = draft.money(draft.round_to("rate_cost/(1-rate_profit)"), built.rate)
    yield Step("rate_built", "Rate built up", made, "cost / (1 - profit)")


def labor_steps(draft: Draft) -> Iterator[Step]:
    """Hours charged, with a supply run where its hours are labor, at the rate."""
    yield from _hours(draft)
    yield from _run(draft)
    yield from _rate(draft)
    build = draft.bid.price
    total = draft.money(draft.round_to("labor_hours*labor_rate"), build.labor)
    yield Step("labor_amount", "Labor", total, "hours at the labor rate x labor rate")
    run = draft.round_to("supply_run_hours*labor_rate")
    line = draft.money(by_word("supply_run_policy", {LINE: run, IN_LABOR: "0", IN_MARKUP: "0"}),
                       build.supply_run.amount)  # fmt: skip
    yield Step(
        "supply_run",
        "Supply run",
        line,
        "hours x labor rate where it is a line; else it adds nothing here",
    )


def _hours(draft: Draft) -> Iterator[Step]:
    found, build = draft.bid.hours, draft.bid.price
    typed, own = found.basis == OVERRIDE, looks.entry(looks.HOURS)
    yield choice("hours_basis", "Hours to charge", found.basis, HOURS_BASIS)
    override = number(build.hours_charged, own) if typed else blank(own)
    how = "used only with the word override"
    yield rate("hours_override", "Hours, if override", override, how)
    stated = f'IF(hours_override="",{text(FILL_IN)},hours_override)'
    charged = by_word(
        "hours_basis",
        {OVERRIDE: stated, "expected": "hours_expected", "likely": "hours_likely"},
    )
    yield rate("hours_charged", "Hours charged", hours(charged, build.hours_charged), "from Labor")


def _run(draft: Draft) -> Iterator[Step]:
    """The hours for fetching materials, and what becomes of them."""
    run = draft.bid.price.supply_run
    own = number(run.hours, looks.entry(looks.HOURS))
    yield rate("supply_run_hours", "Hours of the supply run", own, "for fetching materials")
    yield choice("supply_run_policy", "Supply run is charged", run.policy, RUN_POLICIES)
    more = by_word("supply_run_policy", {IN_LABOR: "supply_run_hours", LINE: "0"})
    together = hours(f"hours_charged+{more}", draft.bid.price.labor_hours)
    yield rate("labor_hours", "Hours at the labor rate", together, "with the run, if in-labor")


def _rate(draft: Draft) -> Iterator[Step]:
    build = draft.bid.price
    is_built = build.rate_build is not None
    stated = blank(looks.entry(looks.MONEY)) if is_built else price(build.labor_rate_per_hour)
    yield choice("labor_rate_from", "Labor rate is", BUILT if is_built else STATED, RATE_FROM)
    yield rate("labor_rate_stated", "Labor rate, if stated", stated, "one hour of one person")
    own = f'IF(labor_rate_stated="",{text(FILL_IN_RATE)},labor_rate_stated)'
    used = by_word("labor_rate_from", {BUILT: "rate_built", STATED: own})
    yield rate("labor_rate", "Labor rate per hour", _money(used, build.labor_rate_per_hour))


def _money(text_of_formula: str, value: Decimal) -> Cell:
    return formula(text_of_formula, value, looks.figure(looks.MONEY))
