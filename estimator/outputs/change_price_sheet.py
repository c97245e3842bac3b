"""The sheet with the price of a change, step by step; the change order follows it."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from estimator.outputs import looks
from estimator.outputs.cells import Cell, Row, Sheet, number, words
from estimator.outputs.draft import Draft, percent, price
from estimator.outputs.rounding import rounded_as_named
from estimator.outputs.tax_words import VAT
from estimator.pricing.change_records import ChangeOrder, ChangePrice, Sold

NAME = "Price of the change"
WIDTHS = "42 16 16 54"
HEADERS = ("Step", "Rate or count", "Amount", "How it is worked out")
_Step = tuple[str, str, Cell, str]
"""Defined name, label, cell, how it is worked out; an amount's look tells it from a rate."""


def write_change_price(draft: Draft, order: ChangeOrder) -> Sheet:
    """Write every step; every rate and amount gets a name that formulas use."""
    sheet = draft.sheet(NAME, WIDTHS, wide=False)
    draft.heading(sheet, "Price of the change: what is added less what is given back")
    sheet.section("Step by step")
    sheet.table(
        "Change_steps", HEADERS, (_row(draft, sheet, each) for each in _steps(draft, order))
    )
    return sheet


def _row(draft: Draft, sheet: Sheet, step: _Step) -> Row:
    name, label, cell, how = step
    amount = bool(cell.formula)
    draft.names[name] = sheet.ref("C" if amount else "B", sheet.next_row)
    cells = [words(""), cell] if amount else [cell, words("")]
    return [words(label, looks.STRONG if amount else looks.TEXT), *cells, words(how)]


def _steps(draft: Draft, order: ChangeOrder) -> Iterator[_Step]:
    made = order.price
    yield from _labor(draft, made)
    counter = percent(made.counter_rate_pct)
    yield "counter_rate", "Tax in or on book prices", counter, "tax mode of the bid; 0 where none"
    yield from _materials(draft, made, made.added, "added")
    yield from _materials(draft, made, made.dropped, "dropped")
    credit = draft.round_to("sell_dropped*credit_rate")
    yield _amount(
        draft, "materials_credit", "Materials, given back", credit, made.materials_credit,
        "dropped materials as sold x credit",
    )  # fmt: skip
    yield from _base(draft, made)
    yield from _total(draft, order)


def _amount(draft: Draft, name: str, label: str, text: str, value: Decimal, how: str) -> _Step:
    return name, label, draft.money(text, value), how


def _labor(draft: Draft, made: ChangePrice) -> Iterator[_Step]:
    yield "labor_rate", "Labor rate for changes", price(made.labor_rate), "for one hour"
    old = price(made.labor_rate_before)
    yield "labor_rate_before", "Labor rate of the first bid", old, "for hours that are dropped"
    yield "credit_rate", "Share given back", percent(made.credit_pct), "of work that is dropped"
    yield _amount(
        draft, "labor_added", "Labor, added", draft.round_to("lines_hours_added*labor_rate"),
        made.labor_added, "hours added (sheet Lines) x labor rate for changes",
    )  # fmt: skip
    worth = draft.round_to("lines_hours_dropped*labor_rate_before")
    yield _amount(
        draft, "labor_credit", "Labor, given back", draft.round_to(f"{worth}*credit_rate"),
        made.labor_credit, "hours dropped x labor rate of the first bid x share given back",
    )  # fmt: skip


def _materials(draft: Draft, made: ChangePrice, sold: Sold, way: str) -> Iterator[_Step]:
    """From what materials cost, added or dropped, to what they are sold for."""
    listed = draft.money(f"lines_cost_{way}", sold.listed)
    yield f"listed_{way}", f"Materials {way}, listed", listed, "sheet Parts cost"
    small = percent(sold.small_items_pct)
    yield f"small_rate_{way}", f"Small items on materials {way}", small, "as in the bid"
    yield _amount(
        draft, f"small_{way}", f"Small items {way}",
        draft.round_to(f"listed_{way}*small_rate_{way}"), sold.small_items, "listed x small items",
    )  # fmt: skip
    gross = f"listed_{way}+small_{way}"
    inside = f"{gross}-{draft.round_to(f'({gross})/(1+counter_rate)')}"
    holds_tax = draft.bid.books.shop.tax.prices_include_tax
    taken = inside if holds_tax else "0"
    yield _amount(
        draft, f"input_tax_{way}", f"Tax taken out of book prices, {way}", taken, sold.input_tax,
        "only where book prices hold the tax of the counter",
    )  # fmt: skip
    on_top = draft.round_to(f"({gross}-input_tax_{way})*counter_rate")
    owed = f"input_tax_{way}" if holds_tax else on_top
    paid = "0" if made.tax_mode == VAT else owed
    yield _amount(
        draft, f"counter_tax_{way}", f"Tax paid at the counter, {way}", paid, sold.purchase_tax,
        "cost x rate, in the tax modes that have it",
    )  # fmt: skip
    markup = percent(sold.markup_pct)
    yield f"markup_{way}", f"Markup on materials {way}", markup, "on their cost"
    cost = f"{gross}-input_tax_{way}"
    before = f"+counter_tax_{way}" if made.counter_how == "before-markup" else ""
    after = f"+counter_tax_{way}" if made.counter_how == "after-markup" else ""
    text = draft.round_to(f"({cost}{before})*(1+markup_{way})") + after
    yield _amount(
        draft, f"sell_{way}", f"Materials {way}, as sold", text, sold.sell, "cost x (1 + markup)"
    )


