"""Runs round corners: both ways round, the long way, and where two ways lead."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from estimator.problems import InputError
from estimator.route.records import RunPath
from tests.route.made_house import Table, box, house, lengths, met, path, room

ROOM = room(156, 144, 156, 144)


def turned(start: Table, end: Table, rooms: Table = ROOM, **run: Any) -> RunPath:
    """A run between two boxes of a room, at their height."""
    return path(house(boxes=[start, end], run=run, **rooms))


@pytest.mark.parametrize(
    ("start", "end", "want"),
    [
        (("n0", 100), ("n1", 20), [56, 20]),  # right of n0 meets left of n1
        (("n1", 20), ("n0", 100), [20, 56]),
        (("n0", 30), ("n3", 100), [30, 44]),  # left of n0 meets right of n3
        (("n3", 100), ("n0", 30), [44, 30]),
        (("n0", 100), ("n0", 20), [80]),
    ],
)
def test_round_one_corner_either_way(
    start: tuple[str, int], end: tuple[str, int], want: list[int]
) -> None:
    """Worked by hand from lengths 156 and 144."""
    made = turned(box("a", *start), box("b", *end))
    assert lengths(made) == want
    assert sum(leg.corners for leg in made.legs) == len(want) - 1
    assert met(made).get("corner stud", 0) == 2 * (len(want) - 1)


def test_the_corner_of_the_worked_office() -> None:
    """S2, worked by hand: (120 - 78) + 23 = 65; studs 80, 96, 112 and 16; 2 corner members."""
    office = room(120, 132)
    office["corners"] = [{"walls": ["n0", "n1"], "members": 2, "edge": "3/4 in"}]
    made = turned(box("a", "n0", 78), box("b", "n1", 23), office)
    assert made.path_in == 65
    assert met(made) == {"stud": 4, "corner stud": 2}
    assert made.legs[1].crossed[0].edge_in == Fraction(3, 4)


def test_the_long_way_round_the_worked_bedroom() -> None:
    """S14 B, worked by hand: 52 + 144 + 156 + 144 + 36 = 532; 30 studs, 8 corner members."""
    walls = ["n0", "n3", "n2", "n1", "n0"]
    made = turned(box("a", "n0", 52), box("b", "n0", 120), walls=walls)
    assert lengths(made) == [52, 144, 156, 144, 36]
    assert [leg.studs for leg in made.legs] == [3, 8, 9, 8, 2]
    assert met(made) == {"stud": 30, "corner stud": 8}
    assert sum(leg.corners for leg in made.legs) == 4


@pytest.mark.parametrize(
    ("x", "want", "by"), [(20, 20 + 144 + 20, "n3"), (130, 26 + 144 + 26, "n1")]
)
def test_between_opposite_walls_the_shorter_way_is_taken(x: int, want: int, by: str) -> None:
    """Worked by hand: boxes face each other; n2 runs back, so its x is 156 - x."""
    there = turned(box("a", "n0", x), box("b", "n2", 156 - x))
    back = turned(box("a", "n2", 156 - x), box("b", "n0", x))
    assert there.path_in == back.path_in == want
    assert {leg.wall for leg in there.legs} == {leg.wall for leg in back.legs} == {"n0", "n2", by}


def test_a_corner_that_is_missing_leaves_the_long_way() -> None:
    rooms = room(40, 400, 40, 400)
    rooms["corners"] = rooms["corners"][:3]
    made = turned(box("a", "n0", 5), box("b", "n3", 390), rooms)
    assert [leg.wall for leg in made.legs] == ["n0", "n1", "n2", "n3"]


def test_a_corner_without_members_is_turned_all_the_same() -> None:
    rooms = room(156, 144)
    rooms["corners"] = [{"walls": ["n0", "n1"], "members": 0}]
    made = turned(box("a", "n0", 140), box("b", "n1", 10), rooms)
    assert met(made) == {"stud": 1}
    assert [leg.corners for leg in made.legs] == [0, 1]


def test_walls_that_no_corner_joins() -> None:
    rooms = room(156, 144)
    rooms["corners"] = []
    with pytest.raises(InputError, match='no corner joins the walls "n0" and "n1"'):
        turned(box("a", "n0", 1), box("b", "n1", 2), rooms)


@pytest.mark.parametrize(
    ("walls", "said"),
    [
        (["n1", "n0"], 'its walls go from "n1" to "n0"'),
        (["n0", "n2", "n1"], 'no corner joins the walls "n0" and "n2"'),
    ],
)
def test_walls_listed_in_an_order_nobody_can_go(walls: list[str], said: str) -> None:
    with pytest.raises(InputError) as caught:
        turned(box("a", "n0", 1), box("b", "n1", 2), walls=walls)
    assert said in str(caught.value)
    assert caught.value.problems[0].where == 'run "1"'


def test_every_run_that_cannot_be_laid_is_named() -> None:
    rooms = room(156, 144, 156)
    rooms["corners"] = []
    boxes = [box("a", "n0", 1), box("b", "n1", 2), box("c", "n2", 3)]
    ends = [("a", "b"), ("b", "c")]
    runs = [
        {"id": f"r{number}", "from": one, "to": two, "cable": "14-2", "way": "wall"}
        for number, (one, two) in enumerate(ends)
    ]
    with pytest.raises(InputError) as caught:
        path(house(boxes=boxes, runs=runs, **rooms))
    assert [each.where for each in caught.value.problems] == ['run "r0"', 'run "r1"']
