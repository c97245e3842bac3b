"""Which circuit may serve which place: rows XT-01 to XT-11 of the matrix, worked by hand."""

from __future__ import annotations

from typing import Any

import pytest

from tests.rules.place_case import (
    EDITIONS,
    HEATER,
    HOOD,
    LIGHT,
    SWITCH,
    finding,
    on,
    verdict,
)

RULE = "source-class"


@pytest.mark.parametrize(
    ("room", "new", "want"),
    [
        ("kitchen", None, "pass"),
        ("pantry", None, "pass"),
        ("dining room", None, "pass"),
        ("kitchen", {"spot": {"appliance": "refrigerator"}}, "pass"),
        ("dining room", {"spot": {"appliance": "clock"}}, "pass"),
        ("kitchen", {"spot": {"appliance": "gas range"}}, "pass"),
        ("kitchen", LIGHT, "fail"),
        ("dining room", SWITCH, "fail"),
        ("kitchen", HOOD, "fail"),
        ("kitchen", {"spot": {"appliance": "disposer"}}, "fail"),
        ("kitchen", {"spot": {"appliance": "dishwasher"}}, "fail"),
        ("living room", None, "fail"),
        ("hall", None, "fail"),
        ("bathroom", None, "fail"),
        ("bedroom", None, "fail"),
        ("garage", None, "fail"),
        ("outdoors", None, "fail"),
    ],
)
@pytest.mark.parametrize("edition", EDITIONS)
def test_xt_01_small_appliance(
    edition: str, room: str, new: dict[str, Any] | None, want: str
) -> None:
    assert verdict(RULE, on("small appliance", room, new, edition=edition)) == want


def test_xt_01_says_why_in_plain_words() -> None:
    said = finding(RULE, on("small appliance", "bathroom"))
    assert said.figures == (
        "small-appliance circuit (kitchen, pantry, dining), 20 A; new receptacle in bathroom: it "
        "is kept for receptacles of the kitchen, pantry and dining room; nothing in another room "
        "may hang on it"
    )
    assert said.cite == "NEC 2023 210.52(B)(2)"
    assert said.remedy == (
        "Feed it from another circuit, or have a new circuit run; survey the boxes near it."
    )
    assert said.blocking


KITCHENS = [{"id": "upstairs", "use": "kitchen"}, {"id": "downstairs", "use": "kitchen"}]


@pytest.mark.parametrize(
    ("serves", "old", "want"),
    [
        (["upstairs"], {}, "fail"),
        (["downstairs"], {}, "pass"),
        (["downstairs", "upstairs"], {"room": "upstairs"}, "pass"),
        ([], {"room": "upstairs"}, "fail"),
        ([], {}, "unknown"),
    ],
)
def test_xt_01_a_second_kitchen(serves: list[str], old: dict[str, Any], want: str) -> None:
    circuit = {"serves": serves}
    raw = on("small appliance", "downstairs", circuit=circuit, old=old, rooms=KITCHENS)
    assert verdict(RULE, raw) == want


def test_xt_01_with_two_kitchens_a_dining_room_is_served_all_the_same() -> None:
    assert verdict(RULE, on("small appliance", "dining room", rooms=KITCHENS)) == "pass"


def test_xt_01_asks_which_kitchen() -> None:
    said = finding(RULE, on("small appliance", "downstairs", rooms=KITCHENS))
    assert said.remedy == "Find out which kitchen the circuit serves."


@pytest.mark.parametrize(
    ("room", "new", "want"),
    [
        ("bathroom", None, "pass"),
        ("bathroom", LIGHT, "fail"),
        ("bathroom", {"device": "none", "spot": {"appliance": "other"}}, "fail"),
        ("bathroom", SWITCH, "fail"),
        ("hall", None, "fail"),
        ("kitchen", None, "fail"),
    ],
    ids=["receptacle", "light", "fan or heater", "switch", "outside", "kitchen"],
)
@pytest.mark.parametrize("edition", EDITIONS)
def test_xt_02_circuit_of_several_bathrooms(
    edition: str, room: str, new: dict[str, Any] | None, want: str
) -> None:
    assert verdict(RULE, on("bathrooms", room, new, edition=edition)) == want


BATHS = [{"id": "main bath", "use": "bathroom"}, {"id": "guest bath", "use": "bathroom"}]


@pytest.mark.parametrize(
    ("room", "new", "circuit", "want"),
    [
        ("main bath", None, {}, "pass"),
        ("main bath", LIGHT, {}, "pass"),
        ("main bath", SWITCH, {}, "pass"),
        ("main bath", HEATER, {"fixed": 10}, "pass"),
        ("main bath", HEATER, {"fixed": 10.5}, "fail"),
        ("main bath", HEATER, {}, "unknown"),
        ("guest bath", HEATER, {"fixed": 10}, "fail"),
        ("guest bath", None, {}, "fail"),
        ("guest bath", LIGHT, {}, "fail"),
        ("hall", LIGHT, {}, "fail"),
        ("main bath", None, {"serves": []}, "unknown"),
    ],
)
def test_xt_03_circuit_of_one_bathroom(
    room: str, new: dict[str, Any] | None, circuit: dict[str, Any], want: str
) -> None:
    circuit = {"serves": ["main bath"]} | circuit
    assert verdict(RULE, on("one bathroom", room, new, circuit=circuit, rooms=BATHS)) == want


def test_xt_03_the_room_of_the_source_tells_which_bathroom() -> None:
    raw = on("one bathroom", "main bath", LIGHT, old={"room": "main bath"}, rooms=BATHS)
    assert verdict(RULE, raw) == "pass"


@pytest.mark.parametrize(
    ("circuit", "look"),
    [
        ({}, "Find out which bathroom the circuit serves."),
        (
            {"serves": ["main bath"]},
            "Add up the amperes of what is fastened in place on it (fixed = ...).",
        ),
    ],
)
def test_xt_03_asks_what_is_missing(circuit: dict[str, Any], look: str) -> None:
    raw = on("one bathroom", "main bath", HEATER, circuit=circuit, rooms=BATHS)
    assert finding(RULE, raw).remedy == look


@pytest.mark.parametrize(
    ("room", "new", "want"),
    [
        ("laundry", None, "pass"),
        ("laundry", LIGHT, "fail"),
        ("laundry", SWITCH, "fail"),
        ("hall", None, "fail"),
        ("bathroom", None, "fail"),
    ],
)
def test_xt_04_laundry(room: str, new: dict[str, Any] | None, want: str) -> None:
    assert verdict(RULE, on("laundry", room, new)) == want
