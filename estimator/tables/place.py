"""Places and what they ask for: rooms, protection, zones, lights, and what a device brings."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Literal, cast

from estimator.tables.facts import NotOnFile, Row, rows

ALL = "all"
Match = Literal["use", "counter", "sink", "tub", "moisture", "food"]
Trait = Literal[
    "sink likely", "dry", "open to weather", "wall spacing", "neutral at switch",
    "light on a switch",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class GroundFaultPlace:
    """A place whose outlets need ground-fault protection.

    Attributes:
        place: its key, as a local change names it.
        match: how an outlet is found to be there. value: the room's use, or the figure's name.
        outlet: the kind of outlet meant. most_a: larger ones are left out; None: any size.
    """

    place: str
    match: Match
    value: str
    outlet: str
    most_a: int | None
    words: str
    where: str
    confidence: str


@cache
def ground_fault_places(edition: str, outlet: str) -> tuple[GroundFaultPlace, ...]:
    """Places of one edition that speak of a kind of outlet."""
    return tuple(
        GroundFaultPlace(
            row["place"],
            cast(Match, row["match"]),
            row["value"],
            row["outlet"],
            int(row["most_a"]) if row["most_a"] else None,
            row["words"],
            row["where"],
            row["confidence"],
        )
        for row in rows("gfci_places")
        if (row["edition"], row["outlet"]) == (edition, outlet)
    )


@cache
def arc_fault_room(use: str, edition: str) -> Row:
    """Whether rooms of a use are listed: "yes", "no", or "ask" where the list leaves it open."""
    return _of_edition("afci_rooms", "room", use, edition)


@cache
def arc_fault_clause(edition: str) -> Row:
    """Where an edition speaks of wiring that is extended."""
    return _one("afci_extension", "edition", edition)


@cache
def cord_path(edition: str) -> Row:
    """How the distance from a sink is measured."""
    return _one("cord_paths", "edition", edition)


@cache
def tub_relief(edition: str) -> Mapping[str, Row]:
    """What lets a receptacle stand inside the zone of a tub, by its key."""
    return {row["relief"]: row for row in rows("tub_relief") if row["edition"] == edition}


@cache
def closet_light(luminaire: str) -> Row:
    """The clearance figure of a kind of light; an empty figure: never in a closet."""
    return _one("closet_lights", "luminaire", luminaire)


@cache
def island_receptacles(edition: str) -> Row:
    """What an edition asks for at an island."""
    return _one("island_receptacles", "edition", edition)


@cache
def outlet_measure(use: str) -> Row | None:
    """The measure by which a receptacle counts as the one a room must have; None: no such."""
    return next((row for row in rows("outlet_measures") if row["room"] == use), None)


@dataclass(frozen=True, slots=True)
class DeviceTraits:
    """What a device brings. weather: "dry", "damp" or "wet", the worst place it is made for."""

    is_receptacle: bool
    is_switch: bool
    ground_fault: bool
    arc_fault: bool
    weather: str


@cache
def device_traits(device: str) -> DeviceTraits:
    """Traits of one device.

    Raises:
        NotOnFile: a device without a row.
    """
    row = _one("device_traits", "device", device)
    yes = {key: value == "yes" for key, value in row.items()}
    return DeviceTraits(
        yes["is_receptacle"],
        yes["is_switch"],
        yes["ground_fault"],
        yes["arc_fault"],
        row["weather"],
    )


@cache
def receptacle_for(weather: str, ground_fault: bool) -> str:
    """The receptacle made for a place, with ground-fault protection or without."""
    for row in rows("device_traits"):
        traits = device_traits(row["device"])
        fits = traits.is_receptacle and not traits.arc_fault
        if fits and (traits.weather, traits.ground_fault) == (weather, ground_fault):
            return row["device"]
    raise NotOnFile("device_traits", weather, _keys("device_traits", "weather"))


@cache
def room_trait(use: str, trait: Trait, edition: str) -> Row | None:
    """The row that gives rooms of a use a trait; None where they do not have it."""
    for row in rows("room_traits"):
        if (row["room"], row["trait"]) == (use, trait) and row["edition"] in (ALL, edition):
            return row
    return None


def _of_edition(table: str, column: str, key: str, edition: str) -> Row:
    """A row of the edition itself, else the one that serves all."""
    found = {row["edition"]: row for row in rows(table) if row[column] == key}
    row = found.get(edition) or found.get(ALL)
    if row is None:
        raise NotOnFile(table, key, _keys(table, column))
    return row


def _one(table: str, column: str, key: str) -> Row:
    for row in rows(table):
        if row[column] == key:
            return row
    raise NotOnFile(table, key, _keys(table, column))


def _keys(table: str, column: str) -> tuple[str, ...]:
    return tuple(sorted({row[column] for row in rows(table)}))
