"""The price of a bid for the terminal: total, form, tax, payments, and what is left unsaid."""

from __future__ import annotations

from collections.abc import Iterator

from estimator.outputs.clear_bid import not_stated
from estimator.outputs.pay_steps import CAPPED, FIXED
from estimator.outputs.text_job import money
from estimator.outputs.text_layout import heading, number, wrapped
from estimator.pricing.records import Bid

FORMS = {
    FIXED: "fixed price",
    "time-and-material": "time and material, an estimate",
    CAPPED: "not to exceed",
}
WHERE = "They are filled in in the job file ([job]) and in shop.toml ([terms], [price])."
OVER_CAP = "MORE than the cap that is set"
Line = tuple[str, str]


def price_rows(bid: Bid) -> Iterator[Line]:
    """Each figure of the price that a person looks for first, with its name."""
    yield "Total", _total(bid)
    if bid.second_total is not None:
        worse = money(bid, bid.second_total)
        yield "Second total", f"{worse} if this turns out badly: {bid.second_total_why}"
    yield "Price form", _form(bid)
    inside = "; ".join(_inside(bid))
    if inside:
        yield "In the price", inside
    yield from _paid(bid)
    more = bid.one_more
    if more is not None:
        what = "not worked out" if more.amount is None else f"{money(bid, more.amount)} more"
        yield "One more outlet", f"{what}: {more.why}"


def unsaid_lines(bid: Bid) -> list[str]:
    """What a clear bid states and this one does not."""
    titles = not_stated(bid)
    if not titles:
        return []
    said = ", ".join(f"{title[:1].lower()}{title[1:]}" for title in titles)
    head = f"Not stated on the bid ({len(titles)})"
    return [*heading(head), *wrapped(f"{said}."), *wrapped(WHERE)]


def _total(bid: Bid) -> str:
    price = bid.price
    tax = f"{money(bid, price.tax)} of it tax" if price.tax else "no tax added"
    least = "; the minimum charge applies" if price.minimum_governs else ""
    return f"{money(bid, price.total)}, {tax}{least}"


def _form(bid: Bid) -> str:
    form = bid.price.form
    most = "" if form.cap is None else f" {money(bid, form.cap)}"
    return f"{FORMS[form.kind]}{most}"


def _inside(bid: Bid) -> Iterator[str]:
    """Parts of the price that come and go with the settings, where they are there."""
    price = bid.price
    if price.supply_run.hours:
        yield f"supply run {number(price.supply_run.hours)} h, {price.supply_run.why}"
    if price.purchase_tax:
        yield f"{money(bid, price.purchase_tax)} tax paid at the counter"
    if price.contingency.amount:
        shown = "shown" if price.contingency.shown else "not shown"
        yield f"{money(bid, price.contingency.amount)} contingency, {shown} on the bid"
    if price.allowances:
        yield f"{money(bid, price.allowances_total)} allowances"
    if price.permit_cost or price.permit_handling:
        permit = price.permit_cost + price.permit_handling
        yield f"{money(bid, permit)} permit, filed by: {price.permit_filed_by or 'not stated'}"


def _paid(bid: Bid) -> Iterator[Line]:
    """Deposit with its flag, then the rest."""
    price = bid.price
    over = f"; {OVER_CAP}" if price.payment.over_cap else ""
    cap = price.payment.cap
    most = f" ({money(bid, cap)})" if over and cap is not None else ""
    if price.payment.deposit_of == "plan":
        steps = (f"{money(bid, step.amount)} {step.when}" for step in price.payment.steps)
        yield "Payments", f"{', '.join(steps)}{over}{most}"
    elif price.deposit:
        rest = money(bid, price.balance)
        yield "Deposit", f"{money(bid, price.deposit)}, then {rest}{over}{most}"
