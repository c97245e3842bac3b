"""Columns of the Compare sheet: doing it yourself, and each hire bid, line by line, added up."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from estimator.outputs import looks
from estimator.outputs.cells import Cell, Row, Sheet, formula, line_number, number, words
from estimator.outputs.compare_inputs import NOT_BOUGHT, added, cost_cells, phase_cells
from estimator.outputs.draft import UNKNOWN, Draft, percent, price
from estimator.pricing.compare_parts import PHASES, basis_of, items_of
from estimator.pricing.compare_records import CompareColumn, CostLine, Priced
from estimator.survey.compare import Hire, Tool

TOOL_HEADERS = ("Line", "Tool", "Price", "Share that stays yours", "Buy, borrow, or yours already")
COLUMN_HEADERS = ("Line", "What it is for", "Cash", "All in", "How it is worked out")
UNSTATED_HEADERS = ("Line", "Bid and part", "More, if it is not in it", "In a sum", "Priced from")
TOOL_CHOICE = "buy,borrow,own"
LEAVES_OUT = "leaves out what is unknown"
WHOLE = "nothing is left out"
_SIX = 6
_ZERO = Decimal(0)
_MONEY = looks.figure(looks.MONEY)


@dataclass(frozen=True, slots=True)
class Sums:
    """The cells in which a column is added up: of cash and all in, and of its time."""

    cash: str
    all_in: str
    time: str


def write_tools(draft: Draft, sheet: Sheet) -> list[int]:
    """Write what each tool costs, what stays of it and whether it is bought; gives the rows."""
    tools = draft.bid.survey.compare.tools
    if not tools:
        return []
    made = sheet.table("Compare_tools", TOOL_HEADERS, _tools(sheet, tools))
    sheet.skip()
    return list(range(made.first_row + 1, made.last_row + 1))


def _tools(sheet: Sheet, tools: tuple[Tool, ...]) -> Iterator[Row]:
    for at, tool in enumerate(tools, start=1):
        sheet.choices.append((f"E{sheet.next_row}", TOOL_CHOICE))
        yield [
            line_number(at), words(tool.name), _typed(tool.price), percent(tool.keep_pct),
            words(tool.have, looks.ENTRY_WORD),
        ]  # fmt: skip


def _typed(amount: Decimal | None) -> Cell:
    return words(UNKNOWN, looks.ENTRY_WORD) if amount is None else price(amount)


def write_own(draft: Draft, sheet: Sheet, column: CompareColumn, tools: list[int]) -> Sums:
    """Write doing it yourself; every amount follows the figures and tools above."""
    rows = _own_rows(draft, sheet, column, iter(tools))
    return _column(sheet, "Own_work", column, rows)


def _own_rows(
    draft: Draft, sheet: Sheet, column: CompareColumn, tools: Iterator[int]
) -> Iterator[Row]:
    for at, line in enumerate(_with_painting(column.lines), start=1):
        row = sheet.next_row
        cash, all_in = _own_formulas(draft, line, row, tools)
        yield _line(at, line, (_found(cash, line.cash), _found(all_in, line.all_in)))


def _with_painting(lines: tuple[CostLine, ...]) -> tuple[CostLine, ...]:
    """The lines with a place for somebody paid to patch and paint, who may be typed later."""
    if any(line.kind == "patch and paint" for line in lines):
        return lines
    place = CostLine("patch and paint", "Patch and paint, bought", _ZERO, _ZERO, NOT_BOUGHT)
    return (*lines[:-1], place, lines[-1])


def _own_formulas(draft: Draft, line: CostLine, row: int, tools: Iterator[int]) -> tuple[str, str]:
    """Formulas of one line: cash, and all in."""
    if line.kind == "tool":
        tool = next(tools)
        cost = f'IF(C{tool}="","{UNKNOWN}",{_or_unknown(draft, f"C{tool}")})'
        kept = _or_unknown(draft, f"C{row}*(1-D{tool})")
        return f'IF(E{tool}="buy",{cost},0)', kept
    if line.kind == "time":
        return "0", draft.round_to("own_hours*worth_of_hour")
    if line.kind == "rework":
        return "0", _or_unknown(draft, "rework_chance*rework_cost")
    named = {"parts": "own_parts", "consumables": "own_consumables", "permit": "own_permit",
             "patch and paint": "patch_paint"}  # fmt: skip
    return _or_unknown(draft, named[line.kind]), f"C{row}"


def _or_unknown(draft: Draft, text: str) -> str:
    """Round an amount; a word in it makes it unknown."""
    return f'IFERROR({draft.round_to(text)},"{UNKNOWN}")'


def _found(text: str, amount: Decimal | None) -> Cell:
    return formula(text, UNKNOWN if amount is None else amount, _MONEY)


def _line(at: int, line: CostLine, amounts: tuple[Cell, Cell]) -> Row:
    return [line_number(at), words(line.name), *amounts, words(line.how)]


def write_hire(draft: Draft, sheet: Sheet, number_of: int, column: CompareColumn) -> Sums:
    """Write one hire bid; what it leaves out follows the Labor sheet and the Shopping list."""
    rows = _hire_rows(draft, sheet, number_of, column)
    return _column(sheet, f"Hire_{number_of}", column, rows)


def _hire_rows(draft: Draft, sheet: Sheet, number_of: int, column: CompareColumn) -> Iterator[Row]:
    hires = draft.bid.survey.compare.hire
    hire = hires[number_of - 1] if hires else None
    for at, line in enumerate(column.lines, start=1):
        cash = _hire_cash(draft, line, hire)
        all_in = _or_unknown(draft, f"C{sheet.next_row}")
        if line.kind == "time":
            cash = _found("0", line.cash)
            all_in = draft.round_to(f"hire_hours_{number_of}*worth_of_hour")
        yield _line(at, line, (cash, _found(all_in, line.all_in)))


def _hire_cash(draft: Draft, line: CostLine, hire: Hire | None) -> Cell:
    """The amount of one line: typed, this bid's total, or priced from the takeoff."""
    if hire is None and line.kind == "quote":
        return draft.money("bid_total", line.cash or Decimal(0))
    if line.kind == "excluded" and line.part:
        found = _from_takeoff(draft, line.part, hire)
        if found:
            return _found(found, line.cash)
    return _typed(line.cash)


