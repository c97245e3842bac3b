"""Closing the wall: by scope, what is taped, primed, painted; visits; what is used up."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest

from estimator.settings import Consumable
from estimator.takeoff.records import Takeoff
from tests.route.made_house import WALL, Table, house, room
from tests.takeoff.made_takeoff import part, parts, taken, task, tasks

# Worked by hand: 40 x 4 in seen, 10 ft x 8 ft wall.
SEEN: Table = {"id": "s", "wall": "w", "left": 20, "right": 60, "bottom": 30, "top": 34}
HIDDEN: Table = {"id": "h", "wall": "w", "left": 20, "right": 60, "bottom": 0, "top": 4,
                 "hidden": "yes"}  # fmt: skip
WALLS = [WALL | {"length": 120}]
FINISH = {"joint-tape", "compound-drying", "primer", "paint-wall"}
WORK = ("close-hidden-opening", "patch-opening", "patch-area", "prime-patch", "paint-wall")


def closed(*openings: Table, finish: Table | None = None, **tables: Any) -> Takeoff:
    base: Table = {"openings": list(openings), "walls": WALLS, "finish": finish or {}}
    return taken(house(20, 60, **(base | tables)))


@pytest.mark.parametrize(
    ("scope", "items", "work"),
    [
        ("none", set(), set()),
        ("closed", set(), {"close-hidden-opening"}),
        ("taped", {"joint-tape", "compound-drying"}, {"patch-opening", "patch-area"}),
        ("painted", FINISH, {"patch-opening", "patch-area", "prime-patch", "paint-wall"}),
    ],
)
def test_how_far_the_wall_is_brought_back(scope: str, items: set[str], work: set[str]) -> None:
    made = closed(SEEN, finish={"scope": scope})
    assert FINISH & set(parts(made)) == items
    assert set(WORK) & set(tasks(made)) == work


@pytest.mark.parametrize("scope", ["closed", "taped", "painted"])
def test_a_hidden_opening_is_closed_and_no_more(scope: str) -> None:
    made = closed(HIDDEN, finish={"scope": scope})
    assert not FINISH & set(parts(made))
    assert set(WORK) & set(tasks(made)) == {"close-hidden-opening"}
    assert len(made.visits) == 1


def test_the_figures_of_one_opening() -> None:
    """Worked by hand: 88 in of tape = 7.333333 ft; x 0.04 gal; 52 x 16 in2; 80 ft2 of wall."""
    made = closed(SEEN)
    got = parts(made)
    assert got["joint-tape"] == Decimal("7.333333")
    assert got["compound-drying"] == Decimal("0.293333")
    assert got["primer"] == Decimal("0.019259")  # 832/144/300
    assert got["paint-wall"] == Decimal("0.457143")  # 80 x 2 / 350
    assert task(made, "prime-patch").quantity == Decimal("5.777778")
    assert task(made, "paint-wall").quantity == 160
    assert task(made, "patch-area").quantity == Decimal("1.111111")


def test_tape_counts_a_shared_edge_once() -> None:
    """S2, worked by hand: 100 + 188 - 6 = 282 in = 23.5 ft, 0.94 gal."""
    strips = [
        {"id": "w", "wall": "n0", "left": 76, "right": 120, "bottom": 13, "top": 19},
        {"id": "n", "wall": "n1", "left": 0, "right": 88, "bottom": 13, "top": 19},
    ]
    ends = [{"id": name, "existing": name == "a", "wall": "n0", "x": 78, "height": 16,
             "cables": ["12-2"]} for name in "ab"]  # fmt: skip
    made = closed(*strips, **room(120, 132), boxes=ends)
    assert made.closing.tape_in == 282
    assert parts(made)["joint-tape"] == Decimal("23.5")
    assert parts(made)["compound-drying"] == Decimal("0.94")


def test_an_edge_shared_with_a_hidden_opening_is_taped() -> None:
    above = SEEN | {"bottom": 4, "top": 8}
    made = closed(HIDDEN, above)
    assert made.closing.tape_in == 88


@pytest.mark.parametrize(
    ("finish", "tables", "want_in2"),
    [
        ({}, {}, 120 * 96),
        ({"paint": "spot"}, {}, 52 * 16),  # the primed area
        ({"paint": "none"}, {}, 0),
        ({"paint_area": "156 ft2"}, {}, 156 * 144),
        ({"paint_walls": ["v", "w"]}, {"walls": [*WALLS, WALL | {"id": "v"}]}, 360 * 96),
        ({}, {"windows": [{"wall": "w", "left": 9, "width": 36, "height": 48}]}, 120 * 96 - 1728),
        ({}, {"doors": [{"wall": "v", "width": 36, "height": 48}],
              "walls": [*WALLS, WALL | {"id": "v"}]}, 120 * 96),
        ({}, {"walls": [WALL | {"length": 120, "height": "unknown"}]}, 120 * 96),
        ({}, {"windows": [{"wall": "w", "width": 400, "height": 90}]}, 0),
    ],
)  # fmt: skip
def test_the_area_painted(finish: Table, tables: Table, want_in2: int) -> None:
    """Worked by hand; an unmeasured wall is 8 ft high (building facts, 1.2)."""
    assert closed(SEEN, finish=finish, **tables).closing.paint_in2 == want_in2


def test_setting_compound_is_another_part() -> None:
    got = parts(closed(SEEN, finish={"compound": "setting"}))
    assert "compound-setting" in got
    assert "compound-drying" not in got


@pytest.mark.parametrize(
    ("fill", "item", "quantity"),
    [
        ("mesh", "mesh-patch", "1"),
        ("new board", "gypsum-board", "1.277778"),  # 160/144 x 1.15
        ("plaster", "plaster-base", "0.597403"),  # 160 x 3/4 x 1.15 / 231
    ],
)
def test_what_fills_an_opening(fill: str, item: str, quantity: str) -> None:
    """Worked by hand for 40 x 4 in with 15 % waste."""
    assert parts(closed(SEEN | {"fill": fill}))[item] == Decimal(quantity)


@pytest.mark.parametrize(
    ("thickness", "item"),
    [("1/2 in", "gypsum-board"), ("5/8 in", "gypsum-board-5-8"), ("3/8 in", "gypsum-board-3-8"),
     ("unknown", "gypsum-board")],
)  # fmt: skip
def test_the_board_is_as_thick_as_the_wall(thickness: str, item: str) -> None:
    walls = [WALL | {"finish_thickness": thickness}]
    assert item in parts(closed(SEEN | {"fill": "new board"}, walls=walls))


@pytest.mark.parametrize(
    ("width", "height", "strips_ft", "screws"),
    [
        (10, 10, "2.333333", 8),  # 2 x (10 + 2 x 2) = 28 in
        (12, 12, "2.666667", 8),
        (13, 4, "1.333333", 10),  # one further foot begun
        ("15-15/16", 24, "4.666667", 10),
        (16, 4, "0", 10),  # as wide as a bay: it is fixed to the studs
        (37, 4, "0", 14),
    ],
)
def test_backing_and_screws(width: object, height: object, strips_ft: str, screws: int) -> None:
    """Building facts, 3.6: 8 screws to 12 in, each further foot + 2; strips past each end."""
    got = parts(closed({"id": "o", "wall": "w", "width": width, "height": height}))
    assert got.get("backing-strip", Decimal(0)) == Decimal(strips_ft)
    assert got["screw-drywall"] == screws


@pytest.mark.parametrize(
    ("width", "height", "cut", "quantity"),
    [(12, 12, "cut-access-opening", "1"), ("12-1/16", 4, "open-strip", "1.005208"),
     (4, 24, "open-strip", "2")],
)  # fmt: skip
def test_cutting_by_the_piece_or_by_the_foot(
    width: object, height: object, cut: str, quantity: str
) -> None:
    work = tasks(closed({"id": "o", "wall": "w", "width": width, "height": height}))
    assert work[cut] == Decimal(quantity)


VISITS = [
    ("drying", "painted", [24, 24, 24, 0]),
    ("drying", "taped", [24, 24, 0]),
    ("setting", "painted", [24, 0]),
    ("setting", "taped", [0]),
    ("drying", "closed", [0]),
    ("drying", "none", [0]),
]


@pytest.mark.parametrize(("compound", "scope", "waits"), VISITS)
def test_visits_and_waits(compound: str, scope: str, waits: list[int]) -> None:
    """Building facts, section 6: drying compound four visits, three waits of about 24 h."""
    made = closed(SEEN, finish={"compound": compound, "scope": scope})
    assert [visit.wait_after_h for visit in made.visits] == waits
    assert [visit.number for visit in made.visits] == list(range(1, len(waits) + 1))
    assert tasks(made).get("return-visit", 0) == len(waits) - 1


def test_paint_disturbed_by_room() -> None:
    """Openings and the cut-outs of new boxes; the box table gives 8.4 in2 for one gang."""
    ends = [
        {"id": "a", "existing": True, "wall": "w", "x": 9, "height": 9, "cables": ["14-2"]},
        {"id": "b", "wall": "w", "x": 99, "height": 9, "room": "closet"},
    ]
    made = closed(SEEN, HIDDEN | {"room": "hall"}, boxes=ends)
    assert dict(made.closing.disturbed_in2) == {
        "room": 160, "hall": 160, "closet": Fraction(42, 5)
    }  # fmt: skip


PER = [
    ("job", 1), ("run", 1), ("opening", 2), ("visible-opening", 1), ("new-box", 1),
    ("plaster-opening", 0), ("paint", 1),
]  # fmt: skip


@pytest.mark.parametrize(("per", "times"), PER)
def test_what_is_used_up(per: str, times: int) -> None:
    used = Consumable("thing", Decimal("1.5"), per)  # type: ignore[arg-type]
    survey = house(20, 60, openings=[SEEN, HIDDEN], walls=WALLS)
    made = taken(survey, consumables=(used,))
    assert parts(made).get("thing", 0) == Decimal("1.5") * times


def test_an_opening_in_plaster_is_one() -> None:
    used = (Consumable("blade", Decimal(1), "plaster-opening"),)
    survey = house(20, 60, openings=[SEEN, HIDDEN], walls=[WALL | {"finish": "plaster"}])
    assert parts(taken(survey, consumables=used))["blade"] == 2


def test_trim_off_and_on_with_nails_and_caulk() -> None:
    """S1, worked by hand: 12 ft of baseboard, 12 x 1.5 nails, 12 ft of caulk."""
    run = {"way": "trim", "height": 3, "trim_length": "12 ft", "caulk_length": "12 ft"}
    made = taken(house(34, 105, run=run))
    assert (parts(made)["nail-finish"], parts(made)["caulk"]) == (18, 12)
    assert (tasks(made)["trim-off-on"], tasks(made)["caulk-trim"]) == (12, 12)


def test_trim_of_a_run_behind_it_is_its_level_part() -> None:
    made = taken(house(34, 105, run={"way": "trim", "height": 3}))
    assert task(made, "trim-off-on").quantity == Decimal("5.916667")  # 71 in
    assert part(made, "nail-finish").quantity == 9  # 5.917 x 1.5 = 8.875


def test_texture_goes_on_what_is_primed() -> None:
    made = closed(SEEN, finish={"texture": True})
    assert parts(made)["texture"] == tasks(made)["texture-patch"] == Decimal("5.777778")
    assert "texture" not in parts(closed(SEEN))


@pytest.mark.parametrize(("coats", "gallons"), [(1, "0.228571"), (3, "0.685714")])
def test_coats_of_paint(coats: int, gallons: str) -> None:
    """Worked by hand: 80 x coats / 350."""
    made = taken(house(20, 60, openings=[SEEN], walls=WALLS), paint_coats=coats)
    assert parts(made)["paint-wall"] == Decimal(gallons)
