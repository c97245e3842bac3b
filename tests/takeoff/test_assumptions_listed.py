"""Each fact that nobody measured is an assumption with what was taken in its place."""

from __future__ import annotations

from typing import Any

import pytest

from tests.route.made_house import Table, house
from tests.takeoff.made_takeoff import taken

KNOWN_JOB = {"id": "J", "title": "t", "year_built": 1990, "occupied": "no"}
KNOWN_CIRCUIT = {"breaker": 15, "wire": "14", "grounded": "yes", "material": "copper"}
KNOWN_WALL = {"id": "w", "length": 240, "height": 96, "stud": "2x4", "spacing": 16,
              "layout_from": 16, "bearing": "no"}  # fmt: skip
SOURCE = {"id": "a", "existing": True, "wall": "w", "x": 20, "height": 15, "cables": ["14-2"],
          "volume": 18, "clamps": "no"}  # fmt: skip
NEW = {"id": "b", "wall": "w", "x": 92, "height": 15}
SEEN = {"id": "o", "wall": "w", "left": 20, "right": 90, "bottom": 30, "top": 34}


def assumed(**tables: Any) -> list[str]:
    """What each assumption is about, in a house where the rest is known."""
    known: Table = {"job": KNOWN_JOB, "circuit": KNOWN_CIRCUIT, "walls": [KNOWN_WALL],
                    "boxes": [SOURCE, NEW]}  # fmt: skip
    return [each.about for each in taken(house(**(known | tables))).assumptions]


def test_where_all_is_known_nothing_is_assumed() -> None:
    assert assumed() == []


WALL_CASES: list[tuple[Table, str]] = [
    ({"layout_from": "unknown"}, "wall w: where the studs stand"),
    ({"spacing": "unknown"}, "wall w: where the studs stand"),
    ({"stud": "unknown"}, "wall w: the depth of its studs"),
    ({"framing": "unknown"}, "wall w: wood or steel studs"),
    ({"bearing": "unknown"}, "wall w: whether it bears load"),
    ({"exterior": "yes", "insulated": "unknown"}, "wall w: whether it is insulated"),
    ({"finish": "unknown"}, "wall w: what it is finished with"),
]
BOX_CASES: list[tuple[Table, str]] = [
    ({"cables": []}, "box a: the cables in it"),
    ({"unknown_cables": True}, "box a: the cables in it"),
    ({"volume": "unknown"}, "box a: its volume"),
    ({"clamps": "unknown"}, "box a: whether it has inner clamps"),
]


@pytest.mark.parametrize(("change", "want"), WALL_CASES)
def test_of_a_wall_that_is_bored(change: Table, want: str) -> None:
    assert assumed(walls=[KNOWN_WALL | change]) == [want]


@pytest.mark.parametrize(("change", "want"), BOX_CASES)
def test_of_the_source(change: Table, want: str) -> None:
    assert assumed(boxes=[SOURCE | change, NEW]) == [want]


@pytest.mark.parametrize(
    ("key", "want"),
    [
        ("year_built", "the year the house was built"),
        ("occupied", "whether the rooms are lived in"),
    ],
)
def test_of_the_job(key: str, want: str) -> None:
    assert assumed(job=KNOWN_JOB | {key: "unknown"}) == [want]


@pytest.mark.parametrize(
    ("key", "want"),
    [
        ("breaker", "the breaker's rating"),
        ("wire", "the smallest wire on the circuit"),
        ("grounded", "whether the circuit has a ground"),
        ("material", "whether the old wire is aluminum"),
    ],
)
def test_of_the_circuit(key: str, want: str) -> None:
    assert assumed(circuit=KNOWN_CIRCUIT | {key: "unknown"}) == [want]


GAP = {"wall": "w", "left": "unknown", "width": 30, "height": 80}


@pytest.mark.parametrize(
    ("tables", "want"),
    [
        ({"doors": [GAP]}, "wall w: where its door stands"),
        ({"windows": [GAP]}, "wall w: where its window stands"),
        ({"members": [{"wall": "w", "kind": "post"}]}, "wall w: where its post stands"),
        ({"openings": [SEEN], "walls": [KNOWN_WALL | {"height": "unknown"}]},
         "wall w: its height"),
        ({"openings": [{"id": "o", "width": 9, "height": 9}]}, "the area to paint"),
    ],
)  # fmt: skip
def test_of_places_and_paint(tables: Table, want: str) -> None:
    assert assumed(**tables) == [want]


@pytest.mark.parametrize(
    "finish", [{"scope": "taped"}, {"paint": "none"}, {"paint": "spot"}, {"paint_area": 90}]
)
def test_nothing_of_paint_where_none_is_guessed(finish: Table) -> None:
    walls = [KNOWN_WALL | {"height": "unknown"}]
    assert assumed(openings=[SEEN], walls=walls, finish=finish) == []


def test_of_a_wall_the_cable_only_passes_nothing_is_said() -> None:
    """A run within one bay bores nothing, so depth and bearing do not matter."""
    walls = [KNOWN_WALL | {"stud": "unknown", "bearing": "unknown"}]
    assert assumed(walls=walls, boxes=[SOURCE, NEW | {"x": 25}]) == []


def test_of_typed_studs_without_a_depth() -> None:
    ends = [{"id": "a", "existing": True, "cables": ["14-2"], "volume": 18, "clamps": "no"},
            {"id": "b"}]  # fmt: skip
    legs = [{"go": "along", "length": 9, "studs": 1}]
    runs = [{"id": "1", "from": "a", "to": "b", "cable": "14-2", "legs": legs}]
    assert assumed(boxes=ends, runs=runs) == ["the depth of the studs"]


def test_no_box_is_counted_where_no_rules_are_on_file() -> None:
    boxes = [SOURCE | {"volume": "unknown", "clamps": "unknown"}, NEW]
    assert assumed(job=KNOWN_JOB | {"country": "GB"}, boxes=boxes) == []


def test_assumptions_are_numbered_and_say_what_was_taken() -> None:
    made = taken(house()).assumptions
    assert [each.number for each in made] == list(range(1, len(made) + 1))
    assert all(each.taken for each in made)
    still = {each.about for each in made if not each.moves_price}
    assert still == {"wall w: whether it bears load"}


def test_what_is_taken_for_studs_nobody_found() -> None:
    walls = [KNOWN_WALL | {"layout_from": "unknown", "spacing": 24, "stud": "unknown"}]
    made = taken(house(walls=walls)).assumptions
    said = {each.about: each.taken for each in made}
    assert said["wall w: where the studs stand"].startswith("studs every 24 in")
    assert said["wall w: the depth of its studs"] == "3.5 in"
