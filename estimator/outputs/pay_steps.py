"""Steps of the price build-up after the tax: total, price form, deposit, payments."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from estimator.measures import to_decimal
from estimator.money import round_money
from estimator.outputs import looks
from estimator.outputs.cells import Cell, Row, Sheet, blank, formula, number, words
from estimator.outputs.draft import Draft, percent, price
from estimator.outputs.price_step import Step, by_word, choice, rate, text
from estimator.pricing.price_records import PaymentStep
from estimator.saying import word

FIXED, BY_TIME, CAPPED = "fixed", "time-and-material", "not-to-exceed"
PRICE_FORMS = {
    FIXED: "the total is the price",
    BY_TIME: "the total is an estimate; hours and materials are charged as used",
    CAPPED: "as time and material, and never more than the cap",
}
FORM_HEADERS = ("Price form", "Chosen", "What the customer pays", "As the customer reads it")
PAYMENT_HEADERS = ("Payment due", "Share", "Amount", "Exact share, in the smallest coin")
CHOSEN, NOT_CHOSEN = "chosen", "no"
TOTAL, MATERIALS, PLAN = "total", "materials", "plan"
DEPOSIT_OF = {
    TOTAL: "a share of the total",
    MATERIALS: "a share of the materials as sold, and no more than the total",
}
NO_CAP = "no cap is set"
WITHIN = "within the cap that is set"
OVER = "MORE than the cap that is set; it was not changed"
NONE = "none"
_SIX = 6


def total_steps(draft: Draft) -> Iterator[Step]:
    """The total, the total in the bad case, and the price form with its cap."""
    bid, build = draft.bid, draft.bid.price
    total = draft.money("before_tax+tax_amount", build.total, total=True)
    yield Step("bid_total", "Total", total, "price before tax + tax")
    if bid.second_total is not None:
        more = price(bid.second_total - build.total)
        yield rate("unknowns_extra", "More, if unknowns turn out badly", more, bid.second_total_why)
        worse = draft.money("bid_total+unknowns_extra", bid.second_total)
        yield Step("second_total", "Total in that case", worse, "total + more")
    another = bid.one_more
    if another is not None and another.amount is not None:
        how = f"stored, worked out apart: {another.why}"
        yield rate("one_more_outlet", "One more outlet while there", price(another.amount), how)
    yield choice("price_form", "Price form", build.form.kind, PRICE_FORMS)
    above = percent(draft.bid.books.shop.terms.not_to_exceed_pct)
    yield rate("not_to_exceed_rate", "Cap above the total", above, "for not-to-exceed")


def write_forms(draft: Draft, sheet: Sheet) -> None:
    """The three price forms side by side, each with what the customer pays and reads."""
    sheet.table("Price_forms", FORM_HEADERS, _forms(draft, sheet))


def _forms(draft: Draft, sheet: Sheet) -> Iterator[Row]:
    terms, build = draft.bid.books.shop.terms, draft.bid.price
    above = build.total * (100 + terms.not_to_exceed_pct) / 100
    cap = round_money(above, draft.bid.books.shop.currency)
    first = sheet.next_row
    draft.names["form_names"] = sheet.span("A", first, first + len(PRICE_FORMS) - 1)
    draft.names["form_sentences"] = sheet.span("D", first, first + len(PRICE_FORMS) - 1)
    lines = (
        (FIXED, "fixed_total", "bid_total", build.total, terms.fixed_line),
        (BY_TIME, "estimate_total", "bid_total", build.total, terms.time_and_material_line),
        (CAPPED, "not_to_exceed_cap", draft.round_to("bid_total*(1+not_to_exceed_rate)"), cap,
         terms.not_to_exceed_line),
    )  # fmt: skip
    for kind, name, amount, value, sentence in lines:
        draft.names[name] = sheet.ref("C", sheet.next_row)
        picked = f"IF(price_form={text(kind)},{text(CHOSEN)},{text(NOT_CHOSEN)})"
        shown = CHOSEN if build.form.kind == kind else NOT_CHOSEN
        chosen = formula(picked, shown, looks.TEXT)
        yield [words(kind), chosen, draft.money(amount, value), words(draft.say(word(sentence)))]


def deposit_steps(draft: Draft) -> Iterator[Step]:
    """The deposit, held against the cap that is set, and the balance."""
    build = draft.bid.price
    payment, plan = build.payment, _plan(draft)
    offered = DEPOSIT_OF | ({PLAN: "the first payment of the plan below"} if plan else {})
    yield choice("deposit_of", "Deposit is", payment.deposit_of, offered)
    yield rate(
        "deposit_rate", "Deposit share", percent(build.deposit_pct), "of what is named above"
    )
    ways = {PLAN: "plan_first"} if plan else {}
    ways[MATERIALS] = f"MIN(bid_total,{draft.round_to('materials_sold*deposit_rate')})"
    ways[TOTAL] = draft.round_to("bid_total*deposit_rate")
    deposit = draft.money(by_word("deposit_of", ways), build.deposit)
    yield Step("deposit_amount", "Deposit", deposit, "before work begins")
    yield from _cap(draft)
    balance = draft.money("bid_total-deposit_amount", build.balance)
    yield Step("balance_amount", "Balance", balance, "total - deposit")
    days = number(draft.bid.books.shop.terms.validity_days)
    yield rate("validity_days", "Days that the bid stays open", days, "from its date")


def _cap(draft: Draft) -> Iterator[Step]:
    """The most a deposit may be where the job is, as far as the user has set it."""
    payment = draft.bid.price.payment
    share, most = payment.cap_pct, payment.cap_amount
    how = "of the total, as you set it; empty: none"
    cell = blank(looks.entry(looks.PERCENT)) if share is None else percent(share)
    yield rate("deposit_cap_rate", "Most that a deposit may be", cell, how)
    cell = blank(looks.entry(looks.MONEY)) if most is None else price(most)
    yield rate("deposit_cap_amount", "Most, as an amount", cell, "empty: none")
    part = draft.round_to("bid_total*deposit_cap_rate")
    lesser = f'IF(deposit_cap_amount="",{part},MIN({part},deposit_cap_amount))'
    alone = f'IF(deposit_cap_amount="",{text(NONE)},deposit_cap_amount)'
    cap = f'IF(deposit_cap_rate="",{alone},{lesser})'
    yield Step("deposit_cap", "Cap on the deposit", _or_none(draft, cap), _flag(draft))


def _or_none(draft: Draft, cap: str) -> Cell:
    found = draft.bid.price.payment.cap
    if found is None:
        return formula(cap, NONE, looks.figure(looks.MONEY))
    return draft.money(cap, found)


def _flag(draft: Draft) -> Cell:
    """Whether the deposit is within the cap, in words."""
    payment = draft.bid.price.payment
    over = f"IF(deposit_amount>deposit_cap,{text(OVER)},{text(WITHIN)})"
    flag = f"IF(deposit_cap={text(NONE)},{text(NO_CAP)},{over})"
    known = OVER if payment.over_cap else WITHIN
    return formula(flag, NO_CAP if payment.cap is None else known, looks.TEXT)


def _plan(draft: Draft) -> Sequence[PaymentStep]:
    payment = draft.bid.price.payment
    return payment.steps if payment.deposit_of == PLAN else ()


def write_plan(draft: Draft, sheet: Sheet) -> None:
    """The payments of a plan: shares of the total that add up to it, by largest remainder."""
    plan = _plan(draft)
    if plan:
        sheet.section("Payments")
        sheet.table("Payments", PAYMENT_HEADERS, _payments(draft, sheet, plan))


def _payments(draft: Draft, sheet: Sheet, plan: Sequence[PaymentStep]) -> Iterator[Row]:
    first = sheet.next_row
    last = first + len(plan) - 1
    coins, scale = f"D{first}:D{last}", 10**draft.formats.places
    draft.names["plan_first"] = sheet.ref("C", first)
    draft.names["plan_shares"] = sheet.span("B", first, last)
    total = draft.bid.price.total
    whole = sum(step.pct for step in plan)
    for step in plan:
        row = sheet.next_row
        rest = f"ROUND({coins}-ROUNDDOWN({coins},0),{_SIX})"
        own = f"ROUND(D{row}-ROUNDDOWN(D{row},0),{_SIX})"
        above = f"D{first}:D{row - 1}"
        earlier = f"+SUMPRODUCT((ROUND({above}-ROUNDDOWN({above},0),{_SIX})={own})*1)"
        before = f"SUMPRODUCT(({rest}>{own})*1){earlier if row > first else ''}"
        left = f"ROUND(bid_total*{scale},0)-SUMPRODUCT(ROUNDDOWN({coins},0))"
        amount = f"(ROUNDDOWN(D{row},0)+IF({before}<{left},1,0))/{scale}"
        exact = formula(f"ROUND(bid_total*{scale}*B{row}/SUM(plan_shares),{_SIX})",
                        to_decimal(total * scale * step.pct / whole, _SIX))  # fmt: skip
        draft.names[f"payment_{row - first + 1}"] = sheet.ref("C", row)
        yield [words(step.when), percent(step.pct), draft.money(amount, step.amount), exact]
