"""The house: asbestos, plaster, dust, ladders, hidden lines, digging."""

from __future__ import annotations

from collections.abc import Iterator

from estimator.rules.facts import UNITED_STATES, Facts
from estimator.rules.records import Finding
from estimator.rules.registry import rule
from estimator.rules.seal_rules import named, touched_walls
from estimator.saying import said
from estimator.survey.place import Wall
from estimator.tables.house import Caution, caution
from estimator.takeoff.amounts import plural

ASBESTOS = "asbestos-age"
PLASTER = "plaster"
SILICA = "silica"
LADDER = "ladder"
LINES = "hidden-lines"
DIGGING = "digging"
_IN_THE_WAY = ("pipe", "duct", "wire", "other")


def caution_for(facts: Facts, key: str) -> Caution:
    """A caution in the words for the job's country."""
    return caution(key, facts.survey.job.country)


def noted(facts: Facts, name: tuple[str, str], figures: str, key: str) -> Finding:
    """A note that says a caution, cited as the caution is."""
    told = caution_for(facts, key)
    return facts.finding(name, "note", figures, told.cite, told.text)


def cuts_finish(facts: Facts) -> bool:
    """True where the finish of a wall or ceiling is cut: openings, and places for new boxes."""
    return bool(facts.survey.openings or facts.new_boxes)


@rule(ASBESTOS)
def asbestos_age(facts: Facts) -> Iterator[Finding]:
    """Old finishes are tested before they are cut; found asbestos stops the work."""
    if not cuts_finish(facts):
        return
    name, house = (ASBESTOS, "job"), facts.survey.house
    if house.asbestos_tested == "none found":
        cite = caution_for(facts, "asbestos").cite
        yield facts.finding(name, "pass", "tested, none found", cite)
    elif house.asbestos_tested == "found":
        told = caution_for(facts, "asbestos-found")
        yield facts.finding(name, "fail", said("tested, asbestos found"), told.cite, told.text)
    else:
        yield _by_age(facts, name)
        if house.local_survey_first == "yes":
            yield noted(facts, (ASBESTOS, "survey"), "not tested yet", "asbestos-survey")


def _by_age(facts: Facts, name: tuple[str, str]) -> Finding:
    """Ask by the year; outside the United States no year settles it."""
    job, told = facts.survey.job, caution_for(facts, "asbestos")
    built = said("year built unknown")
    if job.year_built is not None:
        built = said("built {year}", year=job.year_built)
    if job.country != UNITED_STATES:
        return facts.finding(name, "note", f"{built}, not tested", told.cite, told.text)
    line = facts.building("asbestos-year").value
    figures = said("{built}, not tested; asked about before about {year}", built=built, year=line)
    if job.year_built is None:
        remedy = f"Find out when the house was built. {told.text}"
        return facts.finding(name, "unknown", figures, told.cite, remedy)
    if job.year_built >= line:
        return facts.finding(name, "pass", f"{built}, {line} or later", told.cite)
    return facts.finding(name, "note", figures, told.cite, told.text)


@rule(PLASTER)
def plaster(facts: Facts) -> Iterator[Finding]:
    """Plaster on lath is cut otherwise than board, and takes deeper boxes."""
    told = caution_for(facts, PLASTER)
    for wall in _opened_walls(facts):
        name = (PLASTER, f"wall {wall.id}")
        if wall.finish == "plaster":
            yield noted(facts, name, "plaster is cut", PLASTER)
        elif wall.finish == "unknown":
            figures = said("plaster or board, nobody has said which")
            remedy = f"Look at the edge inside a box with the circuit off. If plaster: {told.text}"
            yield facts.finding(name, "unknown", figures, told.cite, remedy)
    if any(each.fill == "plaster" and each.wall is None for each in facts.survey.openings):
        yield noted(facts, (PLASTER, "job"), "plaster is cut", PLASTER)


def _opened_walls(facts: Facts) -> tuple[Wall, ...]:
    """Walls with an opening or a new box, in the survey's order."""
    names = {each.wall for each in facts.survey.openings}
    names |= {box.wall for box in facts.new_boxes}
    return tuple(wall for wall in facts.survey.walls if wall.id in names)


@rule(SILICA)
def silica(facts: Facts) -> Iterator[Finding]:
    """Cutting board and sanding compound make fine dust."""
    if not cuts_finish(facts):
        return
    openings, boxes = len(facts.survey.openings), len(facts.new_boxes)
    figures = f"{plural(openings, 'opening')} and {plural(boxes, 'place')} for new boxes cut"
    if facts.takeoff.closing.tape_in:
        figures += ", seams sanded"
    yield noted(facts, (SILICA, "job"), figures, SILICA)


@rule(LADDER)
def ladder(facts: Facts) -> Iterator[Finding]:
    """Work above reach, in a ceiling or by the attic is done from a ladder."""
    high = list(_above_reach(facts))
    if high:
        yield noted(facts, (LADDER, "job"), ", ".join(high), LADDER)


def _above_reach(facts: Facts) -> Iterator[str]:
    reach_in, units = facts.building("ladder-reach").value, facts.units
    for box in facts.boxes.values():
        if box.mount == "ceiling":
            yield f"box {box.id} in the ceiling"
        elif box.height_in is not None and box.height_in > reach_in:
            yield f"box {box.id} at {units.say_unit(box.height_in)}"
    for run in facts.survey.runs:
        if run.level == "attic":
            yield f"run {run.id} by the attic"
        elif run.height_in is not None and run.height_in > reach_in:
            yield f"run {run.id} at {units.say_unit(run.height_in)}"
    for opening in facts.survey.openings:
        if opening.surface == "ceiling":
            yield f"opening {opening.id} in the ceiling"
        elif opening.top_in is not None and opening.top_in > reach_in:
            yield f"opening {opening.id} up to {units.say_unit(opening.top_in)}"


@rule(LINES)
def hidden_lines(facts: Facts) -> Iterator[Finding]:
    """Pipes, gas and other wires inside the walls are looked for before a cut."""
    walls, told = touched_walls(facts), caution_for(facts, LINES)
    found = {each.wall for each in facts.survey.obstacles if each.kind in _IN_THE_WAY}
    for wall in walls:
        if wall.hidden_lines == "yes" or wall.id in found:
            figures = "pipes, ducts or wires inside the wall"
            yield noted(facts, (LINES, f"wall {wall.id}"), figures, LINES)
    rest = [wall for wall in walls if wall.id not in found and wall.hidden_lines != "yes"]
    unknown = [wall for wall in rest if wall.hidden_lines == "unknown"]
    if unknown or not walls:
        where = named(unknown) if unknown else said("the walls of typed legs")
        figures = said("nobody has said what is inside {walls}", walls=where)
        yield facts.finding((LINES, "job"), "unknown", figures, told.cite, told.text)
    elif rest:
        figures = f"looked, nothing in {named(rest)}"
        yield facts.finding((LINES, "job"), "pass", figures, told.cite)


@rule(DIGGING)
def digging(facts: Facts) -> Iterator[Finding]:
    """A run that ends outdoors may mean digging."""
    outside = [
        box.id for box in facts.boxes.values() if facts.use_of(facts.room_of(box)) == "outdoors"
    ]
    if outside:
        figures = f"outdoors: box {', '.join(outside)}"
        yield noted(facts, (DIGGING, "job"), figures, DIGGING)
