"""The page of a change order for the customer: what was found, what it costs, who agrees."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from estimator.outputs import looks
from estimator.outputs.bid_words import CAUTIONS
from estimator.outputs.cells import Sheet, blank, day, words
from estimator.outputs.draft import NOT_STATED, Draft
from estimator.outputs.text_layout import number
from estimator.pricing.change_records import ChangedLine, ChangeOrder

NAME = "Change order"
WIDTHS = "17 70 17"
NOTHING = "nothing"
AGREED = (
    "Signed by both, this page changes the bid named above. All else in that bid stays as it is."
)
_SIGNING_PT = 26


def write_page(draft: Draft, order: ChangeOrder) -> Sheet:
    """Write the page; amounts follow the sheet with the price of the change."""
    sheet = draft.sheet(NAME, WIDTHS, wide=False)
    sheet.one_page = True
    sheet.title("Change order")
    _parties(sheet, order)
    _list(sheet, "What the house turned out to be", _facts(order))
    for title, status in (("Added", "added"), ("Dropped", "dropped"), ("Changed", "changed")):
        found = (line for line in order.lines if line.status == status)
        _list(sheet, title, (_said(line) for line in found))
    _list(sheet, "Checked again, and not within", _open_checks(order))
    sheet.section("Price")
    _price(draft, sheet, order)
    sheet.section("Terms")
    for label, text in (
        ("Changes", order.after.books.shop.terms.change_line),
        ("Agreement", AGREED),
        ("Cautions", CAUTIONS),
    ):
        _line(sheet, label, text)
    sheet.skip()
    for who in ("Customer, date", "Firm, date"):
        sheet.put([words(who, looks.LABEL), blank(looks.RULE), blank(looks.RULE)], _SIGNING_PT)
    return sheet


def _line(sheet: Sheet, label: str, text: str) -> None:
    sheet.put([words(label, looks.LABEL), words(text.strip() or NOT_STATED, looks.PLAIN)])


def _parties(sheet: Sheet, order: ChangeOrder) -> None:
    job, terms = order.after.survey.job, order.after.books.shop.terms
    firm = "\n".join(
        text for text in (terms.firm_name, terms.firm_contact, terms.firm_license) if text
    )
    rows = (
        ("From", firm), ("For", job.customer), ("Address", job.address), ("Job", job.title),
        ("To bid number", order.before.survey.job.id), ("Why", order.why),
    )  # fmt: skip
    for label, text in rows:
        _line(sheet, label, text)
    for label, date in (
        ("Bid of", order.before.survey.job.bid_date), ("Date", job.bid_date),
    ):  # fmt: skip
        if date is None:
            _line(sheet, label, NOT_STATED)
        else:
            sheet.put([words(label, looks.LABEL), day(date, looks.PLAIN_DATE)])


def _list(sheet: Sheet, title: str, lines: Iterable[str]) -> None:
    sheet.section(title)
    at = 0
    for at, line in enumerate(lines, start=1):
        sheet.put([words(f"{at}. ", looks.NUMBERED), words(line, looks.PLAIN)])
    if not at:
        sheet.put([None, words(NOTHING, looks.PLAIN)])


def _facts(order: ChangeOrder) -> Iterator[str]:
    for each in order.facts:
        yield f"{each.about}: {each.before} before, {each.after} now"


def _said(line: ChangedLine) -> str:
    """One line with its counts; hours are not shown to the customer."""
    before, after = number(line.quantity_before), number(line.quantity_after)
    if line.status == "changed" and before != after:
        return f"{line.description}: {after} {line.unit} in place of {before}"
    if line.status == "changed":
        return f"{line.description}: {after} {line.unit}, takes another time than before"
    return f"{line.description}: {after if line.status == 'added' else before} {line.unit}"


def _open_checks(order: ChangeOrder) -> Iterator[str]:
    for each in order.rechecks:
        if each.verdict_after in ("fail", "unknown"):
            word = "not known" if each.verdict_after == "unknown" else "over its limit"
            yield f"{each.title}: {word}; {each.figures_after}"


def _price(draft: Draft, sheet: Sheet, order: ChangeOrder) -> None:
    price = order.price
    rows = [
        ("Change", "before tax", "change_before_tax", price.before_tax),
        ("Tax", "on the change", "change_tax", price.tax),
        ("This change", "in all", "change_total", price.total),
        ("First bid", "as agreed", "job_total_before", price.job_total_before),
        ("New total", "first bid and this change", "job_total", price.job_total),
    ]
    if price.cap is not None:
        rows.append(("New cap", "the job costs no more; the old cap ends", "job_cap", price.cap))
    for label, said, name, amount in rows:
        total = name in ("change_total", "job_total")
        cell = draft.money(name, amount, total=total)
        sheet.put([words(label, looks.LABEL), words(said, looks.PLAIN), cell])
