"""The inputs of the Range sheet: hours of tasks, risks, prices and waste, with live means."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from estimator.measures import to_decimal
from estimator.outputs import looks
from estimator.outputs.cells import Cell, Row, Sheet, formula, line_number, number, words
from estimator.outputs.draft import Draft, percent, price
from estimator.outputs.range_words import SHAPES
from estimator.pricing.risk_records import PriceRange, RangeInput

RULE_HEADERS = ("Line", "Rule", "Value")
# One layout for all three, so that a column means the same on the whole sheet.
TASK_HEADERS = (
    "Line", "Task", "Chance", "Low", "Likely", "High", "Parts, low", "Parts, likely",
    "Parts, high", "Mean", "Deviation", "Moves the cost by",
)  # fmt: skip
RISK_HEADERS = (
    "Line", "What may be found", *TASK_HEADERS[2:9], "Mean, chance in it", *TASK_HEADERS[10:],
    "Source",
)  # fmt: skip
PART_HEADERS = ("Line", "Prices and waste, in percent", *TASK_HEADERS[2:])
_MOVED = "L"
_SIX, _SCALE_PLACES = 6, 9


def driver_name(at: int) -> str:
    """Name of the cell that holds what the nth driver moves."""
    return f"range_driver_{at}"


def own_hours(spread: PriceRange) -> Cell:
    """Likely hours added up, or what the job states."""
    live = 'IF(hours_basis="override",hours_charged,hours_likely)'
    return formula(live, spread.likely_hours, looks.figure(looks.HOURS))


def write_rules(draft: Draft, sheet: Sheet, spread: PriceRange) -> None:
    """The rules that the live figures below go by."""
    hours = draft.bid.hours
    stated = hours.basis == "override" and hours.likely
    scale = to_decimal(hours.charged / hours.likely, _SCALE_PLACES) if stated else Decimal(1)
    live = 'IF(hours_basis="override",IF(hours_likely=0,1,hours_charged/hours_likely),1)'
    sheet.section("By what rules")
    rows: tuple[tuple[str, str, Cell], ...] = (
        ("range_shape", "Shape of every range", words(spread.shape, looks.ENTRY_WORD)),
        ("range_together", "Hours of tasks run together", percent(spread.correlation_pct)),
        ("range_scale", "Hours stated by the job against likely hours", formula(live, scale)),
    )
    sheet.choices.append((f"C{sheet.next_row + 1}", ",".join(SHAPES)))
    sheet.table("Range_rules", RULE_HEADERS, _rules(draft, sheet, rows))


def _rules(draft: Draft, sheet: Sheet, rows: tuple[tuple[str, str, Cell], ...]) -> Iterator[Row]:
    for at, (name, label, cell) in enumerate(rows, start=1):
        draft.names[name] = sheet.ref("C", sheet.next_row)
        yield [line_number(at), words(label), cell]


def _mean(columns: str, row: int) -> str:
    low, likely, high = (f"{column}{row}" for column in columns)
    return f'IF(range_shape="pert",({low}+4*{likely}+{high})/6,({low}+{likely}+{high})/3)'


def _variance(columns: str, row: int) -> str:
    low, likely, high = (f"{column}{row}" for column in columns)
    squares = f"{low}^2+{likely}^2+{high}^2-{low}*{likely}-{low}*{high}-{likely}*{high}"
    return f'IF(range_shape="pert",(({high}-{low})/6)^2,MAX(0,{squares})/18)'


def _rounded(text: str, value: Decimal, look: str = looks.HOURS) -> Cell:
    return formula(f"ROUND({text},{_SIX})", value, looks.figure(look))


def _moved(draft: Draft, sheet: Sheet, spread: PriceRange, line: int, text: str) -> Cell:
    """What an input moves; a driver's cell gets its name. The column is the same in all tables."""
    for at, driver in enumerate(spread.drivers, start=1):
        if driver.line == line:
            draft.names[driver_name(at)] = sheet.ref(_MOVED, sheet.next_row)
    return draft.money(draft.round_to(text), spread.inputs[line - 1].swing)


def _of_kind(spread: PriceRange, *kinds: str) -> list[tuple[int, RangeInput]]:
    """The inputs of some kinds with their lines."""
    return [(at, each) for at, each in enumerate(spread.inputs, start=1) if each.kind in kinds]


