"""The sheets of a closed job that its comparison adds up: costs, hours, lines for others."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from estimator.ledger.bought import BoughtLine
from estimator.ledger.comparison import Comparison, CostPart, WorkedLine
from estimator.outputs import looks
from estimator.outputs.cells import Cell, Row, Sheet, day, formula, number, words
from estimator.outputs.formats import Formats
from estimator.outputs.ledger_sheets import sized_sheet

COSTS, HOURS, OTHERS = "Costs", "Hours", "For others"
_COST_HEADS = ("Date", "Kind", "What", "Paper", "Net", "Tax", "Amount")
_HOUR_HEADS = ("Date", "Phase", "Task", "Who", "Hours", "Cost per hour", "Cost")
_OTHER_HEADS = ("Date", "For", "What", "Paper", "Net", "Tax", "Amount")
_WIDTHS = "13 16 34 26 13 13 14"
FRAMED = "Shaded cells in a dashed frame may be changed; every other figure follows."
SPLIT = "The tax of a receipt is split over its lines so that the shares add up to what was paid."


@dataclass(frozen=True, slots=True)
class Pages:
    """A closed job and its formats, for the sheets."""

    job: Comparison
    formats: Formats

    def amount(self, text: str, value: Decimal, *, total: bool = False) -> Cell:
        """Money that follows from other cells, rounded to the minor unit."""
        look = looks.total(looks.MONEY) if total else looks.figure(looks.MONEY)
        return formula(f"ROUND({text},{self.formats.places})", value, look)


def typed(amount: Decimal) -> Cell:
    """Money that may be changed in the sheet."""
    return number(amount, looks.entry(looks.MONEY))


def _begin(name: str, title: str, advice: str) -> Sheet:
    sheet = sized_sheet(name, _WIDTHS)
    sheet.begin_block()
    sheet.title(title)
    sheet.note(advice)
    sheet.freeze()
    return sheet


def write_costs(pages: Pages) -> tuple[Sheet, str, str]:
    """Write what every cost but labor is made of; give the ranges of its kinds and amounts."""
    sheet = _begin(COSTS, "Costs, line by line", f"{FRAMED} {SPLIT}")
    rows = (_cost(pages, sheet, part) for part in pages.job.parts)
    made = sheet.table("Costs", _COST_HEADS, rows)
    first, last = made.first_row + 1, max(made.last_row, made.first_row + 1)
    return sheet, sheet.span("B", first, last), sheet.span("G", first, last)


def _cost(pages: Pages, sheet: Sheet, part: CostPart) -> Row:
    row = sheet.next_row
    return [
        day(part.date, looks.TEXT_DATE), words(part.kind), words(part.what), words(part.paper),
        typed(part.net), typed(part.tax), pages.amount(f"E{row}+F{row}", part.amount),
    ]  # fmt: skip


def write_hours(pages: Pages) -> tuple[Sheet, dict[str, str]]:
    """Write every line of hours; give the ranges of phases, hours and costs."""
    sheet = _begin(HOURS, "Hours, line by line", FRAMED)
    rows = (_hours(pages, sheet, worked) for worked in pages.job.worked)
    made = sheet.table("Hours", _HOUR_HEADS, rows)
    first, last = made.first_row + 1, max(made.last_row, made.first_row + 1)
    columns = {"phase": "B", "hours": "E", "cost": "G"}
    return sheet, {name: sheet.span(column, first, last) for name, column in columns.items()}


def _hours(pages: Pages, sheet: Sheet, worked: WorkedLine) -> Row:
    row = sheet.next_row
    return [
        day(worked.date, looks.TEXT_DATE), words(worked.phase), words(worked.task),
        words(worked.who), number(worked.hours), typed(worked.cost_per_hour),
        pages.amount(f"E{row}*F{row}", worked.cost),
    ]  # fmt: skip


def write_others(pages: Pages) -> Sheet:
    """Write the lines of this job's papers that are for somebody or something else."""
    sheet = _begin(OTHERS, "On the same papers, not for this job", SPLIT)

    def rows() -> Iterator[Row]:
        for line in pages.job.elsewhere:
            yield _other(pages, sheet, line)

    sheet.table("For_others", _OTHER_HEADS, rows())
    return sheet


def _other(pages: Pages, sheet: Sheet, line: BoughtLine) -> Row:
    row = sheet.next_row
    sign = -1 if line.paper == "returns" else 1
    paper = f"{'return' if sign < 0 else 'receipt'} {line.doc_no}"
    return [
        day(line.date, looks.TEXT_DATE), words(f"job {line.job}" if line.job else line.purpose),
        words(line.description), words(paper), typed(sign * line.net), typed(sign * line.tax),
        pages.amount(f"E{row}+F{row}", sign * line.gross),
    ]  # fmt: skip
