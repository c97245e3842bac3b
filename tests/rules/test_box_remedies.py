"""Remedies of the box rules go into the takeoff and the price, and stop no bid."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import Any

import pytest

from estimator.pricing.work import Work, work_out
from estimator.rules.records import RemedyChange
from estimator.rules.remedy_marks import with_marks
from estimator.takeoff.box_choice import choose
from estimator.takeoff.box_need import Holding
from estimator.takeoff.boxes import rules_for
from tests.rules.box_case import BOOKS, PRACTICE, STOCK, job, survey

CEILING = {"mount": "ceiling", "out": "30 in", "device": "luminaire", "room": "closet"}
FAN = CEILING | {"spot": {"fan": "yes", "luminaire_weight": 20}}
CASES: list[tuple[str, dict[str, Any], str, str]] = [
    ("box-setback:old", {"old": {"contents": {"setback": "1/2 in"}}}, "extender-1g",
     "fit-box-extender"),
    ("box-gap:old", {"old": {"contents": {"gap": "1/2 in"}}}, "compound-setting", "fill-box-gap"),
    ("luminaire-box:new", {"new": FAN}, "box-fan-old-work-16", "fit-fan-box"),
    ("box-fill:old", {"old": {"volume": "12 in3"}}, "box-old-work-1g-16", "replace-box"),
]  # fmt: skip


def worked(keys: dict[str, Any], **tables: Any) -> Work:
    return work_out(survey(job(**keys, **tables)), BOOKS)


@pytest.mark.parametrize(("finding", "keys", "item", "task"), CASES, ids=[c[0] for c in CASES])
def test_a_remedy_is_bought_and_done_under_the_name_of_its_finding(
    finding: str, keys: dict[str, Any], item: str, task: str
) -> None:
    work = worked(keys)
    assert item in [line.item for line in work.takeoff.parts if line.remedy == finding]
    assert [line.task for line in work.takeoff.tasks if line.remedy == finding] == [task]
    assert finding not in work.blocked_by


@pytest.mark.parametrize(("finding", "keys", "item", "task"), CASES, ids=[c[0] for c in CASES])
def test_a_declined_remedy_stays_out_and_the_finding_stops_the_bid(
    finding: str, keys: dict[str, Any], item: str, task: str
) -> None:
    no = {"finding": finding, "reason": "owner", "decision": "decline remedy"}
    work = worked(keys, acceptances=[no])
    assert [line for line in work.takeoff.parts if line.remedy == finding] == []
    assert finding in work.blocked_by


def test_a_remedy_has_a_price_and_hours_in_the_books() -> None:
    work = worked({"old": {"contents": {"setback": "1/2 in"}}})
    (bought,) = (line for line in work.shopping if line.item == "extender-1g")
    (done,) = (line for line in work.labor if line.task == "fit-box-extender")
    assert bought.cost == Decimal("1.85")
    assert done.hours_likely == Decimal("0.15")


def test_a_box_that_is_replaced_in_canada_stops_no_bid() -> None:
    inside = {"device_depth": "1 in", "wire_connectors": 0}
    old = {"volume": "100 cm3", "contents": inside}
    work = worked({"old": old, "job": {"country": "CA"}})
    put_right = {each.finding_id for each in work.findings if each.remedied}
    assert "box-fill-canada:old" in put_right
    assert [each for each in work.blocked_by if each.startswith("box-")] == []


def of_kind(work: Work, start: str) -> list[tuple[str, str, Decimal]]:
    """Lines of parts whose item begins so, with their place and number."""
    return [
        (line.item, line.where, line.quantity)
        for line in work.takeoff.parts
        if line.item.startswith(start)
    ]


def tasks_at(work: Work, where: str) -> set[str]:
    return {line.task for line in work.takeoff.tasks if line.where == where}


def test_a_fan_box_takes_the_place_of_the_ordinary_one() -> None:
    """BX-07: one box is bought and one is fitted, not an ordinary one and a fan box."""
    work = worked({"new": FAN})
    assert of_kind(work, "box-") == [("box-fan-old-work-16", "box new", Decimal(1))]
    assert "fit-box" not in tasks_at(work, "box new")
    assert {"cut-box-opening", "fit-fan-box"} <= tasks_at(work, "box new")


def test_a_fan_box_is_bought_where_one_was_planned_from_the_start() -> None:
    work = worked({"new": FAN | {"contents": {"fan_rated": "yes"}}})
    assert of_kind(work, "box-") == [("box-fan-old-work-16", "box new", Decimal(1))]
    assert not [line for line in work.takeoff.parts if line.remedy]


def test_an_old_ceiling_box_makes_way_for_a_fan_box() -> None:
    old = FAN | {"contents": {"fan_rated": "no", "always_live": "yes"}, "cables": ["14-2"]}
    work = worked({"old": old})
    found = next(each for each in work.findings if each.finding_id == "luminaire-box:old")
    assert (found.verdict, found.remedied) == ("fail", True)
    assert ("box-fan-old-work-16", "box old", Decimal(1)) in of_kind(work, "box-")
    assert {"replace-box", "fit-fan-box"} <= tasks_at(work, "box old")
    marked = {line.task for line in work.takeoff.tasks if line.remedy == found.finding_id}
    assert marked == {"replace-box", "fit-fan-box"}
    fill = next(each for each in work.findings if each.finding_id == "box-fill:old")
    assert "made for paddle fans" in fill.remedy


def test_a_fan_box_holds_the_wires_as_well() -> None:
    """Three 14-2 and the new one: (8 + 1 + 1) x 2.00 = 20.0 is over 16.0, so the 21.5 box."""
    old = FAN | {"contents": {"fan_rated": "no"}, "cables": ["14-2"] * 3, "volume": "30 in3"}
    work = worked({"old": old})
    assert [item for item, where, _ in of_kind(work, "box-fan") if where == "box old"] == [
        "box-fan-old-work-21.5"
    ]


def test_an_old_box_for_a_fan_nobody_looked_at_is_in_the_second_total() -> None:
    old = FAN | {"contents": {"fan_rated": "unknown"}, "cables": ["14-2"]}
    raw = survey(job(old=old))
    assert of_kind(work_out(raw, BOOKS), "box-fan") == []
    bad = work_out(raw, BOOKS, bad_case=True)
    assert of_kind(bad, "box-fan") == [("box-fan-old-work-16", "box old", Decimal(1))]


def test_no_fan_box_goes_into_a_wall() -> None:
    work = worked({"new": FAN | {"mount": "wall"}})
    assert "luminaire-box:new" in work.blocked_by
    assert of_kind(work, "box-fan") == []


THIN = {"old": {"cables": ["12-2"], "volume": "34 in3"},
        "circuit": {"breaker": 20, "wire": "12", "material": "copper"}}  # fmt: skip


def test_thicker_cable_is_marked_as_the_remedy_it_is() -> None:
    """TR-01: the line of the cable, and what grows with it at the boxes, name the finding."""
    work = worked(THIN)
    marked = {line.item: line for line in work.takeoff.parts if line.remedy}
    assert {line.remedy for line in marked.values()} == {"breaker-wire:run 1"}
    assert "cable-12-2" in marked
    assert marked["cable-12-2"].reason.endswith("; remedy: breaker against wire")
    assert [line.item for line in work.takeoff.parts if line.item.startswith("cable-1")] == [
        "cable-12-2"
    ]


def test_cable_that_stays_as_planned_is_not_marked() -> None:
    work = worked(THIN, cable="12-2")
    assert not [line for line in work.takeoff.parts if line.remedy]


def test_a_run_that_is_changed_beside_one_that_is_not() -> None:
    """Both runs come on one line, which tells that part of it is the remedy."""
    third = {"id": "far", "wall": "w", "x": "150 in", "height": "14 in"}
    raw = job(**THIN)
    raw["boxes"].append(third)
    raw["runs"].append({**raw["runs"][0], "id": "2", "from": "new", "to": "far", "cable": "12-2"})
    (line,) = (each for each in work_out(survey(raw), BOOKS).takeoff.parts
               if each.item == "cable-12-2")  # fmt: skip
    assert (line.where, line.remedy) == ("run 1, run 2", "breaker-wire:run 1")


def test_another_device_is_marked_at_its_box() -> None:
    """GF-03: the receptacle of a garage is changed for one that protects."""
    work = worked({"new": {"room": "garage"}, "circuit": {"protection": ["afci"], "breaker": 15}})
    marked = [(line.item, line.where) for line in work.takeoff.parts if line.remedy]
    assert ("receptacle-gfci-15", "box new") in marked
    assert {line.remedy for line in work.takeoff.parts if line.remedy} == {"gfci-place:new"}
    done = {line.task for line in work.takeoff.tasks if line.remedy == "gfci-place:new"}
    assert done == {"mount-protective-receptacle"}


@pytest.mark.parametrize("country", ["US", "CA"])
@pytest.mark.parametrize("existing", [False, True])
def test_no_box_is_bought_whose_volume_the_book_does_not_say(country: str, existing: bool) -> None:
    """So nobody has to be told to put it there: the place has no box on file."""
    read = survey(job(job={"country": country}))
    rules, box = rules_for(read), read.boxes[0 if existing else 1]
    offers = tuple(replace(each, volume_in3=None) for each in STOCK.boxes)
    holding = Holding((), ("14-2",), 0)
    assert choose(box, holding, rules, PRACTICE, replace(STOCK, boxes=offers)) is None
    assert choose(box, holding, rules, PRACTICE, STOCK) is not None


def test_a_line_at_a_place_that_no_change_bears_on_is_not_marked() -> None:
    work = worked(THIN, cable="12-2")
    empty = replace(work.takeoff, parts=(), tasks=())
    change = RemedyChange("device", "new", "gfci receptacle")
    finding = replace(work.findings[0], rule="gfci-place", subject="new", remedies=(change,))
    marked = with_marks(work.takeoff, empty, (finding,), work.survey.runs)
    places = {line.where for line in (*marked.parts, *marked.tasks) if line.remedy}
    assert places == {"box new"}
    assert len(marked.parts) == len(work.takeoff.parts)