def _base(draft: Draft, made: ChangePrice) -> Iterator[_Step]:
    yield "trips_more", "Trips more", number(made.trips_more), "fewer where below zero"
    yield "trip_charge", "Charge for one trip", price(made.trip_charge), ""
    less = f"-{draft.round_to('ABS(trips_more)*trip_charge*credit_rate')}"
    trips = f"IF(trips_more<0,{less},{draft.round_to('trips_more*trip_charge')})"
    yield _amount(
        draft, "trips_amount", "Trips", trips, made.trips, "trips more x charge, or given back"
    )
    yield "handling_fee", "Fee for the change order", price(made.handling), ""
    base = "labor_added-labor_credit+sell_added-materials_credit+trips_amount+handling_fee"
    yield _amount(draft, "base_amount", "Together", base, made.base, "added less given back")
    yield "overhead_rate", "Overhead", percent(made.overhead_pct), "as in the bid"
    yield _amount(
        draft, "overhead_amount", "Overhead", draft.round_to("base_amount*overhead_rate"),
        made.overhead, "together x overhead",
    )  # fmt: skip
    yield "profit_rate", "Profit", percent(made.profit_pct), "as in the bid"
    profit = draft.round_to("(base_amount+overhead_amount)*profit_rate")
    yield _amount(draft, "profit_amount", "Profit", profit, made.profit, "on both")
    built = "base_amount+overhead_amount+profit_amount"
    yield _amount(draft, "built_up", "Built-up price of the change", built, made.built_up, "")
    least = price(made.minimum_charge)
    yield "minimum_charge", "Least charge for a change", least, "for a change that costs anything"
    offered = "IF(built_up>0,MAX(built_up,minimum_charge),built_up)"
    yield _amount(draft, "offered", "Price of the change", offered, made.offered, "")


def _total(draft: Draft, order: ChangeOrder) -> Iterator[_Step]:
    made = order.price
    permit = price(made.permit)
    yield "permit_more", "Permit, more than in the bid", permit, "with its handling"
    for kind, amount in (
        ("materials", made.allowances_materials),
        ("labor", made.allowances_labor),
        ("other", made.allowances_other),
    ):
        label = f"Allowances for {kind}, more than in the bid"
        yield f"allowances_{kind}", label, price(amount), ""
    before = "offered+permit_more+allowances_materials+allowances_labor+allowances_other"
    yield _amount(draft, "change_before_tax", "Change before tax", before, made.before_tax, "")
    yield "tax_factor", "Tax rate", percent(made.tax_factor_pct), f"tax mode: {made.tax_mode}"
    yield "tax_share", "Share that is taxed", percent(made.tax_share_pct), "of what the mode taxes"
    text, how = _taxed(draft, made, order)
    share = draft.round_to(f"({text})*tax_share")
    yield _amount(draft, "taxed_amount", "Of this, taxed", share, made.taxed, how)
    yield "tax_rounding", "Rounding of the tax", words(made.tax_rounding, looks.ENTRY_WORD), ""
    rounded = rounded_as_named("taxed_amount*tax_factor", draft.formats.places, "tax_rounding")
    tax = rounded
    yield _amount(draft, "change_tax", "Tax on the change", tax, made.tax, "")
    yield _amount(
        draft, "change_total", "This change", "change_before_tax+change_tax", made.total, ""
    )
    first = price(made.job_total_before)
    yield "job_total_before", "Total of the first bid", first, "as agreed"
    yield _amount(
        draft, "job_total", "New total", "job_total_before+change_total", made.job_total,
        "first bid + this change",
    )  # fmt: skip
    if made.cap is not None:
        above = percent(made.not_to_exceed_pct)
        yield "cap_rate", "Cap above the total", above, "price form of the bid: not to exceed"
        cap = f"job_total+{draft.round_to('job_total*cap_rate')}"
        yield _amount(draft, "job_cap", "New cap", cap, made.cap, "takes the place of the old one")


def _taxed(draft: Draft, made: ChangePrice, order: ChangeOrder) -> tuple[str, str]:
    """What of the change is taxed, by the tax mode of the bid."""
    materials = "sell_added-materials_credit"
    sold, how = materials, "materials, as sold, less those given back"
    if order.after.books.shop.tax.materials_base != "sold":
        sold = f"{materials}+{draft.round_to(f'({materials})*overhead_rate')}"
        how = f"{how}, with their overhead"
    work = f"offered-({materials})+allowances_labor"
    by_mode = {
        "none": ("0", "nothing"),
        "paid-at-purchase": ("0", "nothing: the tax is in what the materials cost"),
        "materials-sold": (f"{sold}+allowances_materials", how),
        "purchase-and-labor": (work, "all but materials and permit"),
    }
    return by_mode.get(made.tax_mode, ("change_before_tax", "the whole change"))
