"""Doors and windows: over, under or blocked, and the kings, jacks and cripples on the way."""

from __future__ import annotations

from typing import Any

import pytest

from tests.route.made_house import Table, house, level_part, met, path

DOOR: Table = {
    "wall": "w", "left": 70, "width": 32, "height": 82, "header_top": 90,
    "kings": ["67.75 in", "104.25 in"], "jacks": ["69.25 in", "102.75 in"],
}  # fmt: skip
WINDOW: Table = {
    "wall": "w", "left": 70, "width": 36, "bottom": 40, "height": 40, "header_top": 88,
    "kings": [67, 109], "jacks": [69, 107],
}  # fmt: skip


def over_door(height: object, **changes: Any) -> dict[str, int]:
    """S14: boxes at 52 and 120, a door at 70-102, studs every 16 in from 16."""
    return met(path(house(52, 120, run={"height": height}, doors=[DOOR | changes])))


def test_over_the_door_of_the_worked_job() -> None:
    """S14, worked by hand: 64, 67.75, 80, 96, 104.25, 112 are six members."""
    found = over_door(91, cripples=[80, 96])
    assert found == {"stud": 2, "king": 2, "cripple": 2}
    assert sum(found.values()) == 6


@pytest.mark.parametrize(
    ("cripples", "want"),
    [(None, 2), ([], 0), ([75, 80, 85, 96], 4), ([40, 80], 1)],
)
def test_cripples_stand_on_the_grid_unless_listed(cripples: list[int] | None, want: int) -> None:
    """On the grid: 80 and 96 between 70 and 102; 40 is not on the way."""
    changes = {} if cripples is None else {"cripples": cripples}
    assert over_door(91, **changes).get("cripple", 0) == want


@pytest.mark.parametrize(
    ("height", "blocked"), [(15, "door"), (82, "door"), (89, "door"), (90, ""), (91, "")]
)
def test_a_door_blocks_up_to_the_top_of_its_header(height: int, blocked: str) -> None:
    assert level_part(path(house(52, 120, run={"height": height}, doors=[DOOR]))).passes_gap == (
        blocked
    )


def test_without_a_header_the_opening_alone_blocks() -> None:
    door = {key: value for key, value in DOOR.items() if key != "header_top"}
    made = path(house(52, 120, run={"height": 82}, doors=[door]))
    assert level_part(made).passes_gap == ""


@pytest.mark.parametrize(
    ("height", "blocked", "want"),
    [
        (39, "", {"stud": 1, "king": 2, "jack": 2, "cripple": 2}),
        (40, "window", {"stud": 1, "king": 2, "jack": 2}),
        (79, "window", {"stud": 1, "king": 2, "jack": 2}),
        (80, "window", {"stud": 1, "king": 2}),  # jacks end below the header
        (88, "", {"stud": 1, "king": 2, "cripple": 2}),
    ],
)
def test_under_across_and_over_a_window(height: int, blocked: str, want: Table) -> None:
    """Worked by hand: studs 64, 80, 96 on the way; 80 and 96 fall in the window at 70-106."""
    made = path(house(52, 112, run={"height": height}, windows=[WINDOW]))
    assert level_part(made).passes_gap == blocked
    assert met(made) == want


@pytest.mark.parametrize(("to_x", "want"), [(69, ""), (70, ""), (71, "door")])
def test_a_run_that_ends_before_the_door_is_free(to_x: int, want: str) -> None:
    assert level_part(path(house(52, to_x, doors=[DOOR]))).passes_gap == want


def test_a_door_whose_place_is_unknown_meets_no_run() -> None:
    made = path(house(52, 120, doors=[DOOR | {"left": "unknown"}]))
    assert level_part(made).passes_gap == ""
    assert met(made) == {"stud": 4}


def test_a_door_in_another_wall_is_not_met() -> None:
    walls = [{"id": name, "length": 240, "spacing": 16, "layout_from": 16} for name in "wv"]
    assert met(path(house(52, 120, walls=walls, doors=[DOOR | {"wall": "v"}]))) == {"stud": 4}
