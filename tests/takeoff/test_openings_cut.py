"""Openings as rectangles: seen or hidden, edges in common, and what grows around them."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from estimator.takeoff.openings import Hole, grown_in2, holes, shared_edges
from tests.route.made_house import WALL, Table, house, room

FEATHER = Fraction(6)


def opening(name: str, left: object, right: object, bottom: object, top: object,
            **more: Any) -> Table:  # fmt: skip
    return {"id": name, "wall": "w", "left": left, "right": right, "bottom": bottom,
            "top": top} | more  # fmt: skip


def cut(*openings: Table, **tables: Any) -> tuple[Hole, ...]:
    return holes(house(openings=list(openings), **tables))


def edges(*openings: Table, **tables: Any) -> list[tuple[str, str, Fraction]]:
    """Edges in common: side of the first opening, the two names, length."""
    survey = house(openings=list(openings), **tables)
    found = shared_edges(survey, holes(survey))
    return [(each.first_side, f"{each.first}-{each.second}", each.length_in) for each in found]


def grown(*openings: Table, **tables: Any) -> list[Fraction]:
    survey = house(openings=list(openings), **tables)
    listed = holes(survey)
    shared = shared_edges(survey, listed)
    return [grown_in2(hole, shared, FEATHER) for hole in listed]


@pytest.mark.parametrize(
    ("sides", "want"),
    [
        ({"left": 33, "right": 106, "bottom": 0, "top": "4-1/2"}, ["73", "9/2"]),
        ({"width": 40, "height": 4}, ["40", "4"]),
        ({"left": 33, "width": 40, "bottom": 5, "top": 9}, ["40", "4"]),
        ({"left": 0, "right": 9, "width": 8, "height": 4}, ["8", "4"]),  # a width goes first
        ({"left": 9, "right": 0, "bottom": 9, "top": 5}, ["9", "4"]),  # named the other way round
    ],
)
def test_the_size_of_an_opening(sides: Table, want: list[str]) -> None:
    (hole,) = cut({"id": "o", "wall": "w"} | sides)
    assert [hole.width_in, hole.height_in] == [Fraction(each) for each in want]
    assert hole.area_in2 == Fraction(want[0]) * Fraction(want[1])
    assert hole.perimeter_in == 2 * (Fraction(want[0]) + Fraction(want[1]))


@pytest.mark.parametrize(
    ("hidden", "trim", "top", "seen"),
    [
        ("yes", "unknown", 40, False),
        ("no", 10, 4, True),
        ("partly", 10, 4, True),  # partly hidden counts as seen
        ("unknown", 5, 4, False),
        ("unknown", 5, 5, False),  # as high as the trim
        ("unknown", 5, "5-1/16", True),
        ("unknown", "unknown", 4, True),  # nobody measured the trim
    ],
)
def test_behind_trim_or_seen(hidden: str, trim: object, top: object, seen: bool) -> None:
    walls = [WALL | {"trim_height": trim}]
    (hole,) = cut(opening("o", 33, 106, 0, top, hidden=hidden), walls=walls)
    assert hole.visible is seen


def test_an_opening_without_a_wall_is_seen() -> None:
    (hole,) = cut({"id": "o", "width": 4, "height": 4, "room": "den"})
    assert (hole.visible, hole.room, hole.wall) == (True, "den", None)


def test_the_room_of_an_opening() -> None:
    walls = [WALL | {"room": "office"}]
    one, two = cut(opening("a", 0, 1, 0, 1), opening("b", 3, 4, 0, 1, room="hall"), walls=walls)
    assert (one.room, two.room) == ("office", "hall")


SIDE_BY_SIDE = [
    (opening("a", 0, 9, 10, 20), opening("b", 9, 12, 10, 20), [("right", "a-b", 10)]),
    (opening("a", 0, 9, 10, 20), opening("b", 9, 12, 15, 40), [("right", "a-b", 5)]),
    (opening("b", 9, 12, 10, 20), opening("a", 0, 9, 10, 20), [("right", "a-b", 10)]),
    (opening("a", 0, 9, 10, 20), opening("b", 9, 12, 20, 30), []),  # corner to corner alone
    (opening("a", 0, 9, 10, 20), opening("b", 10, 12, 10, 20), []),
    (opening("a", 0, 9, 10, 20), opening("b", 4, 12, 20, 30), [("top", "a-b", 5)]),
    (opening("b", 4, 12, 20, 30), opening("a", 0, 9, 10, 20), [("top", "a-b", 5)]),
]


@pytest.mark.parametrize(("one", "two", "want"), SIDE_BY_SIDE)
def test_edges_in_common_on_one_wall(one: Table, two: Table, want: list[object]) -> None:
    assert edges(one, two) == want


def test_the_edge_round_the_corner_of_the_worked_office() -> None:
    """S2: two strips 6 in high meet in the corner."""
    strips = (
        opening("west", 76, 120, 13, 19, wall="n0"), opening("north", 0, 88, 13, 19, wall="n1")
    )  # fmt: skip
    rooms = room(120, 132)
    assert edges(*strips, **rooms, boxes=ENDS) == [("right", "west-north", 6)]
    apart = rooms | {"corners": []}
    assert edges(*strips, **apart, boxes=ENDS) == []


ENDS = [
    {"id": name, "existing": name == "a", "wall": "n0", "x": 9, "height": 9, "cables": ["14-2"]}
    for name in "ab"
]


def test_edges_in_common_as_stated() -> None:
    quick = [{"id": name, "width": 40, "height": high} for name, high in (("a", 6), ("b", 8))]
    assert edges(quick[0] | {"joins_right": "b"}, quick[1]) == [("right", "a-b", 6)]
    assert edges(quick[0], quick[1] | {"joins_left": "a"}) == [("right", "a-b", 6)]
    both = edges(quick[0] | {"joins_right": "b"}, quick[1] | {"joins_left": "a"})
    assert both == [("right", "a-b", 6)]


@pytest.mark.parametrize(
    ("sides", "want"),
    [
        ((50, 90, 30, 34), 52 * 16),
        ((50, 90, 0, 4), 52 * 10),  # on the floor
        ((0, 40, 30, 34), 46 * 16),  # at the left end of the wall
        ((200, 240, 30, 34), 46 * 16),  # at its right end
        ((50, 90, 92, 96), 52 * 10),  # at the ceiling
        ((0, 240, 0, 96), 240 * 96),
    ],
)
def test_free_sides_grow_by_the_feather(sides: tuple[int, ...], want: int) -> None:
    """Worked by hand with 6 in; the wall is 240 x 96."""
    assert grown(opening("o", *sides)) == [want]


def test_the_primed_strips_of_the_worked_office() -> None:
    """S2, worked by hand: (44 + 6) x 18 + (88 + 6) x 18 = 2592."""
    strips = (
        opening("west", 76, 120, 13, 19, wall="n0"), opening("north", 0, 88, 13, 19, wall="n1")
    )  # fmt: skip
    assert grown(*strips, **room(120, 132), boxes=ENDS) == [900, 1692]


def test_openings_on_one_another_share_top_and_bottom() -> None:
    low, high = opening("a", 50, 60, 10, 20), opening("b", 50, 60, 20, 30)
    assert grown(low, high) == [22 * 16, 22 * 16]


def test_by_size_alone_every_side_is_free() -> None:
    assert grown({"id": "o", "width": 40, "height": 4}) == [52 * 16]
