"""Which box is bought: the smallest that holds the wires, the place, the stated volume."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest

from estimator.takeoff.records import BoxCount, Takeoff
from estimator.takeoff.stock import Stock
from tests.route.made_house import Table, house
from tests.takeoff.made_takeoff import on_file, part, parts, stock, taken, task, tasks

BOOK = stock(
    on_file("p12", "12"), on_file("p14", "14"), on_file("p18", "18"), on_file("p22", "22.5"),
    on_file("two-32", "32", 2), on_file("round-16", "16", mount="ceiling-old-work"),
    on_file("m14", "14", clamps=False, metal=True),
    on_file("m18", "18", clamps=False, metal=True),
)  # fmt: skip
LEGS = [{"go": "along", "length": 9}]


def job(source: Table | None = None, new: Table | None = None, **tables: Any) -> Takeoff:
    """One new cable from a source that holds two to a new box."""
    book = tables.pop("book", BOOK)
    assert isinstance(book, Stock)
    first = {"id": "a", "existing": True, "cables": ["14-2", "14-2"], "volume": 18,
             "clamps": "no"}  # fmt: skip
    boxes = [first | (source or {}), {"id": "b"} | (new or {})]
    runs = [{"id": "1", "from": "a", "to": "b", "cable": "14-2", "legs": LEGS}]
    return taken(house(**({"boxes": boxes, "runs": runs} | tables)), book)


def counted(made: Takeoff, name: str) -> BoxCount:
    (box,) = (each for each in made.boxes if each.box_id == name)
    return box


@pytest.mark.parametrize(
    ("new", "want"),
    [
        ({}, "p12"),  # (2 + 1 + 2 + 1) x 2.00 = 12.0: fits exactly
        ({"volume": "13 in3"}, "p14"),  # at least what the survey asks for
        ({"volume": 18}, "p18"),
        ({"cables": ["14-2"]}, "p18"),  # (4 + 1 + 2 + 1) x 2.00 = 16.0
        ({"gangs": 2}, "two-32"),
        ({"mount": "ceiling", "device": "luminaire"}, "round-16"),
        ({"metal": "yes"}, "m14"),  # (2 + 1 + 2) x 2.00 = 10.0, without clamps
        ({"metal": "yes", "volume": 15}, "m18"),
    ],
)
def test_the_smallest_that_fits(new: Table, want: str) -> None:
    made = job(new=new)
    assert counted(made, "b").item == want
    assert parts(made)[want] == 1


def test_the_reason_shows_the_sum() -> None:
    reason = part(job(), "p12").reason
    assert reason == "smallest that fits: (2 + 1 + 2 + 1) x 2.00 = 12.0 in3 needed, " + (
        "this one holds 12 in3"
    )


@pytest.mark.parametrize(
    ("new", "said"),
    [({"gangs": 4}, "(2 + 1 + 8 + 1) x 2.00 = 24.0"), ({"volume": 40}, "x 2.00 = 12.0")],
)
def test_where_no_box_on_file_fits(new: Table, said: str) -> None:
    made = job(new=new)
    assert said in part(made, "box-not-on-file").reason
    assert counted(made, "b").item == ""


def test_a_box_without_a_volume_is_no_answer_to_a_count() -> None:
    book = stock(on_file("unmarked", None), on_file("p14", "14"))
    assert counted(job(book=book), "b").item == "p14"
    assert counted(job(book=stock(on_file("unmarked", None))), "b").item == ""


def test_where_nobody_counts_any_box_will_do() -> None:
    book = stock(on_file("unmarked", None), on_file("p14", "14"))
    made = job(book=book, job={"id": "J", "title": "t", "country": "GB"})
    assert counted(made, "b").item == "unmarked"
    assert part(made, "unmarked").reason == "new box"
    asked = job(book=book, job={"id": "J", "title": "t", "country": "GB"}, new={"volume": 13})
    assert counted(asked, "b").item == "p14"
    assert counted(made, "a").fill_after is None


def test_a_box_that_is_too_small_is_replaced() -> None:
    """S3, worked by hand: 16.0 in a box of 12.5, 20.0 with the new cable, so 22.5."""
    made = job({"volume": "12.5 in3", "clamps": "yes", "replacement_volume": "22.5 in3"})
    box = counted(made, "a")
    assert (box.fill_before, box.fill_after) == (16, 20)
    assert (box.replaced, box.item, box.volume_in3) == (True, "p22", Decimal("22.5"))
    assert box.old_volume_in3 == Decimal("12.5")
    line = part(made, "p22")
    assert line.remedy == "box-fill:a"
    assert line.reason.startswith("replaces a box of 12.5 in3: (6 + 1 + 2 + 1) x 2.00 = 20.0 in3")
    assert task(made, "replace-box").remedy == "box-fill:a"


@pytest.mark.parametrize(("volume", "replaced"), [("18", False), ("17.9", True), ("19", False)])
def test_at_the_limit_a_box_stays(volume: str, replaced: bool) -> None:
    """(6 + 1 + 2) x 2.00 = 18.0."""
    assert counted(job({"volume": volume}), "a").replaced is replaced


def test_a_larger_box_may_be_asked_for() -> None:
    made = job({"volume": 10, "replacement_volume": 21})
    assert counted(made, "a").item == "p22"


def test_a_remedy_that_was_declined_leaves_the_box() -> None:
    said = {"finding": "box-fill:a", "reason": "next year", "decision": "decline remedy"}
    made = job({"volume": 10}, acceptances=[said])
    assert not counted(made, "a").replaced
    assert "replace-box" not in tasks(made)
    accepted = job({"volume": 10}, acceptances=[said | {"decision": "accept"}])
    assert counted(accepted, "a").replaced


def test_a_box_that_nothing_can_replace_stays() -> None:
    made = job({"volume": 10}, book=stock(on_file("p12", "12")))
    assert not counted(made, "a").replaced
    assert counted(made, "a").fill_after == 18


@pytest.mark.parametrize("volume", ["unknown", "100 in3"])
def test_a_box_is_not_replaced_without_a_reason(volume: str) -> None:
    assert not counted(job({"volume": volume}), "a").replaced


def test_clamps_nobody_saw_take_room() -> None:
    assert counted(job({"clamps": "unknown"}), "a").fill_after == 20
    assert counted(job({"clamps": "no"}), "a").fill_after == 18


def test_cables_nobody_saw_are_two_of_the_new_kind() -> None:
    box = counted(job({"cables": [], "unknown_cables": True}), "a")
    assert box.conductors == (("14", 6),)
    assert box.grounds == 3


@pytest.mark.parametrize(
    ("source", "new", "want"),
    [
        ({"metal": "yes", "clamps": "no"}, {}, 1),  # the new cable's
        ({"metal": "yes", "clamps": "yes"}, {}, 0),
        ({"metal": "no", "clamps": "no"}, {}, 0),
        ({"metal": "unknown", "clamps": "no"}, {}, 0),
        ({}, {"metal": "yes"}, 1),  # m14 has no clamps
    ],
)
def test_metal_boxes_without_clamps_take_one_for_each_new_cable(
    source: Table, new: Table, want: int
) -> None:
    assert parts(job(source, new)).get("cable-clamp", 0) == want


def test_a_new_metal_box_gets_its_ground_screw() -> None:
    assert parts(job(new={"metal": "yes"}))["ground-pigtail-screw"] == 1
    assert "ground-pigtail-screw" not in parts(job())


@pytest.mark.parametrize(
    ("new", "item", "plate", "mounted", "count"),
    [
        ({}, "receptacle-15", "plate-receptacle-1g", "mount-receptacle", 1),
        ({"device_rating": 20}, "receptacle-20", "plate-receptacle-1g", "mount-receptacle", 1),
        ({"device": "switch"}, "switch-1p", "plate-switch-1g", "mount-switch", 1),
        ({"device": "gfci receptacle"}, "receptacle-gfci-15", "plate-rectangular-1g",
         "mount-protective-receptacle", 1),
        ({"gangs": 2}, "receptacle-15", "plate-2g", "mount-receptacle", 2),
    ],
)  # fmt: skip
def test_each_new_outlet_gets_its_device_and_plate(
    new: Table, item: str, plate: str, mounted: str, count: int
) -> None:
    made = job(new=new)
    assert parts(made)[item] == count
    assert parts(made)[plate] == 1
    assert tasks(made)[mounted] == count


def test_an_existing_outlet_keeps_its_device_unless_told() -> None:
    assert parts(job())["receptacle-15"] == 1
    renewed = job({"reuse_plate": False})
    assert parts(renewed)["receptacle-15"] == 2
    assert tasks(renewed)["mount-receptacle"] == 2


def test_a_box_of_splices_gets_a_blank_plate_and_no_device() -> None:
    made = job(new={"device": "none"})
    assert parts(made)["plate-blank-1g"] == 1
    assert not [line for line in made.tasks if line.task.startswith("mount")]


def test_roles_along_a_chain() -> None:
    boxes = [{"id": name, "existing": name == "a", "cables": ["14-2"] * (name == "a")}
             for name in "abc"]  # fmt: skip
    runs = [{"id": one, "from": one, "to": two, "cable": "14-2", "legs": LEGS}
            for one, two in ("ab", "bc")]  # fmt: skip
    made = taken(house(boxes=boxes, runs=runs), BOOK)
    assert [box.role for box in made.boxes] == ["source", "through", "end"]
    assert [box.grounds for box in made.boxes] == [2, 2, 1]


def test_boxes_no_run_touches_are_left_alone() -> None:
    boxes = [{"id": name, "existing": name == "a", "cables": []} for name in "abc"]
    runs = [{"id": "1", "from": "a", "to": "b", "cable": "14-2", "legs": LEGS}]
    made = taken(house(boxes=boxes, runs=runs), BOOK)
    assert [box.box_id for box in made.boxes] == ["a", "b"]
