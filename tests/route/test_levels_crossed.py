"""Runs by the attic, basement or crawlspace: plates, floors, the plan seen from above."""

from __future__ import annotations

from fractions import Fraction

import pytest

from estimator.problems import InputError
from estimator.route.plan import spread
from estimator.route.records import RunPath
from estimator.survey.records import Survey
from tests.route.made_house import WALL, Table, box, goes, house, lengths, path, room

ATTIC: Table = {"kind": "attic", "accessible": "yes", "height": 100}
CRAWL: Table = {"kind": "crawlspace", "accessible": "yes", "below_floor": 10}
OVER: Table = {"way": "over", "level": "attic", "method": "fished"}
UNDER: Table = {"way": "under", "level": "crawlspace", "method": "fished"}


def by_level(start: Table, end: Table, run: Table, rooms: Table | None = None) -> RunPath:
    rooms = rooms or {"walls": [WALL]}
    return path(house(boxes=[start, end], run=run, levels=[ATTIC, CRAWL], **rooms))


def apart(survey: Survey) -> list[Fraction]:
    """Distance of the first two boxes along the first one's wall, and out from it."""
    return list(spread(survey, survey.boxes[0], survey.boxes[1]) or ())


def test_the_closet_light_of_the_worked_job() -> None:
    """S7, worked by hand: 52 up to the attic, 26 across, 44 along, 4 down; 2 plates, one hole."""
    light = box("b", "w", 86, 96, mount="ceiling", out=26)
    made = by_level(box("a", "w", 42, 48), light, OVER)
    assert goes(made) == ["up", "across", "along", "down"]
    assert lengths(made) == [52, 26, 44, 4]
    assert [leg.method for leg in made.legs] == ["fished", "exposed", "exposed", "exposed"]
    assert [leg.wall_plates for leg in made.legs] == [2, 0, 0, 0]
    assert [leg.plate_holes for leg in made.legs] == [1, 0, 0, 0]


def test_the_crawlspace_of_the_worked_job() -> None:
    """S14 C, worked by hand: 25 down, 68 along, 25 up; two floor holes."""
    made = by_level(box("a", "w", 52), box("b", "w", 120), UNDER)
    assert lengths(made) == [25, 68, 25]
    assert [leg.floor_holes for leg in made.legs] == [1, 0, 1]
    assert sum(leg.wall_plates + leg.studs for leg in made.legs) == 0


def test_over_from_wall_to_wall_pierces_the_plates_of_both() -> None:
    made = by_level(box("a", "w", 20), box("b", "w", 92), OVER)
    assert lengths(made) == [85, 72, 85]
    assert [leg.wall_plates for leg in made.legs] == [2, 0, 2]


@pytest.mark.parametrize(("plates", "want"), [(0, 0), (1, 1), (3, 3)])
def test_each_wall_has_its_own_number_of_top_plates(plates: int, want: int) -> None:
    rooms = {"walls": [WALL | {"top_plates": plates}]}
    made = by_level(box("a", "w", 20), box("b", "w", 92), OVER, rooms)
    assert [leg.wall_plates for leg in made.legs] == [want, 0, want]


def test_between_two_ceiling_boxes_nothing_is_pierced() -> None:
    start = box("a", "w", 20, 96, mount="ceiling", out=30)
    made = by_level(start, box("b", "w", 92, 96, mount="ceiling", out=50), OVER)
    assert lengths(made) == [4, 20, 72, 4]
    assert sum(leg.wall_plates + leg.floor_holes for leg in made.legs) == 0


def test_straight_through_gives_the_offset_of_the_boxes() -> None:
    """S3, worked by hand: 55 - 50 = 5, and 3 up."""
    made = path(house(boxes=[box("a", "w", 50, 14), box("b", "w", 55, 17)], run={"way": "through"}))
    assert goes(made) == ["along", "up"]
    assert lengths(made) == [5, 3]


def test_a_nog_above_the_box_is_met_on_the_way_to_the_attic() -> None:
    nog = {"members": [{"wall": "w", "kind": "block", "height": 60}], "walls": [WALL]}
    made = by_level(box("a", "w", 20), box("b", "w", 92), OVER, nog)
    assert [sum(each.count for each in leg.crossed) for leg in made.legs] == [1, 0, 1]


# Walls 156 and 144; standing in the room, n1 is to the right of n0, n2 behind, n3 to the left.
PLAN = [
    (("n0", 50), ("n0", 70), [20, 0]),
    (("n0", 100), ("n1", 20), [56, 20]),
    (("n1", 20), ("n0", 100), [20, 56]),
    (("n0", 100), ("n3", 20), [100, 124]),  # n3 ends where n0 begins: 144 - 20 into the room
    (("n0", 50), ("n2", 50), [56, 144]),  # n2 runs back: 156 - 50 = 106, less 50
]


@pytest.mark.parametrize(("start", "end", "want"), PLAN)
def test_the_plan_of_a_room(start: tuple[str, int], end: tuple[str, int], want: list[int]) -> None:
    """Worked by hand on squared paper: along the first wall, and out from it."""
    ends = [box("a", *start), box("b", *end)]
    survey = house(boxes=ends, run={"way": "wall"}, **room(156, 144, 156, 144))
    assert apart(survey) == want


@pytest.mark.parametrize(
    ("kind", "x", "out", "want"),
    [
        ("inside", 20, 0, [56, 20]),
        ("outside", 20, 0, [56, 20]),
        ("inside", 20, 30, [56 - 30, 20]),  # its room is this room: out is back along n0
        ("outside", 20, 30, [56 + 30, 20]),  # its room lies beyond: out is further along
    ],
)
def test_outside_corners_turn_the_other_way(kind: str, x: int, out: int, want: list[int]) -> None:
    """Worked by hand: n1 goes away from the room's side of n0 at an outside corner."""
    rooms = room(156, 144)
    rooms["corners"] = [{"walls": ["n0", "n1"], "kind": kind}]
    light = box("b", "n1", x, 96, mount="ceiling", out=out)
    survey = house(boxes=[box("a", "n0", 100), light], run=OVER, levels=[ATTIC], **rooms)
    assert apart(survey) == want


def test_the_plan_is_the_same_seen_from_an_earlier_wall() -> None:
    """An outside corner at the left end of the first wall: worked by hand as above."""
    rooms = room(156, 144)
    rooms["corners"] = [{"walls": ["n0", "n1"], "kind": "outside"}]
    ends = [box("a", "n1", 20, 96, mount="ceiling", out=30), box("b", "n0", 100)]
    survey = house(boxes=ends, run=OVER, levels=[ATTIC], **rooms)
    assert apart(survey) == [20, 86]


def test_boxes_on_walls_that_nothing_joins() -> None:
    rooms = room(156, 144)
    rooms["corners"] = []
    with pytest.raises(InputError, match="no corner joins"):
        by_level(box("a", "n0", 1), box("b", "n1", 1), OVER, rooms)


def test_a_level_whose_height_nobody_measured() -> None:
    levels = [{"kind": "attic"}]
    with pytest.raises(InputError, match="the height of the attic is unknown"):
        path(house(run=OVER, levels=levels))
