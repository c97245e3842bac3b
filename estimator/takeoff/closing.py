"""Closing the wall again: patch, tape, compound, prime, paint, and paint disturbed by room."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from estimator.settings import Practice
from estimator.survey.place import Gap, Wall
from estimator.survey.records import Survey
from estimator.tables.facts import box_cutout_in2, stud_default
from estimator.takeoff.openings import Hole, SharedEdge, grown_in2
from estimator.takeoff.records import Closing

_ZERO = Fraction(0)
_SCOPES = ("none", "closed", "taped", "painted")


def reaches(survey: Survey, scope: str) -> bool:
    """True where the finish is brought back at least as far as `scope`."""
    return _SCOPES.index(survey.finish.scope) >= _SCOPES.index(scope)


def close_up(
    survey: Survey, practice: Practice, listed: tuple[Hole, ...], edges: tuple[SharedEdge, ...]
) -> Closing:
    """Sum what closing takes, as far as the job's finish scope goes."""
    seen = tuple(hole for hole in listed if hole.visible)
    tape_in = tape_length_in(seen, edges) if reaches(survey, "taped") else _ZERO
    painted = reaches(survey, "painted") and bool(seen)
    prime_in2 = _sum(grown_in2(hole, edges, practice.feather_in) for hole in seen)
    prime_in2 = prime_in2 if painted else _ZERO
    paint_in2 = _paint_in2(survey, seen, prime_in2) if painted else _ZERO
    return Closing(
        openings=len(listed),
        visible_openings=len(seen),
        patch_in2=_sum(hole.area_in2 for hole in listed),
        visible_patch_in2=_sum(hole.area_in2 for hole in seen),
        tape_in=tape_in,
        compound_in3=tape_in * practice.compound_in3_per_in,
        prime_in2=prime_in2,
        paint_in2=paint_in2,
        paint_in3=paint_in2 * practice.paint_coats / practice.paint_in2_per_in3,
        disturbed_in2=_disturbed(survey, listed),
    )


def tape_length_in(seen: tuple[Hole, ...], edges: tuple[SharedEdge, ...]) -> Fraction:
    """Perimeter of the openings that are seen; an edge that two of them share counts once."""
    names = {hole.opening.id for hole in seen}
    shared = (edge.length_in for edge in edges if {edge.first, edge.second} <= names)
    return _sum(hole.perimeter_in for hole in seen) - _sum(shared)


def painted_walls(survey: Survey, seen: Iterable[Hole]) -> tuple[Wall, ...]:
    """Walls painted corner to corner: those named, else those with an opening that is seen."""
    names = set(survey.finish.paint_walls) or {hole.wall.id for hole in seen if hole.wall}
    return tuple(wall for wall in survey.walls if wall.id in names)


def wall_paint_in2(survey: Survey, wall: Wall) -> Fraction:
    """One wall less its doors and windows; an unmeasured height is the usual one."""
    height_in = wall.height_in or stud_default(survey.job.units).wall_height_in
    gaps: tuple[Gap, ...] = (*survey.doors, *survey.windows)
    away_in2 = _sum(gap.width_in * gap.height_in for gap in gaps if gap.wall == wall.id)
    return max(_ZERO, wall.length_in * height_in - away_in2)


def _paint_in2(survey: Survey, seen: tuple[Hole, ...], prime_in2: Fraction) -> Fraction:
    if survey.finish.paint == "none":
        return _ZERO
    if survey.finish.paint == "spot":
        return prime_in2
    if survey.finish.paint_area_in2 is not None:
        return survey.finish.paint_area_in2
    return _sum(wall_paint_in2(survey, wall) for wall in painted_walls(survey, seen))


def _disturbed(survey: Survey, listed: tuple[Hole, ...]) -> tuple[tuple[str, Fraction], ...]:
    """Painted surface cut, by room: openings, and the cut-outs of new boxes."""
    rooms: dict[str, Fraction] = {}
    for hole in listed:
        rooms[hole.room] = rooms.get(hole.room, _ZERO) + hole.area_in2
    walls = {wall.id: wall.room for wall in survey.walls}
    touched = {name for run in survey.runs for name in (run.from_box, run.to_box)}
    for box in survey.boxes:
        if not box.existing and box.id in touched:
            room = box.room or walls.get(box.wall or "", "room")
            rooms[room] = rooms.get(room, _ZERO) + box_cutout_in2(box.mount, box.gangs_count)
    return tuple(sorted(rooms.items()))


def _sum(amounts: Iterable[Fraction]) -> Fraction:
    return sum(amounts, _ZERO)
