"""The Checks sheet: findings worst first; then cautions; then the list of tests and cautions."""

from __future__ import annotations

from estimator.outputs import looks
from estimator.outputs.cells import Row, Sheet, blank, line_number, words
from estimator.outputs.draft import Draft
from estimator.outputs.finding_words import counts, decisions, held_against
from estimator.rules.records import Finding
from estimator.rules.safety_list import safety_list

NAME = "Checks"
WIDTHS = "6 12 22 18 16 34 22 36 24"
HEADERS = (
    "Line", "Verdict", "What was checked", "Rule", "About", "Figures", "Rule book", "What to do",
    "Decided",
)  # fmt: skip
TESTS = "Tests and cautions: tick each line"
_LINE_PT = 16
US_YEAR = " (in the US, built before 1978)"
STOPS = "stops the bid"
CAUTIONS = (
    "Turn the circuit off, and prove at the box that it is dead, before anything is opened.",
    "Local code, the permit office and licensed practice decide what may be done, and by whom.",
    "A check that passes says that the figures stated are within the rule named, and no more. "
    "What was not measured is UNKNOWN, and was not checked.",
    "Paint in older houses{year} may hold lead. Test it, or work as if it does.",
    "Compound, texture and plaster of older houses may hold asbestos. Do not sand, saw or drill "
    "suspect material before a laboratory has tested it.",
    "Pipes, ducts and other cables may run unseen where the cutting is. Look and feel first.",
    "Stand on ladders that are rated for the load and footed; never reach sideways from them.",
)


def write_checks(draft: Draft) -> Sheet:
    """Write the sheet; it holds words only, nothing in it follows from other cells."""
    sheet = draft.sheet(NAME, WIDTHS)
    draft.heading(sheet, "Checks: what was held against the rules", counts(draft.bid.findings))
    sheet.section("Findings, worst first")
    rows = [_row(at, finding) for at, finding in enumerate(draft.bid.findings, start=1)]
    if rows:
        sheet.table("Findings", HEADERS, rows)
    sheet.note(held_against(draft.bid.survey.job))
    sheet.section("Cautions")
    for caution in CAUTIONS:
        sheet.note(caution.format(year=US_YEAR if draft.is_us else ""))
    _tests(draft, sheet)
    return sheet


def _row(at: int, finding: Finding) -> Row:
    verdict = "PUT RIGHT" if finding.remedied else finding.verdict.upper()
    if finding.stops_the_bid:
        verdict = f"{verdict}, {STOPS}"
    return [
        line_number(at), words(verdict, looks.STRONG), words(finding.title), words(finding.rule),
        words(finding.subject), words(finding.figures), words(finding.cite),
        words(finding.remedy), words("\n".join(decisions(finding))),
    ]  # fmt: skip


def _tests(draft: Draft, sheet: Sheet) -> None:
    """A page of its own: what to look at and to test, with a frame to tick before each line."""
    sheet.page(TESTS)
    for title, texts in safety_list(draft.bid.survey, draft.bid.findings):
        sheet.put([words(title, looks.STEP)], _LINE_PT)
        for text in texts:
            sheet.put([blank(), words(text, looks.LINE)], _LINE_PT)
