"""The Takeoff sheet: cable sums, parts and work, each with quantity, unit, reason and source."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from math import ceil

from estimator.measures import IN_PER_FT, MM_PER_IN, to_decimal
from estimator.outputs import looks
from estimator.outputs.cells import Cell, Row, Sheet, formula, joined, middle, number, words
from estimator.outputs.draft import Draft
from estimator.outputs.takeoff_counts import box_rows, closing_rows, run_rows
from estimator.takeoff.records import CableCut, CableOrder, PartLine, TaskLine

NAME = "Takeoff"
HEADERS = ("Line", "Group", "Item", "What", "Quantity", "Unit", "Where", "Why", "Source")
WIDTHS = "7 13 19 30 10 5 17 42 22"
QUANTITY = "E"
_SIX = 6
_MM_PER_M = 1000


def write_takeoff(draft: Draft) -> Sheet:
    """Write the sheet; remembers where parts, orders and tasks stand for the sheets that follow."""
    sheet = draft.sheet(NAME, WIDTHS)
    draft.heading(sheet, "Takeoff: every part and every piece of work, with its reason")
    takeoff = draft.bid.takeoff
    if takeoff.cable:
        sheet.section("How the cable adds up")
        rows = (row for order in takeoff.cable for row in _order(draft, sheet, order))
        sheet.table("Cable_sums", HEADERS, rows)
    sheet.section("Parts")
    made = sheet.table("Parts", HEADERS, (_part(draft, part) for part in takeoff.parts))
    draft.places["takeoff", "items"] = sheet.span("C", made.first_row, made.last_row)
    draft.places["takeoff", "quantities"] = sheet.span(QUANTITY, made.first_row, made.last_row)
    sheet.section("Work")
    sheet.table("Work", HEADERS, (_task(draft, sheet, task) for task in takeoff.tasks))
    for title, name, counts in (
        ("What each run passes", "Runs", run_rows(draft)),
        ("Boxes: the wires in them, and the room for these", "Boxes", box_rows(draft)),
        ("Openings and surfaces", "Closing", closing_rows(draft)),
    ):
        if counts:
            sheet.section(title)
            sheet.table(name, HEADERS, counts)
    return sheet


def _part(draft: Draft, part: PartLine) -> Row:
    """One part; the quantity of an ordered cable follows from its sum above."""
    ordered, place = draft.orders.get(part.item, (None, ""))
    follows = part.group == "cable" and ordered == part.quantity
    amount = formula(place, part.quantity) if follows else number(part.quantity)
    reason = joined({"": part.reason, "asked for by finding": part.remedy})
    return [
        words(part.line_id), words(part.group), words(part.item), words(part.description),
        amount, middle(part.unit), words(part.where), words(reason), words(part.source),
    ]  # fmt: skip


def _task(draft: Draft, sheet: Sheet, task: TaskLine) -> Row:
    """One piece of work; Labor takes its quantity from here."""
    draft.places["task", task.line_id] = sheet.ref(QUANTITY, sheet.next_row)
    book = draft.bid.books.labor.get(task.task)
    reason = joined(
        {
            "": task.reason,
            "conditions:": ", ".join(task.conditions),
            "asked for by finding": task.remedy,
        }
    )
    return [
        words(task.line_id), words(task.phase), words(task.task),
        words(book.description if book else task.task), number(task.quantity),
        middle(task.unit), words(task.where), words(reason), words(task.source),
    ]  # fmt: skip


def _order(draft: Draft, sheet: Sheet, order: CableOrder) -> Iterator[Row]:
    """One kind of cable: each cut step by step, their sum, the allowance, and one round-up."""
    scale, unit = (MM_PER_IN, "mm") if order.unit == "m" else (Fraction(1), "in")
    cuts = []
    for cut in order.cuts:
        yield from _cut(sheet, order.item, cut, (scale, unit))
        cuts.append(f"{QUANTITY}{sheet.next_row - 1}")
    first = sheet.next_row
    together, allowance, grown, step = (f"{QUANTITY}{first + at}" for at in range(4))
    draft.orders[order.item] = order.order, f"{QUANTITY}{first + 4}"
    ask = f"ROUND({together}*(1+{allowance}/100),{_SIX})"
    with_allowance = to_decimal(order.with_allowance_in * scale, _SIX)
    setting = "the shop's setting, or the job's"
    for what, amount, shown, why in (
        ("All cuts", formula("+".join(cuts), order.cuts_in * scale), unit, "sum of the cuts"),
        ("Allowance", number(order.allowance_pct), "%", setting),
        ("With allowance", formula(ask, with_allowance), unit, "all cuts and the allowance"),
        ("Step to order in", number(order.step_in * scale), unit, setting),
        ("To order", _rounded_up(order, grown, step), order.unit, "rounded up once, to the step"),
    ):
        yield _line(("all", order.item), what, amount, (shown, order.kind, why))


def _rounded_up(order: CableOrder, grown: str, step: str) -> Cell:
    """Whole steps, in the unit that cable is ordered in."""
    per_unit = _MM_PER_M if order.unit == "m" else IN_PER_FT
    steps = ceil(to_decimal(order.with_allowance_in / order.step_in, _SIX))
    if steps * order.step_in != order.order_in:
        return number(order.order)  # closer to a whole step than the formula's six places tell
    text = f"ROUNDUP(ROUND({grown}/{step},{_SIX}),0)*{step}/{per_unit}"
    return formula(text, order.order, looks.total())


def _cut(sheet: Sheet, item: str, cut: CableCut, shown: tuple[Fraction, str]) -> Iterator[Row]:
    """One run's cable: path, extras and tails as figures, the cut as their sum."""
    scale, unit = shown
    where = f"{cut.from_box} to {cut.to_box}"
    steps = (
        ("Path", cut.path_in, "along walls and levels, box centre to box centre"),
        ("Extra at corners", cut.corner_extra_in, "for each corner turned"),
        ("Extra at obstacles", cut.obstacle_extra_in, "for each block passed"),
        ("Tails", cut.tails_in, "left at both boxes, together"),
    )
    first = sheet.next_row
    for what, length_in, why in steps:
        yield _line((cut.run_id, item), what, number(length_in * scale), (unit, where, why))
    cells = f"SUM({QUANTITY}{first}:{QUANTITY}{first + len(steps) - 1})"
    amount = formula(cells, cut.cut_in * scale, looks.total())
    yield _line((cut.run_id, item), "Cut", amount, (unit, where, "one piece of cable"))


def _line(key: tuple[str, str], what: str, amount: Cell, rest: tuple[str, str, str]) -> Row:
    """One step of a cable sum: line and item, what it is, the figure, unit, where and why."""
    line, item = key
    unit, where, why = rest
    return [
        words(line), words("cable"), words(item), words(what), amount, middle(unit), words(where),
        words(why), words(""),
    ]  # fmt: skip
