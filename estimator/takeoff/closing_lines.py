"""Part and task lines of closing the wall, from cutting the opening to the last coat."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from math import ceil

from estimator.settings import Practice
from estimator.survey.records import Survey
from estimator.tables.facts import board_item, stud_default
from estimator.takeoff.amounts import Units, plural
from estimator.takeoff.closing import reaches
from estimator.takeoff.lines import Lines
from estimator.takeoff.openings import Hole
from estimator.takeoff.places import job_conditions, wall_conditions
from estimator.takeoff.records import Closing

_IN_PER_FT = 12
_ACCESS_HOLE_IN = Fraction(_IN_PER_FT)
_STRIPS = 2
_COMMON = "common-practice"


def cutting_lines(lines: Lines, survey: Survey, listed: tuple[Hole, ...], units: Units) -> None:
    """Cutting the openings: a hole up to a foot each way by the piece, a strip by its length."""
    for hole in listed:
        where, here = _place(survey, hole)
        size = f"{units.say(hole.width_in)} x {units.say_unit(hole.height_in)}"
        why = (where, f"opening {size}", "survey")
        longest_in = max(hole.width_in, hole.height_in)
        if longest_in <= _ACCESS_HOLE_IN:
            lines.task("rough-in", "cut-access-opening", (1, "ea"), why, here)
        else:
            amount = (units.lengths(longest_in), units.length)
            lines.task("rough-in", "open-strip", amount, why, here)


def _place(survey: Survey, hole: Hole) -> tuple[str, tuple[str, ...]]:
    return f"opening {hole.opening.id}", wall_conditions(survey, hole.opening.wall)


def closing_parts(
    lines: Lines, survey: Survey, practice: Practice, listed: tuple[Hole, ...], units: Units
) -> None:
    """Board, backing, mesh and screws for each opening."""
    if not reaches(survey, "closed"):
        return
    for hole in listed:
        fill = hole.opening.fill
        if fill == "mesh":
            why = (f"opening {hole.opening.id}", "one a hole", _COMMON)
            lines.part("closing", "mesh-patch", (1, "ea"), why)
            continue
        if fill == "new board":
            _board_part(lines, survey, practice, hole, units)
        if fill == "plaster":
            _plaster_part(lines, practice, hole, units)
        _backing_parts(lines, survey, practice, hole, units)


def _board_part(lines: Lines, survey: Survey, practice: Practice, hole: Hole, units: Units) -> None:
    thickness_in = hole.wall.finish_thickness_in if hole.wall else None
    item, _ = board_item(survey.job.units, thickness_in)
    area_in2 = hole.area_in2 * (1 + Fraction(practice.board_waste_pct) / 100)
    reason = (
        f"{units.say(hole.width_in)} x {units.say_unit(hole.height_in)},"
        f" and {practice.board_waste_pct} % waste"
    )
    why = (f"opening {hole.opening.id}", reason, "practice.board_waste_pct")
    lines.part("closing", item, (units.areas(area_in2), units.area), why)


def _plaster_part(lines: Lines, practice: Practice, hole: Hole, units: Units) -> None:
    """Base coat by the thickness of the finish."""
    thickness_in = (hole.wall.finish_thickness_in if hole.wall else None) or _PLASTER_IN
    volume_in3 = hole.area_in2 * thickness_in * (1 + Fraction(practice.board_waste_pct) / 100)
    reason = f"{units.say_unit(thickness_in)} thick, and {practice.board_waste_pct} % waste"
    why = (f"opening {hole.opening.id}", reason, "practice.board_waste_pct")
    lines.part("closing", "plaster-base", (units.volumes(volume_in3), units.volume), why)


_PLASTER_IN = Fraction(3, 4)


def _backing_parts(
    lines: Lines, survey: Survey, practice: Practice, hole: Hole, units: Units
) -> None:
    """Two strips behind an opening that fits between studs, and the screws for the piece."""
    where = f"opening {hole.opening.id}"
    spacing_in = (hole.wall.spacing_in if hole.wall else None) or stud_default(
        survey.job.units
    ).spacing_in
    if hole.width_in < spacing_in:
        strip_in = hole.height_in + 2 * practice.backing_overlap_in
        reason = f"{_STRIPS} strips of {units.say_unit(strip_in)}, past the hole at each end"
        amount = (units.lengths(_STRIPS * strip_in), units.length)
        why = (where, reason, "practice.backing_overlap")
        lines.part("closing", "backing-strip", amount, why)
    screws = screw_count(hole, practice, units)
    first = units.say_unit(practice.patch_screws_side_in)
    further = units.say_per(practice.patch_screws_per_ft)
    reason = f"{practice.patch_screws_count} for the first {first}, {further} beyond"
    why = (where, reason, "practice.patch_screws")
    lines.part("closing", "screw-drywall", (screws, "ea"), why)


def screw_count(hole: Hole, practice: Practice, units: Units) -> int:
    """Screws for one patch, by its longest side: in feet each begun foot counts whole."""
    over_in = max(hole.width_in, hole.height_in) - practice.patch_screws_side_in
    further_ft = Fraction(max(Fraction(0), over_in)) / _IN_PER_FT
    if units.system == "us":
        further_ft = Fraction(ceil(further_ft))
    return practice.patch_screws_count + ceil(further_ft * Fraction(practice.patch_screws_per_ft))


def finish_parts(lines: Lines, survey: Survey, closing: Closing, units: Units) -> None:
    """Tape, compound, primer, paint and texture for what is seen."""
    where = f"{plural(closing.visible_openings, 'opening')} in sight"
    tape = units.lengths(closing.tape_in)
    why = (where, "edges of the openings, shared edges once", "practice.compound")
    lines.part("closing", "joint-tape", (tape, units.length), why)
    compound = f"compound-{survey.finish.compound}"
    why = (where, f"{tape} {units.length} of seam, all coats", "practice.compound")
    lines.part("closing", compound, (units.volumes(closing.compound_in3), units.volume), why)
    if survey.finish.texture and closing.prime_in2:
        why = (where, "patches with their feathered edge", "practice.feather")
        lines.part("closing", "texture", (units.areas(closing.prime_in2), units.area), why)


def paint_parts(
    lines: Lines, survey: Survey, practice: Practice, closing: Closing, units: Units
) -> None:
    """Primer on the patches, paint as far as the job paints."""
    area = units.areas(closing.prime_in2)
    reason = f"{area} {units.area}: openings grown by the feather on free sides"
    volume = units.volumes(closing.prime_in2 / practice.primer_in2_per_in3)
    why = ("patches", reason, "practice.feather, practice.primer_coverage")
    lines.part("paint", "primer", (volume, units.volume), why)
    area = units.areas(closing.paint_in2)
    extent = "corner to corner" if survey.finish.paint == "wall" else "the primed spots"
    reason = f"{area} {units.area} {extent}, {practice.paint_coats} coats"
    why = ("walls painted", reason, "practice.paint_coats, practice.paint_coverage")
    lines.part("paint", "paint-wall", (units.volumes(closing.paint_in3), units.volume), why)


def closing_tasks(
    lines: Lines,
    survey: Survey,
    practice: Practice,
    closing: Closing,
    listed: tuple[Hole, ...],
    units: Units,
) -> None:
    """Closing what is hidden, patching what is seen, then primer, texture and paint."""
    if reaches(survey, "closed"):
        for hole in listed:
            _patch_tasks(lines, survey, hole, units)
    here = job_conditions(survey)
    primed = (units.areas(closing.prime_in2), units.area)
    why = ("patches", "sand and prime, with the feathered edge", "practice.feather")
    lines.task("paint", "prime-patch", primed, why, here)
    if survey.finish.texture:
        lines.task("paint", "texture-patch", primed, why, here)
    coats = units.areas(closing.paint_in2) * Decimal(practice.paint_coats)
    reason = f"{units.areas(closing.paint_in2)} {units.area} x {practice.paint_coats} coats"
    why = ("walls painted", reason, "practice.paint_coats")
    lines.task("paint", "paint-wall", (coats, units.area), why, here)


def _patch_tasks(lines: Lines, survey: Survey, hole: Hole, units: Units) -> None:
    where, here = _place(survey, hole)
    if not hole.visible or not reaches(survey, "taped"):
        reason = "closed and no more" if hole.visible else "behind the trim: no finish"
        why = (where, f"{reason}; the piece goes back", _COMMON)
        lines.task("close", "close-hidden-opening", (1, "ea"), why, here)
        return
    why = (where, "seen when the trim is back", _COMMON)
    lines.task("close", "patch-opening", (1, "ea"), why, here)
    size = f"{units.say(hole.width_in)} x {units.say_unit(hole.height_in)}"
    area = (units.areas(hole.area_in2), units.area)
    lines.task("close", "patch-area", area, (where, size, "survey"), here)
