"""Receptacles along the walls: row LO-01, worked by hand on a drawn wall."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from estimator.rules.spacing_rules import Space
from tests.rules.place_case import finding, findings, job, verdict

RULE = "receptacle-spacing"
ON = "wall w"


def wall(
    length: str,
    *at: str,
    room: str = "bedroom",
    doors: tuple[dict[str, Any], ...] = (),
    new: dict[str, Any] | None = None,
) -> dict[str, Any]:
    """A wall with its new receptacle at the first place and old ones at the others."""
    first, *others = at
    more = [
        {"id": f"r{number}", "existing": True, "wall": "w", "x": x_in, "height": "15 in"}
        for number, x_in in enumerate(others)
    ]
    planned = {"wall": "w", "x": first, "height": "15 in"} | (new or {})
    raw = job(room, new=planned, more=more, walls=[{"id": "w", "room": room, "length": length}])
    raw["doors"] = [{"wall": "w", "height": "80 in"} | door for door in doors]
    return raw


@pytest.mark.parametrize(
    ("raw", "want", "farthest"),
    [
        (wall("12 ft", "72 in"), "pass", "72"),
        (wall("12 ft 1/8 in", "72 in"), "note", "72.125"),
        (wall("12 ft 1/8 in", "72-1/8 in"), "note", "72.125"),
        (wall("12 ft", "0 in"), "note", "144"),
        (wall("24 ft", "72 in", "216 in"), "pass", "72"),
        (wall("24 ft 1 in", "72 in", "217 in"), "note", "72.5"),
        (wall("20 ft", "40 in", "120 in", "200 in"), "pass", "40"),
    ],
    ids=["at it", "over at the end", "over at the start", "in the corner", "twelve feet apart",
         "over between", "three"],
)  # fmt: skip
def test_lo_01_no_point_over_6_ft_away(raw: dict[str, Any], want: str, farthest: str) -> None:
    said = finding(RULE, raw, ON)
    assert said.verdict == want
    assert said.figures == (
        f"at most 72 in from a receptacle; the farthest point of this wall is {farthest} in away"
    )


DOOR = {"left": "70 in", "width": "32 in"}


@pytest.mark.parametrize(
    ("at", "doors", "want"),
    [
        (("52 in", "120 in"), (DOOR,), "pass"),
        (("52 in",), (DOOR,), "note"),
        (("52 in", "120 in"), ({"left": "unknown", "width": "32 in"},), "unknown"),
        # The part beyond the door is 23-7/8 in wide: no wall space.
        (("52 in",), ({"left": "100-1/8 in", "width": "32 in"},), "pass"),
        # It is 24 in wide, and counts.
        (("52 in",), ({"left": "100 in", "width": "32 in"},), "note"),
        # Two doors leave three parts, the last ones too small.
        (("52 in",), ({"left": "124 in", "width": "32 in"}, {"left": "90 in", "width": "20 in"}),
         "pass"),
    ],
)  # fmt: skip
def test_lo_01_doors_part_a_wall(
    at: tuple[str, ...], doors: tuple[dict[str, Any], ...], want: str
) -> None:
    assert verdict(RULE, wall("13 ft", *at, doors=doors), ON) == want


def test_lo_01_a_part_without_one_is_told() -> None:
    said = finding(RULE, wall("13 ft", "52 in", doors=(DOOR,)), ON)
    assert said.figures == "at most 72 in from a receptacle; one part has none"
    assert said.remedy.startswith("A receptacle round the corner may serve it,")
    assert (said.cite, said.blocking) == ("NEC 2023 210.52(A)", False)


def test_lo_01_a_far_point_is_advised_about() -> None:
    said = finding(RULE, wall("13 ft", "0 in"), ON)
    assert said.remedy.endswith("If none does, think of one more while the wall is open.")


def test_lo_01_a_wall_too_narrow_to_count_passes() -> None:
    said = finding(RULE, wall("23 in", "3 in"), ON)
    assert (said.verdict, said.figures) == (
        "pass",
        "at most 72 in from a receptacle; the farthest point of this wall is 0 in away",
    )


@pytest.mark.parametrize(
    ("old", "want"),
    [
        ({}, "pass"),
        ({"height": "66 in"}, "pass"),
        ({"height": "66-1/16 in"}, "note"),
        ({"height": "unknown"}, "pass"),
        ({"spot": {"in_place_of_light": "yes"}}, "note"),
        ({"spot": {"behind_appliance": "yes"}}, "note"),
        ({"room": "closet"}, "note"),
        ({"mount": "ceiling"}, "note"),
        ({"device": "switch"}, "note"),
        ({"wall": "other"}, "note"),
        ({"x": "unknown"}, "unknown"),
    ],
)
def test_lo_01_what_counts(old: dict[str, Any], want: str) -> None:
    raw = wall("20 ft", "60 in", "200 in")
    raw["walls"].append({"id": "other", "room": "bedroom", "length": "30 ft"})
    raw["boxes"][-1] |= old
    assert verdict(RULE, raw, ON) == want


def test_lo_01_an_unknown_place_is_asked_for() -> None:
    said = finding(RULE, wall("12 ft", "60 in", "unknown"), ON)
    assert said.figures.endswith("; where a door or a receptacle stands is unknown")
    assert said.remedy == "Measure where the doors and the receptacles of this wall stand."


@pytest.mark.parametrize(
    ("room", "found"),
    [("bedroom", True), ("kitchen", True), ("office", True), ("hall", False), ("closet", False),
     ("bathroom", False), ("garage", False), ("that room", False)],
)  # fmt: skip
def test_lo_01_rooms_with_a_rule_of_spacing(room: str, found: bool) -> None:
    assert bool(findings(RULE, wall("12 ft", "60 in", room=room))) == found


@pytest.mark.parametrize(
    "new",
    [{"room": "closet"}, {"mount": "ceiling", "out": "1 ft"}, {"device": "luminaire"},
     {"wall": None}],
)  # fmt: skip
def test_lo_01_walls_that_get_no_receptacle_are_passed_over(new: dict[str, Any]) -> None:
    assert findings(RULE, wall("12 ft", "60 in", new=new)) == {}


def test_lo_01_each_wall_once() -> None:
    raw = wall("12 ft", "60 in")
    raw["boxes"].append({"id": "second", "wall": "w", "x": "100 in", "height": "15 in"})
    raw["runs"].append(raw["runs"][0] | {"id": "2", "from": "new", "to": "second"})
    assert list(findings(RULE, raw)) == [ON]


@pytest.mark.parametrize(
    ("at", "want"), [((), None), ((10,), 30), ((10, 40), 15), ((40, 10), 15), ((0, 40), 20)]
)
def test_the_farthest_point_of_a_space(at: tuple[int, ...], want: int | None) -> None:
    space = Space(Fraction(0), Fraction(40), tuple(Fraction(x) for x in at))
    assert space.farthest_in == want
    assert space.width_in == 40


def test_a_door_in_another_wall_does_not_part_this_one() -> None:
    raw = wall("13 ft", "60 in", "140 in")
    raw["walls"].append({"id": "other", "room": "bedroom", "length": "13 ft"})
    raw["doors"] = [{"wall": "other", "height": "80 in"} | DOOR]
    assert verdict(RULE, raw, ON) == "pass"
