"""Depth of a box behind its device: NEC 314.24, 2020 as read; depths worked by hand."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from estimator.rules.records import Finding
from estimator.rules.registry import FUNCTIONS
from tests.rules.box_case import by_subject, facts, facts_of, job, of, survey
from tests.rules.metric_case import in_metres, said_of

RULE = "box-depth"


def new(cable: str = "14-2", edition: str = "nec-2020", **box: Any) -> Finding:
    return of(RULE, "new", job(new=box, cable=cable, job={"edition": edition}))


@pytest.mark.parametrize(
    ("cable", "device", "depth", "verdict"),
    [
        ("14-2", "3/4 in", "15/16 in", "pass"),
        ("14-2", "3/4 in", "59/64 in", "fail"),
        ("14-2", "1-7/8 in", "15/16 in", "pass"),
        ("14-2", "2 in", "2-1/4 in", "pass"),
        ("14-2", "2 in", "2-15/64 in", "fail"),
        ("12-2", "1 in", "1-3/16 in", "pass"),
        ("12-2", "1 in", "1-11/64 in", "fail"),
        ("12-2", "1-1/4 in", "1-1/2 in", "pass"),
        ("12-2", "1-1/4 in", "1-31/64 in", "fail"),
        ("10-2", "1-1/2 in", "1-3/4 in", "pass"),
        ("10-2", "1-1/2 in", "1-23/32 in", "fail"),
    ],
)
def test_at_the_least_depth_and_just_under(
    cable: str, device: str, depth: str, verdict: str
) -> None:
    found = new(cable, depth=depth, contents={"device_depth": device})
    assert (found.verdict, found.cite) == (verdict, "NEC 2020 314.24(B)")


@pytest.mark.parametrize("device", ["luminaire", "none"])
@pytest.mark.parametrize(("depth", "verdict"), [("1/2 in", "pass"), ("31/64 in", "fail")])
def test_without_a_device_half_an_inch_is_enough(device: str, depth: str, verdict: str) -> None:
    found = new(device=device, depth=depth)
    assert (found.verdict, found.cite) == (verdict, "NEC 2020 314.24(A)")


def test_the_figures_and_the_remedy() -> None:
    found = new("12-2", depth="1-1/4 in", contents={"device_depth": "1-1/2 in"})
    assert found.figures == "1 1/4 in deep, device 1 1/2 in deep, least 1 3/4 in"
    assert found.remedy == "Use a deeper box, or a device that reaches back less far."
    assert found.blocking
    assert new(device="none", depth="1 in").figures == "1 in deep, least 1/2 in"


# Usual depth by common practice: 1 in, of a protective device 1-3/8 in.
@pytest.mark.parametrize(
    ("device", "depth", "least"),
    [("receptacle", "2 in", "1 3/16 in"), ("gfci receptacle", "2 in", "1 5/8 in")],
)
def test_a_device_to_be_bought_is_taken_as_usual(device: str, depth: str, least: str) -> None:
    found = new("12-2", device=device, depth=depth)
    assert (found.verdict, found.figures.endswith(f"least {least}")) == ("pass", True)
    assert "device taken as 1" in found.figures


def test_the_depth_of_the_box_to_buy_is_looked_up() -> None:
    found = new()  # the 14 in3 box is 2-1/4 in deep
    assert found.figures == "2 1/4 in deep, device taken as 1 in deep, least 15/16 in"


@pytest.mark.parametrize(
    ("edition", "cite"),
    [("nec-2017", "NEC 2017 314.24(B) (from memory: check)"), ("nec-2020", "NEC 2020 314.24(B)"),
     ("nec-2023", "NEC 2023 314.24(B) (from memory: check)")],
)  # fmt: skip
def test_editions_that_were_not_read_say_so(edition: str, cite: str) -> None:
    assert new(edition=edition).cite == cite


def test_an_old_box_is_judged_where_it_was_measured_or_is_replaced() -> None:
    assert set(by_subject(RULE, job())) == {"new"}
    assert set(by_subject(RULE, job(old={"depth": "2 in"}))) == {"old", "new"}
    assert set(by_subject(RULE, job(old={"volume": "12 in3"}))) == {"old", "new"}


def old(depth: str, **box: Any) -> Finding:
    return of(RULE, "old", job(old={"depth": depth} | box))


def test_an_old_device_must_be_measured_before_its_box_passes() -> None:
    found = old("2 in")
    assert found.verdict == "unknown"
    assert found.figures == "2 in deep, least 15/16 in and more for a deep device"
    assert found.remedy == "Measure how far the device reaches back behind its strap."
    assert old("7/8 in").verdict == "fail"
    assert old("2 in", contents={"device_depth": "1 in"}).verdict == "pass"


def test_a_new_device_in_an_old_box_is_taken_as_usual() -> None:
    assert old("2 in", reuse_plate=False).verdict == "pass"


def test_an_old_device_in_a_larger_box_is_measured_all_the_same() -> None:
    """The old device goes back into the new box, and nobody knows how far it reaches."""
    assert of(RULE, "old", job(old={"volume": "12 in3"})).verdict == "unknown"
    inside = {"volume": "12 in3", "contents": {"device_depth": "1 in"}}
    assert of(RULE, "old", job(old=inside)).verdict == "pass"
    assert of(RULE, "old", job(old={"volume": "12 in3", "reuse_plate": False})).verdict == "pass"


@pytest.mark.parametrize(
    ("depth", "verdict"), [("1-3/16 in", "pass"), ("1 in", "unknown"), ("7/8 in", "fail")]
)
def test_wires_of_two_sizes_and_nobody_knows_which_is_on_the_device(
    depth: str, verdict: str
) -> None:
    raw = job(new={"depth": depth, "cables": ["12-2"], "contents": {"device_depth": "1 in"}})
    assert of(RULE, "new", raw).verdict == verdict


def test_what_is_said_where_the_wire_decides() -> None:
    inside = {"device_depth": "1 in"}
    raw = job(new={"depth": "1 in", "cables": ["12-2"], "contents": inside})
    found = of(RULE, "new", raw)
    assert found.figures.endswith("least 15/16 in to 1 3/16 in by the wires on the device")
    assert found.remedy == "Look which wires are on it."
    raw["boxes"][1]["contents"] = inside | {"device_wire": "14"}
    assert of(RULE, "new", raw).verdict == "pass"


def test_a_wire_size_without_a_row_is_unknown() -> None:
    found = new(depth="3 in", contents={"device_wire": "2"})
    assert (found.verdict, found.remedy) == ("unknown", "Ask a licensed electrician.")
    assert found.cite == "NEC 2020 314.24"
    assert found.figures == "no least depth on file for the wires in it"
    metric = in_metres(survey(job(new={"depth": "3 in", "device": "switch"})))
    assert said_of(RULE, facts_of(metric))["new"].verdict == "unknown"


def test_one_size_without_a_row_among_others_is_unknown() -> None:
    """A size that has no row could ask for more than those that have one."""
    known = facts(job(new={"depth": "3 in"}))
    boxes = tuple(replace(each, conductors=(("14", 2), ("2", 3))) for each in known.takeoff.boxes)
    (found,) = FUNCTIONS[RULE](replace(known, takeoff=replace(known.takeoff, boxes=boxes)))
    assert (found.verdict, found.cite) == ("unknown", "NEC 2023 314.24")


@pytest.mark.parametrize(
    "box",
    [
        {"depth": "2 in"},
        {"depth": "1 in", "cables": ["12-2"], "contents": {"device_depth": "1 in"}},
    ],
)
def test_what_is_unknown_is_cited(box: dict[str, Any]) -> None:
    found = of(RULE, "old", job(old=box, job={"edition": "nec-2020"}))
    assert (found.verdict, found.cite) == ("unknown", "NEC 2020 314.24(B)")


def test_the_larger_depth_is_told_where_the_box_is_not_known() -> None:
    inside = {"device_depth": "1 in"}
    found = new(volume="99 in3", cables=["12-2"], contents=inside)
    assert found.figures == "depth unknown, least 1 3/16 in"


def test_a_box_of_unknown_depth_is_unknown() -> None:
    found = new(volume="99 in3")  # nothing on file is so large
    assert (found.verdict, found.figures) == ("unknown", "depth unknown, least 15/16 in")
    assert found.remedy.startswith("Measure the box from its front edge to its back")
