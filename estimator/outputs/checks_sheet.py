"""The Checks sheet: findings worst first, each with figures, citation and remedy; then cautions."""

from __future__ import annotations

from collections import Counter

from estimator.outputs import looks
from estimator.outputs.cells import Row, Sheet, line_number, words
from estimator.outputs.draft import Draft
from estimator.rules.records import Finding

NAME = "Checks"
WIDTHS = "6 12 18 18 36 22 38 22"
HEADERS = (
    "Line", "Verdict", "About", "Rule", "Figures", "Rule book", "What to do", "Accepted because",
)  # fmt: skip
RANKS = {"fail": 1, "unknown": 2, "note": 3, "pass": 4}
NOTHING = "No rule was held against this job: ask a licensed electrician and the local office."
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
    draft.heading(sheet, "Checks: what was held against the rules", _summary(draft))
    sheet.section("Findings, worst first")
    findings = sorted(draft.bid.findings, key=_rank)
    rows = [_row(at, finding) for at, finding in enumerate(findings, start=1)]
    if rows:
        sheet.table("Findings", HEADERS, rows)
    else:
        sheet.note(NOTHING)
    sheet.section("Cautions")
    for caution in CAUTIONS:
        sheet.note(caution.format(year=US_YEAR if draft.is_us else ""))
    return sheet


def _summary(draft: Draft) -> str:
    """Say how many findings of each verdict there are."""
    findings = draft.bid.findings
    counts = Counter(finding.verdict for finding in findings)
    said = [
        f"{counts[verdict]} {verdict.upper()}" for verdict in ("fail", "unknown", "note", "pass")
    ]
    stopping = sum(finding.stops_the_bid for finding in findings)
    return f"{', '.join(said)}. {stopping} of them stop the bid until accepted in the job file."


def _rank(finding: Finding) -> int:
    return 0 if finding.stops_the_bid else RANKS[finding.verdict]


def _row(at: int, finding: Finding) -> Row:
    verdict = finding.verdict.upper()
    if finding.stops_the_bid:
        verdict = f"{verdict}, {STOPS}"
    return [
        line_number(at), words(verdict, looks.STRONG), words(finding.subject), words(finding.rule),
        words(finding.figures), words(finding.cite), words(finding.remedy),
        words(finding.accepted),
    ]  # fmt: skip
