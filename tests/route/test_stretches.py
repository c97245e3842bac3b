"""Where the legs of a run stand when a wall is looked at; places worked by hand."""

from __future__ import annotations

from pathlib import Path

import pytest

from estimator.pricing.ways import on_route
from estimator.route.paths import run_paths
from estimator.route.records import PathLeg
from estimator.survey.reader import read_job
from tests.route.made_house import box, house, path, room

SAMPLES = Path(__file__).parents[2] / "samples"
Place = tuple[str, int, int, int, int]


def legs(sample: str, route: str | None = None) -> list[PathLeg]:
    survey = on_route(read_job(SAMPLES / f"{sample}.toml").survey, route)
    return [leg for path in run_paths(survey) for leg in path.legs]


def places(sample: str, route: str | None = None) -> list[Place | None]:
    """Wall, then x and height of both ends, of each leg in order."""
    return [
        (at.wall, int(at.x1_in), int(at.height1_in), int(at.x2_in), int(at.height2_in))
        if (at := leg.stretch)
        else None
        for leg in legs(sample, route)
    ]


def test_down_along_the_trim_and_up() -> None:
    """S1: from x 34 at 15 down to 3, along to 105, up to 15."""
    assert places("nightstand") == [
        ("north", 34, 15, 34, 3), ("north", 34, 3, 105, 3), ("north", 105, 3, 105, 15),
    ]  # fmt: skip


def test_round_the_corner() -> None:
    """S2: to the west wall's right end (120), on from the north wall's left end; then 14 up."""
    assert places("printer-corner") == [
        ("west", 78, 16, 120, 16), ("north", 0, 16, 23, 16),
        ("north", 23, 16, 87, 16), ("north", 87, 16, 87, 30),
    ]  # fmt: skip


def test_by_the_attic_the_way_out_from_the_wall_has_no_place_in_its_view() -> None:
    """S7: 33 up and 6 along to the switch; then up to 100, 26 out, 44 along, 4 down."""
    assert places("closet-light") == [
        ("partition", 36, 15, 42, 15), ("partition", 42, 15, 42, 48),
        ("partition", 42, 48, 42, 100), None,
        ("partition", 42, 100, 86, 100), ("partition", 86, 100, 86, 96),
    ]  # fmt: skip


def test_under_the_floor_heights_are_negative() -> None:
    """S14, way C: 25 down to 10 below the floor, 68 along, 25 up."""
    assert places("door-in-the-way", "C") == [
        ("south", 52, 15, 52, -10), ("south", 52, -10, 120, -10), ("south", 120, -10, 120, 15),
    ]  # fmt: skip


@pytest.mark.parametrize("route", ["A", "B", "C"])
def test_each_stretch_is_as_long_as_its_leg(route: str) -> None:
    for leg in legs("door-in-the-way", route):
        at = leg.stretch
        assert at is not None
        apart = abs(at.x2_in - at.x1_in) + abs(at.height2_in - at.height1_in)
        assert apart == leg.length_in


def test_a_level_leg_between_two_walls_has_no_place_in_either_view() -> None:
    """Up by one wall and down by the next: 56 along and 20 out are open space."""
    survey = house(
        boxes=[box("a", "n0", 100), box("b", "n1", 20)],
        run={"way": "over", "level": "attic"},
        levels=[{"kind": "attic", "accessible": "yes", "height": 100}],
        **room(156, 144, 156, 144),
    )
    seen = [leg.stretch.wall if leg.stretch else None for leg in path(survey).legs]
    assert seen == ["n0", None, None, "n1"]


def test_typed_legs_have_no_place() -> None:
    typed = {"way": None, "legs": [{"go": "along", "length": "72 in"}]}
    assert [leg.stretch for leg in path(house(run=typed)).legs] == [None]
