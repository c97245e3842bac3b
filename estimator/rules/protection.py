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
from estimator.survey.place import Room, RoomUse
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


@dataclass(frozen=True, slots=True)
class _Stand:
    """A box and its room, looked up once for all the places asked about."""

    facts: Facts
    box: Box
    use: RoomUse
    room: Room | None


def ground_fault_need(facts: Facts, box: Box) -> Need:
    """Whether an outlet stands in a place that needs ground-fault protection."""
    room = facts.room_of(box)
    stand = _Stand(facts, box, facts.use_of(room), facts.room(room))
    places = ground_fault_places(facts.edition or "", _covered_as(box))
    found = [(each, _is_there(stand, each)) for each in places if _covers(stand, each)]
    yes = next((place for place, there in found if there == "yes"), None)
    if yes is not None:
        return Need("yes", _words(facts, box, yes), _cite(facts, yes))
    open_ones = [place for place, there in found if there == UNKNOWN]
    if open_ones:
        return _open_need(stand, open_ones)
    return Need("no", "not a place that asks for it", facts.law("210.8", "seen"))


def _covered_as(box: Box) -> str:
    """A receptacle is one whatever is plugged in."""
    if device_traits(box.device).is_receptacle:
        return "receptacle"
    return outlet_kind(box) or ""


def _covers(stand: _Stand, place: GroundFaultPlace) -> bool:
    """An edition may leave out receptacles, or circuits, of more than so many amperes."""
    rating_a = stand.box.device_rating_a
    if place.outlet != "receptacle":
        rating_a = stand.facts.survey.circuit.breaker_a
    return place.most_a is None or rating_a is None or rating_a <= place.most_a


def _open_need(stand: _Stand, places: list[GroundFaultPlace]) -> Need:
    """What is missing before anybody can say, and where to look."""
    facts, cite = stand.facts, _cite(stand.facts, places[0])
    likely = has_trait(facts, stand.use, "sink likely")
    if stand.use == UNKNOWN:
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


def _is_there(stand: _Stand, place: GroundFaultPlace) -> YesNo:
    """Whether a box stands in one of the places, as surveyed and as changed locally."""
    listed, _ = local_list(stand.facts, GFCI, f"gfci-{place.place}")
    return "no" if listed == "no" else _as_surveyed(stand, place)


def _as_surveyed(stand: _Stand, place: GroundFaultPlace) -> YesNo:
    if place.match == "use":
        return _is_used_as(stand, place)
    if place.match == "counter":
        return _both(_is_used_as(stand, place), stand.box.spot.countertop)
    if place.match == "moisture":
        wet = moisture(stand.facts, stand.box)
        return UNKNOWN if wet == UNKNOWN else _yes(wet != "dry")
    if place.match == "food":
        return "no" if stand.room is None else stand.room.food_preparation
    if stand.room is not None and stand.room.sink_or_tub == "no":
        return "no"
    return _within(_distance_in(stand.box, place), stand.facts.electrical(place.value).value)


def _is_used_as(stand: _Stand, place: GroundFaultPlace) -> YesNo:
    return UNKNOWN if stand.use == UNKNOWN else _yes(stand.use == place.value)


def _distance_in(box: Box, place: GroundFaultPlace) -> Fraction | None:
    return box.spot.sink_distance_in if place.match == "sink" else box.spot.tub_distance_in


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
    distance_in = _distance_in(box, place)
    if place.match not in _THING or distance_in is None:
        return place.words
    limit = facts.units.say_unit(facts.electrical(place.value).value)
    return f"{place.words}: {facts.units.say_unit(distance_in)}, within {limit}"


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
