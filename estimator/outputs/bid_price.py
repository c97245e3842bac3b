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
from estimator.outputs.tax_words import CHARGING, UNTAXED_WORDS, customer_words
from estimator.outputs.told_formula import sentence_formula
from estimator.saying import said, word

MINIMUM = said("The firm's minimum charge applies.")
BUILT_UP = said("For the work above, before tax.")
ALL_OF_IT = said("For all of the work above, tax included.")
PUT_BY = said("of the price before tax, put by for what may be found")
NOT_SHOWN = said("not shown apart")
NO_ALLOWANCES = said("none")
NO_CAP = said("none: see the price form")
NONE_STATED = said("none")
CAP = said("the most that is paid for the work above")
NO_RATES = said("none: the price is fixed")
OVER = said("CHECK BEFORE SENDING: this is more than the cap set for deposits.")
AFTER_DEPOSIT = said("after the deposit")
NO_PERMIT = said("none in this price")
WITH_PERMIT = said("fee and handling, in the price")
_FIRST = said("the first payment below")
_PLACES = 4

Line = tuple[str, Cell, Cell | None]


def write_price_lines(draft: Draft, sheet: Sheet) -> None:
    """Write the lines; every amount follows the price build-up."""
    for label, told, amount in _lines(draft):
        sheet.put([words(label, looks.LABEL), told, amount])


def _lines(draft: Draft) -> Iterator[Line]:
    yield from _form(draft)
    yield from _parts(draft)
    yield from _tax_and_total(draft)
    yield from _payments(draft)
    more = draft.bid.one_more
    if more is not None and more.amount is not None:
        told = said("while there, on top of the total: {why}", why=more.why)
        yield (
            said("One more outlet"),
            words(told, looks.PLAIN),
            draft.money("one_more_outlet", more.amount),
        )


def _money(draft: Draft, name: str, amount: Decimal) -> Cell:
    total = name in ("bid_total", "second_total")
    return draft.money(name, amount, total=total)


def _form(draft: Draft) -> Iterator[Line]:
    """The price form in one sentence, and the rates that it may go by."""
    build = draft.bid.price
    sentence = "INDEX(form_sentences,MATCH(price_form,form_names,0))"
    yield said("Price form"), formula(sentence, word(build.form.sentence), looks.PLAIN), None
    currency, places = draft.bid.books.shop.currency, draft.formats.places
    rated = said(
        "{hour} {currency} an hour of one person; materials at cost and {markup} %; "
        "{trip} {currency} a trip",
        hour=_plain(build.labor_rate_per_hour, places), markup=_plain(build.markup_pct),
        trip=_plain(build.trip_charge, places), currency=currency,
    )  # fmt: skip
    live = {
        "hour": draft.round_to("labor_rate"),
        "markup": f"ROUND(markup_rate*100,{_PLACES})",
        "trip": draft.round_to("trip_charge"),
    }
    stated = sentence_formula(draft.language, rated, live)
    rates = by_word("price_form", {FIXED: _text(draft, NO_RATES), "": stated})
    fixed = build.form.kind == FIXED
    yield said("Rates"), formula(rates, NO_RATES if fixed else rated, looks.PLAIN), None


def _text(draft: Draft, saying: str) -> str:
    """Words as the customer reads them, as a piece of a formula."""
    return text(draft.say(saying))


def _parts(draft: Draft) -> Iterator[Line]:
    """Allowances, contingency where it is shown, permit, and the price before tax."""
    build = draft.bid.price
    for at, each in enumerate(build.allowances, start=1):
        name = word(each.name)
        kind = said("{name} (allowance: settled up or down at what it costs)", name=name)
        amount = draft.money(f"allowance_{at}", each.amount)
        yield said("Allowance"), words(kind, looks.PLAIN), amount
    if not build.allowances:
        yield said("Allowances"), words(NO_ALLOWANCES, looks.PLAIN), None
    put_by = build.contingency
    if put_by.shown and put_by.amount:
        told = by_word(
            "contingency_shown", {"yes": _text(draft, PUT_BY), "no": _text(draft, NOT_SHOWN)}
        )
        shown = by_word("contingency_shown", {"yes": "contingency", "no": "0"})
        amount = draft.money(shown, put_by.amount)
        yield said("Contingency"), formula(told, PUT_BY, looks.PLAIN), amount
    fee = build.permit_cost + build.permit_handling
    yield said("Permit fee"), _permit(draft), draft.money("permit_cost+permit_handling", fee)
    governs = formula(
        f"IF(minimum_step>0,{_text(draft, MINIMUM)},{_text(draft, BUILT_UP)})",
        MINIMUM if build.minimum_governs else BUILT_UP,
        looks.PLAIN,
    )
    yield said("Price before tax"), governs, draft.money("before_tax", build.before_tax)


def _permit(draft: Draft) -> Cell:
    """Whether a permit fee is in the price, and how many trips to the inspector."""
    build = draft.bid.price
    paid = build.permit_cost + build.permit_handling
    fee = WITH_PERMIT if paid else NO_PERMIT
    met = said(
        "{fee}, with {trips} trip(s) to meet the inspector", fee=fee, trips=build.permit_visits
    )
    no, yes = _text(draft, NO_PERMIT), _text(draft, WITH_PERMIT)
    live_fee = f"IF(permit_cost+permit_handling=0,{no},{yes})"
    live = sentence_formula(draft.language, met, {"fee": live_fee, "trips": "permit_trips"})
    shown = met if build.permit_visits else fee
    return formula(f"IF(permit_trips=0,{live_fee},{live})", shown, looks.PLAIN)


