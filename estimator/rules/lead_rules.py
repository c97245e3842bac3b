"""Lead: painted surface that the job disturbs, by room, in a house built before the ban."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from math import ceil, floor

from estimator.measures import ft2_to_in2, in2_to_ft2, to_decimal
from estimator.route.records import RunPath
from estimator.rules.facts import Facts
from estimator.rules.house_rules import caution_for
from estimator.rules.records import Finding, RemedyPart, RemedyTask
from estimator.rules.registry import rule
from estimator.saying import Saying, listed, said
from estimator.takeoff.amounts import trim
from estimator.takeoff.openings import holes
from estimator.takeoff.run_lines import trim_in

LEAD = "lead-paint"
_ZERO = Fraction(0)
_CENTS = 100
_ONE = Decimal(1)
_REMEDIES = (
    RemedyPart("consumables", "plastic-sheet", _ONE, "ea"),
    RemedyTask("set-up", "lead-rule-room", _ONE, "ea"),
)
_LEVEL = ("along", "across")


@dataclass(frozen=True, slots=True)
class Disturbed:
    """Painted surface of one room, square inches; None where nobody knows.

    Attributes:
        trim_in2: trim taken off counts whole. before_in2: other work of the last days.
        hammered: ids of openings that are broken out and not cut out whole.
    """

    room: str
    openings_in2: Fraction
    cutouts_in2: Fraction
    trim_in2: Fraction | None
    before_in2: Fraction | None
    hammered: tuple[str, ...]

    @property
    def known_in2(self) -> Fraction:
        """All that is known to be disturbed."""
        return self.openings_in2 + self.cutouts_in2 + (self.trim_in2 or 0) + (self.before_in2 or 0)


@rule(LEAD)
def lead_paint(facts: Facts) -> Iterator[Finding]:
    """Sum the painted surface disturbed in each room and hold it against the rule's exception."""
    job, house, line = facts.survey.job, facts.survey.house, facts.building("lead-year")
    name = (LEAD, "job")
    late = job.year_built is not None and job.year_built >= line.value
    if late and house.lead_tested != "found":
        figures = f"built {job.year_built}, {line.value} or later"
        yield facts.finding(name, "pass", figures, facts.cite(line))
    elif house.lead_tested == "none found":
        told = caution_for(facts, "lead-tested")
        yield facts.finding(name, "pass", "tested, no lead paint", told.cite, told.text)
    elif house.work_for_pay == "no":
        told = caution_for(facts, "lead-own-home")
        figures = f"{_built(facts)}; the rule speaks of work for pay"
        yield facts.finding(name, "note", figures, facts.cite(line), told.text)
    else:
        for disturbed in disturbed_rooms(facts):
            yield _judge(facts, disturbed)


def disturbed_rooms(facts: Facts) -> Iterator[Disturbed]:
    """Every room whose painted surface the job disturbs, by name."""
    trims = _trim_by_room(facts)
    cut = dict(facts.takeoff.closing.disturbed_in2)
    openings = holes(facts.survey)
    for room_id in sorted(cut.keys() | trims.keys()):
        here = [hole for hole in openings if hole.room == room_id]
        openings_in2 = sum((hole.area_in2 for hole in here), _ZERO)
        room = facts.room(room_id)
        yield Disturbed(
            room=room_id,
            openings_in2=openings_in2,
            cutouts_in2=cut.get(room_id, _ZERO) - openings_in2,
            trim_in2=trims.get(room_id, _ZERO),
            before_in2=room.disturbed_before_in2 if room is not None else None,
            hammered=tuple(h.opening.id for h in here if h.opening.cut_out == "hammered"),
        )


def _trim_by_room(facts: Facts) -> dict[str, Fraction | None]:
    """Trim taken off, length times height; None in a room where its height is unknown."""
    rooms: dict[str, Fraction | None] = {}
    for path in facts.paths:
        for wall_id, length_in in _trim_by_wall(facts, path):
            wall = facts.walls.get(wall_id or "")
            box = facts.boxes[path.run.from_box]
            room = facts.room_of(box) if wall is None else wall.room
            height_in = None if wall is None else wall.trim_height_in
            so_far = rooms.get(room, _ZERO)
            if height_in is None or so_far is None:
                rooms[room] = None
            else:
                rooms[room] = so_far + length_in * height_in
    return rooms


def _trim_by_wall(facts: Facts, path: RunPath) -> Iterator[tuple[str | None, Fraction]]:
    """The run's trim shared out over the walls that its level legs lie in."""
    total_in = trim_in(path)
    if not total_in:
        return
    if not path.level_in:
        yield facts.boxes[path.run.from_box].wall, total_in
    for leg in path.legs:
        if leg.go in _LEVEL and path.level_in:
            yield leg.wall, total_in * leg.length_in / path.level_in


