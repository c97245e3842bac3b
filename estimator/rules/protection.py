"""Which protection a place asks for, and what protects it already on the way from the breaker."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from estimator.rules.facts import Facts
from estimator.rules.place_facts import (
    UNKNOWN,
    has_trait,
    local_list,
    moisture,
    outlet_kind,
    upstream,
    use_of_box,
)
from estimator.survey.electrical import Box
from estimator.survey.fields import YesNo
from estimator.tables.facts import NotOnFile
from estimator.tables.place import (
    GroundFaultPlace,
    arc_fault_room,
    cord_path,
    device_traits,
    ground_fault_places,
)

GFCI = "gfci-place"
AFCI = "afci-extension"


@dataclass(frozen=True, slots=True)
class Need:
    """Whether a place asks for protection.

    Attributes:
        needed: "unknown" where a fact is missing.
        words: the place that asks for it, or what is missing.
        look: what to look at where a fact is missing.
        likely: not known, but likely enough to be priced in the bad case.
    """

    needed: YesNo
    words: str
    cite: str
    look: str = ""
    likely: bool = False


def ground_fault_need(facts: Facts, box: Box) -> Need:
    """Whether an outlet stands in a place that needs ground-fault protection."""
    places = ground_fault_places(facts.edition or "", _covered_as(box))
    found = [(each, _is_there(facts, box, each)) for each in places if _covers(facts, box)]
    yes = next((place for place, there in found if there == "yes"), None)
    if yes is not None:
        return Need("yes", _words(facts, box, yes), _cite(facts, yes))
    open_ones = [place for place, there in found if there == UNKNOWN]
    if open_ones:
        return _open_need(facts, box, open_ones)
    return Need("no", "not a place that asks for it", facts.law("210.8", "seen"))


def _covered_as(box: Box) -> str:
    """A receptacle is one whatever is plugged in."""
    if device_traits(box.device).is_receptacle:
        return "receptacle"
    return outlet_kind(box) or ""


def _covers(facts: Facts, box: Box) -> bool:
    """An edition may leave out outlets of more than so many amperes."""
    if not device_traits(box.device).is_receptacle:
        breaker_a = facts.survey.circuit.breaker_a
        return breaker_a is None or breaker_a <= facts.electrical("gfci-outdoor").value
    try:
        most_a = facts.electrical("gfci-rating").value
    except NotOnFile:
        return True
    return box.device_rating_a is None or box.device_rating_a <= most_a


def _open_need(facts: Facts, box: Box, places: list[GroundFaultPlace]) -> Need:
    """What is missing before anybody can say, and where to look."""
    use, cite = use_of_box(facts, box), _cite(facts, places[0])
    likely = has_trait(facts, use, "sink likely")
    if use == UNKNOWN:
        unsaid = "nobody has said what the room is used for"
        return Need(UNKNOWN, unsaid, cite, "Say what the room is used for (use = ...).", likely)
    near = [place for place in places if place.match in _THING]
    words = [_OPEN[place.match] for place in places if place.match in _OPEN]
    look = ["Say so."] if words else []
    if near:
        things = ", ".join(_THING[place.match] for place in near)
        limit = facts.units.say_unit(max(facts.electrical(each.value).value for each in near))
        words.append(f"whether a {things} is within {limit}")
        look.append(f"Measure {cord_path(facts.edition or '')['words']}. {_NONE_NEAR}")
    said = f"nobody has said {' or '.join(words)}"
    return Need(UNKNOWN, said, cite, " ".join(look), likely)


_THING = {"sink": "sink", "tub": "tub or shower"}
_NONE_NEAR = 'If the room has none near, say so (sink_or_tub = "no").'
_OPEN = {
    "counter": "whether it serves the counter",
    "moisture": "whether the place is damp or wet",
    "food": "whether food is prepared there",
}


def _is_there(facts: Facts, box: Box, place: GroundFaultPlace) -> YesNo:
    """Whether a box stands in one of the places, as surveyed and as changed locally."""
    there = _as_surveyed(facts, box, place)
    listed, _ = local_list(facts, GFCI, f"gfci-{place.place}")
    return "no" if listed == "no" else there


def _as_surveyed(facts: Facts, box: Box, place: GroundFaultPlace) -> YesNo:
    use, room = use_of_box(facts, box), facts.room(facts.room_of(box))
    if place.match == "use":
        return UNKNOWN if use == UNKNOWN else _yes(use == place.value)
    if place.match == "counter":
        return _both(UNKNOWN if use == UNKNOWN else _yes(use == place.value), box.spot.countertop)
    if place.match == "moisture":
        wet = moisture(facts, box)
        return UNKNOWN if wet == UNKNOWN else _yes(wet != "dry")
    if place.match == "food":
        return "no" if room is None else room.food_preparation
    if room is not None and room.sink_or_tub == "no":
        return "no"
    distance_in = box.spot.sink_distance_in if place.match == "sink" else box.spot.tub_distance_in
    return _within(distance_in, facts.electrical(place.value).value)


def _yes(holds: bool) -> YesNo:
    return "yes" if holds else "no"


def _both(first: YesNo, second: YesNo) -> YesNo:
    if "no" in (first, second):
        return "no"
    return UNKNOWN if UNKNOWN in (first, second) else "yes"


def _within(distance_in: Fraction | None, limit_in: Fraction) -> YesNo:
    """Within the limit, the limit itself included: there the place still asks."""
    return UNKNOWN if distance_in is None else _yes(distance_in <= limit_in)


def _words(facts: Facts, box: Box, place: GroundFaultPlace) -> str:
    if place.match not in ("sink", "tub"):
        return place.words
    distance_in = box.spot.sink_distance_in if place.match == "sink" else box.spot.tub_distance_in
    limit = facts.units.say_unit(facts.electrical(place.value).value)
    return f"{place.words}: {facts.units.say_unit(distance_in or Fraction(0))}, within {limit}"


def _cite(facts: Facts, place: GroundFaultPlace) -> str:
    return facts.law(place.where, place.confidence)


def protecting_box(facts: Facts, box: Box) -> Box | None:
    """The nearest box on the way that holds a ground-fault receptacle, the box itself included."""
    on_the_way = (box, *upstream(facts, box))
    return next((each for each in on_the_way if device_traits(each.device).ground_fault), None)


def ground_fault_upstream(facts: Facts, box: Box) -> tuple[YesNo, str]:
    """Whether something protects a box already, itself included, and what."""
    holder = protecting_box(facts, box)
    if holder is not None:
        return "yes", f"box {holder.id} holds a ground-fault receptacle"
    return upstream_protection(facts, "gfci", "ground-fault")


def upstream_protection(facts: Facts, kind: str, words: str) -> tuple[YesNo, str]:
    """What was found at the breaker or on the way; nobody looked is unknown."""
    found = facts.survey.circuit.protection
    if found is None:
        return UNKNOWN, f"nobody has looked for {words} protection upstream"
    if kind in found:
        return "yes", f"{words} protection upstream"
    return "no", f"no {words} protection upstream"


def arc_fault_listed(facts: Facts, box: Box) -> tuple[YesNo, str]:
    """Whether the room of a box is one that needs arc-fault protection, and the citation."""
    use = use_of_box(facts, box)
    listed, reason = local_list(facts, AFCI, f"afci-{use}")
    if listed != UNKNOWN:
        return listed, reason
    row = arc_fault_room(use, facts.edition or "")
    answers: dict[str, YesNo] = {"yes": "yes", "no": "no", "ask": "unknown"}
    return answers[row["listed"]], facts.law(row["where"], row["confidence"])
