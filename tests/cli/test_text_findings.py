"""What lists say of findings: remedy taken, declined, accepted; what is included; the tests."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from estimator.outputs.finding_words import (
    SECOND,
    counts,
    decisions,
    held_against,
    included,
    verdict_word,
)
from estimator.outputs.text_bid import bid_summary
from estimator.outputs.text_check import check_text, list_of_tests
from estimator.outputs.text_job import assumption_lines
from estimator.outputs.text_layout import COLUMNS
from estimator.outputs.text_takeoff import takeoff_text
from estimator.pricing.records import Bid
from estimator.rules.records import Finding, RemedyChange
from estimator.survey.records import Job
from estimator.takeoff.records import Assumption
from tests.cli.made_bid import FINDINGS, REMEDIES, TAKEOFF, made_bid

WITHIN, UNKNOWN, FAILS = FINDINGS
PUT_RIGHT = replace(FAILS, remedies=REMEDIES, remedied=True)
ACCEPTED = replace(FAILS, accepted="The owner replaces it.")
DECLINED = replace(FAILS, remedies=REMEDIES, declined="No room for it.")
MAY_TAKE = replace(UNKNOWN, remedies=REMEDIES)


@pytest.mark.parametrize(
    ("finding", "want"),
    [
        (WITHIN, []),
        (FAILS, []),
        (UNKNOWN, []),
        (MAY_TAKE, [SECOND]),
        (replace(MAY_TAKE, accepted="Seen."), ["Accepted in the job file: Seen."]),
        (replace(MAY_TAKE, declined="No."), ["Remedy declined in the job file: No."]),
        (ACCEPTED, ["Accepted in the job file: The owner replaces it."]),
        (DECLINED, ["Remedy declined in the job file: No room for it."]),
        (
            PUT_RIGHT,
            [
                "Changed in this bid: box new gets a receptacle with ground-fault protection.",
                "Its remedy is in the takeoff, marked box-fill:source.",
            ],
        ),
        (
            replace(PUT_RIGHT, remedies=(RemedyChange("cable", "1", "12-2"),)),
            ["Changed in this bid: run 1 is 12-2 cable.",
             "Its remedy is in the takeoff, marked box-fill:source."],
        ),
        (
            replace(PUT_RIGHT, remedies=(RemedyChange("box", "lamp", "fan box"),)),
            ["Changed in this bid: box lamp is one made for paddle fans.",
             "Its remedy is in the takeoff, marked box-fill:source."],
        ),
    ],
)  # fmt: skip
def test_what_was_decided_is_said_with_its_reason(finding: Finding, want: list[str]) -> None:
    assert list(decisions(finding)) == want


@pytest.mark.parametrize(
    ("finding", "want"),
    [(FAILS, "FAILS"), (PUT_RIGHT, "PUT RIGHT"), (UNKNOWN, "NOT KNOWN"), (WITHIN, "within")],
)
def test_the_verdict_is_a_word(finding: Finding, want: str) -> None:
    assert verdict_word(finding) == want


@pytest.mark.parametrize(
    ("findings", "want"),
    [
        ((WITHIN,), "1 finding: 0 failed, 0 not known, 0 to note, 1 within."),
        ((FAILS, DECLINED), "2 findings: 2 failed, 0 not known, 0 to note, 0 within. "
                            "2 of them stop the bid."),
        ((PUT_RIGHT, ACCEPTED, UNKNOWN), "3 findings: 0 failed, 1 put right, 1 failed but "
                                         "accepted, 1 not known, 0 to note, 0 within."),
    ],
)  # fmt: skip
def test_findings_are_counted(findings: tuple[Finding, ...], want: str) -> None:
    assert counts(findings) == want


@pytest.mark.parametrize(
    ("changes", "want"),
    [
        ({}, "Held against NEC 2023 and IRC 2021, and"),
        ({"edition": "nec-2017", "building_edition": "irc-2015"}, "Held against NEC 2017 and IRC"),
        ({"country": "CA"}, "only this is on file: Wires in each box (Canada)."),
        ({"country": "GB"}, "No electrical rule of this country is on file."),
    ],
)
def test_the_rules_held_against_are_named(changes: dict[str, str], want: str) -> None:
    assert want in held_against(Job(id="1", title="Outlet", **changes))


def test_what_the_checks_put_into_the_bid_is_named_without_codes_or_costs() -> None:
    assert list(included(made_bid(findings=(PUT_RIGHT, ACCEPTED, WITHIN)))) == [
        "Wires in each box, source: box new gets a receptacle with ground-fault protection; "
        "deep box 22.5 in3."
    ]


def test_a_change_is_named_once_and_not_again_by_its_parts() -> None:
    changed = replace(PUT_RIGHT, remedies=(RemedyChange("cable", "1", "12-2"),))
    assert list(included(made_bid(findings=(changed,)))) == [
        "Wires in each box, source: run 1 is 12-2 cable."
    ]


def flat(lines: list[str]) -> str:
    assert max(map(len, lines)) < COLUMNS
    return " ".join(" ".join(lines).split())


def test_the_summary_says_what_is_included_because_of_the_checks() -> None:
    text = flat(bid_summary(made_bid(findings=(PUT_RIGHT, ACCEPTED))))
    assert "Included because of the checks" in text
    assert "- Wires in each box, source: box new gets a receptacle" in text


LEFT = Assumption(
    2, "Wires in each box, source", "accepted: The owner replaces it.", False,
    findings=("box-fill:source",), decided=True,
)  # fmt: skip


@pytest.mark.parametrize("lines_of", [bid_summary, check_text, takeoff_text])
def test_what_is_left_as_it_is_is_numbered_on_with_the_reason(
    lines_of: Callable[[Bid], list[str]],
) -> None:
    taken = replace(TAKEOFF, assumptions=(*TAKEOFF.assumptions, LEFT))
    text = flat(lines_of(made_bid(takeoff=taken)))
    assert "[ground-source:source] Found, and left as it is ---" in text
    said = "2. Wires in each box, source: accepted: The owner replaces it. [box-fill:source]"
    assert said in text


@pytest.mark.parametrize(
    ("changes", "want"),
    [
        ({}, "a: b"),
        ({"moves_price": True}, "a: b (moves the price)"),
        ({"moves_price": True, "in_second_total": True}, "a: b (in the second total)"),
        ({"findings": ("box-gap:A", "box-gap:B")}, "a: b [box-gap:A, box-gap:B]"),
    ],
)
def test_an_assumption_says_whether_it_moves_the_price(changes: dict[str, Any], want: str) -> None:
    line = replace(Assumption(1, "a", "b", False), **changes)
    assert assumption_lines([line])[-1].strip() == f"1. {want}"


def test_a_bid_without_remedies_has_no_such_heading() -> None:
    text = flat(bid_summary(made_bid()))
    assert "Included because" not in text
    assert "left as it is" not in text


def test_a_finding_is_shown_with_all_that_is_known_of_it() -> None:
    text = flat(check_text(made_bid(findings=(PUT_RIGHT,))))
    assert (
        "PUT RIGHT Wires in each box (box-fill:source) needs 20.0 in3, has 12.5 in3 "
        "[NEC 2023 314.16] -> Fit a deep box of 22.5 in3. Changed in this bid:"
    ) in text


@pytest.mark.parametrize(
    "want",
    [
        "[ ] Turn off: breaker of unknown rating",
        "[ ] Open and prove dead: source",
        "[ ] Test after the work: new",
        "[ ] Prove the tester on a live source, test, then prove it again.",
        "[ ] Then put a load on each new outlet.",
    ],
)
def test_the_list_of_tests_says(want: str) -> None:
    assert want in flat(list_of_tests(made_bid()))


def test_a_line_of_the_list_is_there_only_where_its_rule_asks() -> None:
    line = "Two hots share one neutral"
    asks = replace(UNKNOWN, rule="multiwire")
    assert line not in flat(list_of_tests(made_bid()))
    assert line in flat(list_of_tests(made_bid(findings=(asks,))))
