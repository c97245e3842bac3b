"""The Labor sheet: hours of every task, low, likely and high; hours by phase; visits and waits."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from decimal import Decimal

from estimator.outputs import looks
from estimator.outputs.cells import Row, Sheet, Table, formula, line_number, middle, number, words
from estimator.outputs.charts import Bars, Picture
from estimator.outputs.draft import Draft
from estimator.outputs.visits_block import write_visits
from estimator.pricing.records import LaborLine

NAME = "Labor"
WIDTHS = "7 11 40 10 6 8 8 8 8 8 8 8 18 20"
HEADERS = (
    "Line", "Phase", "Task", "Quantity", "Unit", "Low, one", "Likely, one", "High, one", "Factor",
    "Hours low", "Hours likely", "Hours high", "Where", "Why the factor",
)  # fmt: skip
PHASE_HEADERS = ("Line", "Phase", "What it covers", "Low", "Likely", "High")
PHASES = {
    "set-up": "arriving, protecting, finding the circuit and proving it dead",
    "rough-in": "cutting, boring, fishing cable, fitting boxes",
    "terminate": "joining wires, mounting devices",
    "test": "testing and labelling",
    "close": "closing openings, tape and compound",
    "paint": "priming and painting",
    "clean-up": "cleaning up, taking debris away",
}
_SIX = 6
_CHART_ROWS, _CHART_CM = 18, (8, 24)
_CHART_FORM = "0.0"


def write_labor(draft: Draft) -> Sheet:
    """Write the sheet; names the low, likely, high and expected hours."""
    sheet = draft.sheet(NAME, WIDTHS)
    draft.heading(sheet, "Labor: hours for one person, hands on")
    sheet.section("Tasks")
    made = sheet.table("Tasks", HEADERS, (_task(draft, sheet, line) for line in draft.bid.labor))
    _sums(draft, sheet, made.first_row + 1, max(made.last_row, made.first_row + 1))
    sheet.section("Hours by phase")
    hours = _hours_by_phase(draft.bid.labor)
    rows = _phases(draft, sheet, hours, (made.first_row + 1, made.last_row))
    phases = sheet.table("Phases", PHASE_HEADERS, rows)
    write_visits(draft, sheet)
    if hours:
        sheet.begin_block()
        sheet.skip()
        sheet.picture = _picture(sheet, hours, phases)
        sheet.skip(_CHART_ROWS)
    return sheet


def _task(draft: Draft, sheet: Sheet, line: LaborLine) -> Row:
    """One task: the Takeoff's quantity, the book's hours for one, and the factor."""
    row = sheet.next_row
    place = draft.places.get(("task", line.task_line_id))
    hours = (
        formula(f"ROUND(D{row}*{unit}{row}*I{row},{_SIX})", value, looks.figure(looks.HOURS))
        for unit, value in (
            ("F", line.hours_low), ("G", line.hours_likely), ("H", line.hours_high)
        )
    )  # fmt: skip
    each = (line.unit_low, line.unit_likely, line.unit_high)
    for end, column in (("low", "J"), ("likely", "K"), ("high", "L")):
        draft.places[f"hours {end}", line.task_line_id] = sheet.ref(column, row)
    return [
        words(line.task_line_id), words(line.phase), words(line.description),
        formula(place, line.quantity) if place else number(line.quantity),
        middle(line.unit), *(number(one, looks.entry(looks.HOURS)) for one in each),
        number(line.factor), *hours, words(line.where), words(line.factor_why),
    ]  # fmt: skip


def _sums(draft: Draft, sheet: Sheet, first: int, last: int) -> None:
    """Add the hours up, and weigh them by the three-point rule."""
    hours, look = draft.bid.hours, looks.total(looks.HOURS)
    sums = (("J", hours.low), ("K", hours.likely), ("L", hours.high))
    cells = [formula(f"SUM({column}{first}:{column}{last})", value, look) for column, value in sums]
    row = sheet.put([None, None, words("All tasks", looks.LABEL), *[None] * 6, *cells])
    for name, column in (("hours_low", "J"), ("hours_likely", "K"), ("hours_high", "L")):
        draft.names[name] = sheet.ref(column, row)
    rule = f"ROUND((hours_low+4*hours_likely+hours_high)/6,{_SIX})"
    expected = formula(rule, hours.expected, look)
    label = words("Expected: (low + 4 x likely + high) / 6", looks.LABEL)
    row = sheet.put([None, None, label, *[None] * 7, expected])
    draft.names["hours_expected"] = sheet.ref("K", row)


def _hours_by_phase(labor: Sequence[LaborLine]) -> dict[str, tuple[Decimal, ...]]:
    """Add up low, likely and high hours of each phase that has a task, in order of the work."""
    known = [*PHASES, *sorted({line.phase for line in labor} - set(PHASES))]
    lines = {phase: [line for line in labor if line.phase == phase] for phase in known}
    return {
        phase: (
            sum((line.hours_low for line in met), Decimal(0)),
            sum((line.hours_likely for line in met), Decimal(0)),
            sum((line.hours_high for line in met), Decimal(0)),
        )
        for phase, met in lines.items()
        if met
    }


def _phases(
    draft: Draft, sheet: Sheet, hours: Mapping[str, tuple[Decimal, ...]], tasks: tuple[int, int]
) -> Iterator[Row]:
    """Sum up each phase; other sheets find its low, likely and high hours by name."""
    first, last = tasks
    for at, (phase, sums) in enumerate(hours.items(), start=1):
        for column, end in zip("DEF", ("low", "likely", "high"), strict=True):
            draft.places[f"{end} hours", phase] = sheet.ref(column, sheet.next_row)
        picked = f"(B{first}:B{last}=B{sheet.next_row})*1"
        cells = [
            formula(
                f"ROUND(SUMPRODUCT({picked},{column}{first}:{column}{last}),{_SIX})",
                value,
                looks.figure(looks.HOURS),
            )
            for column, value in zip("JKL", sums, strict=True)
        ]
        yield [line_number(at), words(phase), words(PHASES.get(phase, "")), *cells]


def _picture(sheet: Sheet, hours: Mapping[str, tuple[Decimal, ...]], phases: Table) -> Picture:
    first, last = phases.first_row + 1, phases.last_row
    bars = (
        Bars(name, sheet.span(column, first, last), values)
        for column, name, values in zip(
            "DEF", PHASE_HEADERS[3:], zip(*hours.values(), strict=True), strict=True
        )
    )
    labels = (sheet.span("B", first, last), tuple(hours))
    row = sheet.next_row
    return Picture("Hours by phase", labels, tuple(bars), _CHART_FORM, _CHART_CM, row)
