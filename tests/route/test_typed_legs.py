"""Legs as typed: what is stated comes out, and what is not stated takes its usual value."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from estimator.route.records import PathLeg
from tests.route.made_house import Table, house, met, path

ENDS: list[Table] = [{"id": "a", "existing": True, "cables": ["14-2"]}, {"id": "b"}]


def typed(*legs: Table, **run: Any) -> tuple[PathLeg, ...]:
    ends = {"id": "1", "from": "a", "to": "b", "cable": "14-2"}
    runs = [ends | {"legs": list(legs)} | run]
    return path(house(boxes=ENDS, runs=runs, walls=[])).legs


def test_a_plain_leg_meets_nothing() -> None:
    (leg,) = typed({"go": "along", "length": "6 ft"})
    assert leg == PathLeg("along", Fraction(72), "fished")


def test_all_that_is_typed_comes_out() -> None:
    (leg,) = typed(
        {"go": "along", "length": 72, "studs": 4, "members": {"king": 2, "nog": 1, "post": 0},
         "corners": 1, "corner_members": 3, "corner_edge": "3/4 in", "obstacles": 2, "plates": 2,
         "floor_holes": 1},
        method="bored", stud_depth="2-1/2 in",
    )  # fmt: skip
    assert [(each.kind, each.count, each.edge_in) for each in leg.crossed] == [
        ("king", 2, None), ("nog", 1, None), ("corner stud", 3, Fraction(3, 4))
    ]  # fmt: skip
    assert (leg.studs, leg.corners, leg.obstacles, leg.floor_holes) == (4, 1, 2, 1)
    assert (leg.wall_plates, leg.plate_holes, leg.depth_in) == (2, 1, Fraction(5, 2))


@pytest.mark.parametrize(
    ("more", "want"),
    [
        ({"corners": 2}, 4),  # unstated: two a corner
        ({"corners": 2, "corner_members": "unknown"}, 4),
        ({"corners": 2, "corner_members": 0}, 0),
        ({"corners": 0}, 0),
    ],
)
def test_corner_members_are_two_a_corner_unless_stated(more: Table, want: int) -> None:
    legs = [{"go": "along", "length": 9} | more]
    runs = [{"id": "1", "from": "a", "to": "b", "cable": "14-2", "legs": legs}]
    made = path(house(boxes=ENDS, runs=runs, walls=[]))
    assert met(made).get("corner stud", 0) == want


@pytest.mark.parametrize(
    ("go", "run", "leg", "want"),
    [
        ("up", "bored", None, "fished"),  # rises and drops are fished in a closed wall
        ("down", "notched", None, "fished"),
        ("up", "exposed", None, "exposed"),
        ("along", "bored", None, "bored"),
        ("across", "fished", None, "fished"),
        ("through", "bored", None, "bored"),
        ("up", "bored", "bored", "bored"),  # unless the leg says so
        ("along", "bored", "notched", "notched"),
    ],
)
def test_how_a_leg_is_put_in(go: str, run: str, leg: str | None, want: str) -> None:
    stated = {} if leg is None else {"method": leg}
    (made,) = typed({"go": go, "length": 9} | stated, method=run)
    assert made.method == want


@pytest.mark.parametrize(("plates", "holes"), [(0, 0), (1, 1), (2, 1), (3, 1)])
def test_plates_on_one_another_take_one_hole(plates: int, holes: int) -> None:
    (leg,) = typed({"go": "up", "length": 9, "plates": plates})
    assert leg.plate_holes == holes


def test_lengths_of_all_kinds_add_up() -> None:
    """S18, worked by hand: 150.5 + 150 + 150 + 3800/25.4 = 600.106299... in."""
    typed_lengths = ("12' 6-1/2\"", "12.5 ft", "150 in", "3.8 m")
    legs = typed(*({"go": "along", "length": each} for each in typed_lengths))
    total = sum(leg.length_in for leg in legs)
    assert total == Fraction(901, 2) + Fraction(3800 * 5, 127)
    assert round(float(total), 6) == 600.106299
