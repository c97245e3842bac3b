"""Free conductor at boxes: NEC 300.14 and 334.19 as in electrical.md CI-06, CI-07."""

from __future__ import annotations

import pytest

from tests.rules.cable_case import findings, job, one

RULE = "free-conductor"


@pytest.mark.parametrize(
    ("tail", "verdict"), [("12 in", "pass"), ("6-1/4 in", "pass"), ("6-3/16 in", "fail")]
)
def test_tail_against_six_inches_and_the_sheath(tail: str, verdict: str) -> None:
    found = one(RULE, job(run={"tail": tail}, old={"depth": "2-3/4 in"}))
    assert (found.verdict, found.subject) == (verdict, "run 1")
    assert found.cite == "NEC 2023 300.14"


@pytest.mark.parametrize(("tail", "verdict"), [("7-1/4 in", "pass"), ("7 in", "fail")])
def test_a_deep_box_wants_three_inches_past_the_face(tail: str, verdict: str) -> None:
    # sheath ends 4 in behind the face: 4 + 3 = 7 in free, 1/4 in sheath (worked by hand)
    found = one(RULE, job(run={"tail": tail}, old={"contents": {"sheath_to_face": "4 in"}}))
    assert found.verdict == verdict


def test_a_shallow_box_keeps_the_six_inches() -> None:
    found = one(RULE, job(old={"contents": {"sheath_to_face": "2 in"}}))
    assert found.figures == "12 in left, least 6.25 in"


@pytest.mark.parametrize(("free", "verdict"), [("6 in", "pass"), ("5 in", "fail")])
def test_short_old_wires_are_told(free: str, verdict: str) -> None:
    found = findings(RULE, job(old={"contents": {"free": free}, "depth": "2-3/4 in"}))
    assert [(each.subject, each.verdict) for each in found] == [("run 1", "pass"), ("old", verdict)]


def test_a_short_tail_says_what_to_do() -> None:
    found = one(RULE, job(run={"tail": "6 in"}))
    assert found.remedy == "Leave a longer tail, or lengthen short old wires with pigtails."
    assert found.blocking


@pytest.mark.parametrize(
    ("depth", "tail", "verdict"),
    [
        ("3 in", "6-1/4 in", "pass"),
        ("3-1/4 in", "6-1/4 in", "unknown"),
        ("3-1/4 in", "6-1/2 in", "pass"),
        ("unknown", "6-11/16 in", "unknown"),
        ("unknown", "6-3/4 in", "pass"),
        ("unknown", "6-3/16 in", "fail"),
    ],
)
def test_a_sheath_that_nobody_measured_ends_at_the_back_of_the_box(
    depth: str, tail: str, verdict: str
) -> None:
    """Depth + 3 in past the face + 1/4 in sheath; the deepest box of the table is 3-1/2 in."""
    found = one(RULE, job(run={"tail": tail}, old={"depth": depth}))
    assert found.verdict == verdict
    if verdict == "unknown":
        assert found.remedy.startswith("Measure from the end of the sheath to the face")


def test_the_words_of_a_deep_box() -> None:
    found = one(RULE, job(run={"tail": "6-1/4 in"}, old={"depth": "unknown"}))
    assert found.figures == (
        "6.25 in left, least 6.25 in, and 6.75 in for a box as deep as this one may be"
    )
