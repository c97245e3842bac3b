"""What a circuit is kept for, word for word: who says so, what to look at, what would be better."""

from __future__ import annotations

from typing import Any

import pytest

from estimator.rules.source_ranking import ranked_sources
from tests.rules.place_case import CLEAR, LIGHT, facts, finding, findings, job
from tests.rules.told import Told, told

RULE = "source-class"
ELSEWHERE = "Feed it from another circuit, or have a new circuit run; survey the boxes near it."
BATH = "it may feed anything in its own bathroom, and nothing in another"
BAY = (
    "in a garage for one vehicle it may feed other things of that garage; in a larger one"
    " receptacles only"
)
TRACE = "Trace the circuit of a box before you feed from it; its room proves nothing."
Raw = dict[str, Any]


def test_a_box_on_a_circuit_of_its_own_is_judged_by_that() -> None:
    raw = job(old={"circuit_kind": "general"}, circuit={"kind": "small appliance"})
    assert told(finding(RULE, raw)) == Told(
        "pass",
        "general circuit (lights and receptacles), breaker unknown; new receptacle in bedroom:"
        " nothing there needs a circuit of its own",
        "NEC 2023 210.11 (worked out)",
    )


def test_a_circuit_refused_as_such_is_told_by_its_own_rule() -> None:
    assert list(findings(RULE, job(circuit={"kind": "individual"}))) == ["job"]


@pytest.mark.parametrize("change", ["off", "note"])
def test_where_that_rule_is_not_in_force_it_is_told_here(change: str) -> None:
    amendments = [{"rule": "other-dwelling", "change": change, "reason": "city order 7"}]
    raw = job(circuit={"kind": "individual"}, amendments=amendments)
    assert told(finding(RULE, raw)) == Told(
        "fail",
        "circuit of one appliance alone, 20 A; new receptacle in bedroom: it feeds one appliance"
        " alone; no other outlet may hang on it",
        "NEC 2023 422.12 (worked out)",
        ELSEWHERE,
    )


def test_other_refusals_are_told_here() -> None:
    found = findings(RULE, job(circuit={"kind": "small appliance"}))
    assert list(found) == ["new", "job"]
    assert found["job"].remedy == TRACE


def test_a_breaker_that_such_a_circuit_does_not_have() -> None:
    assert told(finding(RULE, job("laundry", circuit={"kind": "laundry", "breaker": 15}))) == Told(
        "fail",
        "laundry circuit, 15 A; new receptacle in laundry: such a circuit has a breaker of 20 A,"
        " this one 15 A",
        "NEC 2023 210.11(C)(2)",
        ELSEWHERE,
    )


def test_the_law_of_such_a_breaker_is_not_the_law_of_the_place() -> None:
    circuit = {"kind": "one bathroom", "breaker": 15}
    spot = {"appliance": "other"}
    new = {"device": "none", "spot": spot}
    found = finding(RULE, job("bathroom", new=new, old={"room": "bathroom"}, circuit=circuit))
    assert (found.verdict, found.cite) == ("fail", "NEC 2023 210.11(C)(3)")


def test_a_breaker_nobody_read() -> None:
    raw = job("laundry", circuit={"kind": "laundry", "breaker": "unknown"})
    assert told(finding(RULE, raw)) == Told(
        "unknown",
        "laundry circuit, breaker unknown; new receptacle in laundry: it may feed receptacles of"
        " the laundry; its breaker must be 20 A",
        "NEC 2023 210.11(C)(2)",
        "Read the number on the breaker.",
    )


@pytest.mark.parametrize(
    ("raw", "reason", "look"),
    [
        (
            job("bathroom", circuit={"kind": "one bathroom"}),
            BATH,
            "Find out which bathroom the circuit serves.",
        ),
        (
            job("garage", new=LIGHT, circuit={"kind": "garage"}, old={"room": "garage"}),
            BAY,
            "Say how many vehicles the garage is built for (vehicle_bays = ...).",
        ),
        (
            job(
                "outdoors",
                new={"spot": {"readily_accessible": "unknown"}},
                circuit={"kind": "garage"},
                edition="nec-2020",
            ),
            "it may feed outdoor receptacles that are easy to reach",
            "Say whether the outlet is easy to reach (readily_accessible = ...).",
        ),
        (
            job(
                "bathroom",
                new={"device": "none", "spot": {"appliance": "other"}},
                old={"room": "bathroom"},
                circuit={"kind": "one bathroom"},
            ),
            "it may feed fixed equipment of its own bathroom, up to half of the circuit",
            "Add up the amperes of what is fastened in place on it (fixed = ...).",
        ),
    ],
    ids=["same bath", "one bay", "reachable", "fixed share"],
)
def test_what_to_look_at(raw: Raw, reason: str, look: str) -> None:
    found = finding(RULE, raw)
    assert (found.verdict, found.remedy) == ("unknown", look)
    assert found.figures.endswith(f": {reason}")


def test_a_circuit_that_may_be_anything() -> None:
    found = finding(RULE, job(circuit={"kind": "unknown"}))
    assert found.figures == (
        "a circuit of unknown kind, 20 A; new receptacle in bedroom: as a general circuit (lights"
        " and receptacles) it may feed it, as a small-appliance circuit (kitchen, pantry, dining)"
        " or bathroom circuit (receptacles of several bathrooms) or circuit kept for something"
        " else it may not"
    )


def test_a_better_box_is_found_for_the_outlet_at_hand() -> None:
    """A 10 A circuit may feed lights and no receptacle, so it helps the light alone."""
    more = [{"id": "ten", "existing": True, "room": "hall", "circuit_kind": "ten ampere"}]
    kitchen: Raw = {
        "old": {"room": "kitchen"},
        "circuit": {"kind": "small appliance"},
        "more": more,
    }
    light = finding(RULE, job(new=LIGHT, **kitchen))
    assert light.remedy == "Feed it from another circuit; find out which one box ten hangs on."
    assert finding(RULE, job(**kitchen)).remedy == ELSEWHERE
    ranked = finding(RULE, job(new=LIGHT, **kitchen), "job").figures
    assert ranked.startswith("for new: 1. ten ask first (a circuit of 10 A may feed lights;")


def test_an_outlet_that_asks_for_no_ground_fault_protection_misses_none() -> None:
    raw = job("bedroom", new={"spot": CLEAR}, circuit={"protection": []})
    assert [each.missing for each in ranked_sources(facts(raw))] == [("arc-fault",)]
