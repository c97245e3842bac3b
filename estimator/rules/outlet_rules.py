"""Outlets that a room must have, and where they count: advice, except a switch's neutral."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from math import ceil

from estimator.measures import AREA_IN2
from estimator.rules.facts import Facts
from estimator.rules.place_facts import (
    has_trait,
    new_receptacles,
    outlet_kind,
    upstream,
    use_of_box,
)
from estimator.rules.records import Finding
from estimator.rules.registry import rule
from estimator.survey.electrical import Box
from estimator.survey.place import Room
from estimator.tables.facts import NotOnFile, Row
from estimator.tables.limits import Limit
from estimator.tables.place import device_traits, island_receptacles, outlet_measure

APPLIANCE = "appliance-outlet"
COUNTER = "counter-receptacle"
REQUIRED = "required-outlets"


@rule(APPLIANCE)
def appliance_outlet(facts: Facts) -> Iterator[Finding]:
    """An outlet for an appliance stands near it."""
    limit = facts.electrical("appliance-reach")
    say, cite = facts.units.say_unit, facts.cite(limit)
    for box in facts.new_boxes:
        away_in, subject = box.spot.appliance_distance_in, (APPLIANCE, box.id)
        if box.spot.appliance == "none":
            continue
        what = f"{box.spot.appliance}: at most {say(limit.value)} away"
        if away_in is None:
            remedy = "Measure from the outlet to the place of the appliance."
            yield facts.finding(subject, "unknown", f"{what}, distance unknown", cite, remedy)
        elif away_in <= limit.value:
            yield facts.finding(subject, "pass", f"{what}, here {say(away_in)}", cite)
        else:
            remedy = "Plan the outlet nearer to the appliance."
            yield facts.finding(subject, "note", f"{what}, here {say(away_in)}", cite, remedy)


@rule(COUNTER)
def counter_receptacle(facts: Facts) -> Iterator[Finding]:
    """A receptacle for a counter stands a little above it, or, in older editions, below."""
    for box in new_receptacles(facts):
        if box.spot.countertop == "yes":
            yield _counter(facts, box)


def _counter(facts: Facts, box: Box) -> Finding:
    subject, say, below_in = (COUNTER, box.id), facts.units.say_unit, box.spot.below_counter_in
    if below_in is not None:
        return _below_counter(facts, box, below_in)
    limit, above_in = facts.electrical("counter-above"), box.spot.above_counter_in
    reach = facts.electrical("counter-reach")
    figures = f"at most {say(limit.value)} above the counter"
    if above_in is None:
        remedy = "Measure its height above the counter top."
        unmeasured = f"{figures}, height unknown"
        return facts.finding(subject, "unknown", unmeasured, facts.cite(limit), remedy)
    figures = f"{figures}, here {say(above_in)}"
    if above_in <= limit.value:
        spacing = f"no point of the counter wall more than {say(reach.value)} from one"
        return facts.finding(subject, "pass", f"{figures}; {spacing}", facts.cite(limit))
    remedy = "Higher up it does not count as a receptacle of the counter."
    return facts.finding(subject, "note", figures, facts.cite(limit), remedy)


def _below_counter(facts: Facts, box: Box, below_in: Fraction) -> Finding:
    subject, say = (COUNTER, box.id), facts.units.say_unit
    here = f"{say(below_in)} below the counter"
    try:
        limit = facts.electrical("counter-below")
    except NotOnFile:
        remedy = "Below the counter it does not count: plan it above."
        law = facts.law(facts.electrical("counter-above").where, "seen")
        return facts.finding(subject, "note", f"{here}; this edition has none below", law, remedy)
    figures = f"{here}; at most {say(limit.value)} where none can be above"
    if below_in <= limit.value:
        return facts.finding(subject, "pass", figures, facts.cite(limit))
    remedy = "So far below it does not count as a receptacle of the counter."
    return facts.finding(subject, "note", figures, facts.cite(limit), remedy)


@rule(REQUIRED)
def required_outlets(facts: Facts) -> Iterator[Finding]:
    """Say where a new outlet counts as one that its room must have."""
    for box in new_receptacles(facts):
        row = outlet_measure(use_of_box(facts, box))
        if row is not None:
            yield _measured(facts, box, row)
        elif use_of_box(facts, box) == "hall":
            yield from _hall(facts, box)
    for box in facts.new_boxes:
        if outlet_kind(box) == "light" and has_trait(
            facts, use_of_box(facts, box), "light on a switch"
        ):
            yield _light(facts, box)
    rooms = dict.fromkeys(facts.room_of(box) for box in new_receptacles(facts))
    for room in (facts.room(name) for name in rooms):
        if room is not None and room.island_in2 is not None:
            yield _island(facts, room, room.island_in2)


def _measured(facts: Facts, box: Box, row: Row) -> Finding:
    limit, subject, say = facts.electrical(row["figure"]), (REQUIRED, box.id), facts.units.say_unit
    at_in = box.spot.sink_distance_in if row["measure"] == "sink" else box.height_in
    figures = f"{row['words']}: {_MEASURES[row['measure']]} at most {say(limit.value)}"
    if at_in is None:
        unmeasured = f"{figures}, here unknown"
        return facts.finding(subject, "unknown", unmeasured, facts.cite(limit), "Measure it.")
    if at_in <= limit.value:
        return facts.finding(subject, "pass", f"{figures}, here {say(at_in)}", facts.cite(limit))
    remedy = f"It does not count as {row['words']}."
    return facts.finding(
        subject, "note", f"{figures}, here {say(at_in)}", facts.cite(limit), remedy
    )


_MEASURES = {"sink": "distance to the basin", "height": "height above the floor"}


def _hall(facts: Facts, box: Box) -> Iterator[Finding]:
    limit, wall = facts.electrical("hall-length"), facts.walls.get(box.wall or "")
    if wall is not None and wall.length_in >= limit.value:
        say = facts.units.say_unit
        figures = f"a hall of {say(limit.value)} or more must have a receptacle: this is one"
        yield facts.finding((REQUIRED, box.id), "pass", figures, facts.cite(limit))


def _light(facts: Facts, box: Box) -> Finding:
    """A room's light hangs on a wall switch, on the way to it or behind it."""
    fed_from = {run.to_box for run in facts.survey.runs if run.from_box == box.id}
    near = (*upstream(facts, box), *(facts.boxes[name] for name in sorted(fed_from)))
    switches = [each.id for each in near if device_traits(each.device).is_switch]
    subject, law = (REQUIRED, box.id), facts.law("210.70(A)", "seen")
    if switches:
        figures = f"a light on a wall switch: box {switches[0]}"
        return facts.finding(subject, "pass", figures, law)
    remedy = "Plan a wall switch, unless the room has a light on one already."
    return facts.finding(subject, "note", "a light without a wall switch", law, remedy)


def _island(facts: Facts, room: Room, top_in2: Fraction) -> Finding:
    """How many receptacles an island wants, by the edition."""
    row, subject = island_receptacles(facts.edition or ""), (REQUIRED, f"room {room.id}")
    law = facts.law(row["where"], row["confidence"])
    figures = f"island: {row['words']}"
    if row["counted"] == "yes":
        first, further = facts.electrical("island-first"), facts.electrical("island-further")
        count = _island_count(top_in2, first, further)
        figures = f"{figures}; {facts.units.areas(top_in2)} {facts.units.area}: {count}"
    return facts.finding(subject, "note", figures, law, "Plan for it while the floor is open.")


def _island_count(top_in2: Fraction, first: Limit, further: Limit) -> int:
    """One for the first part of the top, and one for each further part begun."""
    over_in2 = top_in2 - first.value * AREA_IN2[first.unit]
    return 1 + max(0, ceil(over_in2 / (further.value * AREA_IN2[further.unit])))
