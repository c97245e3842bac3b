"""Staples: none where cable is fished, near boxes and at most the spacing apart elsewhere."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from estimator.takeoff.records import Takeoff
from tests.route.made_house import Table, house
from tests.takeoff.made_takeoff import part, parts, taken


def legs(*methods_and_lengths: tuple[str, object]) -> Takeoff:
    typed = [
        {"go": "along", "length": length, "method": method}
        for method, length in methods_and_lengths
    ]
    return run({"legs": typed})


def run(table: Table, **practice: Any) -> Takeoff:
    ends = [{"id": "a", "existing": True, "cables": ["14-2"]}, {"id": "b"}]
    runs = [{"id": "1", "from": "a", "to": "b", "cable": "14-2"} | table]
    return taken(house(boxes=ends, runs=runs), **practice)


def staples(made: Takeoff) -> int:
    return int(parts(made).get("cable-staple", 0))


@pytest.mark.parametrize(
    ("length", "want"),
    [
        # Box to box: one within 12 in of each, and what is between at most 54 in apart.
        (10, 2), (24, 2), (78, 2), ("78-1/16", 3), (132, 3), ("132-1/16", 4),
    ],
)  # fmt: skip
def test_exposed_from_box_to_box(length: object, want: int) -> None:
    """Worked by hand: 2 + ceil((length - 24) / 54) - 1."""
    assert staples(legs(("exposed", length))) == want


@pytest.mark.parametrize(
    ("length", "want"),
    [(74, 2), (66, 1), ("66-1/16", 2), (120, 2), ("120-1/16", 3), (5, 1)],
)
def test_exposed_from_a_hole_to_a_box(length: object, want: int) -> None:
    """S7, worked by hand: one within 12 of the box, 62 left of 74 is more than 54: 2."""
    assert staples(legs(("fished", 52), ("exposed", length))) == want
    assert staples(legs(("exposed", length), ("fished", 52))) == want


@pytest.mark.parametrize(
    ("length", "want"), [(54, 0), ("54-1/16", 1), (68, 1), (108, 1), ("108-1/16", 2)]
)
def test_exposed_from_hole_to_hole(length: object, want: int) -> None:
    """A bored hole holds the cable; between holes at most 54 in apart."""
    assert staples(legs(("fished", 25), ("exposed", length), ("fished", 25))) == want


def test_a_shop_may_staple_beside_holes_too() -> None:
    """S14 C, worked by hand: 68 in of crawlspace, both ends and one between: 3."""
    typed = [("fished", 25), ("exposed", 68), ("fished", 25)]
    table = {"legs": [{"go": "along", "length": each, "method": how} for how, each in typed]}
    assert staples(run(table, hole_end_supports=False)) == 3


def test_legs_of_one_stretch_count_together() -> None:
    """S7: 26 + 44 + 4 = 74 in of attic."""
    made = legs(("fished", 52), ("exposed", 26), ("exposed", 44), ("exposed", 4))
    assert staples(made) == 2
    assert part(made, "cable-staple").reason == "exposed stretch of 74 in"


def test_two_stretches_count_each_alone() -> None:
    assert staples(legs(("exposed", 60), ("bored", 9), ("exposed", 60))) == 2


@pytest.mark.parametrize("method", ["fished", "bored", "notched"])
def test_none_in_a_wall_that_stays_closed(method: str) -> None:
    assert staples(legs((method, 500))) == 0


def test_beside_boxes_where_the_wall_is_opened() -> None:
    made = run({"legs": [{"go": "along", "length": 90}], "stapled_at": ["a", "b"]})
    assert staples(made) == 2
    assert part(made, "cable-staple").reason == "opened wall, beside a box: 2"


@pytest.mark.parametrize(("first", "spacing", "want"), [(12, 30, 4), (20, 54, 2), (8, 54, 3)])
def test_a_shop_has_its_own_distances(first: int, spacing: int, want: int) -> None:
    """Worked by hand for 88 in: 64/30 -> 2 between; 48/54 -> 0; 72/54 -> 1."""
    table = {"legs": [{"go": "along", "length": 88, "method": "exposed"}]}
    practice = {"staple_first_in": Fraction(first), "staple_spacing_in": Fraction(spacing)}
    assert staples(run(table, **practice)) == want
