"""Which circuit may serve which place: rows XT-05 to XT-11 of the matrix, worked by hand."""

from __future__ import annotations

from typing import Any

import pytest

from tests.rules.place_case import (
    EDITIONS,
    HEATER,
    HOOD,
    LIGHT,
    SWITCH,
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


@pytest.mark.parametrize("room", ["bedroom", "kitchen", "attic", "somewhere"])
@pytest.mark.parametrize("new", [None, LIGHT, SWITCH, HEATER])
def test_xt_07_circuit_of_one_appliance(room: str, new: dict[str, Any] | None) -> None:
    said = finding(RULE, on("individual", room, new))
    assert (said.verdict, said.cite) == ("fail", "NEC 2023 422.12 (worked out)")
    assert "it feeds one appliance alone" in said.figures


@pytest.mark.parametrize("room", ["bedroom", "hall", "laundry"])
def test_xt_08_circuit_of_another_dwelling(room: str) -> None:
    said = finding(RULE, on("other dwelling", room))
    assert (said.verdict, said.cite) == ("fail", "NEC 2023 210.25")


@pytest.mark.parametrize(
    ("edition", "new", "want"),
    [
        ("nec-2023", LIGHT, "pass"),
        ("nec-2023", SWITCH, "pass"),
        ("nec-2023", None, "fail"),
        ("nec-2023", HEATER, "fail"),
        ("nec-2020", LIGHT, "fail"),
        ("nec-2017", LIGHT, "fail"),
    ],
)
def test_xt_09_circuit_of_10_a(edition: str, new: dict[str, Any] | None, want: str) -> None:
    assert verdict(RULE, on("ten ampere", "bedroom", new, edition=edition)) == want


@pytest.mark.parametrize(
    ("tie", "pigtail", "words"),
    [
        ("yes", "yes", "so it is here"),
        ("no", "yes", "so it is not here"),
        ("yes", "no", "so it is not here"),
        ("unknown", "yes", "nobody has looked here"),
        ("yes", "unknown", "nobody has looked here"),
        ("no", "unknown", "so it is not here"),
    ],
)
def test_xt_10_two_hots_on_one_neutral(tie: str, pigtail: str, words: str) -> None:
    circuit = {"multiwire": "yes", "handle_tie": tie, "neutral_pigtailed": pigtail}
    said = finding(RULE, job(circuit=circuit), "circuit")
    assert said.verdict == "note"
    assert said.figures.startswith("two hots share one neutral: extend it only if both breakers")
    assert said.figures.endswith(f"which hot you add to: {words}")
    assert said.cite == "NEC 2023 210.4(B), 300.13(B), 210.7"


@pytest.mark.parametrize(
    ("ground", "words"), [("none", "so it is not here"), ("panel bar", "so it is here")]
)
def test_xt_11_no_ground_wire(ground: str, words: str) -> None:
    said = finding(RULE, job(circuit={"grounded": "no", "new_ground_to": ground}), "circuit")
    assert said.figures == (
        "there is no ground wire: extend it only with a separate ground run to a place the code "
        f"names; a ground-fault device does not make up for it: {words}"
    )
    assert (said.verdict, said.cite) == ("note", "NEC 2023 250.130(C)")


def test_xt_10_and_xt_11_together_are_one_note() -> None:
    said = finding(RULE, job(circuit={"grounded": "no", "multiwire": "yes"}), "circuit")
    assert said.cite == "NEC 2023 210.4(B), 300.13(B), 210.7, 250.130(C)"
    assert "nobody has looked here; there is no ground wire" in said.figures


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
        ("general", "bedroom", "unknown", "pass"),
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
    raw = on("individual", "bedroom")
    assert "source-class:new" in screened(raw)
    raw["job"] |= {"country": "CA"}
    assert not any(name.startswith(RULE) for name in screened(raw))
