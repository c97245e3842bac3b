"""Outlets that a room must have and where they count: rows LO-02 to LO-05."""

from __future__ import annotations

from typing import Any

import pytest

from tests.rules.place_case import EDITIONS, finding, findings, job, run, verdict

E17, E20, E23 = EDITIONS
COUNTER, REQUIRED = "counter-receptacle", "required-outlets"


def counter(edition: str = E23, **spot: Any) -> dict[str, Any]:
    return job("kitchen", new={"spot": {"countertop": "yes"} | spot}, edition=edition)


@pytest.mark.parametrize(
    ("edition", "spot", "want"),
    [
        (E17, {"above_counter": "20 in"}, "pass"),
        (E20, {"above_counter": "20 in"}, "pass"),
        (E23, {"above_counter": "20 in"}, "pass"),
        (E23, {"above_counter": "20-1/16 in"}, "note"),
        (E23, {}, "unknown"),
        (E17, {"below_counter": "12 in"}, "pass"),
        (E20, {"below_counter": "12 in"}, "pass"),
        (E20, {"below_counter": "12-1/16 in"}, "note"),
        (E23, {"below_counter": "1 in"}, "note"),
    ],
)
def test_lo_02_counter_receptacles(edition: str, spot: dict[str, str], want: str) -> None:
    assert verdict(COUNTER, counter(edition, **spot)) == want


@pytest.mark.parametrize(
    ("edition", "spot", "figures", "cite"),
    [
        (
            E20,
            {"above_counter": "18 in"},
            "at most 20 in above the counter, here 18 in; no point of the counter wall more than "
            "24 in from one",
            "NEC 2020 210.52(C)",
        ),
        (
            E23,
            {"above_counter": "21 in"},
            "at most 20 in above the counter, here 21 in",
            "NEC 2023 210.52(C)",
        ),
        (E23, {}, "at most 20 in above the counter, height unknown", "NEC 2023 210.52(C)"),
        (
            E20,
            {"below_counter": "13 in"},
            "13 in below the counter; at most 12 in where none can be above",
            "NEC 2020 210.52(C)",
        ),
        (
            E23,
            {"below_counter": "10 in"},
            "10 in below the counter; this edition has none below",
            "NEC 2023 210.52(C)",
        ),
        (
            E17,
            {"above_counter": "21 in"},
            "at most 20 in above the counter, here 21 in",
            "NEC 2017 210.52(C) (from memory: check)",
        ),
    ],
)
def test_lo_02_figures(edition: str, spot: dict[str, str], figures: str, cite: str) -> None:
    said = finding(COUNTER, counter(edition, **spot))
    assert (said.figures, said.cite) == (figures, cite)


@pytest.mark.parametrize(
    ("edition", "spot", "remedy"),
    [
        (E23, {}, "Measure its height above the counter top."),
        (
            E23,
            {"above_counter": "2 ft"},
            "Higher up it does not count as a receptacle of the counter.",
        ),
        (E23, {"below_counter": "2 ft"}, "Below the counter it does not count: plan it above."),
        (
            E20,
            {"below_counter": "2 ft"},
            "So far below it does not count as a receptacle of the counter.",
        ),
    ],
)
def test_lo_02_says_what_to_do(edition: str, spot: dict[str, str], remedy: str) -> None:
    assert finding(COUNTER, counter(edition, **spot)).remedy == remedy


@pytest.mark.parametrize("state", ["no", "unknown"])
def test_lo_02_speaks_of_counters_alone(state: str) -> None:
    assert findings(COUNTER, counter(countertop=state)) == {}


def island(area: str, edition: str = E20) -> str:
    raw = job("kitchen", rooms=[{"id": "kitchen", "use": "kitchen", "island": area}])
    raw["job"]["edition"] = edition
    return finding(REQUIRED, raw, "room kitchen").figures


@pytest.mark.parametrize(
    ("area", "count"),
    [("5 ft2", 1), ("9 ft2", 1), ("9.1 ft2", 2), ("27 ft2", 2), ("27.1 ft2", 3), ("45 ft2", 3)],
)
def test_lo_03_islands_in_2020(area: str, count: int) -> None:
    """One for the first 9 ft2, one for each further 18 ft2 begun; worked by hand."""
    words = "one for the first part of its top and one for each further part"
    assert island(area) == f"island: {words}; {area.removesuffix(' ft2')} ft2: {count}"


def test_lo_03_is_advice() -> None:
    raw = job("kitchen", rooms=[{"id": "kitchen", "use": "kitchen", "island": "9 ft2"}])
    said = finding(REQUIRED, raw | {"job": raw["job"] | {"edition": E20}}, "room kitchen")
    assert (said.verdict, said.cite) == ("note", "NEC 2020 210.52(C)(2)")
    assert said.remedy == "Plan for it while the floor is open."


@pytest.mark.parametrize(
    ("edition", "figures"),
    [
        (E17, "island: one at least, on an island of 12 by 24 in or more"),
        (E23, "island: none is asked for, but there must be a way to add one later"),
    ],
)
def test_lo_03_islands_in_other_editions(edition: str, figures: str) -> None:
    assert island("20 ft2", edition) == figures


@pytest.mark.parametrize(
    "rooms", [[], [{"id": "kitchen", "use": "kitchen"}], [{"id": "den", "island": "9 ft2"}]]
)
def test_lo_03_no_island_no_note(rooms: list[dict[str, str]]) -> None:
    assert findings(REQUIRED, job("kitchen", rooms=rooms)) == {}


