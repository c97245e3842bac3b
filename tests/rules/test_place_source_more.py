"""Which circuit may serve which place: rows XT-05 to XT-11 of the matrix, worked by hand."""

from __future__ import annotations

from typing import Any

import pytest

from estimator.rules.place_facts import outlets
from estimator.rules.source_class import Answer, judge_as_planned
from tests.rules.place_case import (
    EDITIONS,
    HEATER,
    HOOD,
    LIGHT,
    SWITCH,
    facts,
    finding,
    findings,
    job,
    on,
    screened,
    verdict,
)

RULE = "source-class"


GARAGES = {
    "one bay": [{"id": "garage", "use": "garage", "vehicle_bays": 1}],
    "two bays": [{"id": "garage", "use": "garage", "vehicle_bays": 2}],
    "not said": [{"id": "garage", "use": "garage"}],
    "not listed": [],
}
HIDDEN = {"spot": {"readily_accessible": "no"}}
UNSURE = {"spot": {"readily_accessible": "unknown"}}


@pytest.mark.parametrize(
    ("edition", "room", "new", "garage", "want"),
    [
        ("nec-2017", "garage", None, "not listed", "pass"),
        ("nec-2020", "garage", None, "two bays", "pass"),
        ("nec-2023", "garage", None, "two bays", "pass"),
        ("nec-2017", "garage", LIGHT, "one bay", "fail"),
        ("nec-2020", "garage", LIGHT, "one bay", "fail"),
        ("nec-2023", "garage", LIGHT, "one bay", "pass"),
        ("nec-2023", "garage", LIGHT, "two bays", "fail"),
        ("nec-2023", "garage", LIGHT, "not said", "unknown"),
        ("nec-2023", "garage", LIGHT, "not listed", "unknown"),
        ("nec-2017", "outdoors", None, "not listed", "pass"),
        ("nec-2017", "outdoors", HIDDEN, "not listed", "fail"),
        ("nec-2020", "outdoors", HIDDEN, "not listed", "fail"),
        ("nec-2020", "outdoors", UNSURE, "not listed", "unknown"),
        ("nec-2023", "outdoors", HIDDEN, "not listed", "pass"),
        ("nec-2023", "outdoors", LIGHT, "not listed", "fail"),
        ("nec-2023", "bedroom", None, "not listed", "fail"),
    ],
)
def test_xt_05_garage_by_edition(
    edition: str, room: str, new: dict[str, Any] | None, garage: str, want: str
) -> None:
    raw = on("garage", room, new, edition=edition, rooms=GARAGES[garage])
    assert verdict(RULE, raw) == want


@pytest.mark.parametrize(
    "room",
    ["bedroom", "living room", "hall", "closet", "outdoors", "finished basement", "attic",
     "unfinished basement", "office", "other"],
)  # fmt: skip
def test_xt_06_general_circuit_where_nothing_needs_its_own(room: str) -> None:
    assert verdict(RULE, on("general", room)) == "pass"


@pytest.mark.parametrize("room", ["kitchen", "pantry", "dining room", "bathroom", "laundry"])
@pytest.mark.parametrize("edition", EDITIONS)
def test_xt_06_required_receptacles_need_their_own_circuit(edition: str, room: str) -> None:
    assert verdict(RULE, on("general", room, edition=edition)) == "fail"
    assert verdict(RULE, on("general", room, LIGHT, edition=edition)) == "pass"
    assert verdict(RULE, on("general", room, SWITCH, edition=edition)) == "pass"


EXTRA = {"spot": {"required": "no"}}
ON_COUNTER = {"spot": {"required": "no", "countertop": "yes"}}
FOR_A_LAMP = {"spot": {"in_place_of_light": "yes"}}


@pytest.mark.parametrize(
    ("edition", "room", "new", "want"),
    [
        ("nec-2017", "garage", EXTRA, "fail"),
        ("nec-2020", "garage", EXTRA, "fail"),
        ("nec-2023", "garage", EXTRA, "pass"),
        ("nec-2023", "garage", None, "fail"),
        ("nec-2017", "bathroom", EXTRA, "fail"),
        ("nec-2020", "bathroom", EXTRA, "pass"),
        ("nec-2023", "bathroom", EXTRA, "pass"),
        ("nec-2023", "bathroom", ON_COUNTER, "fail"),
        ("nec-2023", "laundry", EXTRA, "pass"),
        ("nec-2023", "kitchen", EXTRA, "fail"),
        ("nec-2023", "dining room", FOR_A_LAMP, "pass"),
        ("nec-2023", "kitchen", FOR_A_LAMP, "fail"),
        ("nec-2023", "kitchen", HOOD, "pass"),
    ],
)
def test_xt_06_what_is_free_of_it(
    edition: str, room: str, new: dict[str, Any] | None, want: str
) -> None:
    assert verdict(RULE, on("general", room, new, edition=edition)) == want


