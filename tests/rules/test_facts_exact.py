"""What a rule may look at: editions, boxes, rooms, figures and their citations, findings."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest

from estimator.rules.facts import Facts, rule_rows
from estimator.rules.records import Finding, RemedyPart
from estimator.tables.limits import Limit
from tests.rules.metric_case import in_metres
from tests.rules.wood_case import facts, facts_of, job

Raw = dict[str, Any]
LOCAL = {"rule": "plate-cut", "change": "figure", "figure": "plate-cut", "value": "40.5",
         "reason": "city order 7"}  # fmt: skip


def more_boxes() -> Facts:
    """An old box that feeds, one that is only fed, one nobody touches, one new box."""
    raw = job()
    raw["boxes"] += [{"id": "end", "existing": True}, {"id": "idle", "existing": True}]
    legs = [{"go": "along", "length": "6 ft"}]
    raw["runs"].append({"id": "2", "from": "new", "to": "end", "cable": "14-2", "legs": legs})
    return facts(raw)


def test_boxes_that_a_run_touches() -> None:
    known = more_boxes()
    assert list(known.boxes) == ["old", "new", "end"]
    assert [box.id for box in known.new_boxes] == ["new"]
    assert [box.id for box in known.sources] == ["old"]


def test_walls_by_id() -> None:
    assert {name: wall.room for name, wall in facts(job()).walls.items()} == {"w": "den"}


@pytest.mark.parametrize(
    ("new", "room"),
    [
        ({}, "den"),
        ({"room": "hall"}, "hall"),
    ],
)
def test_the_room_of_a_box(new: Raw, room: str) -> None:
    known = facts(job(new=new))
    assert known.room_of(known.boxes["new"]) == room


def test_a_box_on_no_wall_and_in_no_room() -> None:
    known = more_boxes()
    assert known.room_of(known.boxes["end"]) == "room"


@pytest.mark.parametrize(
    ("room", "rooms", "use"),
    [
        ("loft", [], "unknown"),
        ("den", [], "den"),
        ("Kitchen", [], "kitchen"),
        ("den", [{"id": "den", "use": "bedroom"}], "bedroom"),
        ("kitchen", [{"id": "kitchen"}], "kitchen"),
        ("kitchen", [{"id": "den", "use": "bedroom"}], "kitchen"),
        ("kitchen", [{"id": "kitchen", "use": "bathroom"}], "bathroom"),
    ],
)
def test_the_use_of_a_room(room: str, rooms: list[Raw], use: str) -> None:
    assert facts(job(rooms=rooms)).use_of(room) == use


def test_a_room_as_listed() -> None:
    known = facts(job(rooms=[{"id": "den", "use": "bedroom"}, {"id": "hall"}]))
    assert known.room("den") == known.survey.rooms[0]
    assert known.room("hall") == known.survey.rooms[1]
    assert known.room("attic") is None


def test_the_editions_in_force() -> None:
    known = facts(job(job={"edition": "nec-2017", "building_edition": "irc-2015"}))
    assert (known.edition, known.building_edition) == ("nec-2017", "irc-2015")


def test_editions_of_another_country_are_none() -> None:
    survey = facts(job()).survey
    abroad = survey.model_copy(update={"job": survey.job.model_copy(update={"country": "CA"})})
    known = facts_of(abroad)
    assert (known.edition, known.building_edition) == (None, None)


def test_editions_that_are_not_on_file_are_none() -> None:
    survey = facts(job()).survey
    odd = {"edition": "nec-1897", "building_edition": "irc-1897"}
    known = facts_of(survey.model_copy(update={"job": survey.job.model_copy(update=odd)}))
    assert (known.edition, known.building_edition) == (None, None)


def test_units_of_the_job() -> None:
    known = facts(job())
    assert known.units.system == "us"
    assert facts_of(in_metres(known.survey)).units.system == "metric"


def test_a_figure_as_changed_locally() -> None:
    other = {**LOCAL, "figure": "plate-tie", "value": "9"}
    off = {**LOCAL, "change": "off", "rule": "groove"}
    known = facts(job(amendments=[other, off, LOCAL]))
    want = Limit("plate-cut", Fraction("40.5"), "%", "local", "local: city order 7", "seen")
    assert known.building("plate-cut") == want
    assert known.cite(want) == "local: city order 7"


def test_a_change_that_is_no_figure_leaves_the_figure() -> None:
    odd = {**LOCAL, "change": "note"}
    survey = facts(job()).survey
    amended = facts(job(amendments=[{**LOCAL}])).survey.amendments[0]
    note = amended.model_copy(update={"change": odd["change"]})
    known = facts_of(survey.model_copy(update={"amendments": (note,)}))
    assert known.building("plate-cut").value == 50


def test_an_electrical_figure_as_changed_locally() -> None:
    change = {**LOCAL, "rule": "free-conductor", "figure": "free-conductor", "value": "8"}
    assert facts(job(amendments=[change])).electrical("free-conductor").value == 8


@pytest.mark.parametrize(
    ("figure", "building", "said"),
    [
        ("free-conductor", False, "NEC 2023 300.14"),
        ("plate-cut", True, "IRC 2021 R602.6.1 (from memory: check)"),
        ("loop-wires", False, "Trade habit; common practice, no source, out and back"),
    ],
)
def test_citation_of_a_figure(figure: str, building: bool, said: str) -> None:
    known = facts(job())
    found = known.building(figure) if building else known.electrical(figure)
    assert known.cite(found) == said


@pytest.mark.parametrize(
    ("confidence", "said"),
    [("", "NEC 2023 300.14"), ("memory", "NEC 2023 300.14 (from memory: check)")],
)
def test_a_law_without_a_figure(confidence: str, said: str) -> None:
    assert facts(job()).law("300.14", confidence) == said


@pytest.mark.parametrize(
    ("confidence", "said"),
    [("", "IRC 2021 R1 (from memory: check)"), ("seen", "IRC 2021 R1")],
)
def test_a_building_law_without_a_figure(confidence: str, said: str) -> None:
    assert facts(job()).building_law("R1", confidence) == said


@pytest.mark.parametrize(
    ("rule", "verdict", "blocking"),
    [
        ("ampacity-adjustment", "fail", True),
        ("afci-extension", "fail", True),
        ("appliance-outlet", "fail", False),
        ("ampacity-adjustment", "unknown", False),
    ],
)
def test_what_blocks_hangs_on_the_level_of_the_rule(
    rule: str, verdict: Any, blocking: bool
) -> None:
    found = facts(job()).finding((rule, "run 1"), verdict, "a", "b")
    assert found.blocking is blocking


def test_a_finding_whole() -> None:
    part = (RemedyPart("protection", "plate-tie", Decimal(1), "ea"),)
    found = facts(job()).finding(("ampacity-adjustment", "run 1"), "fail", "a", "b", "c", part)
    assert found == Finding(
        rule="ampacity-adjustment",
        subject="run 1",
        verdict="fail",
        figures="a",
        cite="b",
        edition="nec-2023",
        remedy="c",
        blocking=True,
        title="Wire sized for bundles and sealed holes",
        remedies=part,
    )
    assert rule_rows()["ampacity-adjustment"]["title"] == found.title
