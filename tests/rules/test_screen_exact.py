"""The screening itself: ranks, local changes, decisions and remedies, each as a whole record."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import Any

import pytest

from estimator.pricing.stock import stock_of
from estimator.rules.records import Finding, RemedyChange, RemedyPart, RemedyTask, Verdict
from estimator.rules.registry import FUNCTIONS, rule
from estimator.rules.remedies import changed_survey, is_taken, with_remedies
from estimator.rules.screen import by_rank, decided, screen
from estimator.takeoff.records import PartLine, TaskLine
from tests.rules.wood_case import BOOKS, facts, job

Raw = dict[str, Any]
STOCK = stock_of(BOOKS)
TIE = RemedyPart("protection", "plate-tie", Decimal("2.0"), "ea")
FIT = RemedyTask("rough-in", "fit-plate-tie", Decimal("2.0"), "ea")
ODD = RemedyPart("protection", "no-such-item", Decimal(1), "ea")


def finding(verdict: Verdict = "fail", **changes: Any) -> Finding:
    """A made-up finding about one box."""
    made = Finding("plate-cut", "a", verdict, "2 of 1", "IRC", "nec-2023", title="Cut Plates")
    return replace(made, **changes)


@pytest.mark.parametrize(
    ("found", "stops"),
    [
        (finding(blocking=True), True),
        (finding(), False),
        (finding("unknown", blocking=True), False),
        (finding(blocking=True, accepted="seen"), False),
        (finding(blocking=True, remedied=True), False),
        (finding(blocking=True, declined="no"), True),
    ],
)
def test_what_stops_the_bid(found: Finding, stops: bool) -> None:
    assert found.stops_the_bid is stops


def test_a_finding_is_named_by_rule_and_subject() -> None:
    assert finding().finding_id == "plate-cut:a"


def test_an_id_serves_one_function_only() -> None:
    with pytest.raises(ValueError, match=r"^two functions for the rule plate-cut$"):
        rule("plate-cut")(FUNCTIONS["groove"])
    assert FUNCTIONS["plate-cut"].__name__ == "plate_cut"


def test_worst_first() -> None:
    stops = finding(subject="stops", blocking=True)
    fails, fixed = finding(subject="fails"), finding(subject="fixed", remedied=True)
    rest = [finding(verdict, subject=verdict) for verdict in ("unknown", "note", "pass")]
    unsorted = [rest[2], rest[1], rest[0], fixed, fails, stops]
    ranked = [each.subject for each in by_rank(unsorted)]
    assert ranked == ["stops", "fails", "fixed", "unknown", "note", "pass"]


def screened(**changes: Any) -> dict[str, Finding]:
    return {each.finding_id: each for each in screen(facts(job(**changes)))}


def amendment(change: str, **keys: str) -> list[Raw]:
    return [{"rule": "plate-cut", "change": change, "reason": "city order 7", **keys}]


@pytest.mark.parametrize(
    ("change", "keys", "subject", "figures"),
    [
        ("off", {}, "plate-cut", "the rule plate-cut is not checked here"),
        ("note", {}, "plate-cut", "the rule plate-cut is only a note here"),
        (
            "figure",
            {"figure": "plate-cut", "value": "40"},
            "plate-cut",
            "the rule plate-cut has plate-cut = 40 here",
        ),
        (
            "figure",
            {"figure": "plate-tie", "value": "0.1"},
            "plate-tie",
            "the rule plate-cut has plate-tie = 0.1 here",
        ),
    ],
)
def test_a_local_change_is_said(change: str, keys: Raw, subject: str, figures: str) -> None:
    found = screened(amendments=amendment(change, **keys))[f"local-amendment:{subject}"]
    assert (found.verdict, found.figures, found.cite) == ("note", figures, "local: city order 7")


def cut_plates(**changes: Any) -> Finding | None:
    """The finding on a run that goes up through a bearing wall's plates, cut over half."""
    run = {"way": "over", "level": "attic", "method": "bored", "hole": "2 in"}
    attic = [{"kind": "attic", "accessible": "yes", "height": "100 in"}]
    found = screened(run=run, levels=attic, wall={"bearing": "yes"}, **changes)
    return found.get("plate-cut:run 1")


def test_without_a_local_change_the_rule_fails_and_blocks() -> None:
    found = cut_plates()
    assert found is not None
    assert (found.verdict, found.blocking, bool(found.remedies)) == ("fail", True, True)


def test_a_rule_that_is_off_says_nothing() -> None:
    assert cut_plates(amendments=amendment("off")) is None


