"""Receptacles, lights, switches and spacing, word for word; older editions by what was read."""

from __future__ import annotations

from typing import Any

import pytest

from tests.rules.place_case import EDITIONS, finding, job, run
from tests.rules.told import Told, told

E17, E20, E23 = EDITIONS
WEATHER, REPLACED, COUNTER = "weather-resistant", "replaced-receptacle", "counter-receptacle"
REQUIRED, CLOSET, TUB = "required-outlets", "closet-light", "tub-zone"
SWITCH, SPACING = "switch-neutral", "receptacle-spacing"
DAMP = "a weather-resistant receptacle and a cover that is tight when closed"
WET = "a weather-resistant receptacle and an extra-duty cover that is tight with a plug in"
FREE = (
    "Free of it: a switch of a receptacle, an automatic one, a room that another switch sees"
    " whole, or a box that a cable can be fished to later without opening the finish."
)
SPACED = "at most 72 in from a receptacle"
CORNERS = (
    "A receptacle round the corner may serve it, measured along the floor. If none does, think of"
    " one more while the wall is open."
)


@pytest.mark.parametrize(
    ("room", "wet", "want"),
    [
        (
            "outdoors",
            "damp",
            Told(
                "fail",
                "outdoors: a damp place, the device is for dry places",
                "NEC 2017 406.9(A)",
                f"Fit {DAMP}.",
            ),
        ),
        (
            "outdoors",
            "wet",
            Told(
                "fail",
                "outdoors: a wet place, the device is for dry places",
                "NEC 2017 406.9(B)",
                f"Fit {WET}.",
            ),
        ),
        ("garage", "dry", Told("pass", "a dry place", "NEC 2017 406.9")),
        (
            "garage",
            "unknown",
            Told(
                "unknown",
                "garage: nobody has said whether it is damp or wet",
                "NEC 2017 406.9(A), (B)",
                f"Say so (moisture = ...). A damp place asks for {DAMP}.",
            ),
        ),
    ],
)
def test_weather(room: str, wet: str, want: Told) -> None:
    raw = job(room, new={"spot": {"moisture": wet}}, edition=E17)
    assert told(finding(WEATHER, raw)) == want


def test_a_replaced_receptacle_in_an_older_edition() -> None:
    found = finding(REPLACED, job(old={"reuse_plate": False}, edition=E17), "old")
    assert (found.verdict, found.cite) == ("note", "NEC 2017 406.4(D)")
    assert found.remedy == "Keep the old receptacle, or buy one that is all of this."


def counter(edition: str, **spot: Any) -> Told:
    """What is said of a receptacle for a kitchen counter."""
    raw = job("kitchen", new={"spot": {"countertop": "yes"} | spot}, edition=edition)
    return told(finding(COUNTER, raw))


def test_counter_receptacles_below_the_counter() -> None:
    assert counter(E20, below_counter="12 in") == Told(
        "pass",
        "12 in below the counter; at most 12 in where none can be above",
        "NEC 2020 210.52(C)",
    )
    assert counter(E23, below_counter="1 in") == Told(
        "note",
        "1 in below the counter; this edition has none below",
        "NEC 2023 210.52(C)",
        "Below the counter it does not count: plan it above.",
    )


def test_a_light_without_a_switch() -> None:
    raw = job("bedroom", new={"device": "luminaire"}, edition=E17)
    assert told(finding(REQUIRED, raw)) == Told(
        "note",
        "a light without a wall switch",
        "NEC 2017 210.70(A)",
        "Plan a wall switch, unless the room has a light on one already.",
    )


def test_a_light_on_a_switch() -> None:
    raw = job("bedroom", new={"device": "luminaire"}, old={"device": "switch"})
    want = Told("pass", "a light on a wall switch: box old", "NEC 2023 210.70(A)")
    assert told(finding(REQUIRED, raw)) == want


