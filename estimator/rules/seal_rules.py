"""Holes that fire could use: plates and floors sealed, rated walls, the garage wall."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from decimal import Decimal

from estimator.route.records import PathLeg
from estimator.rules.facts import Facts
from estimator.rules.rated_boxes import boxes_in_rated
from estimator.rules.records import Finding, RemedyPart, Verdict
from estimator.rules.registry import rule
from estimator.saying import Saying, listed, several
from estimator.survey.place import Wall
from estimator.takeoff.amounts import plural
from estimator.takeoff.records import RunCount

SEAL = "fire-seal"
RATED = "rated-wall"
GARAGE = "garage-separation"
_SEAL_IT = (
    "Fill each such hole with a material that resists flame and hot gas; it is in the takeoff."
)


@rule(SEAL)
def fire_seal(facts: Facts) -> Iterator[Finding]:
    """Every hole through a wall plate, a floor or a fire block is filled; others need not be."""
    cite = facts.building_law("R302.11")
    for path, count in zip(facts.paths, facts.takeoff.runs, strict=True):
        name = (SEAL, f"run {path.run.id}")
        unsure = sum(_blocks(facts, leg) for leg in path.legs)
        figures = f"{_holes_words(count)}, {count.sealant} filled in the takeoff"
        if unsure:
            part = RemedyPart("protection", "firestop-sealant", Decimal(unsure), "application")
            figures += f"; {plural(unsure, 'block')} to pass, bored or passed by is not known"
            remedy = "A hole through a block between floors is filled too. " + _SEAL_IT
            yield facts.finding(name, "unknown", figures, cite, remedy, (part,))
        elif count.sealant:
            yield facts.finding(name, "pass", figures, cite, _SEAL_IT)


def _holes_words(count: RunCount) -> str:
    listed = dict(count.listed)
    said = (
        (
            count.plate_holes + listed.get("plate", 0),
            "hole through wall plates",
            "holes through wall plates",
        ),
        (count.floor_holes, "floor hole", "floor holes"),
        (listed.get("block", 0), "hole through a block", "holes through blocks"),
    )
    words = [f"{number} {one if number == 1 else more}" for number, one, more in said if number]
    return ", ".join(words) or "no hole through plates or floors"


def _blocks(facts: Facts, leg: PathLeg) -> int:
    """Obstacles that a leg passes and that may be fire blocks."""
    if leg.wall is None:
        return leg.obstacles
    kinds = {each.kind for each in facts.survey.obstacles if each.wall == leg.wall}
    return leg.obstacles if kinds & {"block", "other"} else 0


def touched_walls(facts: Facts) -> tuple[Wall, ...]:
    """Walls that a run passes, a box stands in, or an opening is cut in; in the survey's order."""
    names = {leg.wall for path in facts.paths for leg in path.legs}
    names |= {box.wall for box in facts.boxes.values()}
    names |= {opening.wall for opening in facts.survey.openings}
    return tuple(wall for wall in facts.survey.walls if wall.id in names)


def named(walls: Sequence[Wall]) -> Saying:
    """Walls by name: "walls east, west"."""
    names = listed(wall.id for wall in walls)
    return several(len(walls), "wall {names}", "walls {names}", names=names)


@rule(RATED)
def rated_wall(facts: Facts) -> Iterator[Finding]:
    """A fire-rated wall keeps its rating: holes filled by a tested system, boxes apart."""
    walls, cite = touched_walls(facts), facts.law("300.21")
    for wall in walls:
        if wall.fire_rated == "yes":
            yield from _rated(facts, wall)
    unknown = [wall for wall in walls if wall.fire_rated == "unknown"]
    if unknown or not walls:
        which = named(unknown) if unknown else "the walls of typed legs"
        figures = f"nobody has said whether a fire rating holds for {which}"
        remedy = "Walls to a garage, another dwelling or a shaft may be rated: ask your inspector."
        yield facts.finding((RATED, "job"), "unknown", figures, cite, remedy)
    elif all(wall.fire_rated == "no" for wall in walls):
        yield facts.finding((RATED, "job"), "pass", f"not rated: {named(walls)}", cite)


def _rated(facts: Facts, wall: Wall) -> Iterator[Finding]:
    limit, units = facts.electrical("rated-box-apart"), facts.units
    apart = units.say_unit(limit.value)
    remedy = (
        "Fill every hole by a system tested for that wall, and keep boxes on its two sides "
        f"{apart} apart or protect them as listed. Use single-gang and two-gang boxes, and few of "
        "them in one wall. Ask the building office first."
    )
    words, verdict = boxes_in_rated(facts, wall)
    figures = f"a fire-rated wall is opened{words}"
    cite = f"{facts.law('300.21')}; {facts.cite(facts.building('rated-box'))}"
    yield facts.finding((RATED, f"wall {wall.id}"), verdict, figures, cite, remedy)
    for path in facts.paths:
        if path.run.way == "through" and any(leg.wall == wall.id for leg in path.legs):
            sideways = units.say_unit(path.level_in)
            figures = f"boxes on its two sides {sideways} apart, usual least {apart}"
            apart_enough: Verdict = "pass" if path.level_in >= limit.value else "fail"
            name = (RATED, f"run {path.run.id}")
            yield facts.finding(name, apart_enough, figures, facts.cite(limit), "Move the new box.")


@rule(GARAGE)
def garage_separation(facts: Facts) -> Iterator[Finding]:
    """The wall between house and garage stays closed to fire; holes in it are filled."""
    cite = facts.building_law("R302.5", "memory")
    board = facts.building("garage-board")
    for wall in touched_walls(facts):
        name = (GARAGE, f"wall {wall.id}")
        if wall.garage_side == "yes":
            thick = facts.units.say_unit(board.value)
            remedy = (
                f"Close it with board at least {thick} thick on the garage side, and fill "
                "every hole and the gap round every box."
            )
            yield facts.finding(name, "note", "between house and garage", cite, remedy)
        elif wall.garage_side == "unknown" or _is_in_doubt(facts, wall):
            figures = "nobody has said whether it stands between house and garage"
            remedy = "Look what is on its other side."
            yield facts.finding(name, "unknown", figures, cite, remedy)


def _is_in_doubt(facts: Facts, wall: Wall) -> bool:
    """An inside wall of a garage of which the survey does not say what is behind."""
    unsaid = "garage_side" not in wall.model_fields_set
    return unsaid and wall.exterior != "yes" and facts.use_of(wall.room) == "garage"
