"""What the rules of places share: kinds of outlets, the way they are fed, local changes."""

from __future__ import annotations

from decimal import Decimal
from typing import Final, Literal, get_args

from estimator.rules.facts import Facts
from estimator.rules.records import Remedy, RemedyPart, RemedyTask
from estimator.survey.electrical import Box
from estimator.survey.fields import YesNo
from estimator.survey.place import RoomUse
from estimator.survey.records import Amendment
from estimator.tables.facts import NotOnFile, device_kind
from estimator.tables.place import Trait, device_traits, room_trait

OutletKind = Literal["receptacle", "light", "switch", "fixed appliance"]
OUTLET_KINDS: tuple[OutletKind, ...] = get_args(OutletKind)
UNKNOWN: Final = "unknown"
# Everything a room can be, for a room of which nobody said what it is.
ANY_USE: tuple[RoomUse, ...] = tuple(use for use in get_args(RoomUse) if use != UNKNOWN)
_FIXED_APPLIANCES = ("hood", "disposer", "dishwasher")
# The rules of the US speak of devices as they are sold there.
_BOOK = "us"
_DROPPED = ("0", "no")
_ONE = Decimal(1)


def outlet_kind(box: Box) -> OutletKind | None:
    """What a box is to the circuit; None for a box that only holds a splice."""
    traits = device_traits(box.device)
    if box.spot.appliance in _FIXED_APPLIANCES:
        return "fixed appliance"
    if traits.is_receptacle:
        return "receptacle"
    if traits.is_switch:
        return "switch"
    if box.device == "luminaire":
        return "light"
    return "fixed appliance" if box.spot.appliance != "none" else None


def outlets(facts: Facts) -> tuple[tuple[Box, OutletKind], ...]:
    """New boxes that are outlets or switches, each with its kind."""
    kinds = ((box, outlet_kind(box)) for box in facts.new_boxes)
    return tuple((box, kind) for box, kind in kinds if kind is not None)


def new_receptacles(facts: Facts) -> tuple[Box, ...]:
    """New boxes that hold a receptacle."""
    return tuple(box for box in facts.new_boxes if device_traits(box.device).is_receptacle)


def use_of_box(facts: Facts, box: Box) -> RoomUse:
    """What the room is used for that a box opens to."""
    return facts.use_of(facts.room_of(box))


def place_words(facts: Facts, box: Box) -> str:
    """The room of a box with its use: "bedroom", or "north room (bedroom)"."""
    room, use = facts.room_of(box), use_of_box(facts, box)
    if use == UNKNOWN:
        return f"{room} (its use is unknown)"
    return use if use == room.lower() else f"{room} ({use})"


def upstream(facts: Facts, box: Box) -> tuple[Box, ...]:
    """The boxes that a box is fed through, the nearest first, back to the source."""
    feeder = {run.to_box: run.from_box for run in reversed(facts.survey.runs)}
    found: list[Box] = []
    name = feeder.get(box.id)
    while name is not None and name in facts.boxes and facts.boxes[name] not in found:
        found.append(facts.boxes[name])
        name = feeder.get(name)
    return tuple(found)


def source_of(facts: Facts, box: Box) -> Box | None:
    """The existing box that feeds a new one, through others or not; None: no run reaches it."""
    return next((each for each in upstream(facts, box) if each.existing), None)


def has_trait(facts: Facts, use: str, trait: Trait) -> bool:
    """True where rooms of this use have a trait in the edition in force."""
    return room_trait(use, trait, facts.edition or "") is not None


def moisture(facts: Facts, box: Box) -> Literal["dry", "damp", "wet", "unknown"]:
    """How wet it is there: as surveyed, else dry where the room's use says so."""
    if box.spot.moisture != UNKNOWN:
        return box.spot.moisture
    return "dry" if has_trait(facts, use_of_box(facts, box), "dry") else UNKNOWN


def weather_asked(facts: Facts, box: Box) -> Literal["dry", "damp", "wet"]:
    """The weather a device there must stand; outdoors counts as wet where nobody said."""
    wet = moisture(facts, box)
    if wet == UNKNOWN:
        return "wet" if has_trait(facts, use_of_box(facts, box), "open to weather") else "dry"
    return wet


def local_list(facts: Facts, rule: str, figure: str) -> tuple[YesNo, str]:
    """Whether a local change lists a place ("1") or drops it ("0"), with its reason.

    "unknown" where no local change speaks of it.
    """
    for each in facts.survey.amendments:
        if _speaks_of(each, rule, figure):
            return ("no" if each.value in _DROPPED else "yes"), f"local: {each.reason}"
    return UNKNOWN, ""


def _speaks_of(change: Amendment, rule: str, figure: str) -> bool:
    return (change.change, change.rule, change.figure) == ("figure", rule, figure)


def protective_device(facts: Facts, device: str) -> tuple[Remedy, ...]:
    """A receptacle that takes the place of an old one: device, plate and the work."""
    try:
        kind = device_kind(device, _BOOK, facts.survey.circuit.breaker_a)
    except NotOnFile:
        kind = device_kind(device, _BOOK, None)
    return (
        RemedyPart("devices", kind.item, _ONE, "ea"),
        RemedyPart("devices", kind.plate_item, _ONE, "ea"),
        RemedyTask("terminate", kind.task, _ONE, "ea"),
    )


def is_decided(facts: Facts, finding_id: str) -> bool:
    """True where the job accepts a finding or declines its remedy."""
    return any(each.finding == finding_id for each in facts.survey.acceptances)
