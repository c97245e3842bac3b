"""The page of a change order for the customer: what was found, what it costs, who agrees."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from estimator.guide.title_words import title_of
from estimator.language import SOURCE, Language
from estimator.outputs import looks
from estimator.outputs.bid_words import CAUTIONS
from estimator.outputs.cells import Sheet, blank, day, words
from estimator.outputs.change_checks_sheet import NAME as CHECKS_SHEET
from estimator.outputs.draft import NOT_STATED, Draft
from estimator.outputs.text_layout import number
from estimator.pricing.change_records import ChangedLine, ChangeOrder, Recheck
from estimator.saying import Saying, listed, said, word

NAME = said("Change order")
WIDTHS = "17 70 17"
NOTHING = said("nothing")
AGREED = said(
    "Signed by both, this page changes the bid named above. All else in that bid stays as it is."
)
_SIGNING_PT = 26


def write_page(draft: Draft, order: ChangeOrder) -> Sheet:
    """Write the page; amounts follow the sheet with the price of the change."""
    sheet = draft.sheet(NAME, WIDTHS, wide=False, language=draft.language)
    sheet.one_page = True
    sheet.title(NAME)
    _parties(sheet, order)
    _list(sheet, said("What the house turned out to be"), _facts(order))
    for title, status in (
        (said("Added"), "added"),
        (said("Dropped"), "dropped"),
        (said("Changed"), "changed"),
    ):
        found = (line for line in order.lines if line.status == status)
        _list(sheet, title, (_line_said(line) for line in found))
    _list(sheet, said("Checked again, and not within"), _open_checks(order, draft.language))
    sheet.section(said("Price"))
    _price(draft, sheet, order)
    sheet.section(said("Terms"))
    for label, text in (
        (said("Changes"), word(order.after.books.shop.terms.change_line.strip())),
        (said("Agreement"), AGREED),
        (said("Cautions"), CAUTIONS),
    ):
        _line(sheet, label, text)
    sheet.skip()
    for who in (said("Customer, date"), said("Firm, date")):
        sheet.put([words(who, looks.LABEL), blank(looks.RULE), blank(looks.RULE)], _SIGNING_PT)
    return sheet


def _line(sheet: Sheet, label: str, text: str) -> None:
    sheet.put([words(label, looks.LABEL), words(text or NOT_STATED, looks.PLAIN)])


def _parties(sheet: Sheet, order: ChangeOrder) -> None:
    job, terms = order.after.survey.job, order.after.books.shop.terms
    firm = "\n".join(
        text for text in (terms.firm_name, terms.firm_contact, terms.firm_license) if text
    )
    rows = (
        (said("From"), firm),
        (said("For"), job.customer),
        (said("Address"), job.address),
        (said("Job"), title_of(order.after.survey)),
        (said("To bid number"), order.before.survey.job.id),
        (said("Why"), order.why),
    )
    for label, text in rows:
        _line(sheet, label, text.strip())
    for label, date in (
        (said("Bid of"), order.before.survey.job.bid_date),
        (said("Date"), job.bid_date),
    ):
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
        yield said(
            "{fact}: {before} before, {after} now",
            fact=each.about,
            before=each.before,
            after=each.after,
        )


def _line_said(line: ChangedLine) -> Saying:
    """One line with its counts; hours are not shown to the customer."""
    before, after = number(line.quantity_before), number(line.quantity_after)
    what, unit = word(line.description), word(line.unit)
    if line.status == "changed" and before != after:
        return said(
            "{what}: {after} {unit} in place of {before}",
            what=what,
            after=after,
            unit=unit,
            before=before,
        )
    if line.status == "changed":
        return said(
            "{what}: {after} {unit}, takes another time than before",
            what=what,
            after=after,
            unit=unit,
        )
    count = listed((after if line.status == "added" else before, unit), " ")
    return listed((what, count), ": ")


def _open_checks(order: ChangeOrder, language: Language) -> Iterator[Saying]:
    for each in order.rechecks:
        title, figures = word(each.title), _figures(each, language)
        if each.verdict_after == "unknown":
            yield said("{check}: not known; {figures}", check=title, figures=figures)
        elif each.verdict_after == "fail":
            yield said("{check}: over its limit; {figures}", check=title, figures=figures)


def _figures(each: Recheck, language: Language) -> str:
    """The figures of a check; those that can only be said in English stand on another sheet."""
    figures = each.figures_after
    if isinstance(figures, Saying) or language.code == SOURCE:
        return figures
    return said("its figures are on the sheet {sheet}", sheet=CHECKS_SHEET)


def _price(draft: Draft, sheet: Sheet, order: ChangeOrder) -> None:
    price = order.price
    rows = [
        (said("Change"), said("before tax"), "change_before_tax", price.before_tax),
        (said("Tax"), said("on the change"), "change_tax", price.tax),
        (said("This change"), said("in all"), "change_total", price.total),
        (said("First bid"), said("as agreed"), "job_total_before", price.job_total_before),
        (said("New total"), said("first bid and this change"), "job_total", price.job_total),
    ]
    if price.cap is not None:
        ends = said("the job costs no more; the old cap ends")
        rows.append((said("New cap"), ends, "job_cap", price.cap))
    for label, text, name, amount in rows:
        total = name in ("change_total", "job_total")
        cell = draft.money(name, amount, total=total)
        sheet.put([words(label, looks.LABEL), words(text, looks.PLAIN), cell])
