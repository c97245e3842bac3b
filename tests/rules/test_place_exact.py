"""Rules of places, word for word, where the other tests look at a part of what is said."""

from __future__ import annotations

import pytest

from tests.rules.place_case import EDITIONS, at, finding, job
from tests.rules.told import Told, told

GFCI = "gfci-place"
E17, E20, E23 = EDITIONS
FIT = (
    "it a ground-fault receptacle (Class A, trips at 4 to 6 mA) where it is easy to reach; what it"
    " feeds hangs on its LOAD side."
)
NONE = "no ground-fault protection upstream"
CORD = (
    "Measure along the cord, not through a wall, floor, ceiling, window or fixed barrier; a door"
    ' does not stop it. If the room has none near, say so (sink_or_tub = "no").'
)


def test_gfci_where_a_distance_was_not_measured() -> None:
    assert told(finding(GFCI, at("bedroom", sink_distance="unknown"))) == Told(
        "unknown",
        f"bedroom: nobody has said whether a sink is within 72 in; {NONE}",
        "NEC 2023 210.8(A)",
        CORD,
    )


def test_gfci_where_the_counter_and_the_distance_are_open() -> None:
    spot = {"countertop": "unknown", "sink_distance": "unknown"}
    assert told(finding(GFCI, at("kitchen", E20, **spot))) == Told(
        "unknown",
        "kitchen: nobody has said whether it serves the counter or whether a sink is within 72 in;"
        f" {NONE}",
        "NEC 2020 210.8(A)",
        f"Say so. {CORD} Where the place asks for it: f{FIT}",
    )


def test_gfci_where_the_use_of_the_room_is_open() -> None:
    found = finding(GFCI, at("that room"))
    assert found.cite == "NEC 2023 210.8(A)"
    assert found.remedy == (
        f"Say what the room is used for (use = ...). Where the place asks for it: f{FIT}"
    )


@pytest.mark.parametrize(
    ("room", "cite"),
    [
        ("bathroom", "NEC 2017 210.8(A)"),
        ("bedroom", "NEC 2017 210.8"),
    ],
)
def test_what_was_read_of_an_older_edition_is_not_from_memory(room: str, cite: str) -> None:
    assert finding(GFCI, at(room, E17)).cite == cite


def test_gfci_out_of_reach_in_an_older_edition() -> None:
    raw = at("bathroom", E17, readily_accessible="no")
    raw["boxes"][1]["device"] = "gfci receptacle"
    found = finding(GFCI, raw)
    assert (found.verdict, found.cite) == ("fail", "NEC 2017 210.8")
    # the same parts and work as where no receptacle of the way will do
    crawl = finding(GFCI, job("crawlspace", new={"device": "luminaire"}))
    assert found.remedies == crawl.remedies
    assert found.remedies
