"""The rules of places on whole jobs: the shipped samples, and random ones."""

from __future__ import annotations

from typing import Any, get_args

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from estimator.rules.facts import rule_rows
from estimator.rules.registry import FUNCTIONS
from estimator.survey.electrical import CircuitKind, Device
from estimator.survey.place import RoomUse
from tests.rules.place_case import EDITIONS, facts, finding, job, run, verdict
from tests.worked.job import verdicts, worked

GROUP = tuple(rule for rule, row in rule_rows().items() if row["group"] == "place")


def test_every_rule_of_the_group_is_there() -> None:
    assert set(GROUP) == {
        "afci-extension", "appliance-outlet", "closet-light", "counter-receptacle", "gfci-place",
        "receptacle-spacing", "replaced-receptacle", "required-outlets", "source-class",
        "switch-neutral", "tamper-resistant", "tub-zone", "weather-resistant",
    }  # fmt: skip
    assert set(GROUP) <= set(FUNCTIONS)


@pytest.mark.parametrize(
    ("sample", "want"),
    [("nightstand", "unknown"), ("printer-corner", "pass"), ("closet-charger", "pass"),
     ("closet-light", "unknown"), ("door-in-the-way", "pass")],
)  # fmt: skip
def test_a_sample_tells_of_arc_fault_protection_and_is_not_stopped(sample: str, want: str) -> None:
    """As its file says: read on the breaker, or nobody has looked."""
    bid = worked(sample)
    assert verdicts(bid)["afci-extension:circuit"] == want
    stopped = [each.finding_id for each in bid.findings if each.stops_the_bid]
    assert [name for name in stopped if name.split(":")[0] in GROUP] == []


@pytest.mark.parametrize(
    ("sample", "name", "want"),
    [
        ("nightstand", "source-class:new", "pass"),
        ("nightstand", "receptacle-spacing:wall north", "pass"),
        ("nightstand", "gfci-place:new", "pass"),
        ("closet-light", "closet-light:light", "unknown"),
        ("closet-light", "source-class:switch", "pass"),
        ("closet-light", "source-class:light", "pass"),
        ("door-in-the-way", "receptacle-spacing:wall south", "pass"),
    ],
)
def test_what_the_samples_are_told(sample: str, name: str, want: str) -> None:
    assert verdicts(worked(sample))[name] == want


def test_a_job_under_other_rules_is_told_none_of_them() -> None:
    found = {name.split(":")[0] for name in verdicts(worked("lounge"))}
    assert found & set(GROUP) == set()


YES_NO = st.sampled_from(["yes", "no", "unknown"])
LENGTHS = st.sampled_from(["0 in", "6 in", "3 ft", "6 ft", "20 ft", "unknown"])
SPOTS = st.fixed_dictionaries(
    {},
    optional={
        "sink_distance": LENGTHS,
        "tub_distance": LENGTHS,
        "above_tub": LENGTHS,
        "moisture": st.sampled_from(["dry", "damp", "wet", "unknown"]),
        "countertop": YES_NO,
        "readily_accessible": YES_NO,
        "required": YES_NO,
        "appliance": st.sampled_from(["none", "hood", "refrigerator", "other", "toilet seat"]),
        "luminaire": st.sampled_from(["enclosed", "hanging", "unknown"]),
        "storage_clearance": LENGTHS,
    },
)
CIRCUITS = st.fixed_dictionaries(
    {
        "kind": st.sampled_from(get_args(CircuitKind)),
        "breaker": st.sampled_from([10, 15, 20, 30, "unknown"]),
    },
    optional={
        "protection": st.sampled_from([None, [], ["afci"], ["gfci"], ["afci", "gfci"]]),
        "serves": st.lists(st.sampled_from(get_args(RoomUse)), max_size=3),
        "multiwire": YES_NO,
        "grounded": YES_NO,
    },
)
NEW = st.fixed_dictionaries(
    {"device": st.sampled_from(get_args(Device)), "spot": SPOTS},
    optional={"height": LENGTHS},
)


@st.composite
def jobs(draw: st.DrawFn) -> dict[str, Any]:
    """Any circuit, any room, two new outlets in a chain."""
    uses = st.sampled_from(get_args(RoomUse))
    more = [{"id": "second", "room": draw(uses)} | draw(NEW)]
    runs = [run("old", "new"), run("new", "second")]
    return job(
        draw(uses), new=draw(NEW), more=more, runs=runs, edition=draw(st.sampled_from(EDITIONS)),
        circuit=draw(CIRCUITS), old={"room": draw(uses), "reuse_plate": draw(st.booleans())},
    )  # fmt: skip


@given(jobs())
@settings(max_examples=150, deadline=None)
def test_no_rule_raises_and_every_finding_is_whole(raw: dict[str, Any]) -> None:
    known = facts(raw)
    for rule in GROUP:
        found = list(FUNCTIONS[rule](known))
        assert len({each.finding_id for each in found}) == len(found)
        for each in found:
            assert each.figures and each.cite and each.title
            assert each.remedy or each.verdict in ("pass", "note")


@given(jobs())
@settings(max_examples=100, deadline=None)
def test_what_stands_without_looking_never_passes(raw: dict[str, Any]) -> None:
    """Take the facts away: nothing that failed or was open may pass by that."""
    raw["circuit"] |= {"kind": "unknown", "breaker": "unknown", "serves": [], "protection": None}
    assert verdict("source-class", raw) in ("", "unknown", "fail")
    listed = finding("afci-extension", raw, "circuit")
    assert listed.verdict in ("unknown", "pass")
    if listed.verdict == "pass":
        assert "no room of this work" in listed.figures or "no new outlet" in listed.figures


@given(jobs())
@settings(max_examples=60, deadline=None)
def test_more_protection_never_makes_it_worse(raw: dict[str, Any]) -> None:
    order = ["fail", "unknown", "note", "pass", ""]
    raw["circuit"]["protection"] = []
    without = verdict("gfci-place", raw)
    raw["circuit"]["protection"] = ["gfci", "afci"]
    assert order.index(verdict("gfci-place", raw)) >= order.index(without)
    assert finding("afci-extension", raw, "circuit").verdict == "pass"