@pytest.mark.parametrize(
    ("room", "new", "want"),
    [
        ("bathroom", {"spot": {"sink_distance": "36 in"}}, "pass"),
        ("bathroom", {"spot": {"sink_distance": "36-1/16 in"}}, "note"),
        ("bathroom", {}, "unknown"),
        ("outdoors", {"height": "78 in"}, "pass"),
        ("outdoors", {"height": "78-1/16 in"}, "note"),
        ("outdoors", {}, "unknown"),
        ("garage", {"height": "66 in"}, "pass"),
        ("garage", {"height": "66-1/16 in"}, "note"),
        ("garage", {}, "unknown"),
        ("garage", {"device": "luminaire"}, "note"),
        ("bedroom", {}, ""),
        ("outdoors", {"device": "luminaire"}, ""),
    ],
)
def test_lo_04_where_a_receptacle_counts(room: str, new: dict[str, Any], want: str) -> None:
    assert verdict(REQUIRED, job(room, new=new)) == want


@pytest.mark.parametrize(
    ("room", "new", "figures", "remedy"),
    [
        (
            "bathroom",
            {"spot": {"sink_distance": "40 in"}},
            "the receptacle at a basin: distance to the basin at most 36 in, here 40 in",
            "It does not count as the receptacle at a basin.",
        ),
        (
            "outdoors",
            {"height": "6 ft"},
            "the receptacle at the front or back of the house: height above the floor at most 78 "
            "in, here 72 in",
            "",
        ),
        (
            "garage",
            {},
            "the receptacle of a vehicle bay: height above the floor at most 66 in, here unknown",
            "Measure it.",
        ),
    ],
)
def test_lo_04_figures(room: str, new: dict[str, Any], figures: str, remedy: str) -> None:
    said = finding(REQUIRED, job(room, new=new))
    assert (said.figures, said.remedy) == (figures, remedy)


@pytest.mark.parametrize(
    ("edition", "cite"),
    [(E20, "NEC 2020 210.52(D)"), (E23, "NEC 2023 210.52(D) (from memory: check)")],
)
def test_lo_04_is_cited_by_edition(edition: str, cite: str) -> None:
    assert finding(REQUIRED, job("bathroom", edition=edition)).cite == cite


@pytest.mark.parametrize(
    ("length", "want"), [("10 ft", "pass"), ("9 ft 11-15/16 in", ""), ("14 ft", "pass")]
)
def test_lo_04_long_halls(length: str, want: str) -> None:
    wall = {"id": "w", "room": "hall", "length": length}
    raw = job("hall", new={"wall": "w"}, walls=[wall])
    assert verdict(REQUIRED, raw) == want


def test_lo_04_a_hall_without_a_wall_is_passed_over() -> None:
    assert findings(REQUIRED, job("hall")) == {}


def test_lo_04_a_long_hall_is_told() -> None:
    wall = {"id": "w", "room": "hall", "length": "12 ft"}
    said = finding(REQUIRED, job("hall", new={"wall": "w"}, walls=[wall]))
    assert said.figures == "a hall of 120 in or more must have a receptacle: this is one"
    assert said.cite == "NEC 2023 210.52(H) (from memory: check)"


SWITCH = {"id": "sw", "room": "bedroom", "device": "switch"}
TO_LIGHT, THROUGH = [run("old", "new")], [run("old", "sw"), run("sw", "new")]
LOOP = [run("old", "new"), run("new", "sw")]


@pytest.mark.parametrize(
    ("more", "old", "runs", "want"),
    [
        ([], {}, TO_LIGHT, "note"),
        ([], {"device": "switch"}, TO_LIGHT, "pass"),
        ([SWITCH], {}, THROUGH, "pass"),
        ([SWITCH], {}, LOOP, "pass"),
        ([{**SWITCH, "device": "three-way switch"}], {}, LOOP, "pass"),
        ([{**SWITCH, "device": "receptacle"}], {}, LOOP, "note"),
    ],
)
def test_lo_05_lights_on_a_wall_switch(
    more: list[dict[str, Any]], old: dict[str, str], runs: list[dict[str, Any]], want: str
) -> None:
    raw = job("bedroom", new={"device": "luminaire"}, more=more, old=old, runs=runs)
    assert verdict(REQUIRED, raw) == want


@pytest.mark.parametrize(
    ("edition", "room", "want"),
    [
        (E20, "laundry", ""),
        (E23, "laundry", "note"),
        (E20, "bathroom", "note"),
        (E20, "hall", "note"),
        (E20, "kitchen", "note"),
        (E20, "closet", ""),
        (E20, "attic", ""),
    ],
)
def test_lo_05_rooms_by_edition(edition: str, room: str, want: str) -> None:
    assert verdict(REQUIRED, job(room, new={"device": "luminaire"}, edition=edition)) == want


def test_lo_05_words() -> None:
    said = finding(REQUIRED, job(new={"device": "luminaire"}))
    assert (said.figures, said.cite) == ("a light without a wall switch", "NEC 2023 210.70(A)")
    raw = job(new={"device": "luminaire"}, more=[SWITCH], runs=THROUGH)
    assert finding(REQUIRED, raw).figures == "a light on a wall switch: box sw"
