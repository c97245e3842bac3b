"""Rules of the source, word for word, where the other tests look at the start of what is said."""

from __future__ import annotations

from typing import Any

import pytest

from estimator.rules.source_rules import fed_from
from tests.rules.circuit_case import facts, job, one
from tests.rules.told import Told, told

LIVE = "the purpose of the job; NEC 2023 210.52"
FIND_HOT = (
    "Turn every switch in and near the room off and test the source: it must stay live. Look"
    " whether the tab between the two brass screws is broken off."
)
DWELLING = "NEC 2023 210.25"


def test_half_of_the_receptacle_is_switched() -> None:
    found = one("switched-source", job(found={"half_switched": "yes"}), "old")
    assert told(found) == Told(
        "note",
        "one half of the receptacle goes with a switch, the other stays live",
        LIVE,
        "Take the new cable from the half that stays live, and test it with switches off.",
    )


def test_nobody_has_said_whether_it_stays_live() -> None:
    found = one("switched-source", job(found={"always_live": "unknown"}), "old")
    words = "nobody has said whether the source stays live with every switch off"
    assert told(found) == Told("unknown", words, LIVE, FIND_HOT)


def test_one_more_light_on_the_same_switch() -> None:
    raw = job(found={"always_live": "no"}, new={"device": "luminaire"})
    assert told(one("switched-source", raw, "old")) == Told(
        "note",
        "the source dies with a switch",
        LIVE,
        "The new light goes on and off with the old one. If that is not wanted, find a box that"
        " stays live.",
    )


def test_a_joint_outside_a_box() -> None:
    found = one("splice-box", job(run={"splice_without_box": "yes"}), "run 1")
    assert found.remedy == (
        "Run the cable in one piece from box to box, or put a box with a cover at the joint,"
        " within reach. A listed connector for cable is for repair in closed walls only."
    )


def test_nobody_has_said_what_the_circuit_was_put_in_for() -> None:
    assert told(one("other-dwelling", job(kind="unknown"))) == Told(
        "unknown",
        "nobody has said what the circuit was put in for",
        DWELLING,
        "Turn the breaker off and list all that goes dead. It must be this dwelling's own, and"
        " must not be there for one appliance.",
    )


def fork(*devices: str) -> dict[str, Any]:
    """The old box feeding one new box, from which each further one is fed by itself."""
    raw = job(new={"device": devices[0]})
    for number, device in enumerate(devices[1:], start=2):
        raw["boxes"].append({"id": f"new{number}", "device": device})
        run = {**raw["runs"][0], "id": str(number), "from": "new", "to": f"new{number}"}
        raw["runs"].append(run)
    return raw


def test_each_arm_of_a_fork_is_found_to_its_end() -> None:
    raw = fork("receptacle", "receptacle", "switch")
    for start in ("new2", "new3"):
        raw["boxes"].append({"id": f"{start}b", "device": "luminaire"})
        run = {**raw["runs"][0], "id": f"{start}b", "from": start, "to": f"{start}b"}
        raw["runs"].append(run)
    known = facts(raw)
    found = {box.id for box in fed_from(known, known.boxes["old"])}
    assert found == {"new", "new2", "new3", "new2b", "new3b"}


@pytest.mark.parametrize(("device", "verdict"), [("luminaire", "note"), ("receptacle", "fail")])
def test_a_receptacle_at_the_end_of_an_arm_dies_with_the_switch(device: str, verdict: str) -> None:
    raw = fork("luminaire", "luminaire", "luminaire")
    raw["boxes"][0]["contents"]["always_live"] = "no"
    raw["boxes"].append({"id": "end", "device": device})
    raw["runs"].append({**raw["runs"][0], "id": "9", "from": "new2", "to": "end"})
    assert one("switched-source", raw, "old").verdict == verdict