def answer(raw: dict[str, Any]) -> Answer:
    """What the matrix says of the new outlet."""
    ((box, kind),) = outlets(facts(raw))
    return judge_as_planned(facts(raw), box, kind)


@pytest.mark.parametrize("room", ["bedroom", "kitchen", "attic", "somewhere"])
@pytest.mark.parametrize("new", [None, LIGHT, SWITCH, HEATER])
def test_xt_07_circuit_of_one_appliance(room: str, new: dict[str, Any] | None) -> None:
    said = answer(on("individual", room, new))
    assert (said.standing, said.where, said.confidence) == ("refused", "422.12", "inferred")
    assert said.reason.startswith("it feeds one appliance alone")


@pytest.mark.parametrize("room", ["bedroom", "hall", "laundry"])
def test_xt_08_circuit_of_another_dwelling(room: str) -> None:
    said = answer(on("other dwelling", room))
    assert (said.standing, said.where, said.confidence) == ("refused", "210.25", "seen")


@pytest.mark.parametrize("kind", ["individual", "other dwelling"])
@pytest.mark.parametrize("old", [{}, {"circuit_kind": "same"}], ids=["circuit", "box"])
def test_xt_07_and_xt_08_are_failed_once(kind: str, old: dict[str, str]) -> None:
    """The rule of the circuit tells it; the note with the other boxes stays."""
    here = {"circuit_kind": kind} if old else {}
    raw = on("general" if old else kind, "bedroom", old=here)
    found = screened(raw)
    subject = "old" if old else "circuit"
    failing = [name for name, each in found.items() if each.verdict == "fail"]
    assert [name for name in failing if name != "afci-extension:circuit"] == [
        f"other-dwelling:{subject}"
    ]
    assert found["source-class:job"].verdict == "note"


@pytest.mark.parametrize("change", ["off", "note"])
def test_xt_07_is_told_here_where_the_other_rule_is_not_in_force(change: str) -> None:
    raw = on("individual", "bedroom")
    raw["amendments"] = [{"rule": "other-dwelling", "change": change, "reason": "town"}]
    assert finding(RULE, raw).cite == "NEC 2023 422.12 (worked out)"
    assert screened(raw)["source-class:new"].blocking


@pytest.mark.parametrize(
    ("edition", "new", "want"),
    [
        ("nec-2023", LIGHT, "pass"),
        ("nec-2023", SWITCH, "pass"),
        ("nec-2023", None, "fail"),
        ("nec-2023", HEATER, "fail"),
    ],
)
def test_xt_09_circuit_of_10_a(edition: str, new: dict[str, Any] | None, want: str) -> None:
    assert verdict(RULE, on("ten ampere", "bedroom", new, edition=edition)) == want


@pytest.mark.parametrize("edition", ["nec-2020", "nec-2017"])
@pytest.mark.parametrize("breaker", [15, "unknown"])
def test_xt_09_no_circuit_of_10_a_before_2023(edition: str, breaker: int | str) -> None:
    """Where the breaker was read as 10 A its own rule says so instead."""
    raw = on("ten ampere", "bedroom", LIGHT, edition=edition, circuit={"breaker": breaker})
    assert verdict(RULE, raw) == "fail"


TWO_HOTS = {
    "multiwire": "yes", "handle_tie": "yes", "neutral_pigtailed": "yes", "hots_on_two_legs": "yes",
    "new_on_hot": "red",
}  # fmt: skip


def verdicts(*rules: str, **circuit: str) -> list[str]:
    """Verdicts of some rules on a circuit in order, worst first, passes left out."""
    found = screened(job(circuit=circuit)).values()
    return [each.verdict for each in found if each.rule in rules and each.verdict != "pass"]