def write_tasks(draft: Draft, sheet: Sheet, spread: PriceRange) -> None:
    """Hours of every task, from the Labor sheet; names the columns of means and deviations."""
    sheet.section("Hours of the tasks")
    inputs = _of_kind(spread, "hours")
    made = sheet.table("Range_tasks", TASK_HEADERS, _tasks(draft, sheet, spread, inputs))
    last = max(made.last_row, made.first_row + 1)
    for name, column in (("range_means", "J"), ("range_deviations", "K")):
        draft.names[name] = sheet.span(column, made.first_row + 1, last)


def _tasks(
    draft: Draft, sheet: Sheet, spread: PriceRange, inputs: list[tuple[int, RangeInput]]
) -> Iterator[Row]:
    lines = [line.task_line_id for line in draft.bid.labor]
    for at, each in inputs:
        row = sheet.next_row
        ends = (("low", each.low), ("likely", each.likely), ("high", each.high))
        places = [
            draft.places[f"hours {end}", lines[at - 1]] if len(lines) == len(inputs) else ""
            for end, _ in ends
        ]
        hours = (
            _rounded(f"{place}*range_scale" if place else "hours_charged", value)
            for place, (_, value) in zip(places, ends, strict=True)
        )
        moved = _moved(draft, sheet, spread, at, f"(F{row}-D{row})*labor_rate")
        yield [
            line_number(at), words(each.name), words(""), *hours, *[words("")] * 3,
            _rounded(_mean("DEF", row), each.mean),
            _rounded(f"({_variance('DEF', row)})^0.5", each.sd), moved,
        ]  # fmt: skip


def write_risks(draft: Draft, sheet: Sheet, spread: PriceRange) -> None:
    """Risks by their chance, and the sums of all hours in closed form."""
    inputs = _of_kind(spread, "risk")
    first = last = 0
    if inputs:
        sheet.section("What may be found")
        made = sheet.table("Range_risks", RISK_HEADERS, _risks(draft, sheet, spread, inputs))
        first, last = made.first_row + 1, made.last_row
    means = f"+SUM(J{first}:J{last})" if inputs else ""
    squares = f"+SUMPRODUCT(K{first}:K{last},K{first}:K{last})" if inputs else ""
    apart = "(1-range_together)*SUMPRODUCT(range_deviations,range_deviations)"
    together = "range_together*SUM(range_deviations)^2"
    look = looks.total(looks.HOURS)
    mean = formula(f"ROUND(SUM(range_means){means},{_SIX})", spread.hours_mean, look)
    spread_text = f"ROUND(({apart}+{together}{squares})^0.5,{_SIX})"
    deviation = formula(spread_text, spread.hours_sd, look)
    label = words("All hours", looks.LABEL)
    row = sheet.put([None, label, *[None] * 7, mean, deviation])
    draft.names["range_mean"] = sheet.ref("J", row)
    draft.names["range_sd"] = sheet.ref("K", row)


def _risks(
    draft: Draft, sheet: Sheet, spread: PriceRange, inputs: list[tuple[int, RangeInput]]
) -> Iterator[Row]:
    for at, each in inputs:
        row = sheet.next_row
        hours = (
            number(end, looks.entry(looks.HOURS)) for end in (each.low, each.likely, each.high)
        )
        parts = (price(end) for end in (each.parts_low, each.parts_likely, each.parts_high))
        mean, chance = _mean("DEF", row), f"C{row}"
        squares = f"{chance}*({_variance('DEF', row)}+({mean})^2)-({chance}*{mean})^2"
        yield [
            line_number(at), words(each.name), percent(each.chance_pct), *hours, *parts,
            _rounded(f"{chance}*{mean}", each.mean),
            _rounded(f"MAX(0,{squares})^0.5", each.sd),
            _moved(draft, sheet, spread, at, f"F{row}*labor_rate+I{row}"), words(each.source),
        ]  # fmt: skip


def write_materials(draft: Draft, sheet: Sheet, spread: PriceRange) -> None:
    """How far prices and waste may move, in percent."""
    sheet.section("Prices and waste")
    inputs = _of_kind(spread, "material prices", "waste")
    sheet.table("Range_materials", PART_HEADERS, _materials(draft, sheet, spread, inputs))


def _materials(
    draft: Draft, sheet: Sheet, spread: PriceRange, inputs: list[tuple[int, RangeInput]]
) -> Iterator[Row]:
    for at, each in inputs:
        row = sheet.next_row
        moved = f"(F{row}-D{row})/100*materials_listed"
        yield [
            line_number(at), words(each.name), words(""),
            *(number(end) for end in (each.low, each.likely, each.high)), *[words("")] * 3,
            _rounded(_mean("DEF", row), each.mean),
            _rounded(f"({_variance('DEF', row)})^0.5", each.sd),
            _moved(draft, sheet, spread, at, moved),
        ]  # fmt: skip
