"""Remedies of the box rules go into the takeoff and the price, and stop no bid."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest

from estimator.pricing.work import Work, work_out
from tests.rules.box_case import BOOKS, job, survey

CEILING = {"mount": "ceiling", "out": "30 in", "device": "luminaire", "room": "closet"}
FAN = CEILING | {"spot": {"fan": "yes", "luminaire_weight": 20}}
CASES: list[tuple[str, dict[str, Any], str, str]] = [
    ("box-setback:old", {"old": {"contents": {"setback": "1/2 in"}}}, "extender-1g",
     "fit-box-extender"),
    ("box-gap:old", {"old": {"contents": {"gap": "1/2 in"}}}, "compound-setting", "fill-box-gap"),
    ("luminaire-box:new", {"new": FAN}, "fan-box-16", "fit-fan-box"),
    ("box-fill:old", {"old": {"volume": "12 in3"}}, "box-old-work-1g-16", "replace-box"),
]  # fmt: skip


def worked(keys: dict[str, Any], **tables: Any) -> Work:
    return work_out(survey(job(**keys, **tables)), BOOKS)


@pytest.mark.parametrize(("finding", "keys", "item", "task"), CASES, ids=[c[0] for c in CASES])
def test_a_remedy_is_bought_and_done_under_the_name_of_its_finding(
    finding: str, keys: dict[str, Any], item: str, task: str
) -> None:
    work = worked(keys)
    assert [line.item for line in work.takeoff.parts if line.remedy == finding] == [item]
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
    verdicts = {each.finding_id: each.verdict for each in work.findings}
    assert verdicts["box-fill-canada:old"] == "pass"
    assert [each for each in work.blocked_by if each.startswith("box-")] == []
