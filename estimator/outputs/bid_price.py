"""The price on the customer's page: form, allowances, tax in words, total, cap, payments."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from estimator.measures import to_decimal
from estimator.outputs import looks
from estimator.outputs.cells import Cell, Sheet, formula, words
from estimator.outputs.draft import Draft
from estimator.outputs.labor_steps import OVERRIDE
from estimator.outputs.pay_steps import CAPPED, FIXED, MATERIALS, NONE, PLAN, TOTAL
from estimator.outputs.price_step import by_word, text
from estimator.outputs.tax_words import CUSTOMER_WORDS, PART, UNTAXED_WORDS

MINIMUM = "The firm's minimum charge applies."
BUILT_UP = "For the work above, before tax."
ALL_OF_IT = "For all of the work above, tax included."
UNPRICED = " item(s) have no price yet; the total leaves them out."
SETTLED = " (allowance: settled up or down at what it costs)"
PUT_BY = "of the price before tax, put by for what may be found"
NOT_SHOWN = "not shown apart"
NO_ALLOWANCES = "none"
NO_CAP = "none: see the price form"
CAP = "the most that is paid for the work above"
NO_RATES = "none: the price is fixed"
OVER = " CHECK BEFORE SENDING: this is more than the cap set for deposits."
AFTER_DEPOSIT = "after the deposit"
ONE_MORE = "while there, on top of the total"
NO_PERMIT = "none in this price"
WITH_PERMIT = "fee and handling, in the price"
VISITS = " trip(s) to meet the inspector"
_PLACES = 4
_FIRST = "the first payment below"

Line = tuple[str, Cell, Cell | None]


def write_price_lines(draft: Draft, sheet: Sheet) -> None:
    """Write the lines; every amount follows the price build-up."""
    for label, said, amount in _lines(draft):
        sheet.put([words(label, looks.LABEL), said, amount])


def _lines(draft: Draft) -> Iterator[Line]:
    yield from _form(draft)
    yield from _parts(draft)
    yield from _tax_and_total(draft)
    yield from _payments(draft)
    more = draft.bid.one_more
    if more is not None and more.amount is not None:
        said = words(f"{ONE_MORE}: {more.why}", looks.PLAIN)
        yield "One more outlet", said, draft.money("one_more_outlet", more.amount)


def _money(draft: Draft, name: str, amount: Decimal) -> Cell:
    total = name in ("bid_total", "second_total")
    return draft.money(name, amount, total=total)


def _form(draft: Draft) -> Iterator[Line]:
    """The price form in one sentence, and the rates that it may go by."""
    build = draft.bid.price
    sentence = "INDEX(form_sentences,MATCH(price_form,form_names,0))"
    yield "Price form", formula(sentence, build.form.sentence, looks.PLAIN), None
    money, rate = draft.round_to, f"ROUND(markup_rate*100,{_PLACES})"
    currency, places = draft.bid.books.shop.currency, draft.formats.places
    stated = (
        f'{money("labor_rate")}&" {currency} an hour of one person; materials at cost and "&{rate}&'
        f'" %; "&{money("trip_charge")}&" {currency} a trip"'
    )
    hour = _plain(build.labor_rate_per_hour, places)
    shown = (
        f"{hour} {currency} an hour of one person; materials at cost "
        f"and {_plain(build.markup_pct)} %; {_plain(build.trip_charge, places)} {currency} a trip"
    )
    rates = by_word("price_form", {FIXED: text(NO_RATES), "": stated})
    fixed = build.form.kind == FIXED
    yield "Rates", formula(rates, NO_RATES if fixed else shown, looks.PLAIN), None


def _parts(draft: Draft) -> Iterator[Line]:
    """Allowances, contingency where it is shown, permit, and the price before tax."""
    build = draft.bid.price
    for at, each in enumerate(build.allowances, start=1):
        said = words(f"{each.name}{SETTLED}", looks.PLAIN)
        yield "Allowance", said, draft.money(f"allowance_{at}", each.amount)
    if not build.allowances:
        yield "Allowances", words(NO_ALLOWANCES, looks.PLAIN), None
    put_by = build.contingency
    if put_by.shown and put_by.amount:
        told = by_word("contingency_shown", {"yes": text(PUT_BY), "no": text(NOT_SHOWN)})
        shown = by_word("contingency_shown", {"yes": "contingency", "no": "0"})
        amount = draft.money(shown, put_by.amount)
        yield "Contingency", formula(told, PUT_BY, looks.PLAIN), amount
    fee = build.permit_cost + build.permit_handling
    visits = f'IF(permit_trips=0,"",", with "&permit_trips&{text(VISITS)})'
    said_of_it = f"IF(permit_cost+permit_handling=0,{text(NO_PERMIT)},{text(WITH_PERMIT)})&{visits}"
    met = f", with {build.permit_visits}{VISITS}" if build.permit_visits else ""
    permit = formula(said_of_it, (WITH_PERMIT if fee else NO_PERMIT) + met, looks.PLAIN)
    yield "Permit fee", permit, draft.money("permit_cost+permit_handling", fee)
    governs = formula(
        f"IF(minimum_step>0,{text(MINIMUM)},{text(BUILT_UP)})",
        MINIMUM if build.minimum_governs else BUILT_UP,
        looks.PLAIN,
    )
    yield "Price before tax", governs, draft.money("before_tax", build.before_tax)


def _tax_and_total(draft: Draft) -> Iterator[Line]:
    bid, build = draft.bid, draft.bid.price
    yield "Tax", _tax_in_words(draft), draft.money("tax_amount", build.tax)
    yield "Total", _unpriced(draft), _money(draft, "bid_total", build.total)
    yield _cap(draft)
    if bid.second_total is not None:
        why = words(f"if this turns out badly: {bid.second_total_why}", looks.PLAIN)
        yield "Second total", why, _money(draft, "second_total", bid.second_total)


def _tax_in_words(draft: Draft) -> Cell:
    """What the tax is on, by its mode; the rates follow the build-up."""
    build, terms = draft.bid.price, draft.bid.books.shop.tax
    rate, share = f"ROUND(tax_rate*100,{_PLACES})", f"ROUND(tax_share*100,{_PLACES})"
    said = {mode: text(words_of_it) for mode, words_of_it in UNTAXED_WORDS.items()}
    for mode, words_of_it in CUSTOMER_WORDS.items():
        charged = f"{rate}&{text(words_of_it)}"
        said[mode] = charged if mode != PART else f'{rate}&" % on "&{share}&{text(words_of_it)}'
    shown = UNTAXED_WORDS.get(build.tax_mode, "")
    if not shown:
        pct, part = _plain(build.tax_rate_pct), _plain(terms.taxed_share_pct)
        head = f"{pct} % on {part}" if build.tax_mode == PART else pct
        shown = f"{head}{CUSTOMER_WORDS[build.tax_mode]}"
    return formula(by_word("tax_mode", said), shown, looks.PLAIN)


def _unpriced(draft: Draft) -> Cell:
    """Say whether the total leaves items out, because the book has no price for them."""
    price = draft.bid.price
    count = len(price.unpriced_items)
    listed = f'IF(unpriced_count=0,"{ALL_OF_IT}",unpriced_count&"{UNPRICED}")'
    said = f'IF(materials_basis="{OVERRIDE}","{ALL_OF_IT}",{listed})'
    complete = price.materials_overridden or not count
    return formula(said, ALL_OF_IT if complete else f"{count}{UNPRICED}", looks.PLAIN)


def _cap(draft: Draft) -> Line:
    """The most that is paid, where the price form has one; else that there is none."""
    form = draft.bid.price.form
    said = by_word("price_form", {CAPPED: text(CAP), "": text(NO_CAP)})
    most = by_word("price_form", {CAPPED: "not_to_exceed_cap", "": text(NONE)})
    told = formula(said, NO_CAP if form.cap is None else CAP, looks.PLAIN)
    if form.cap is None:
        return "Not to exceed", told, formula(most, NONE, looks.figure(looks.MONEY))
    return "Not to exceed", told, draft.money(most, form.cap, total=True)


def _payments(draft: Draft) -> Iterator[Line]:
    """Deposit with its flag, and the balance or the payments of the plan."""
    build = draft.bid.price
    payment = build.payment
    rate = f"ROUND(deposit_rate*100,{_PLACES})"
    pct = _plain(build.deposit_pct)
    kinds: dict[str, tuple[str, str]] = (
        {PLAN: (text(_FIRST), _FIRST)} if payment.deposit_of == PLAN else {}
    )
    kinds[MATERIALS] = (
        f'{rate}&" % of the materials as sold"',
        f"{pct} % of the materials as sold",
    )
    kinds[TOTAL] = (f'{rate}&" % of the total"', f"{pct} % of the total")
    share = by_word("deposit_of", {kind: piece for kind, (piece, _) in kinds.items()})
    flag = f'IF(deposit_cap={text(NONE)},"",IF(deposit_amount>deposit_cap,{text(OVER)},""))'
    shown = kinds[payment.deposit_of][1] + (OVER if payment.over_cap else "")
    said = formula(f"{share}&{flag}", shown, looks.PLAIN)
    yield "Deposit", said, draft.money("deposit_amount", build.deposit)
    if payment.deposit_of != PLAN:
        rest = words(AFTER_DEPOSIT, looks.PLAIN)
        yield "Balance", rest, draft.money("balance_amount", build.balance)
        return
    for at, step in enumerate(payment.steps, start=1):
        due = words(step.when, looks.PLAIN)
        yield f"Payment {at}", due, draft.money(f"payment_{at}", step.amount)


def _plain(figure: Decimal, places: int = _PLACES) -> str:
    """A figure as a formula joins it to text: rounded, and no zeros behind the point."""
    shown = f"{to_decimal(figure, places):f}"
    return shown.rstrip("0").rstrip(".") if "." in shown else shown