def test_a_rule_that_is_a_note_never_fails() -> None:
    found = cut_plates(amendments=amendment("note"))
    assert found is not None
    assert (found.verdict, found.blocking, found.remedies) == ("note", False, ())


def test_a_note_leaves_a_pass_alone() -> None:
    change = [{"rule": "wire-material", "change": "note", "reason": "city order 7"}]
    found = screened(amendments=change, circuit={"material": "copper"})["wire-material:circuit"]
    assert found.verdict == "pass"


@pytest.mark.parametrize(
    ("decision", "accepted", "declined"),
    [("accept", "seen by the office", ""), ("decline remedy", "", "seen by the office")],
)
def test_a_decision_is_kept_with_its_reason(decision: str, accepted: str, declined: str) -> None:
    each = {"finding": "plate-cut:a", "reason": "seen by the office", "decision": decision}
    other = {"finding": "plate-cut:b", "reason": "another", "decision": decision}
    known = facts(job(acceptances=[other, each]))
    found = decided(known, finding())
    assert (found.accepted, found.declined) == (accepted, declined)


@pytest.mark.parametrize(
    ("found", "taken", "in_bad_case"),
    [
        (finding(remedies=(TIE,)), True, True),
        (finding("unknown", remedies=(TIE,)), False, True),
        (finding("note", remedies=(TIE,)), False, False),
        (finding(), False, False),
        (finding(remedies=(TIE,), accepted="seen"), False, False),
        (finding(remedies=(TIE,), declined="no"), False, False),
    ],
)
def test_which_remedies_are_taken(found: Finding, taken: bool, in_bad_case: bool) -> None:
    assert (is_taken(found), is_taken(found, bad_case=True)) == (taken, in_bad_case)


def test_changes_reach_the_run_and_the_box_they_name() -> None:
    survey = facts(job()).survey
    changes = (RemedyChange("cable", "1", "12-2"), RemedyChange("device", "new", "gfci receptacle"))
    changed = changed_survey(survey, (finding(remedies=(TIE, *changes)),))
    assert [run.cable for run in changed.runs] == ["12-2"]
    assert [box.device for box in changed.boxes] == [survey.boxes[0].device, "gfci receptacle"]


def test_changes_of_others_leave_a_run_and_a_box_alone() -> None:
    survey = facts(job()).survey
    changes = (RemedyChange("cable", "new", "12-2"), RemedyChange("device", "1", "switch"))
    assert changed_survey(survey, (finding(remedies=changes),)) == survey


def test_parts_alone_change_no_survey() -> None:
    survey = facts(job()).survey
    assert changed_survey(survey, (finding(remedies=(TIE, FIT)),)) is survey


def test_a_remedy_becomes_lines_at_the_end() -> None:
    takeoff = facts(job()).takeoff
    found = with_remedies(takeoff, (finding(remedies=(TIE, FIT)),), STOCK)
    number, work = len(takeoff.parts) + 1, len(takeoff.tasks) + 1
    assert found.parts[-1] == PartLine(
        f"P{number:02d}", "protection", "plate-tie", STOCK.descriptions["plate-tie"], Decimal(2),
        "ea", "a", "remedy: cut plates", "IRC", "plate-cut:a",
    )  # fmt: skip
    assert found.tasks[-1] == TaskLine(
        f"W{work:02d}", "rough-in", "fit-plate-tie", Decimal(2), "ea", "a",
        "remedy: cut plates", "IRC", (), "plate-cut:a",
    )  # fmt: skip
    assert found.parts[:-1] == takeoff.parts
    assert found.tasks[:-1] == takeoff.tasks


@pytest.mark.parametrize(("remedy", "parts", "tasks"), [(TIE, 1, 0), (FIT, 0, 1)])
def test_a_part_or_a_task_alone(remedy: RemedyPart | RemedyTask, parts: int, tasks: int) -> None:
    takeoff = facts(job()).takeoff
    found = with_remedies(takeoff, (finding(remedies=(remedy,)),), STOCK)
    assert len(found.parts) - len(takeoff.parts) == parts
    assert len(found.tasks) - len(takeoff.tasks) == tasks


def test_an_item_without_words_on_file_is_named_by_its_key() -> None:
    found = with_remedies(facts(job()).takeoff, (finding(remedies=(ODD,)),), STOCK)
    assert found.parts[-1].description == "no such item"


def test_a_change_alone_adds_no_line() -> None:
    takeoff = facts(job()).takeoff
    change = RemedyChange("cable", "1", "12-2")
    assert with_remedies(takeoff, (finding(remedies=(change,)),), STOCK) is takeoff