def test_an_island_in_an_older_edition_is_from_memory() -> None:
    rooms = [{"id": "kitchen", "use": "kitchen", "island": "12 ft2"}]
    found = finding(REQUIRED, job("kitchen", rooms=rooms, edition=E17), "room kitchen")
    assert found.cite == "NEC 2017 210.52(C) (from memory: check)"


def closet(kind: str, clear: str, edition: str = E23) -> Told:
    """What is said of a light in a clothes closet."""
    spot = {"luminaire": kind, "storage_clearance": clear}
    raw = job("closet", new={"device": "luminaire", "spot": spot}, edition=edition)
    return told(finding(CLOSET, raw))


def test_a_closet_light_far_enough() -> None:
    words = "a surface light with its lamp enclosed: 12 in to storage, least 12 in"
    assert closet("enclosed", "12 in", E20) == Told("pass", words, "NEC 2020 410.16")


def test_a_closet_light_nobody_named() -> None:
    assert closet("unknown", "9 in", E17) == Told(
        "unknown",
        "kind of light unknown, 9 in to storage",
        "NEC 2017 410.16",
        "Say which light it is (luminaire = ...) and measure from it to the storage.",
    )


def test_a_light_outside_the_zone_of_the_tub() -> None:
    spot = {"tub_distance": "36 in", "above_tub": "3 ft"}
    raw = job("bathroom", new={"device": "luminaire", "spot": spot})
    assert told(finding(TUB, raw)) == Told(
        "pass",
        "light: 36 in from tub or shower, 36 in above its rim; the zone is 36 in wide and 96 in"
        " high",
        "NEC 2023 410.10(D)",
    )


def test_a_receptacle_in_the_zone_behind_a_barrier() -> None:
    spot = {"tub_distance": "2 ft", "above_tub": "3 ft", "tub_barrier": "yes"}
    found = finding(TUB, job("bathroom", new={"spot": spot}))
    assert found.verdict == "pass"
    assert "96 in high; " in found.figures


def test_a_switch_without_a_neutral_in_an_older_edition() -> None:
    raw = job("bedroom", new={"device": "switch"}, edition=E17)
    assert told(finding(SWITCH, raw)) == Told(
        "fail",
        "one cable of 2 wires ends there: a hot and its return, no neutral",
        "NEC 2017 404.2(C)",
        f"Run a cable with 3 wires to it. {FREE}",
    )


def wall(x: str, length: str, left: str | None = None) -> Told:
    """What is said of a wall with one new receptacle and perhaps a door."""
    new = {"wall": "w", "x": x, "height": "15 in"}
    raw = job(new=new, walls=[{"id": "w", "room": "bedroom", "length": length}])
    door = {"wall": "w", "left": left, "width": "32 in", "height": "80 in"}
    raw["doors"] = [] if left is None else [door]
    return told(finding(SPACING, raw, "wall w"))


def test_spacing() -> None:
    farthest = f"{SPACED}; the farthest point of this wall is"
    cite = "NEC 2023 210.52(A)"
    assert wall("72 in", "12 ft") == Told("pass", f"{farthest} 72 in away", cite)
    assert wall("72 in", "13 ft") == Told("note", f"{farthest} 84 in away", cite, CORNERS)
    # a door from 70 to 102 in: the new receptacle stands at its left edge, and counts there
    assert wall("70 in", "105 in", "70 in") == Told("pass", f"{farthest} 70 in away", cite)


def test_spacing_where_a_door_stands_nobody_knows_where() -> None:
    assert wall("72 in", "12 ft", "unknown") == Told(
        "unknown",
        f"{SPACED}; where a door or a receptacle stands is unknown",
        "NEC 2023 210.52(A)",
        "Measure where the doors and the receptacles of this wall stand.",
    )


def test_a_box_without_an_appliance_does_not_hide_the_next() -> None:
    spot = {"appliance": "dishwasher", "appliance_distance": "5 ft"}
    more = [{"id": "far", "room": "kitchen", "spot": spot}]
    raw = job("kitchen", more=more, runs=[run("old", "new"), run("new", "far")])
    assert finding("appliance-outlet", raw, "far").verdict == "pass"
