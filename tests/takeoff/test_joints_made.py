"""Connectors and pigtails at each device for one to five cables, in plastic and metal boxes."""

from __future__ import annotations

from typing import Any

import pytest

from estimator.survey.electrical import Device
from estimator.takeoff.joints import Joints, Meeting, joints
from estimator.takeoff.records import Takeoff
from tests.route.made_house import Table, house
from tests.takeoff.made_takeoff import CONNECTORS, on_file, part, parts, stock, taken

BOOK = stock(on_file("box-40", "40"))


@pytest.mark.parametrize("device", ["receptacle", "gfci receptacle", "afci receptacle"])
@pytest.mark.parametrize("cables", [2, 3, 4, 5])
def test_cables_that_meet_at_a_receptacle(device: Device, cables: int) -> None:
    """Splice rule, worked by hand: three joints, each of all cables and one pigtail."""
    held = (cables + 1,) * 3
    assert joints(Meeting(device, cables, 0, False)) == Joints(held, 3)
    metal = (cables + 1, cables + 1, cables + 2)  # the box's own ground joins the grounds
    assert joints(Meeting(device, cables, 0, True)) == Joints(metal, 3, 1)


def test_one_cable_goes_straight_to_the_receptacle() -> None:
    assert joints(Meeting("receptacle", 1, 0, False)) == Joints((), 0)
    # In metal the ground needs a joint: cable, receptacle, box.
    assert joints(Meeting("receptacle", 1, 0, True)) == Joints((3,), 1, 1)
    assert joints(Meeting("receptacle", 0, 0, True)) == Joints((), 0)


@pytest.mark.parametrize(
    ("cables", "devices", "held", "pigtails"), [(1, 2, 3, 6), (2, 2, 4, 6), (1, 3, 4, 9)]
)
def test_receptacles_side_by_side_take_a_pigtail_each(
    cables: int, devices: int, held: int, pigtails: int
) -> None:
    meeting = Meeting("receptacle", cables, 0, False, devices)
    assert joints(meeting) == Joints((held,) * 3, pigtails)


@pytest.mark.parametrize(
    ("feeds", "switched", "held", "pigtails"),
    [
        (1, 0, (), 0),
        (1, 1, (2, 3), 1),  # S7: whites, and grounds with a pigtail
        (2, 0, (3, 2, 3), 2),  # two live cables: hots join with a pigtail too
        (2, 1, (3, 3, 4), 2),
        (1, 2, (3, 3, 4), 2),
        (2, 2, (3, 3, 4, 5), 3),
        (3, 2, (4, 3, 5, 6), 3),
    ],
)
@pytest.mark.parametrize("device", ["switch", "three-way switch"])
def test_hots_of_a_switch_join_only_where_two_meet(
    device: Device, feeds: int, switched: int, held: tuple[int, ...], pigtails: int
) -> None:
    assert joints(Meeting(device, feeds, switched, False)) == Joints(held, pigtails)


def test_a_switch_in_a_metal_box() -> None:
    assert joints(Meeting("switch", 1, 0, True)) == Joints((3,), 1, 1)
    assert joints(Meeting("switch", 1, 1, True)) == Joints((2, 4), 1, 1)


@pytest.mark.parametrize("cables", [1, 2, 3, 4, 5])
def test_the_leads_of_a_light_join_every_group(cables: int) -> None:
    """S7: a light on one cable takes three connectors and no pigtail."""
    held = (cables + 1,) * 3
    assert joints(Meeting("luminaire", 0, cables, False)) == Joints(held, 0)
    metal = (cables + 1, cables + 1, cables + 2)
    assert joints(Meeting("luminaire", 0, cables, True)) == Joints(metal, 0, 1)


@pytest.mark.parametrize("cables", [2, 3, 4, 5])
def test_a_box_of_splices_alone(cables: int) -> None:
    assert joints(Meeting("none", cables, 0, False)) == Joints((cables,) * 3, 0)
    assert joints(Meeting("none", cables, 0, True)) == (Joints((cables, cables, cables + 1), 0, 1))


@pytest.mark.parametrize("device", ["luminaire", "none", "switch"])
def test_no_cable_no_joint(device: Device) -> None:
    assert joints(Meeting(device, 0, 0, False)) == Joints((), 0)


def source(cables: list[str], *, cable: str = "14-2", **box: Any) -> Takeoff:
    """One new cable at an existing box."""
    first = {"id": "a", "existing": True, "cables": cables, "clamps": "no"} | box
    runs = [{"id": "1", "from": "a", "to": "b", "cable": cable,
             "legs": [{"go": "along", "length": 9}]}]  # fmt: skip
    return taken(house(boxes=[first, {"id": "b"}], runs=runs), BOOK)


def test_connectors_are_sized_by_the_conductors_they_hold() -> None:
    """Two cables: joints of 3 (small holds 2 to 3). Three: joints of 4 (large holds 3 to 6)."""
    assert parts(source(["14-2"]))["small"] == 3
    made = source(["14-2", "14-2"])
    assert (parts(made)["large"], parts(made)["pigtail-14"]) == (3, 3)
    assert part(made, "large").reason == "3 joints of 4 conductors of size 14"


def test_the_thickest_wire_sizes_the_connector() -> None:
    made = source(["14-2"], cable="12-2")
    assert (parts(made)["large"], parts(made)["pigtail-12"]) == (3, 3)


def test_a_connector_that_no_book_has_is_named() -> None:
    made = source(["14-2"] * 6)
    assert parts(made)["connector-for-8x14"] == 3


def test_a_metal_box_that_stays_has_its_ground_in_the_joint() -> None:
    """Grounds: two cables, the pigtail and the box's own lead: 4, more than small holds."""
    made = source(["14-2"], metal="yes")
    assert (parts(made)["small"], parts(made)["large"]) == (2, 1)
    assert "ground-pigtail-screw" not in parts(made)


def test_cables_nobody_saw_are_counted_in_the_reason() -> None:
    """A source nobody opened is taken to hold two cables; with the new one that is three."""
    made = source([], unknown_cables=True)
    assert part(made, "pigtail-14").reason == "3 cables at a receptacle: 3 pigtails"


def test_one_pigtail_is_one() -> None:
    """From a switch on to its light: one live cable, one switched, a pigtail for the grounds."""
    boxes: list[Table] = [
        {"id": "a", "existing": True, "cables": ["14-2"], "device": "switch"},
        {"id": "b", "device": "luminaire"},
    ]
    legs = [{"go": "along", "length": 9}]
    runs = [{"id": "1", "from": "a", "to": "b", "cable": "14-2", "legs": legs}]
    made = taken(house(boxes=boxes, runs=runs), BOOK)
    assert part(made, "pigtail-14").reason == "2 cables at a switch: 1 pigtail"


@pytest.mark.parametrize(("count", "want"), [(2, "small"), (3, "small"), (4, "large")])
def test_the_smallest_connector_that_holds_them(count: int, want: str) -> None:
    found = stock().connector_for("14", count)
    assert found is not None
    assert found.item == want


@pytest.mark.parametrize(("wire", "count"), [("14", 1), ("14", 7), ("10", 2)])
def test_no_connector_holds_them(wire: str, count: int) -> None:
    assert stock().connector_for(wire, count) is None
    assert len(CONNECTORS) == 2
