"""The sheet with every check that says something else after a change."""

from __future__ import annotations

from estimator.outputs import looks
from estimator.outputs.cells import Row, Sheet, line_number, words
from estimator.outputs.draft import Draft
from estimator.outputs.text_change import NOT_BEFORE, NOT_NOW
from estimator.pricing.change_records import ChangeOrder, Recheck

NAME = "Checked again"
WIDTHS = "6 26 20 14 40 14 40 40"
HEADERS = (
    "Line", "What was checked", "Finding", "Before", "Figures before", "Now", "Figures now",
    "What to do",
)  # fmt: skip
ADVICE = "Every rule was asked again; these say something else, or are always shown."


def write_change_checks(draft: Draft, order: ChangeOrder) -> Sheet:
    """Write the sheet; it holds words only."""
    sheet = draft.sheet(NAME, WIDTHS)
    draft.heading(sheet, "Checked again: before the change and now", ADVICE)
    sheet.section("Findings")
    rows = (_row(at, each) for at, each in enumerate(order.rechecks, start=1))
    sheet.table("Rechecks", HEADERS, rows)
    return sheet


def _row(at: int, each: Recheck) -> Row:
    now = each.verdict_after.upper() or NOT_NOW
    return [
        line_number(at), words(each.title), words(each.finding_id),
        words(each.verdict_before.upper() or NOT_BEFORE), words(each.figures_before),
        words(f"{now}, stops the bid" if each.stops else now, looks.STRONG),
        words(each.figures_after), words(each.remedy),
    ]  # fmt: skip
