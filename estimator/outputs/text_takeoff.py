"""The takeoff for the terminal: runs, parts and work, each with the sum behind it."""

from __future__ import annotations

from fractions import Fraction

from estimator.measures import (
    System,
    in3_to_gal,
    in3_to_l,
    show_area,
    show_length,
    to_decimal,
)
from estimator.outputs.text_job import assumption_lines, caution_lines, title_lines
from estimator.outputs.text_layout import heading, number, pairs, printable, wrapped
from estimator.pricing.records import Bid
from estimator.takeoff.places import EXTERIOR_INSULATED, OCCUPIED, PLASTER, job_conditions
from estimator.takeoff.records import CableCut, PartLine, RunCount, Takeoff, TaskLine, Visit

AMOUNT_WIDTH = 12
LIQUID_PLACES = 3
GROUPS = {
    "cable": "Cable",
    "boxes": "Boxes",
    "devices": "Devices and plates",
    "joints": "Joints",
    "protection": "Protection and support",
    "closing": "Closing the walls",
    "paint": "Paint",
    "consumables": "Used up on the job",
}
PHASES = {
    "set-up": "Set up",
    "rough-in": "Run the cable",
    "terminate": "Connect",
    "test": "Test",
    "close": "Close the walls",
    "paint": "Paint",
    "clean-up": "Clean up",
}

CONDITIONS = {
    OCCUPIED: "in rooms that are lived in",
    PLASTER: "plaster",
    EXTERIOR_INSULATED: "insulated outside wall",
}


def takeoff_text(bid: Bid) -> list[str]:
    """List runs, parts, work and surfaces of the chosen way."""
    taken, system = bid.takeoff, bid.survey.job.units
    return [
        *title_lines(bid),
        *_runs(taken, system),
        *_parts(taken.parts),
        *_tasks(bid),
        *_surfaces(taken, system),
        *_visits(taken),
        *assumption_lines(bid.assumptions),
        *caution_lines(),
    ]


def _runs(taken: Takeoff, system: System) -> list[str]:
    """Show each run: its cable with the sum, and what it crosses."""
    counts = {count.run_id: count for count in taken.runs}
    cuts = [(order.kind, cut) for order in taken.cable for cut in order.cuts]
    lines = [line for kind, cut in cuts for line in _run(kind, cut, counts.get(cut.run_id), system)]
    return [*heading("Runs"), *lines]


def _run(kind: str, cut: CableCut, count: RunCount | None, system: System) -> list[str]:
    head = f"{cut.run_id}: {kind} from {cut.from_box} to {cut.to_box}"
    crossed = f"crosses: {_crossed(count)}" if count else ""
    return [
        *wrapped(head),
        *wrapped(_cut_sum(cut, system), first="  "),
        *wrapped(crossed, first="  "),
    ]


def _cut_sum(cut: CableCut, system: System) -> str:
    """Write the length of one cable as the sum it is."""
    parts = [
        ("path", cut.path_in),
        ("corners", cut.corner_extra_in),
        ("obstacles", cut.obstacle_extra_in),
        ("tails", cut.tails_in),
    ]
    added = [f"{name} {show_length(size, system)}" for name, size in parts if size]
    return f"{' + '.join(added)} = cut {show_length(cut.cut_in, system)}"


def _crossed(count: RunCount) -> str:
    """Count what a run passes, in words."""
    studs = f"studs {count.studs}{' (assumed from the spacing)' if count.assumed else ''}"
    more = [
        *count.listed,
        ("corner turns", count.corners),
        ("obstacles", count.obstacles),
        ("wall plates", count.plates_pierced),
        ("floor holes", count.floor_holes),
    ]
    return ", ".join([studs, *(f"{kind} {how_many}" for kind, how_many in more if how_many)])


def _parts(parts: tuple[PartLine, ...]) -> list[str]:
    """Show the parts, group by group in the order of the work."""
    lines: list[str] = []
    for group, name in GROUPS.items():
        inside = [part for part in parts if part.group == group]
        if inside:
            lines += heading(name)
            lines += [line for part in inside for line in _part(part)]
    return lines


