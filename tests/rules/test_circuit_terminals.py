"""Wires on terminals, shared neutrals, whites used as hots: CS-23 to CS-25, TR-04, 05, 07."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest

from estimator.rules.records import Remedy, RemedyPart, RemedyTask
from tests.rules.circuit_case import findings, job, one, verdict

TERMINALS, MULTIWIRE, WHITE = "terminals", "multiwire", "white-as-hot"
REMAKE: Remedy = RemedyTask("terminate", "remake-terminals", Decimal(1), "ea")
TIE: tuple[Remedy, ...] = (
    RemedyPart("devices", "breaker-handle-tie", Decimal(1), "ea"),
    RemedyTask("terminate", "fit-handle-tie", Decimal(1), "ea"),
)
THIN = {"breaker": 15, "wire": "14", "run": {"cable": "14-2"}}
SHARED = {
    "multiwire": "yes", "handle_tie": "yes", "hots_on_two_legs": "yes", "neutral_pigtailed": "yes",
    "new_on_hot": "black",
}  # fmt: skip
LISTING = "Listing guide of receptacles and switches, as quoted on a code forum, push-in terminals"
OFF = "Turn both breakers off: the shared white is live while either hot is on."


def thin(**more: Any) -> dict[str, Any]:
    """A 15 A circuit of 14 AWG throughout."""
    return job(**{**THIN, **more, "old": {"cables": ["14-2", "14-2"], **more.get("old", {})}})


@pytest.mark.parametrize(
    ("screws", "expected"),
    [(0, "pass"), (1, "pass"), (2, "fail"), ("unknown", "unknown")],
    ids=lambda each: f"CS-23 {each}",
)
def test_one_wire_under_a_screw(screws: int | str, expected: str) -> None:
    assert verdict(TERMINALS, job(found={"wires_per_screw": screws}), "old") == expected


def test_the_words_of_two_wires_under_a_screw() -> None:
    found = one(TERMINALS, job(found={"wires_per_screw": 2}), "old")
    assert found.figures == (
        "wires under one screw: 2, at most 1; 3 connectors and 3 pigtails here in the takeoff"
    )
    assert (found.cite, found.remedies) == ("NEC 2023 110.14", (REMAKE,))
    assert found.remedy == (
        "Free the wires. Put one wire or one pigtail under each screw and none in a push-in hole;"
        " the other wires join in connectors."
    )


@pytest.mark.parametrize(
    ("raw", "expected"),
    [
        (thin(), "note"),
        (thin(breaker=16), "fail"),
        (thin(run={"cable": "12-2"}), "fail"),
        (thin(old={"cables": ["12-2", "14-2"]}), "fail"),
        (thin(material="aluminum"), "fail"),
        (thin(material="copper-clad"), "fail"),
        (thin(material="unknown"), "unknown"),
        (thin(breaker="unknown"), "unknown"),
        (job(), "fail"),
        (job(breaker="unknown"), "fail"),
        (job(found={"device_wire": "14"}, breaker=15), "note"),
        (thin(found={"device_wire": "12"}), "fail"),
    ],
    ids=[
        "14 AWG on 15 A", "16 A", "12 AWG new", "12 AWG old", "aluminum", "copper-clad",
        "metal unknown", "breaker unknown", "12 AWG on 20 A", "12 AWG, breaker unknown",
        "14 AWG on the device", "12 AWG on the device",
    ],
)  # fmt: skip
def test_push_in_terminals_are_for_14_awg_copper_on_15_a(
    raw: dict[str, Any], expected: str
) -> None:
    """TR-04."""
    raw["boxes"][0]["contents"]["push_in_terminals"] = "yes"
    assert verdict(TERMINALS, raw, "old") == expected


def test_the_words_of_push_in_terminals() -> None:
    bad = one(TERMINALS, job(found={"push_in_terminals": "yes"}), "old")
    assert bad.figures == (
        "wires under one screw: 1, at most 1; push-in terminals in use: not allowed behind 20 A"
        " (only 14 AWG solid copper, 15 A); 3 connectors and 3 pigtails here in the takeoff"
    )
    assert (bad.cite, bad.remedies) == (LISTING, (REMAKE,))
    assert bad.remedy.startswith("Free the wires.")
    good = one(TERMINALS, thin(found={"push_in_terminals": "yes"}), "old")
    assert "push-in terminals in use: allowed behind 15 A" in good.figures
    assert (good.cite, good.remedies) == (LISTING, ())
    assert good.remedy.startswith("Allowed here. A wire under a screw holds better")
    found = {"push_in_terminals": "yes"}
    perhaps = one(TERMINALS, thin(found=found, breaker="unknown"), "old")
    assert "in use: perhaps not allowed behind unknown" in perhaps.figures


@pytest.mark.parametrize(
    ("raw", "expected"),
    [(thin(), "pass"), (job(), "unknown"), (thin(material="unknown"), "unknown")],
    ids=["allowed in any case", "not allowed", "perhaps"],
)
def test_push_in_terminals_nobody_looked_at(raw: dict[str, Any], expected: str) -> None:
    raw["boxes"][0]["contents"]["push_in_terminals"] = "unknown"
    found = one(TERMINALS, raw, "old")
    assert found.verdict == expected
    assert "push-in terminals: not looked at" in found.figures
    if expected == "unknown":
        assert (found.cite, found.remedies) == ("NEC 2023 110.14", (REMAKE,))
        assert found.remedy.startswith("With the power off, draw the device out")


def test_wires_nobody_counted() -> None:
    found = one(TERMINALS, job(found={"wires_per_screw": "unknown"}), "old")
    assert found.figures.startswith("wires under one screw: not counted, at most 1; 3 connectors")
    assert (found.cite, found.remedies) == ("NEC 2023 110.14", (REMAKE,))


def test_a_new_device_is_planned_on_screws() -> None:
    found = one(TERMINALS, job(), "new")
    assert (found.verdict, found.figures) == ("pass", "wires under one screw: 1, at most 1")
    assert (found.cite, found.remedy, found.remedies) == ("NEC 2023 110.14", "", ())


@pytest.mark.parametrize(
    ("contents", "expected"),
    [({"push_in_terminals": "yes"}, "fail"), ({"wires_per_screw": 2}, "fail"), ({}, "pass")],
)
def test_a_new_device_planned_otherwise(contents: dict[str, Any], expected: str) -> None:
    assert verdict(TERMINALS, job(new={"contents": contents}), "new") == expected


def test_a_new_device_is_copper_whatever_the_old_wire_is() -> None:
    raw = thin(material="aluminum", new={"contents": {"push_in_terminals": "yes"}})
    assert verdict(TERMINALS, raw, "new") == "note"


def test_one_connector_and_one_pigtail_are_counted_in_the_singular() -> None:
    old = {"device": "switch", "cables": ["12-2"]}
    figures = one(TERMINALS, job(old=old), "old").figures
    assert figures.endswith("3 connectors and 2 pigtails here in the takeoff")


@pytest.mark.parametrize("device", ["luminaire", "none"])
def test_a_light_and_a_splice_have_no_terminals(device: str) -> None:
    assert list(findings(TERMINALS, job(old={"device": device}))) == ["new"]


def test_one_hot_and_one_white_pass() -> None:
    found = findings(MULTIWIRE, job())
    assert list(found) == ["circuit"]
    assert found["circuit"].verdict == "pass"
    assert found["circuit"].figures == "one hot, one white: no shared neutral"
    assert found["circuit"].cite == "NEC 2023 210.4(B)"


@pytest.mark.parametrize(
    ("old", "remedies"),
    [
        ({"cables": ["12-2", "12-2"]}, ()),
        ({"cables": ["12-2", "12-3"]}, TIE),
        ({"cables": []}, TIE),
        ({"unknown_cables": True}, TIE),
    ],
    ids=["two-wire cables seen", "a three-wire cable", "none listed", "not looked at"],
)
def test_nobody_has_said(old: dict[str, Any], remedies: tuple[Remedy, ...]) -> None:
    found = one(MULTIWIRE, job(multiwire="unknown", old=old))
    assert (found.verdict, found.remedies) == ("unknown", remedies)
    assert found.figures == "nobody has said whether two hots share one white"
    assert found.remedy.startswith("Look in the source box and in the panel")
    assert found.cite == "NEC 2023 210.4(B)"


def test_a_shared_neutral_in_order() -> None:
    found = one(MULTIWIRE, job(**SHARED))
    assert found.figures == (
        "two hots share one white; handle tie: yes, on two legs: yes, whites joined with a"
        " pigtail: yes, new outlet on hot: black"
    )
    assert (found.verdict, found.remedy, found.cite) == ("pass", OFF, "NEC 2023 210.4(B)")
    assert found.remedies == ()


@pytest.mark.parametrize(
    ("wrong", "remedies", "starts", "where"),
    [
        ({"handle_tie": "no"}, TIE, "Tie the two breaker handles.", "210.4(B)"),
        ({"neutral_pigtailed": "no"}, (REMAKE,), "Join the whites in a connector", "300.13(B)"),
        (
            {"handle_tie": "no", "neutral_pigtailed": "no"},
            (*TIE, REMAKE), "Tie the two breaker handles. Join the whites", "210.4(B)",
        ),
        (
            {"handle_tie": "no", "neutral_pigtailed": "unknown"},
            TIE, "Tie the two breaker handles. Look in the source box whether the", "210.4(B)",
        ),
    ],
)  # fmt: skip
def test_what_is_missing_is_put_right(
    wrong: dict[str, str], remedies: tuple[Remedy, ...], starts: str, where: str
) -> None:
    """TR-07; the pigtail itself is in the takeoff, as three cables meet."""
    found = one(MULTIWIRE, job(**{**SHARED, **wrong}))
    assert (found.verdict, found.remedies) == ("fail", remedies)
    assert found.remedy.startswith(starts)
    assert found.remedy.endswith(OFF)
    assert found.cite == f"NEC 2023 {where}"


@pytest.mark.parametrize(
    ("missing", "remedies", "says", "where"),
    [
        ({"handle_tie": "unknown"}, TIE, "Tie the two breaker handles.", "210.4(B)"),
        ({"neutral_pigtailed": "unknown"}, (REMAKE,), "Join the whites", "300.13(B)"),
        ({"hots_on_two_legs": "unknown"}, (), "Measure from hot to hot", "300.13(B)"),
        ({"new_on_hot": "unknown"}, (), "Say which hot the new outlet takes", "300.13(B)"),
    ],
)
def test_what_nobody_looked_at_may_be_missing(
    missing: dict[str, str], remedies: tuple[Remedy, ...], says: str, where: str
) -> None:
    found = one(MULTIWIRE, job(**{**SHARED, **missing}))
    assert (found.verdict, found.remedies) == ("unknown", remedies)
    assert found.remedy.startswith(says)
    assert found.cite == f"NEC 2023 {where}"


def test_what_is_put_right_does_not_hide_what_nobody_knows() -> None:
    """XT-10: whites that are joined, a tie that is there and a known leg, each asked for."""
    wrong = {"neutral_pigtailed": "no", "handle_tie": "unknown", "new_on_hot": "unknown"}
    found = one(MULTIWIRE, job(**{**SHARED, **wrong}))
    assert (found.verdict, found.remedies) == ("fail", (REMAKE,))
    assert "Look in the panel for a handle tie. Say which hot" in found.remedy


@pytest.mark.parametrize("hot", ["black", "red", "both"])
def test_either_hot_will_do(hot: str) -> None:
    assert one(MULTIWIRE, job(**{**SHARED, "new_on_hot": hot})).verdict == "pass"


def test_a_tie_that_is_missing_and_legs_nobody_measured() -> None:
    found = one(MULTIWIRE, job(**{**SHARED, "handle_tie": "no", "hots_on_two_legs": "unknown"}))
    assert (found.verdict, found.remedies) == ("fail", TIE)
    assert "Measure from hot to hot: two legs show double the usual voltage" in found.remedy


@pytest.mark.parametrize("tie", ["yes", "no", "unknown"])
def test_both_hots_on_one_leg_stop_the_bid(tie: str) -> None:
    found = one(MULTIWIRE, job(**{**SHARED, "handle_tie": tie, "hots_on_two_legs": "no"}))
    assert (found.verdict, found.remedies, found.cite) == ("fail", (), "NEC 2023 210.4(B)")
    assert found.remedy.startswith("Both hots are on one leg, so the white carries the sum")


def test_terminals_that_are_remade_anyway_are_remade_once() -> None:
    found = {"push_in_terminals": "yes"}
    raw = job(**{**SHARED, "neutral_pigtailed": "no"}, found=found)
    assert one(MULTIWIRE, raw).remedies == ()
    assert one(TERMINALS, raw, "old").remedies == (REMAKE,)


@pytest.mark.parametrize(
    ("tie", "expected", "remedies"),
    [("yes", "pass", ()), ("no", "fail", TIE), ("unknown", "unknown", TIE)],
)
def test_two_circuits_on_one_receptacle(
    tie: str, expected: str, remedies: tuple[Remedy, ...]
) -> None:
    """TR-05."""
    found = one(MULTIWIRE, job(handle_tie=tie, found={"tab_removed": "yes"}), "old")
    assert (found.verdict, found.remedies, found.cite) == (expected, remedies, "NEC 2023 210.7")
    assert found.figures == f"two circuits on one receptacle; handle tie: {tie}"
    assert found.remedy.endswith("Turn both off before you touch the device.")
    assert found.remedy.startswith("Tie the two") == (expected != "pass")


def test_a_split_receptacle_that_may_be_half_switched() -> None:
    found = one(MULTIWIRE, job(found={"tab_removed": "yes", "half_switched": "unknown"}), "old")
    assert (found.verdict, found.cite, found.remedies) == ("unknown", "NEC 2023 210.7", ())
    assert found.figures == (
        "the tab of the receptacle is broken off: a switched half, or two circuits"
    )
    assert found.remedy.startswith("Count the hots on it")


@pytest.mark.parametrize(
    ("found", "circuit"),
    [
        ({"tab_removed": "yes", "half_switched": "yes"}, {}),
        ({"tab_removed": "no"}, {}),
        ({"tab_removed": "unknown"}, {}),
        ({"tab_removed": "yes"}, SHARED),
    ],
    ids=["half switched", "whole", "not looked at", "the circuit speaks for it"],
)
def test_no_word_of_two_circuits(found: dict[str, str], circuit: dict[str, str]) -> None:
    assert list(findings(MULTIWIRE, job(found=found, **circuit))) == ["circuit"]


@pytest.mark.parametrize("device", ["switch", "three-way switch"])
def test_the_white_of_a_switch_loop_is_a_hot(device: str) -> None:
    """CS-25."""
    raw = job(old={"device": device}, found={"neutral_bundle": "no"})
    found = one(WHITE, raw, "old")
    assert (found.verdict, found.cite) == ("note", "NEC 2023 200.7(C)(1)")
    assert found.figures == "a switch loop: the white in this box is a hot wire"
    assert found.remedy == "Mark the white with tape or paint at every visible end as a hot wire."


@pytest.mark.parametrize(
    ("old", "bundle"), [("switch", "yes"), ("switch", "unknown"), ("receptacle", "no")]
)
def test_no_loop_no_note(old: str, bundle: str) -> None:
    assert findings(WHITE, job(old={"device": old}, found={"neutral_bundle": bundle})) == {}


@pytest.mark.parametrize(
    ("old", "new", "cable", "subjects"),
    [
        ("luminaire", "switch", "12-2", ["run 1"]),
        ("luminaire", "three-way switch", "12-2", ["run 1"]),
        ("luminaire", "switch", "12-3", []),
        ("luminaire", "receptacle", "12-2", []),
        ("receptacle", "switch", "12-2", []),
    ],
)
def test_a_new_loop_from_a_light(old: str, new: str, cable: str, subjects: list[str]) -> None:
    raw = job(old={"device": old}, new={"device": new}, run={"cable": cable})
    assert list(findings(WHITE, raw)) == subjects


def test_the_words_of_a_new_loop() -> None:
    found = one(WHITE, job(old={"device": "luminaire"}, new={"device": "switch"}), "run 1")
    assert found.figures == "12-2 from a light to a switch: its white is a hot wire"
    assert found.remedy.startswith("Use the white for the supply to the switch")
    assert found.remedy.endswith(
        "as a hot wire. The switch box gets no neutral this way; three-wire cable brings one."
    )
    assert (found.verdict, found.cite) == ("note", "NEC 2023 200.7(C)(1)")
