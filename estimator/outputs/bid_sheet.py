"""The Bid sheet: one page for the customer, in plain words, with the price and no unit costs."""

from __future__ import annotations

from collections.abc import Iterable
from decimal import Decimal

from estimator.outputs import looks
from estimator.outputs.bid_words import (
    CAUTIONS,
    PRICE_FORMS,
    assumption_said,
    scope_lines,
    visit_lines,
)
from estimator.outputs.cells import Cell, Sheet, blank, day, formula, words
from estimator.outputs.draft import NOT_STATED, Draft
from estimator.outputs.finding_words import included
from estimator.outputs.price_steps import OVERRIDE

NAME = "Bid"
WIDTHS = "17 70 17"
MINIMUM = "The firm's minimum charge applies."
BUILT_UP = "Built up from labor, materials and trips."
NO_TAX = "none charged as a line"
ALL_OF_IT = "For all of the work above, tax included."
UNPRICED = " item(s) have no price yet; the total leaves them out."
NOTHING_ASSUMED = "nothing"
_SIGNING_PT = 26


def write_bid_sheet(draft: Draft) -> Sheet:
    """Write the page; amounts follow the price build-up."""
    sheet = draft.sheet(NAME, WIDTHS, wide=False)
    sheet.one_page = True
    terms = draft.bid.books.shop.terms
    sheet.title("Bid")
    _parties(draft, sheet)
    _list(sheet, "The work", scope_lines(draft.bid))
    _list(sheet, "Included", terms.included)
    _because_of_checks(draft, sheet)
    _list(sheet, "Not included", terms.excluded)
    _assumed(draft, sheet)
    sheet.section("Price")
    _price(draft, sheet)
    sheet.section("Time and terms")
    for visit, what in visit_lines(draft.bid):
        _line(sheet, visit, what)
    for label, text in (
        ("Start", NOT_STATED),
        ("Permit", terms.permit_line),
        ("Payment", terms.payment_line),
        ("Workmanship", terms.workmanship_line),
        ("Changes", terms.change_line),
        ("Cautions", CAUTIONS),
    ):
        _line(sheet, label, text)
    _signatures(sheet)
    return sheet


def _line(sheet: Sheet, label: str, text: str, amount: Cell | None = None) -> int:
    """A label, what it says (or that nothing was stated), and perhaps an amount."""
    said = words(text.strip() or NOT_STATED, looks.PLAIN)
    return sheet.put([words(label, looks.LABEL), said, amount])


def _list(
    sheet: Sheet, title: str, lines: Iterable[str], nothing: str = NOT_STATED, first: int = 1
) -> None:
    """A heading with numbered lines, or the word for none."""
    sheet.section(title)
    filled = [line for line in lines if line.strip()]
    for at, line in enumerate(filled, start=first):
        sheet.put([words(f"{at}. ", looks.NUMBERED), words(line, looks.PLAIN)])
    if not filled:
        sheet.put([None, words(nothing, looks.PLAIN)])


def _because_of_checks(draft: Draft, sheet: Sheet) -> None:
    """What the price holds because of the checks, if anything."""
    if said := tuple(included(draft.bid)):
        _list(sheet, "Included because of the checks", said)


def _assumed(draft: Draft, sheet: Sheet) -> None:
    """What nobody measured, with what was taken; then what was found and left, if anything."""
    listed = draft.bid.assumptions
    taken = [assumption_said(each) for each in listed if not each.decided]
    _list(sheet, "Assumed, because it was not measured", taken, NOTHING_ASSUMED)
    left = [assumption_said(each) for each in listed if each.decided]
    if left:
        _list(sheet, "Found, and left as it is", left, first=len(taken) + 1)


def _parties(draft: Draft, sheet: Sheet) -> None:
    """Who bids, for whom, where, and until when it stands."""
    job, terms = draft.bid.survey.job, draft.bid.books.shop.terms
    firm = "\n".join(
        text for text in (terms.firm_name, terms.firm_contact, terms.firm_license) if text
    )
    for label, text in (
        ("From", firm), ("For", job.customer), ("Address", job.address), ("Job", job.title),
        ("Bid number", job.id),
    ):  # fmt: skip
        _line(sheet, label, text)
    if job.bid_date is None:
        _line(sheet, "Date", NOT_STATED)
        _line(sheet, "Valid until", NOT_STATED)
        return
    row = sheet.put([words("Date", looks.LABEL), day(job.bid_date, looks.PLAIN_DATE)])
    draft.names["bid_date"] = sheet.ref("B", row)
    until = day(job.bid_date, looks.PLAIN_DATE)._replace(formula="bid_date+validity_days")
    last = int(until.value or 0) + terms.validity_days
    sheet.put([words("Valid until", looks.LABEL), until._replace(value=last)])


def _price(draft: Draft, sheet: Sheet) -> None:
    """Price form, allowances, price before tax, tax, total, deposit, balance; each in words."""
    bid, price = draft.bid, draft.bid.price
    form = bid.books.shop.terms.price_form
    _line(sheet, "Price form", PRICE_FORMS.get(form, form))
    _line(sheet, "Allowances", "none stated")
    governs = formula(
        f'IF(offered>built_up,"{MINIMUM}","{BUILT_UP}")',
        MINIMUM if price.minimum_governs else BUILT_UP,
        looks.PLAIN,
    )
    tax = formula(
        f'IF(tax_mode="none","{NO_TAX}",tax_rate)',
        NO_TAX if price.tax_mode == "none" else price.tax_rate_pct.scaleb(-2),
        looks.plain(looks.TAX_WORDS),
    )
    unpriced = _unpriced(draft)
    rows: list[tuple[str, Cell, str, Decimal]] = [
        ("Price before tax", governs, "before_tax", price.before_tax),
        ("Sales tax", tax, "tax_amount", price.tax),
        ("Total", unpriced, "bid_total", price.total),
    ]
    if bid.second_total is not None:
        why = words(f"if this turns out badly: {bid.second_total_why}", looks.PLAIN)
        rows.append(("Second total", why, "second_total", bid.second_total))
    share = formula("deposit_rate", price.deposit_pct.scaleb(-2), looks.plain(looks.SHARE_WORDS))
    rows.append(("Deposit", share, "deposit_amount", price.deposit))
    rest = words("after the deposit", looks.PLAIN)
    rows.append(("Balance", rest, "balance_amount", price.balance))
    for label, said, name, amount in rows:
        total = name in ("bid_total", "second_total")
        sheet.put([words(label, looks.LABEL), said, draft.money(name, amount, total=total)])


def _unpriced(draft: Draft) -> Cell:
    """Say whether the total leaves items out, because the book has no price for them."""
    price = draft.bid.price
    count = len(price.unpriced_items)
    listed = f'IF(unpriced_count=0,"{ALL_OF_IT}",unpriced_count&"{UNPRICED}")'
    text = f'IF(materials_basis="{OVERRIDE}","{ALL_OF_IT}",{listed})'
    complete = price.materials_overridden or not count
    return formula(text, ALL_OF_IT if complete else f"{count}{UNPRICED}", looks.PLAIN)


def _signatures(sheet: Sheet) -> None:
    """Lines to sign and date on."""
    sheet.skip()
    for who in ("Customer, date", "Firm, date"):
        sheet.put([words(who, looks.LABEL), blank(looks.RULE), blank(looks.RULE)], _SIGNING_PT)
