"""Studs, nogs, plates, tees and obstacles that a straight leg meets inside one wall."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tests.route.made_house import WALL, Table, goes, house, lengths, level_part, met, path


@pytest.mark.parametrize(
    ("from_x", "to_x", "spacing", "first", "want"),
    [
        (20, 92, 16, 0, 4),  # building facts, row 18: 32, 48, 64, 80
        (20, 92, 24, 0, 3),  # building facts, row 18: 24, 48, 72
        (34, 105, 16, 16, 4),  # S1, worked by hand: 48, 64, 80, 96
        (16, 32, 16, 16, 0),  # both ends on a stud centre: neither is crossed
        (15, 33, 16, 16, 2),  # just outside both
        (16, 33, 16, 16, 1),
        (15, 32, 16, 16, 1),
        (17, 31, 16, 16, 0),  # within one bay
        (92, 20, 16, 0, 4),  # from right to left
        (20, 20, 16, 0, 0),
        (0, 240, 16, 16, 14),  # 16, 32 ... 224; the end stud at 240 is not crossed
        ("8 in", "41 in", "19-3/16 in", "9-5/8 in", 2),  # 9-5/8 and 28-13/16; next is 48
        (10, 26, 16, 42, 0),  # grid 42 - 16 = 26 and 10: it runs on to the left, ends not crossed
        (9, 27, 16, 42, 2),
        ("950 mm", "2750 mm", "600 mm", "600 mm", 3),  # S10: 1200, 1800, 2400
        ("2750 mm", "3500 mm", "600 mm", "600 mm", 1),  # S10: 3000
    ],
)
def test_studs_strictly_between_the_ends(
    from_x: object, to_x: object, spacing: object, first: object, want: int
) -> None:
    wall = WALL | {"stud": "2x4", "spacing": spacing, "layout_from": first}
    made = path(house(from_x, to_x, walls=[wall]))
    assert met(made).get("stud", 0) == want
    assert not any(leg.assumed for leg in made.legs)


@pytest.mark.parametrize(
    ("length", "spacing", "want"),
    [(72, 16, 5), (64, 16, 4), (1, 16, 1), (48, 24, 2), (49, 24, 3), (72, "unknown", 5)],
)
def test_without_a_layout_a_part_bay_counts_as_a_stud(
    length: int, spacing: object, want: int
) -> None:
    """ceil(leg / spacing), worked by hand; an unknown spacing is 16 in (building facts, 1.2)."""
    wall = WALL | {"stud": "2x4", "spacing": spacing, "layout_from": "unknown"}
    leg = level_part(path(house(20, 20 + length, walls=[wall])))
    assert (leg.studs, leg.assumed) == (want, True)


def test_without_a_spacing_a_layout_says_nothing() -> None:
    leg = level_part(path(house(20, 52, walls=[WALL | {"spacing": "unknown"}])))
    assert (leg.studs, leg.assumed) == (2, True)


NOG = {"wall": "w", "kind": "nog", "height": 40}
POST = {"wall": "w", "kind": "post", "at": 50}


@pytest.mark.parametrize(
    ("member", "want"),
    [
        (NOG, {"nog": 2}),  # met on the way up and on the way down
        (NOG | {"height": 15}, {}),  # at the box: an end is not crossed
        (NOG | {"height": 60}, {}),  # at the level part: the same
        (NOG | {"from": 0, "to": 30}, {"nog": 1}),  # reaches the box at 20 alone
        (NOG | {"from": 20, "to": 92}, {"nog": 2}),
        (NOG | {"from": 21, "to": 91}, {}),
        (NOG | {"kind": "block", "from": 90}, {"block": 1}),
        (POST, {"post": 1}),
        (POST | {"at": 20}, {}),
        (POST | {"at": 200}, {}),
        (POST | {"from": 0, "to": 59}, {}),  # ends below the level part at 60
        (POST | {"from": 0, "to": 60}, {"post": 1}),
        (POST | {"wall": "other"}, {}),
    ],
)
def test_listed_members_by_their_reach(member: Table, want: dict[str, int]) -> None:
    walls = [WALL | {"spacing": 200, "layout_from": 200}, WALL | {"id": "other"}]
    made = path(house(run={"height": 60}, walls=walls, members=[member]))
    assert met(made) == want


def test_legs_go_up_along_and_down() -> None:
    made = path(house(run={"height": 60}))
    assert goes(made) == ["up", "along", "down"]
    assert lengths(made) == [45, 72, 45]
    assert made.path_in == 162
    assert made.level_in == 72


def test_at_the_height_of_the_boxes_there_is_one_leg() -> None:
    made = path(house())
    assert goes(made) == ["along"]
    assert lengths(made) == [72]


def test_the_level_part_is_at_the_first_box_unless_told() -> None:
    boxes = [{"id": "a", "wall": "w", "x": 20, "height": 16}, {"id": "b", "wall": "w", "x": 92,
             "height": 30}]  # fmt: skip
    made = path(house(boxes=boxes))
    assert goes(made) == ["along", "up"]
    assert lengths(made) == [72, 14]


def test_a_tee_adds_its_members_with_their_edge() -> None:
    made = path(house(tees=[{"wall": "w", "at": 50, "members": 3, "edge": "3/4 in"}]))
    tee = next(each for each in level_part(made).crossed if each.kind == "tee stud")
    assert (tee.count, tee.edge_in) == (3, Fraction(3, 4))


@pytest.mark.parametrize("at", [20, 92, 10, 100])
def test_a_tee_at_an_end_or_beyond_is_not_met(at: int) -> None:
    assert "tee stud" not in met(path(house(tees=[{"wall": "w", "at": at}])))


@pytest.mark.parametrize(
    ("box", "want"),
    [
        ((40, 44, 0, 96), 1),
        ((40, 44, 0, 15), 0),  # ends where the run passes
        ((40, 44, 15, 96), 0),
        ((92, 96, 0, 96), 0),  # begins at the box
        ((10, 20, 0, 96), 0),
        ((10, 21, 14, 16), 1),
    ],
)
def test_obstacles_in_the_way_of_a_level_leg(box: tuple[int, ...], want: int) -> None:
    left, right, bottom, top = box
    sides = {"left": left, "right": right, "bottom": bottom, "top": top}
    made = path(house(obstacles=[{"wall": "w", "kind": "pipe"} | sides]))
    assert sum(leg.obstacles for leg in made.legs) == want


@pytest.mark.parametrize(("left", "right", "want"), [(19, 21, 1), (20, 21, 0), (18, 20, 0)])
def test_obstacles_in_the_way_of_an_upright_leg(left: int, right: int, want: int) -> None:
    sides = {"left": left, "right": right, "bottom": 30, "top": 40}
    made = path(house(run={"height": 60}, obstacles=[{"wall": "w", "kind": "duct"} | sides]))
    assert sum(leg.obstacles for leg in made.legs) == want