def _tax_and_total(draft: Draft) -> Iterator[Line]:
    bid, build = draft.bid, draft.bid.price
    yield said("Tax"), _tax_in_words(draft), draft.money("tax_amount", build.tax)
    yield said("Total"), _unpriced(draft), _money(draft, "bid_total", build.total)
    yield _cap(draft)
    if bid.second_total is not None:
        why = words(said("if this turns out badly: {why}", why=bid.second_total_why), looks.PLAIN)
        yield said("Second total"), why, _money(draft, "second_total", bid.second_total)


def _tax_in_words(draft: Draft) -> Cell:
    """What the tax is on, by its mode; the rates follow the build-up."""
    build, terms = draft.bid.price, draft.bid.books.shop.tax
    live = {
        "rate": f"ROUND(tax_rate*100,{_PLACES})",
        "share": f"ROUND(tax_share*100,{_PLACES})",
    }
    pct, part = _plain(build.tax_rate_pct), _plain(terms.taxed_share_pct)
    told = {mode: _text(draft, words_of_it) for mode, words_of_it in UNTAXED_WORDS.items()}
    for mode in CHARGING:
        told[mode] = sentence_formula(draft.language, customer_words(mode, pct, part), live)
    shown = UNTAXED_WORDS.get(build.tax_mode) or customer_words(build.tax_mode, pct, part)
    return formula(by_word("tax_mode", told), shown, looks.PLAIN)


def _unpriced(draft: Draft) -> Cell:
    """Say whether the total leaves items out, because the book has no price for them."""
    price = draft.bid.price
    count = len(price.unpriced_items)
    without = said("{items} item(s) have no price yet; the total leaves them out.", items=count)
    some = sentence_formula(draft.language, without, {"items": "unpriced_count"})
    whole = _text(draft, ALL_OF_IT)
    told = f'IF(materials_basis="{OVERRIDE}",{whole},IF(unpriced_count=0,{whole},{some}))'
    complete = price.materials_overridden or not count
    return formula(told, ALL_OF_IT if complete else without, looks.PLAIN)


def _cap(draft: Draft) -> Line:
    """The most that is paid, where the price form has one; else that there is none."""
    form = draft.bid.price.form
    words_of_it = {CAPPED: _text(draft, CAP), "": _text(draft, NO_CAP)}
    amounts = {CAPPED: "not_to_exceed_cap", "": _text(draft, NONE_STATED)}
    most = by_word("price_form", amounts)
    told = formula(
        by_word("price_form", words_of_it), NO_CAP if form.cap is None else CAP, looks.PLAIN
    )
    if form.cap is None:
        return said("Not to exceed"), told, formula(most, NONE_STATED, looks.figure(looks.MONEY))
    return said("Not to exceed"), told, draft.money(most, form.cap, total=True)


def _payments(draft: Draft) -> Iterator[Line]:
    """Deposit with its flag, and the balance or the payments of the plan."""
    build = draft.bid.price
    payment = build.payment
    kinds = _deposit_kinds(draft)
    share = by_word("deposit_of", {kind: piece for kind, (piece, _) in kinds.items()})
    over = said("{share} {warning}", share=kinds[payment.deposit_of][1], warning=OVER)
    flagged = sentence_formula(draft.language, over, {"share": share})
    is_over = f"IF(deposit_cap={text(NONE)},FALSE,deposit_amount>deposit_cap)"
    shown = over if payment.over_cap else kinds[payment.deposit_of][1]
    told = formula(f"IF({is_over},{flagged},{share})", shown, looks.PLAIN)
    yield said("Deposit"), told, draft.money("deposit_amount", build.deposit)
    if payment.deposit_of != PLAN:
        rest = words(AFTER_DEPOSIT, looks.PLAIN)
        yield said("Balance"), rest, draft.money("balance_amount", build.balance)
        return
    for at, step in enumerate(payment.steps, start=1):
        due = words(word(step.when), looks.PLAIN)
        yield said("Payment {number}", number=at), due, draft.money(f"payment_{at}", step.amount)


def _deposit_kinds(draft: Draft) -> dict[str, tuple[str, str]]:
    """What the deposit is a share of: the formula that says so, and the words."""
    pct = _plain(draft.bid.price.deposit_pct)
    live = {"pct": f"ROUND(deposit_rate*100,{_PLACES})"}
    of_parts = said("{pct} % of the materials as sold", pct=pct)
    of_all = said("{pct} % of the total", pct=pct)
    planned = draft.bid.price.payment.deposit_of == PLAN
    first: dict[str, tuple[str, str]] = {PLAN: (_text(draft, _FIRST), _FIRST)} if planned else {}
    return first | {
        MATERIALS: (sentence_formula(draft.language, of_parts, live), of_parts),
        TOTAL: (sentence_formula(draft.language, of_all, live), of_all),
    }


def _plain(figure: Decimal, places: int = _PLACES) -> str:
    """A figure as a formula joins it to text: rounded, and no zeros behind the point."""
    shown = f"{to_decimal(figure, places):f}"
    return shown.rstrip("0").rstrip(".") if "." in shown else shown
