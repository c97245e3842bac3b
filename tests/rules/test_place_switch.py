"""A neutral in the box of a new switch (LO-06), and an outlet near its appliance (LO-14)."""

from __future__ import annotations

from typing import Any

import pytest

from estimator.rules.records import RemedyChange
from estimator.survey.reader import survey_from
from tests.rules.metric_case import in_metres, said_of
from tests.rules.place_case import (
    EDITIONS,
    facts_of,
    finding,
    findings,
    job,
    run,
    verdict,
    worked,
)

NEUTRAL, APPLIANCE = "switch-neutral", "appliance-outlet"


def switch(room: str, cable: str = "12-2", device: str = "switch", **tables: Any) -> dict[str, Any]:
    runs = tables.pop("runs", [run("old", "new", cable=cable)])
    return job(room, new={"device": device}, runs=runs, **tables)


@pytest.mark.parametrize(
    ("room", "cable", "want"),
    [
        ("bedroom", "12-2", "fail"),
        ("bedroom", "12-3", "pass"),
        ("bathroom", "12-2", "fail"),
        ("hall", "12-2", "fail"),
        ("office", "12-2", "fail"),
        ("closet", "12-2", ""),
        ("garage", "12-2", ""),
        ("laundry", "12-2", ""),
    ],
)
@pytest.mark.parametrize("edition", EDITIONS)
def test_lo_06_a_neutral_at_the_switch(edition: str, room: str, cable: str, want: str) -> None:
    assert verdict(NEUTRAL, switch(room, cable, edition=edition)) == want


def test_lo_06_a_feed_through_the_switch_brings_one() -> None:
    more = [{"id": "light", "room": "bedroom", "device": "luminaire"}]
    raw = switch("bedroom", more=more, runs=[run("old", "new"), run("new", "light")])
    said = finding(NEUTRAL, raw)
    assert (said.verdict, said.figures) == (
        "pass",
        "2 cables meet there, so the neutral of the feed is in the box",
    )


@pytest.mark.parametrize(
    ("cable", "figures"),
    [
        ("12-2", "one cable of 2 wires ends there: a hot and its return, no neutral"),
        ("12-3", "one cable of 3 wires ends there: one of them is a neutral"),
    ],
)
def test_lo_06_figures(cable: str, figures: str) -> None:
    said = finding(NEUTRAL, switch("bedroom", cable))
    assert (said.figures, said.cite) == (figures, "NEC 2023 404.2(C)")


@pytest.mark.parametrize(("cable", "want"), [("12-2", "12-3"), ("14-2", "14-3"), ("10-2", "10-3")])
def test_lo_06_a_cable_with_one_more_wire(cable: str, want: str) -> None:
    said = finding(NEUTRAL, switch("bedroom", cable))
    assert said.remedies == (RemedyChange("cable", "old-new", want),)
    assert said.remedy.startswith("Run a cable with 3 wires to it. Free of it: a switch of a rec")


def test_lo_06_no_such_cable_on_file() -> None:
    said = said_of(NEUTRAL, facts_of(in_metres(survey_from(switch("bedroom")))))["new"]
    assert (said.verdict, said.remedies) == ("fail", ())


def test_lo_06_the_new_cable_is_bought() -> None:
    found = worked(switch("bedroom"))
    assert [order.kind for order in found.takeoff.cable] == ["12-3"]


def test_lo_06_three_way_switches_are_asked_about() -> None:
    said = finding(NEUTRAL, switch("bedroom", device="three-way switch"))
    assert said.verdict == "unknown"
    assert said.figures == "a three-way switch: whether a neutral is among its wires is not known"
    assert said.remedy.startswith("Plan the wires so that a neutral is in the box. Free of it:")


def test_lo_06_speaks_of_new_switches_alone() -> None:
    assert findings(NEUTRAL, job(old={"device": "switch"})) == {}


@pytest.mark.parametrize(
    ("distance", "want"), [("72 in", "pass"), ("72-1/16 in", "note"), ("unknown", "unknown")]
)
def test_lo_14_within_reach_of_the_appliance(distance: str, want: str) -> None:
    spot = {"appliance": "refrigerator", "appliance_distance": distance}
    assert verdict(APPLIANCE, job("kitchen", new={"spot": spot})) == want


@pytest.mark.parametrize(
    ("distance", "figures", "remedy"),
    [
        ("6 ft", "clock: at most 72 in away, here 72 in", ""),
        (
            "7 ft",
            "clock: at most 72 in away, here 84 in",
            "Plan the outlet nearer to the appliance.",
        ),
        (
            "unknown",
            "clock: at most 72 in away, distance unknown",
            "Measure from the outlet to the place of the appliance.",
        ),
    ],
)
def test_lo_14_figures(distance: str, figures: str, remedy: str) -> None:
    spot = {"appliance": "clock", "appliance_distance": distance}
    said = finding(APPLIANCE, job(new={"spot": spot}))
    assert (said.figures, said.remedy, said.cite) == (figures, remedy, "NEC 2023 210.50(C)")


def test_lo_14_no_appliance_no_finding() -> None:
    assert findings(APPLIANCE, job()) == {}
