"""Facts nobody measured, numbered, with what was taken instead."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from estimator.route.records import RunPath
from estimator.survey.electrical import Box
from estimator.survey.place import Wall
from estimator.survey.records import Survey
from estimator.tables.box_fill import FillRules
from estimator.tables.facts import stud_default
from estimator.takeoff.amounts import Units
from estimator.takeoff.box_room import volume_in3
from estimator.takeoff.boxes import ASSUMED_CABLES, rules_for
from estimator.takeoff.closing import painted_walls, reaches
from estimator.takeoff.openings import Hole
from estimator.takeoff.records import Assumption

_Found = tuple[str, str, bool]


def assumptions(
    survey: Survey, paths: tuple[RunPath, ...], listed: tuple[Hole, ...], units: Units
) -> tuple[Assumption, ...]:
    """Every assumption that this takeoff rests on, in the order of the survey's tables."""
    found = [
        *_of_job(survey),
        *_of_circuit(survey),
        *_of_walls(survey, paths, units),
        *_of_places(survey, paths),
        *_of_boxes(survey, paths),
        *_of_paint(survey, listed, units),
    ]
    return tuple(
        Assumption(number, about, taken, moves)
        for number, (about, taken, moves) in enumerate(found, start=1)
    )


def _of_job(survey: Survey) -> Iterator[_Found]:
    if survey.job.year_built is None:
        taken = "that no lead or asbestos work is needed; before 1978 and about 1980 it may be"
        yield "the year the house was built", taken, True
    if survey.job.occupied == "unknown":
        yield "whether the rooms are lived in", "empty rooms; furniture takes longer", True


def _of_circuit(survey: Survey) -> Iterator[_Found]:
    circuit = survey.circuit
    if circuit.breaker_a is None:
        yield "the breaker's rating", "that it fits the new cable; read it before work", True
    if circuit.wire is None:
        yield "the smallest wire on the circuit", "that it fits the breaker; look in the box", True
    if circuit.grounded == "unknown":
        yield "whether the circuit has a ground", "that it has; test before work", True
    if circuit.material == "unknown":
        yield "whether the old wire is aluminum", "copper; look in the source box", True


def _of_walls(survey: Survey, paths: tuple[RunPath, ...], units: Units) -> Iterator[_Found]:
    usual = stud_default(survey.job.units)
    assumed = {leg.wall for path in paths for leg in path.legs if leg.assumed}
    bored = {leg.wall for path in paths for leg in path.legs if leg.studs or leg.crossed}
    for wall in survey.walls:
        name = f"wall {wall.id}"
        if wall.id in assumed:
            spacing_in = wall.spacing_in or usual.spacing_in
            taken = f"studs every {units.say_unit(spacing_in)}, a part bay counted as one stud"
            yield f"{name}: where the studs stand", taken, True
        if wall.id in bored:
            yield from _of_bored_wall(wall, name, units, usual.depth_in)
        if wall.exterior == "yes" and wall.insulated == "unknown":
            yield f"{name}: whether it is insulated", "not insulated", True
        if wall.finish == "unknown":
            yield f"{name}: what it is finished with", "gypsum board", True
    if any(path.run.legs and _crosses(path) and path.run.stud_depth_in is None for path in paths):
        yield "the depth of the studs", units.say_unit(usual.depth_in), True


def _of_bored_wall(wall: Wall, name: str, units: Units, usual_in: Fraction) -> Iterator[_Found]:
    if wall.stud is None and wall.stud_depth_in is None:
        yield f"{name}: the depth of its studs", units.say_unit(usual_in), True
    if wall.framing == "unknown":
        yield f"{name}: wood or steel studs", "wood; steel takes a bushing in each hole", True
    if wall.bearing == "unknown":
        taken = "not judged: ask before boring more than the smaller limit"
        yield f"{name}: whether it bears load", taken, False


def _of_places(survey: Survey, paths: tuple[RunPath, ...]) -> Iterator[_Found]:
    """Doors, windows and members whose place in a wall that cable goes along is unknown."""
    along = {leg.wall for path in paths for leg in path.legs if leg.go == "along"}
    out_of_the_way = "out of the way of the cable"
    for kind, gaps in (("door", survey.doors), ("window", survey.windows)):
        for gap in gaps:
            if gap.left_in is None and gap.wall in along:
                yield f"wall {gap.wall}: where its {kind} stands", out_of_the_way, True
    for member in survey.members:
        if member.at_in is None and member.height_in is None and member.wall in along:
            yield f"wall {member.wall}: where its {member.kind} stands", out_of_the_way, True


def _of_paint(survey: Survey, listed: tuple[Hole, ...], units: Units) -> Iterator[_Found]:
    """Heights of the walls painted corner to corner; paint where nobody drew a wall."""
    finish, seen = survey.finish, tuple(hole for hole in listed if hole.visible)
    if not (seen and reaches(survey, "painted")) or finish.paint != "wall":
        return
    if finish.paint_area_in2 is not None:
        return
    walls = painted_walls(survey, seen)
    usual_in = stud_default(survey.job.units).wall_height_in
    for wall in walls:
        if wall.height_in is None:
            yield f"wall {wall.id}: its height", units.say_unit(usual_in), True
    if not walls:
        yield "the area to paint", "none: no wall paint is in the price", True


def _crosses(path: RunPath) -> bool:
    return any(leg.studs or leg.crossed for leg in path.legs)


def _of_boxes(survey: Survey, paths: tuple[RunPath, ...]) -> Iterator[_Found]:
    touched = {name for path in paths for name in (path.run.from_box, path.run.to_box)}
    rules = rules_for(survey)
    for box in survey.boxes:
        if box.existing and box.id in touched:
            yield from _of_box(box, rules)


def _of_box(box: Box, rules: FillRules | None) -> Iterator[_Found]:
    name = f"box {box.id}"
    if box.unknown_cables or not box.cables:
        yield f"{name}: the cables in it", f"{ASSUMED_CABLES} cables of the new kind", True
    if rules is None:
        return
    if volume_in3(box, rules) is None:
        yield f"{name}: its volume", "that it is large enough; read the stamp inside", True
    if box.clamps == "unknown" and rules.counts.clamps:
        yield f"{name}: whether it has inner clamps", "that it has, which takes room", True