def _part(part: PartLine) -> list[str]:
    amount = f"{number(part.quantity)} {part.unit}"
    what = f"{part.description}, {part.where}{_remedy(part)}"
    return _line(amount, what, part.reason)


def _tasks(bid: Bid) -> list[str]:
    """Show the work, phase by phase, in the words of the labor book."""
    words = {line.task_line_id: line.description for line in bid.labor}
    lines = _of_whole_job(bid)
    for phase, name in PHASES.items():
        inside = [task for task in bid.takeoff.tasks if task.phase == phase]
        if inside:
            lines += heading(f"Work: {name}")
            lines += [
                line for task in inside for line in _task(task, words.get(task.line_id, task.task))
            ]
    return lines


def _of_whole_job(bid: Bid) -> list[str]:
    """Say once what holds for all of the work."""
    lines: list[str] = []
    for each in job_conditions(bid.survey) if bid.takeoff.tasks else ():
        factor = bid.books.shop.conditions.get(each)
        counts = (
            f"; where it slows the work its hours count x {number(factor, 3)}" if factor else ""
        )
        lines += wrapped(f"All of the work: {CONDITIONS.get(each, each)}{counts}.")
    return ["", *lines] if lines else []


def _task(task: TaskLine, words: str) -> list[str]:
    own = [CONDITIONS.get(each, each) for each in task.conditions if each != OCCUPIED]
    held = f" ({', '.join(own)})" if own else ""
    what = f"{words}, {task.where}{held}{_remedy(task)}"
    return _line(f"{number(task.quantity)} {task.unit}", what, task.reason)


def _remedy(line: PartLine | TaskLine) -> str:
    """The finding that asked for a line, or nothing."""
    return f" (remedy for {line.remedy})" if line.remedy else ""


def _line(amount: str, what: str, reason: str) -> list[str]:
    """Set an amount on the left, what it is beside it, and why below."""
    indent = " " * AMOUNT_WIDTH
    return [
        *wrapped(what, first=f"{amount:>{AMOUNT_WIDTH - 2}}  ", rest=indent),
        *wrapped(reason, first=f"{indent}  "),
    ]


def _surfaces(taken: Takeoff, system: System) -> list[str]:
    """Show the openings and surfaces behind tape, compound and paint."""
    closing = taken.closing
    if not closing.openings:
        return []
    rows = [
        ("Openings", f"{closing.openings}, of which {closing.visible_openings} visible"),
        ("Patch", show_area(closing.patch_in2, system)),
        ("Tape", show_length(closing.tape_in, system)),
        ("Compound", _liquid(closing.compound_in3, system)),
        ("Prime", show_area(closing.prime_in2, system)),
        ("Paint", show_area(closing.paint_in2, system)),
    ]
    rooms = [
        (f"Disturbed, {printable(room)}", show_area(area, system))
        for room, area in closing.disturbed_in2
    ]
    return [*heading("Surfaces"), *pairs([*rows, *rooms])]


def _liquid(volume_in3: Fraction, system: System) -> str:
    """A volume of compound as it is sold: gallons or litres, rounded half up."""
    if system == "metric":
        return f"{number(to_decimal(in3_to_l(volume_in3), LIQUID_PLACES))} L"
    return f"{number(to_decimal(in3_to_gal(volume_in3), LIQUID_PLACES))} gal"


def _visits(taken: Takeoff) -> list[str]:
    """Show the visits and the waits between them."""
    lines = [line for visit in taken.visits for line in _visit(visit)]
    return [*heading("Visits"), *lines] if lines else []


def _visit(visit: Visit) -> list[str]:
    wait = f"; then wait {number(visit.wait_after_h)} h" if visit.wait_after_h else ""
    return wrapped(f"{visit.what}{wait}", first=f"{visit.number:>2}. ")
