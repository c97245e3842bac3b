"""What puts missing ground-fault protection right, and how it gets into the takeoff."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest

from estimator.rules.records import RemedyChange, RemedyPart, RemedyTask
from tests.rules.place_case import finding, job, remedy_items, run, worked

RULE = "gfci-place"
AT_THE_SOURCE = (
    RemedyPart("devices", "receptacle-gfci-20", Decimal(1), "ea"),
    RemedyPart("devices", "plate-rectangular-1g", Decimal(1), "ea"),
    RemedyTask("terminate", "mount-protective-receptacle", Decimal(1), "ea"),
)


def change(box: str, device: str = "gfci receptacle") -> tuple[RemedyChange, ...]:
    return (RemedyChange("device", box, device),)


@pytest.mark.parametrize(
    ("room", "spot", "device"),
    [
        ("bathroom", {}, "gfci receptacle"),
        ("outdoors", {"moisture": "damp"}, "damp gfci receptacle"),
        ("outdoors", {"moisture": "wet"}, "wet gfci receptacle"),
        ("outdoors", {}, "wet gfci receptacle"),
        ("crawlspace", {}, "gfci receptacle"),
    ],
)
def test_the_new_receptacle_becomes_a_ground_fault_one(
    room: str, spot: dict[str, str], device: str
) -> None:
    assert finding(RULE, job(room, new={"spot": spot})).remedies == change("new", device)


CHAIN = [run("old", "new"), run("new", "second")]


@pytest.mark.parametrize(
    ("first", "second", "want"),
    [
        ("bathroom", {"room": "bathroom"}, "new"),
        ("bathroom", {"room": "bathroom", "device": "none"}, "new"),
        ("bedroom", {"room": "bathroom"}, "second"),
    ],
)
def test_one_device_serves_what_it_feeds(first: str, second: dict[str, str], want: str) -> None:
    more = [{"id": "second"} | second]
    said = finding(RULE, job(first, more=more, runs=CHAIN), "second" if want == "second" else "new")
    assert said.remedies == change(want)


def test_a_second_outlet_is_put_right_at_the_first() -> None:
    more = [{"id": "second", "room": "bathroom"}]
    assert finding(RULE, job("bathroom", more=more, runs=CHAIN), "second").remedies == change("new")


def test_a_first_outlet_out_of_reach_is_passed_over() -> None:
    more = [{"id": "second", "room": "bathroom"}]
    raw = job("bathroom", new={"spot": {"readily_accessible": "no"}}, more=more, runs=CHAIN)
    assert finding(RULE, raw, "second").remedies == change("second")
    assert finding(RULE, raw, "new").remedies == AT_THE_SOURCE


@pytest.mark.parametrize(
    "new",
    [
        {"device": "luminaire"},
        {"spot": {"readily_accessible": "no"}},
        {"spot": {"readily_accessible": "unknown"}},
    ],
)
def test_where_no_new_receptacle_will_do_the_source_gets_one(new: dict[str, Any]) -> None:
    assert finding(RULE, job("crawlspace", new=new)).remedies == AT_THE_SOURCE


@pytest.mark.parametrize(
    ("breaker", "item"),
    [(15, "receptacle-gfci-15"), (20, "receptacle-gfci-20"), ("unknown", "receptacle-gfci-15"),
     (30, "receptacle-gfci-15")],
)  # fmt: skip
def test_its_rating_follows_the_breaker(breaker: int | str, item: str) -> None:
    raw = job("crawlspace", new={"device": "luminaire"}, circuit={"breaker": breaker})
    part = finding(RULE, raw).remedies[0]
    assert isinstance(part, RemedyPart)
    assert part.item == item


@pytest.mark.parametrize(
    ("room", "priced"),
    [("bedroom", False), ("recreation room", True), ("other", True), ("that room", True)],
)
def test_an_unknown_distance_is_priced_only_where_a_sink_is_likely(room: str, priced: bool) -> None:
    said = finding(RULE, job(room))
    assert said.verdict == "unknown"
    assert bool(said.remedies) == priced
    assert ("fit a ground-fault receptacle" in said.remedy) == priced


def test_a_fail_changes_the_device_that_is_bought() -> None:
    found = worked(job("laundry", circuit={"kind": "laundry"}))
    items = [line.item for line in found.takeoff.parts]
    assert "receptacle-gfci-15" in items
    assert "receptacle-15" not in items
    said = next(each for each in found.findings if each.finding_id == "gfci-place:new")
    assert (said.verdict, said.remedied, said.stops_the_bid) == ("fail", True, False)


def test_an_unknown_changes_it_in_the_second_total_alone() -> None:
    raw = job("laundry", circuit={"kind": "laundry", "protection": None})
    first, second = worked(raw), worked(raw, bad_case=True)
    assert "receptacle-gfci-15" not in [line.item for line in first.takeoff.parts]
    assert "receptacle-gfci-15" in [line.item for line in second.takeoff.parts]


def test_parts_at_the_source_are_marked_with_the_finding() -> None:
    found = worked(job("crawlspace", new={"device": "luminaire"}))
    assert remedy_items(found, "gfci-place:new") == [
        "receptacle-gfci-20",
        "plate-rectangular-1g",
        "mount-protective-receptacle",
    ]


def test_a_declined_remedy_leaves_the_plain_receptacle() -> None:
    raw = job("laundry", circuit={"kind": "laundry"})
    decline = {
        "finding": "gfci-place:new",
        "reason": "protected later",
        "decision": "decline remedy",
    }
    found = worked(raw | {"acceptances": [decline]})
    assert "receptacle-15" in [line.item for line in found.takeoff.parts]
    assert "gfci-place:new" in found.blocked_by
