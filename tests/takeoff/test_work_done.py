"""How often each piece of work is done, where, and in which conditions."""

from __future__ import annotations

from typing import Any

import pytest

from estimator.takeoff.records import Takeoff
from tests.route.made_house import WALL, Table, house
from tests.takeoff.made_takeoff import parts, taken, task, tasks

SEEN: Table = {"id": "s", "wall": "w", "left": 20, "right": 60, "bottom": 30, "top": 34}
HIDDEN: Table = SEEN | {"id": "h", "hidden": "yes"}


def done(**tables: Any) -> dict[str, int]:
    return {name: int(count) for name, count in tasks(taken(house(**tables))).items()}


def test_work_at_the_boxes_of_a_plain_run() -> None:
    """One source opened, one box cut in and fitted, two outlets tested, two cable ends."""
    made = done()
    once = ("set-up", "identify-circuit", "clean-up", "open-source-box", "cut-box-opening",
            "fit-box", "mount-receptacle")  # fmt: skip
    assert {name: made[name] for name in once} == dict.fromkeys(once, 1)
    assert (made["test-outlet"], made["cable-end"], made["make-joint"]) == (2, 2, 3)
    assert "replace-box" not in made


def test_work_on_openings() -> None:
    made = done(openings=[SEEN, HIDDEN])
    assert (made["close-hidden-opening"], made["patch-opening"]) == (1, 1)


@pytest.mark.parametrize(("level", "name"), [("attic", "set-up-attic"), (None, "set-up-attic")])
def test_a_level_is_made_ready_once(level: str | None, name: str) -> None:
    way = {"way": "over", "level": level} if level else {"way": "over", "height": 90}
    levels = [{"kind": "attic", "height": 100}]
    assert done(run=way, levels=levels).get(name, 0) == int(level is not None)


def test_drops_by_the_piece_and_level_parts_by_the_foot() -> None:
    """Worked by hand: 45 up, 72 along, 45 down."""
    made = taken(house(run={"height": 60}))
    assert task(made, "fish-drop").quantity == 2
    assert task(made, "fish-drop").reason == "rises and drops: 45 + 45 in"
    assert task(made, "pull-bored").quantity == 6


@pytest.mark.parametrize(
    ("method", "name"),
    [("bored", "pull-bored"), ("notched", "pull-bored"), ("fished", "fish-horizontal"),
     ("exposed", "pull-exposed")],
)  # fmt: skip
def test_how_cable_is_put_in_decides_the_work(method: str, name: str) -> None:
    made = done(run={"method": method})
    pulls = [each for each in made if each.startswith(("pull", "fish-h"))]
    assert pulls == [name]


def test_holes_through_plates_and_floors() -> None:
    levels = [{"kind": "attic", "height": 100}, {"kind": "basement", "below_floor": 10}]
    over = done(run={"way": "over", "level": "attic"}, levels=levels)
    under = done(run={"way": "under", "level": "basement"}, levels=levels)
    assert (over["bore-plate"], over.get("bore-floor", 0)) == (2, 0)
    assert (under.get("bore-plate", 0), under["bore-floor"]) == (0, 2)


def chain(from_device: str, to_device: str, cables: int = 1) -> dict[str, int]:
    """Pigtails and joints at the first of two boxes."""
    boxes = [
        {"id": "a", "existing": True, "wall": "w", "x": 20, "height": 15, "clamps": "no",
         "device": from_device, "cables": ["14-2"] * cables},
        {"id": "b", "wall": "w", "x": 92, "height": 15, "device": to_device},
    ]  # fmt: skip
    made: Takeoff = taken(house(boxes=boxes))
    return {"pigtails": made.boxes[0].pigtails, "joints": len(made.boxes[0].joints)}


@pytest.mark.parametrize(
    ("first", "second", "pigtails", "joints"),
    [
        ("receptacle", "receptacle", 3, 3),
        ("receptacle", "luminaire", 3, 3),  # a light on a receptacle is always live
        ("switch", "luminaire", 1, 2),  # feed and switched: whites, and grounds with a pigtail
        ("switch", "receptacle", 2, 3),  # both live: hots join too
        ("luminaire", "luminaire", 0, 3),
        ("none", "receptacle", 0, 3),
    ],
)
def test_what_a_run_carries_on(first: str, second: str, pigtails: int, joints: int) -> None:
    assert chain(first, second) == {"pigtails": pigtails, "joints": joints}


def test_in_a_standing_switch_box_the_other_cables_are_switched() -> None:
    """One feed, one switched, one more live: hots, whites and grounds; two pigtails."""
    assert chain("switch", "receptacle", cables=2) == {"pigtails": 2, "joints": 3}


def conditions(name: str, job: Table | None = None, **wall: object) -> tuple[str, ...]:
    head = {"id": "J", "title": "t", "occupied": "no"} | (job or {})
    made = taken(house(job=head, walls=[WALL | {"stud": "2x4"} | wall], openings=[SEEN]))
    return task(made, name).conditions


@pytest.mark.parametrize(
    ("wall", "want"),
    [
        ({}, ()),
        ({"finish": "plaster"}, ("plaster",)),
        ({"exterior": "yes", "insulated": "yes"}, ("exterior-insulated",)),
        ({"finish": "plaster", "exterior": "yes", "insulated": "yes"},
         ("plaster", "exterior-insulated")),
        ({"exterior": "yes", "insulated": "unknown"}, ()),
    ],
)  # fmt: skip
def test_conditions_of_the_wall_where_work_is_done(wall: Table, want: tuple[str, ...]) -> None:
    for name in ("bore-member", "cut-box-opening", "patch-opening"):
        assert conditions(name, **wall) == want


def test_a_room_lived_in_holds_for_all_work() -> None:
    lived_in = {"occupied": "yes"}
    for name in ("set-up", "bore-member", "clean-up", "paint-wall"):
        assert conditions(name, lived_in)[0] == "occupied-room"


def test_a_typed_run_takes_the_conditions_of_the_walls_it_names() -> None:
    plaster = WALL | {"stud": "2x4", "finish": "plaster"}
    legs = [{"go": "along", "length": 72, "studs": 4}]
    run = {"id": "1", "from": "a", "to": "b", "cable": "14-2", "legs": legs}
    named = taken(house(walls=[plaster], runs=[run | {"walls": ["w"]}]))
    assert task(named, "bore-member").conditions == ("plaster",)
    assert task(taken(house(walls=[plaster], runs=[run])), "bore-member").conditions == ()


def test_a_new_box_disturbs_the_room_of_its_wall() -> None:
    made = taken(house(walls=[WALL | {"room": "den"}]))
    assert [room for room, _ in made.closing.disturbed_in2] == ["den"]


@pytest.mark.parametrize(
    ("tables", "item"),
    [({}, "blade-saw"), ({"openings": [SEEN]}, "sanding-sponge"), ({}, "dust-mask")],
)
def test_what_comes_along_to_every_job(tables: Table, item: str) -> None:
    assert item in parts(taken(house(**tables)))
