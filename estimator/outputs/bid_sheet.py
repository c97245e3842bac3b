"""The Bid sheet: one page for the customer, in plain words, with the price and no unit costs."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from estimator.guide.title_words import title_of
from estimator.outputs import looks
from estimator.outputs.bid_price import write_price_lines
from estimator.outputs.bid_words import CAUTIONS, assumption_said, scope_lines, visit_lines
from estimator.outputs.cells import Cell, Sheet, blank, day, words
from estimator.outputs.draft import NOT_STATED, Draft
from estimator.outputs.finding_words import included
from estimator.saying import said, word

NAME = said("Bid")
WIDTHS = "17 70 17"
NOTHING_ASSUMED = said("nothing")
_SIGNING_PT = 26


def write_bid_sheet(draft: Draft) -> Sheet:
    """Write the page; amounts follow the price build-up."""
    sheet = draft.sheet(NAME, WIDTHS, wide=False, language=draft.language)
    sheet.one_page = True
    terms = draft.bid.books.shop.terms
    sheet.title(NAME)
    _parties(draft, sheet)
    _list(sheet, said("The work"), scope_lines(draft.bid))
    _list(sheet, said("Included"), map(word, terms.included))
    _because_of_checks(draft, sheet)
    _list(sheet, said("Not included"), map(word, terms.excluded))
    _assumed(draft, sheet)
    sheet.section(said("Price"))
    write_price_lines(draft, sheet)
    sheet.section(said("Time and terms"))
    for visit, what in visit_lines(draft.bid):
        _line(sheet, visit, what)
    for label, text in _terms(draft):
        _line(sheet, label, text)
    _signatures(sheet)
    return sheet


def _terms(draft: Draft) -> Iterator[tuple[str, str]]:
    """What both agree to besides the price; some of it only where something is stated."""
    terms = draft.bid.books.shop.terms
    for label, text, always in (
        (said("Start"), word(terms.start_line), True),
        (said("Finish"), word(terms.finish_line), False),
        (said("Permit"), word(terms.permit_line), True),
        (said("Permit filed by"), word(draft.bid.price.permit_filed_by), True),
        (said("Payment"), word(terms.payment_line), True),
        (said("Cleaning up"), word(terms.cleanup_line), False),
        (said("Workmanship"), word(terms.workmanship_line), True),
        (said("Changes"), word(terms.change_line), True),
        (said("Insurance"), word(terms.insurance_line), False),
        (said("Liens"), word(terms.lien_line), False),
        (said("Cancellation"), word(terms.cancellation_text), True),
        (said("Cautions"), CAUTIONS, True),
    ):
        if always or text.strip():
            yield label, text


def _line(sheet: Sheet, label: str, text: str, amount: Cell | None = None) -> int:
    """A label, what it says (or that nothing was stated), and perhaps an amount."""
    bare = text.strip()  # a saying without spaces round it stays one
    told = words((text if text == bare else bare) or NOT_STATED, looks.PLAIN)
    return sheet.put([words(label, looks.LABEL), told, amount])


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
    if lines := tuple(included(draft.bid)):
        _list(sheet, said("Included because of the checks"), lines)


def _assumed(draft: Draft, sheet: Sheet) -> None:
    """What nobody measured, with what was taken; then what was found and left, if anything."""
    listed = draft.bid.assumptions
    taken = [assumption_said(each) for each in listed if not each.decided]
    _list(sheet, said("Assumed, because it was not measured"), taken, NOTHING_ASSUMED)
    left = [assumption_said(each) for each in listed if each.decided]
    if left:
        _list(sheet, said("Found, and left as it is"), left, first=len(taken) + 1)


def _parties(draft: Draft, sheet: Sheet) -> None:
    """Who bids, for whom, where, and until when it stands."""
    job, terms = draft.bid.survey.job, draft.bid.books.shop.terms
    firm = "\n".join(
        text for text in (terms.firm_name, terms.firm_contact, terms.firm_license) if text
    )
    for label, text in (
        (said("From"), firm),
        (said("For"), job.customer),
        (said("Address"), job.address),
        (said("Job"), title_of(draft.bid.survey)),
        (said("Bid number"), job.id),
    ):
        _line(sheet, label, text)
    if draft.bid.versions:
        version = draft.bid.versions[-1]
        _line(
            sheet, said("Version"), said("{number}: {why}", number=version.number, why=version.why)
        )
    if job.bid_date is None:
        _line(sheet, said("Date"), NOT_STATED)
        _line(sheet, said("Valid until"), NOT_STATED)
        return
    row = sheet.put([words(said("Date"), looks.LABEL), day(job.bid_date, looks.PLAIN_DATE)])
    draft.names["bid_date"] = sheet.ref("B", row)
    until = day(job.bid_date, looks.PLAIN_DATE)._replace(formula="bid_date+validity_days")
    last = int(until.value or 0) + terms.validity_days
    sheet.put([words(said("Valid until"), looks.LABEL), until._replace(value=last)])


def _signatures(sheet: Sheet) -> None:
    """Lines to sign and date on."""
    sheet.skip()
    for who in (said("Customer, date"), said("Firm, date")):
        sheet.put([words(who, looks.LABEL), blank(looks.RULE), blank(looks.RULE)], _SIGNING_PT)
