"""Rows of the Takeoff sheet that show counts: what runs pass, what boxes hold, what is closed."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from estimator.measures import Exact, to_decimal
from estimator.outputs.cells import Row, figure_only, middle, words
from estimator.outputs.draft import Draft
from estimator.tables.local_words import local_words
from estimator.takeoff.records import BoxCount, RunCount

_SHOWN_PLACES = 3
_ASSUMED = "from the spacing alone, as the layout is not known"
_COUNTED = "counted along the run"


def run_rows(draft: Draft) -> list[Row]:
    """What each run passes; zeros that answer a question stay, others are left out."""
    return [row for run in draft.bid.takeoff.runs for row in _run(draft, run)]


def _run(draft: Draft, run: RunCount) -> Iterator[Row]:
    path, unit = draft.length(run.path_in)
    yield _row(run.run_id, run.way, ("Path", path, unit), "box centre to box centre")
    studs = ("Studs on the grid", run.studs, "ea")
    yield _row(run.run_id, run.way, studs, _ASSUMED if run.assumed else _COUNTED)
    for kind, count in run.listed:
        yield _row(run.run_id, run.way, (f"Other members: {kind}", count, "ea"), "as surveyed")
    always = {
        "Members bored": run.bored, "Members notched": run.notched,
        "Protection plates": run.protection_plates, "Supports": run.staples,
    }  # fmt: skip
    sometimes = {
        "Corners turned": run.corners, "Obstacles passed": run.obstacles,
        "Wall plates bored through": run.plates_pierced, "Holes through floors": run.floor_holes,
        "Holes to seal": run.sealant,
    }  # fmt: skip
    met = {what: count for what, count in sometimes.items() if count}
    for what, count in {**always, **met}.items():
        yield _row(run.run_id, run.way, (what, count, "ea"), _COUNTED)


def box_rows(draft: Draft) -> list[Row]:
    """The wires in each box and the room for them, where the job's rules count it."""
    return [row for box in draft.bid.takeoff.boxes for row in _box(draft, box)]


def _box(draft: Draft, box: BoxCount) -> Iterator[Row]:
    group, job = f"{box.role} box", draft.bid.survey.job
    for what, volume_in3, why in (
        ("Room taken before the work", box.fill_before if box.existing else None, ""),
        ("Room taken after the work", box.fill_after, box.fill_sum),
        ("Room in the box that was there", box.old_volume_in3 if box.replaced else None, ""),
        ("Room in the box", box.volume_in3, "as stamped, or from the materials book"),
    ):
        if volume_in3 is not None:
            room, unit = draft.box_volume(volume_in3)
            yield _row(box.box_id, group, (what, room, unit), why, box.item)
    wires = ", ".join(f"{count} of {size}" for size, count in box.conductors)
    pigtails = local_words(job.country, job.locale)("Pigtails")
    yield _row(box.box_id, group, (pigtails, box.pigtails, "ea"), f"insulated wires: {wires}")
    held = ", ".join(map(str, box.joints)) or "none"
    joints = ("Wire connectors", len(box.joints), "ea")
    yield _row(box.box_id, group, joints, f"wires in each: {held}")


def closing_rows(draft: Draft) -> list[Row]:
    """Openings and surfaces, summed; nothing where nothing was opened."""
    closing = draft.bid.takeoff.closing
    if not (closing.openings or closing.disturbed_in2):
        return []
    amounts: dict[str, tuple[Exact, str]] = {
        "Openings": (closing.openings, "ea"),
        "Openings in sight": (closing.visible_openings, "ea"),
        "Area of the openings": draft.area(closing.patch_in2),
        "Area of the openings in sight": draft.area(closing.visible_patch_in2),
        "Seams to tape": draft.seam(closing.tape_in),
        "Compound, all coats": draft.liquid(closing.compound_in3),
        "Area to prime": draft.area(closing.prime_in2),
        "Area to paint, one coat": draft.area(closing.paint_in2),
        "Paint, all coats": draft.liquid(closing.paint_in3),
    }
    rows = [_row("", "closing", (what, *amount), "") for what, amount in amounts.items()]
    disturbed = ((room, draft.area(area)) for room, area in closing.disturbed_in2)
    why = "openings and box cut-outs of the room together"
    return rows + [
        _row("", "closing", ("Painted surface disturbed", *area), why, where=room)
        for room, area in disturbed
    ]


def _row(
    line: str, group: str, amount: tuple[str, Exact, str], why: str, item: str = "", where: str = ""
) -> Row:
    """One count; a figure that does not end is shown to three places."""
    what, value, unit = amount
    shown = to_decimal(value, _SHOWN_PLACES) if isinstance(value, Fraction) else value
    return [
        words(line), words(group), words(item), words(what), figure_only(shown), middle(unit),
        words(where), words(why), words(""),
    ]  # fmt: skip
