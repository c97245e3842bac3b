"""Facts nobody measured, numbered, with what was taken instead."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import NamedTuple

from estimator.route.records import RunPath
from estimator.saying import said, word
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
from estimator.takeoff.records import Assumption, Fact

_JOB, _CIRCUIT = "job", "circuit"


class _Found(NamedTuple):
    """An assumption before it is numbered: whose fact, which, in words, what was taken."""

    subject: str
    fact: Fact
    about: str
    taken: str
    moves: bool = True


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
        Assumption(number, each.about, each.taken, each.moves, each.subject, each.fact)
        for number, each in enumerate(found, start=1)
    )


def _of_job(survey: Survey) -> Iterator[_Found]:
    if survey.job.year_built is None:
        taken = said(
            "that no lead or asbestos work is needed; before 1978 and about 1980 it may be"
        )
        yield _Found(_JOB, "year built", said("the year the house was built"), taken)
    if survey.job.occupied == "unknown":
        taken = said("empty rooms; furniture takes longer")
        yield _Found(_JOB, "occupied", said("whether the rooms are lived in"), taken)


def _of_circuit(survey: Survey) -> Iterator[_Found]:
    circuit = survey.circuit
    if circuit.breaker_a is None:
        taken = said("that it fits the new cable; read it before work")
        yield _Found(_CIRCUIT, "breaker", said("the breaker's rating"), taken)
    if circuit.wire is None:
        taken = said("that it fits the breaker; look in the box")
        yield _Found(_CIRCUIT, "wire", said("the smallest wire on the circuit"), taken)
    if circuit.grounded == "unknown":
        taken = said("that it has; test before work")
        yield _Found(_CIRCUIT, "ground", said("whether the circuit has a ground"), taken)
    if circuit.material == "unknown":
        taken = said("copper; look in the source box")
        yield _Found(_CIRCUIT, "metal", said("whether the old wire is aluminum"), taken)


def _of_walls(survey: Survey, paths: tuple[RunPath, ...], units: Units) -> Iterator[_Found]:
    usual = stud_default(survey.job.units)
    assumed = {leg.wall for path in paths for leg in path.legs if leg.assumed}
    bored = {leg.wall for path in paths for leg in path.legs if leg.studs or leg.crossed}
    for wall in survey.walls:
        name = f"wall {wall.id}"
        if wall.id in assumed:
            spacing_in = wall.spacing_in or usual.spacing_in
            every = units.say_unit(spacing_in)
            taken = said("studs every {step}, a part bay counted as one stud", step=every)
            yield _Found(
                name, "stud places", said("wall {wall}: where the studs stand", wall=wall.id), taken
            )
        if wall.id in bored:
            yield from _of_bored_wall(wall, name, units, usual.depth_in)
        if wall.exterior == "yes" and wall.insulated == "unknown":
            about = said("wall {wall}: whether it is insulated", wall=wall.id)
            yield _Found(name, "insulated", about, said("not insulated"))
        if wall.finish == "unknown":
            about = said("wall {wall}: what it is finished with", wall=wall.id)
            yield _Found(name, "finish", about, said("gypsum board"))
    if not all(assumed):
        every = units.say_unit(usual.spacing_in)
        taken = said("one every {step}, a part bay counted as one stud", step=every)
        yield _Found(_JOB, "stud places", said("how many studs the cable passes"), taken)
    if any(path.run.legs and _crosses(path) and path.run.stud_depth_in is None for path in paths):
        depth = units.say_unit(usual.depth_in)
        yield _Found(_JOB, "stud depth", said("the depth of the studs"), depth)


def _of_bored_wall(wall: Wall, name: str, units: Units, usual_in: Fraction) -> Iterator[_Found]:
    if wall.stud is None and wall.stud_depth_in is None:
        taken = units.say_unit(usual_in)
        yield _Found(
            name, "stud depth", said("wall {wall}: the depth of its studs", wall=wall.id), taken
        )
    if wall.framing == "unknown":
        taken = said("wood; steel takes a bushing in each hole")
        yield _Found(name, "framing", said("wall {wall}: wood or steel studs", wall=wall.id), taken)
    if wall.bearing == "unknown":
        taken = said("not judged: ask before boring more than the smaller limit")
        about = said("wall {wall}: whether it bears load", wall=wall.id)
        yield _Found(name, "bearing", about, taken, moves=False)


def _of_places(survey: Survey, paths: tuple[RunPath, ...]) -> Iterator[_Found]:
    """Doors, windows and members whose place in a wall that cable goes along is unknown."""
    along = {leg.wall for path in paths for leg in path.legs if leg.go == "along"}
    out_of_the_way = said("out of the way of the cable")
    for kind, gaps in (("door", survey.doors), ("window", survey.windows)):
        for gap in gaps:
            if gap.left_in is None and gap.wall in along:
                wall = f"wall {gap.wall}"
                about = said("wall {wall}: where its {kind} stands", wall=gap.wall, kind=word(kind))
                yield _Found(wall, "place", about, out_of_the_way)
    for member in survey.members:
        if member.at_in is None and member.height_in is None and member.wall in along:
            wall = f"wall {member.wall}"
            kind_said = word(member.kind)
            about = said("wall {wall}: where its {kind} stands", wall=member.wall, kind=kind_said)
            yield _Found(wall, "place", about, out_of_the_way)


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
            name = f"wall {wall.id}"
            yield _Found(
                name,
                "height",
                said("wall {wall}: its height", wall=wall.id),
                units.say_unit(usual_in),
            )
    if not walls:
        taken = said("none: no wall paint is in the price")
        yield _Found(_JOB, "paint", said("the area to paint"), taken)


def _crosses(path: RunPath) -> bool:
    return any(leg.studs or leg.crossed for leg in path.legs)


def _of_boxes(survey: Survey, paths: tuple[RunPath, ...]) -> Iterator[_Found]:
    touched = {name for path in paths for name in (path.run.from_box, path.run.to_box)}
    rules = rules_for(survey)
    for box in survey.boxes:
        if box.existing and box.id in touched:
            yield from _of_box(box, rules)


def _of_box(box: Box, rules: FillRules | None) -> Iterator[_Found]:
    if box.unknown_cables or not box.cables:
        taken = said("{count} cables of the new kind", count=ASSUMED_CABLES)
        yield _Found(box.id, "cables", said("box {box}: the cables in it", box=box.id), taken)
    if rules is None:
        return
    if volume_in3(box, rules) is None:
        taken = said("that it is large enough; read the stamp inside")
        yield _Found(box.id, "volume", said("box {box}: its volume", box=box.id), taken)
    if box.clamps == "unknown" and rules.counts.clamps:
        taken = said("that it has, which takes room")
        yield _Found(
            box.id, "clamps", said("box {box}: whether it has inner clamps", box=box.id), taken
        )