def _from_takeoff(draft: Draft, part: str, hire: Hire | None) -> str:
    """Formula of a part that a bid leaves out and puts no price to; empty where it has one."""
    if hire is not None and part in hire.prices:
        return ""
    owns = "own_permit" in draft.names
    if part == "permit":
        return _or_unknown(draft, "own_permit") if owns else ""
    if part == "materials":
        both = f"{draft.round_to('own_parts')}+{draft.round_to('own_consumables')}"
        return both if owns else ""
    hours = part_hours(draft, part)
    listed = () if hire is not None and "materials" in hire.excludes else items_of(draft.bid, part)
    return f"{draft.round_to(f'{hours}*labor_rate')}+{added(cost_cells(draft, listed))}"


def part_hours(draft: Draft, part: str) -> str:
    """Hours of a part on the shop's basis, from the phases on the Labor sheet."""
    low, likely, high = (
        added(phase_cells(draft, PHASES[part], end)) for end in ("low", "likely", "high")
    )
    if basis_of(draft.bid) == "likely":
        return likely
    return f"ROUND(({low}+4*{likely}+{high})/6,{_SIX})"


def _column(sheet: Sheet, name: str, column: CompareColumn, rows: Iterator[Row]) -> Sums:
    """Write the lines and add them up; without a quote there is no sum."""
    made = sheet.table(name, COLUMN_HEADERS, rows)
    first, last = made.first_row + 1, made.last_row
    sums = [_sum(letter, first, last, column) for letter in "CD"]
    unknowns = f'COUNTIFS(D{first}:D{last},"{UNKNOWN}")'
    missing = any(line.all_in is None for line in column.lines)
    said = formula(
        f'IF({unknowns}>0,"{LEAVES_OUT}","{WHOLE}")', LEAVES_OUT if missing else WHOLE, looks.TEXT
    )
    total = looks.total(looks.MONEY)
    values = (column.cash, column.all_in)
    cells = [
        formula(text, UNKNOWN if value is None else value, total)
        for text, value in zip(sums, values, strict=True)
    ]
    row = sheet.put([None, words(f"Together: {column.name}", looks.LABEL), *cells, said])
    for item in column.left_out:
        if item.startswith("price of "):
            sheet.note(f"Left out: {item}.")
    return Sums(sheet.ref("C", row), sheet.ref("D", row), sheet.ref("D", last))


def _sum(letter: str, first: int, last: int, column: CompareColumn) -> str:
    together = f"SUM({letter}{first}:{letter}{last})"
    if column.kind == "own":
        return together
    return f'IF(C{first}="{UNKNOWN}","{UNKNOWN}",{together})'


def write_unstated(draft: Draft, sheet: Sheet, columns: tuple[CompareColumn, ...]) -> None:
    """Write what the bids do not speak of, and what it would cost if it is not in them."""
    hires: tuple[Hire | None, ...] = draft.bid.survey.compare.hire or (None,)
    met = [
        (hire, column.name, part)
        for hire, column in zip(hires, columns, strict=True)
        for part in column.unstated
    ]
    if not met:
        return
    sheet.section("What a bid says nothing of: ask")
    rows = (
        [
            line_number(at), words(f"{name}: {part.part}"), _unstated(draft, part, hire),
            words("no"), words(part.how),
        ]
        for at, (hire, name, part) in enumerate(met, start=1)
    )  # fmt: skip
    sheet.table("Unstated", UNSTATED_HEADERS, rows)


def _unstated(draft: Draft, part: Priced, hire: Hire | None) -> Cell:
    text = _from_takeoff(draft, part.part, hire)
    if text:
        return _found(text, part.amount)
    return words(UNKNOWN) if part.amount is None else number(part.amount, _MONEY)
