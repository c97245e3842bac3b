"""Lines that a changed plan brings, and the finding they name; arc-fault words where rooms vary."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import Any

import pytest

from estimator.rules.records import Finding, RemedyChange
from estimator.rules.remedy_marks import with_marks
from estimator.takeoff.records import PartLine, Takeoff, TaskLine
from tests.rules.place_case import finding, inside, job
from tests.rules.told import told
from tests.rules.wood_case import facts
from tests.rules.wood_case import job as wood_job

AFCI = "afci-extension"
KNOWN = facts(wood_job())
RUNS = KNOWN.survey.runs
NONE = replace(KNOWN.takeoff, parts=(), tasks=())


def found(what: Any, subject: str, title: str = "Wire") -> Finding:
    """A made-up finding whose remedy plans something differently."""
    change = (RemedyChange(what, subject, "12-2"),)
    return Finding(title.lower(), "x", "fail", "", "", "", title=title, remedies=change)


def part(where: str, quantity: int = 1, remedy: str = "") -> PartLine:
    return PartLine("P01", "cable", "cable-12-2", "", Decimal(quantity), "ft", where, "2 + 3", "",
                    remedy)  # fmt: skip


def task(where: str, quantity: int = 1) -> TaskLine:
    return TaskLine("W01", "rough-in", "pull-cable", Decimal(quantity), "ft", where, "2 + 3", "")


def marks(takeoff: Takeoff, before: Takeoff, *findings: Finding) -> list[str]:
    """The remedy that each line names."""
    marked = with_marks(takeoff, before, findings, RUNS)
    return [each.remedy for each in marked.parts] + [each.remedy for each in marked.tasks]


@pytest.mark.parametrize(
    ("where", "named"),
    [
        ("run 1", "wire:x"),
        ("run 1, run 2", "wire:x"),
        ("run 2", ""),
        ("box old", "wire:x"),
        ("box new", "wire:x"),
        ("box far", ""),
    ],
)
def test_another_cable_is_felt_on_its_run_and_in_both_boxes(where: str, named: str) -> None:
    takeoff = replace(NONE, parts=(part(where),), tasks=(task(where),))
    assert marks(takeoff, NONE, found("cable", "1")) == [named, named]


def test_the_cable_of_another_run_is_not_felt_here() -> None:
    takeoff = replace(NONE, parts=(part("box old"), part("run 1")))
    assert marks(takeoff, NONE, found("cable", "2")) == ["", ""]


@pytest.mark.parametrize("what", ["device", "box"])
@pytest.mark.parametrize(("where", "named"), [("box new", "wire:x"), ("run new", "")])
def test_a_device_or_a_box_is_felt_in_its_box(what: str, where: str, named: str) -> None:
    takeoff = replace(NONE, parts=(part(where),))
    assert marks(takeoff, NONE, found(what, "new")) == [named]


def test_lines_that_were_there_or_name_a_finding_are_left_alone() -> None:
    old, new, named = part("run 1"), part("run 1", 2), part("run 1", 3, "other:y")
    takeoff = replace(NONE, parts=(old, new, named), tasks=(task("run 1"), task("run 1", 2)))
    before = replace(NONE, parts=(old,), tasks=(task("run 1"),))
    assert marks(takeoff, before, found("cable", "1")) == ["", "wire:x", "other:y", "", "wire:x"]


def test_the_first_finding_that_bears_on_a_place_is_named() -> None:
    takeoff = replace(NONE, parts=(part("box new"),))
    both = (found("device", "new", "Socket"), found("cable", "1"))
    assert marks(takeoff, NONE, *both) == ["socket:x"]


def test_the_reason_names_the_rule() -> None:
    takeoff = replace(NONE, parts=(part("run 1"),), tasks=(task("run 1"),))
    marked = with_marks(takeoff, NONE, (found("cable", "1", "Wire Size"),), RUNS)
    assert marked.parts[0].reason == "2 + 3; remedy: wire size"
    assert marked.tasks[0].reason == "2 + 3; remedy: wire size"


def test_arc_fault_in_rooms_of_unknown_use() -> None:
    raw = job("that room", old={"room": "this room"}, circuit={"protection": None})
    del raw["circuit"]["protection"]
    said = told(finding(AFCI, raw, "circuit"))
    assert said.verdict == "unknown"
    assert said.figures == (
        "may be a listed room: this room (its use is unknown), that room (its use is unknown);"
        " nobody has looked for arc-fault protection upstream"
    )
    assert said.remedy.startswith(
        "Say what the room is used for, and ask the inspector if it is listed. Look at the breaker"
        " for a test button and the word arc-fault or AFCI. Fit an outlet-type"
    )


def test_arc_fault_not_found_upstream() -> None:
    said = told(finding(AFCI, inside("bedroom"), "circuit"))
    assert (said.verdict, said.cite) == ("fail", "NEC 2023 210.12(E)")
    assert said.figures == "wiring added in bedroom; no arc-fault protection upstream"


def test_arc_fault_and_short_wire_with_a_new_outlet() -> None:
    raw = inside("bedroom")
    raw["runs"][0]["legs"][0]["length"] = "5 ft"
    assert finding(AFCI, raw, "circuit").figures == (
        "wiring added in bedroom; no arc-fault protection upstream; short wire (72 in) is free"
        " only where no outlet is added"
    )


def test_arc_fault_receptacle_in_the_source_box() -> None:
    raw = inside("bedroom", old={"device": "afci receptacle"})
    assert told(finding(AFCI, raw, "circuit")) == (
        "unknown",
        "wiring added in bedroom; box old holds an arc-fault receptacle",
        "NEC 2023 210.12(E)",
        "It counts where it is the first receptacle of the circuit: find out.",
    )


def test_arc_fault_wire_of_unknown_length_before_the_device() -> None:
    found = finding(AFCI, inside("bedroom"), "home run")
    assert found.figures == (
        "if the arc-fault receptacle relies on a partner breaker: at most 70 ft of size 12"
        " between the two; here the length is unknown"
    )
    assert found.remedy == "Measure or estimate the wire from the breaker to the source."


@pytest.mark.parametrize(
    ("change", "rule", "in_force"),
    [("off", AFCI, False), ("note", AFCI, False), ("figure", AFCI, True), ("off", "groove", True)],
)
def test_a_rule_in_force(change: str, rule: str, in_force: bool) -> None:
    amendment = {"rule": rule, "change": change, "reason": "city order 7"}
    if change == "figure":
        amendment |= {"figure": "afci-lengthened", "value": "72"}
    assert facts(wood_job(amendments=[amendment])).is_in_force(AFCI) is in_force


def test_arc_fault_wire_within_its_length() -> None:
    found = finding(AFCI, inside("bedroom", circuit={"existing_length": "70 ft"}), "home run")
    assert found.figures.endswith("; here 70 ft to the source, within")
    assert (found.verdict, found.remedy) == ("note", "")