@pytest.mark.parametrize(
    ("fact", "want"),
    [
        ({}, []),
        ({"handle_tie": "no"}, ["fail"]),
        ({"neutral_pigtailed": "no"}, ["fail"]),
        ({"hots_on_two_legs": "no"}, ["fail"]),
        ({"handle_tie": "unknown"}, ["unknown"]),
        ({"neutral_pigtailed": "unknown"}, ["unknown"]),
        ({"hots_on_two_legs": "unknown"}, ["unknown"]),
        ({"new_on_hot": "unknown"}, ["unknown"]),
    ],
)
def test_xt_10_a_bad_fact_fails_once_and_a_missing_one_asks_once(
    fact: dict[str, str], want: list[str]
) -> None:
    assert verdicts("multiwire", RULE, **(TWO_HOTS | fact)) == want


@pytest.mark.parametrize(
    ("circuit", "want"),
    [
        ({"grounded": "yes"}, []),
        ({"grounded": "no"}, ["fail"]),
        ({"grounded": "no", "new_ground_to": "outlet neutral"}, ["fail"]),
        ({"grounded": "unknown"}, ["unknown"]),
    ],
)
def test_xt_11_a_missing_ground_fails_once_and_an_unknown_one_asks_once(
    circuit: dict[str, str], want: list[str]
) -> None:
    assert verdicts("ground-source", RULE, **circuit) == want


@pytest.mark.parametrize("state", [{}, {"grounded": "unknown", "multiwire": "unknown"}])
def test_an_ordinary_circuit_gives_no_note(state: dict[str, str]) -> None:
    assert set(findings(RULE, job(circuit=state))) == {"new"}


@pytest.mark.parametrize(
    ("kind", "room", "breaker", "want"),
    [
        ("small appliance", "kitchen", 15, "fail"),
        ("small appliance", "kitchen", "unknown", "unknown"),
        ("bathrooms", "bathroom", 15, "fail"),
        ("laundry", "laundry", 30, "fail"),
        ("garage", "garage", 15, "fail"),
        ("general", "bedroom", 15, "pass"),
        ("general", "bedroom", 20, "pass"),
        ("general", "bedroom", "unknown", "unknown"),
        ("general", "bedroom", 30, "fail"),
        ("general", "bedroom", 10, "fail"),
    ],
)
def test_a_circuit_has_the_rating_of_its_kind(
    kind: str, room: str, breaker: int | str, want: str
) -> None:
    assert verdict(RULE, job(room, circuit={"kind": kind, "breaker": breaker})) == want


@pytest.mark.parametrize(
    ("kind", "room", "breaker", "words"),
    [
        ("laundry", "laundry", 15, "a breaker of 20 A, this one 15 A"),
        ("general", "bedroom", 30, "a breaker of 15 or 20 A, this one 30 A"),
        ("laundry", "laundry", "unknown", "its breaker must be 20 A"),
        ("general", "bedroom", "unknown", "its breaker must be 15 or 20 A"),
    ],
)
def test_a_wrong_rating_is_told(kind: str, room: str, breaker: int | str, words: str) -> None:
    said = finding(RULE, job(room, circuit={"kind": kind, "breaker": breaker}))
    assert said.figures.endswith(words)


def test_a_missing_rating_is_asked_for() -> None:
    raw = job("laundry", circuit={"kind": "laundry", "breaker": "unknown"})
    said = finding(RULE, raw)
    assert said.remedy == "Read the number on the breaker."
    assert said.figures.startswith("laundry circuit, breaker unknown; new receptacle in laundry")


def test_a_splice_box_is_no_outlet() -> None:
    assert findings(RULE, on("individual", "bedroom", {"device": "none"})) == {}


def test_every_new_outlet_is_judged_for_itself() -> None:
    more = [{"id": "lamp", "room": "kitchen", "device": "luminaire"}]
    runs = [
        {
            "id": "1",
            "from": "old",
            "to": "new",
            "cable": "12-2",
            "legs": [{"go": "up", "length": 9}],
        },
        {
            "id": "2",
            "from": "new",
            "to": "lamp",
            "cable": "12-2",
            "legs": [{"go": "up", "length": 9}],
        },
    ]
    raw = on("small appliance", "kitchen", more=more, runs=runs)
    said = {subject: each.verdict for subject, each in findings(RULE, raw).items()}
    assert said == {"new": "pass", "lamp": "fail", "job": "note"}


def test_a_job_in_another_country_hears_nothing_of_it() -> None:
    raw = on("garage", "bedroom")
    assert "source-class:new" in screened(raw)
    raw["job"] |= {"country": "CA"}
    assert not any(name.startswith(RULE) for name in screened(raw))