def _judge(facts: Facts, disturbed: Disturbed) -> Finding:
    outdoors = facts.use_of(disturbed.room) == "outdoors"
    limit = facts.building("lead-outdoors" if outdoors else "lead-room")
    name = (LEAD, f"room {disturbed.room}")
    figures = listed((_built(facts), *_sum_words(facts, disturbed, limit.value)), "; ")
    near = disturbed.known_in2 > ft2_to_in2(facts.building("lead-near").value) and not outdoors
    cite = facts.cite(limit)
    if disturbed.hammered or disturbed.known_in2 > ft2_to_in2(limit.value):
        return _over(facts, name, disturbed, (figures, cite))
    if near:
        figures = listed((figures, said("near the limit")), "; ")
    if disturbed.trim_in2 is None or disturbed.before_in2 is None:
        remedies = _REMEDIES if near else ()
        return facts.finding(name, "unknown", figures, cite, _missing(facts, disturbed), remedies)
    if near:
        return facts.finding(name, "note", figures, cite, caution_for(facts, "lead-near").text)
    return facts.finding(name, "pass", figures, cite)


def _over(
    facts: Facts, name: tuple[str, str], disturbed: Disturbed, words: tuple[str, str]
) -> Finding:
    """The rule applies, if the house is old enough and somebody is paid."""
    figures, cite = words
    remedy = caution_for(facts, "lead-over").text
    if disturbed.hammered:
        told = caution_for(facts, "lead-demolition")
        hammered = said("hammered out: {openings}", openings=listed(disturbed.hammered))
        figures = listed((figures, hammered), "; ")
        remedy, cite = f"{told.text} {remedy}", told.cite
    house = facts.survey.house
    dated = facts.survey.job.year_built is not None or house.lead_tested == "found"
    if dated and house.work_for_pay == "yes":
        return facts.finding(name, "fail", figures, cite, remedy, _REMEDIES)
    remedy = f"Find out when the house was built and who pays for the work. {remedy}"
    return facts.finding(name, "unknown", figures, cite, remedy, _REMEDIES)


def _built(facts: Facts) -> Saying:
    year = facts.survey.job.year_built
    return said("year built unknown") if year is None else said("built {year}", year=year)


def _sum_words(facts: Facts, disturbed: Disturbed, limit_ft2: Fraction) -> Iterator[Saying]:
    """The sum as a reader can redo it; parts rounded up and what is left rounded down."""
    left_in2 = ft2_to_in2(limit_ft2) - disturbed.known_in2
    side = said("under by {area}", area=_down(left_in2))
    if left_in2 < 0:
        side = said("over by {area}", area=_up(-left_in2))
    yield said(
        "{sum} of {limit} ft2 in {days} days, {side}",
        sum=_added(disturbed),
        limit=limit_ft2,
        days=facts.building("lead-days").value,
        side=side,
    )
    alone_in2 = ft2_to_in2(limit_ft2) - disturbed.openings_in2
    if disturbed.openings_in2 and alone_in2 >= 0 and disturbed.known_in2 > disturbed.openings_in2:
        yield said("openings alone under by {area}", area=_down(alone_in2))


def _added(disturbed: Disturbed) -> Saying:
    """What is disturbed, part by part."""
    trim_in2, before_in2 = disturbed.trim_in2 or _ZERO, disturbed.before_in2 or _ZERO
    parts = (
        (said("openings {area}", area=_up(disturbed.openings_in2)), disturbed.openings_in2),
        (said("box cut-outs {area}", area=_up(disturbed.cutouts_in2)), disturbed.cutouts_in2),
        (said("trim taken off {area}", area=_up(trim_in2)), trim_in2),
        (said("other work {area}", area=_up(before_in2)), before_in2),
    )
    terms = [words for words, area_in2 in parts if area_in2]
    if not terms:
        return said("nothing")
    summed = listed(terms, " + ")
    if len(terms) == 1:
        return summed
    return listed((summed, str(_up(disturbed.known_in2))), " = ")


def _up(area_in2: Fraction) -> Decimal:
    """Square feet to two places, rounded up."""
    return trim(to_decimal(Fraction(ceil(in2_to_ft2(area_in2) * _CENTS), _CENTS), 2))


def _down(area_in2: Fraction) -> Decimal:
    """Square feet to two places, rounded down."""
    return trim(to_decimal(Fraction(floor(in2_to_ft2(area_in2) * _CENTS), _CENTS), 2))


def _missing(facts: Facts, disturbed: Disturbed) -> str:
    days = facts.building("lead-days").value
    asked = []
    if disturbed.before_in2 is None:
        asked.append(f"Ask what paint was disturbed in this room in the last {days} days.")
    if disturbed.trim_in2 is None:
        asked.append("Measure the height of the trim that comes off: it counts whole.")
    return " ".join(asked)
