"""Free conductor at boxes: NEC 300.14 and 334.19 as in electrical.md CI-06, CI-07."""

from __future__ import annotations

import pytest

from tests.rules.cable_case import findings, job, one

RULE = "free-conductor"


@pytest.mark.parametrize(
    ("tail", "verdict"), [("12 in", "pass"), ("6-1/4 in", "pass"), ("6-3/16 in", "fail")]
)
def test_tail_against_six_inches_and_the_sheath(tail: str, verdict: str) -> None:
    found = one(RULE, job(run={"tail": tail}))
    assert (found.verdict, found.subject) == (verdict, "run 1")
    assert found.cite == "NEC 2023 300.14"


@pytest.mark.parametrize(("tail", "verdict"), [("7-1/4 in", "pass"), ("7 in", "fail")])
def test_a_deep_box_wants_three_inches_past_the_face(tail: str, verdict: str) -> None:
    # sheath ends 4 in behind the face: 4 + 3 = 7 in free, 1/4 in sheath (worked by hand)
    found = one(RULE, job(run={"tail": tail}, old={"contents": {"sheath_to_face": "4 in"}}))
    assert found.verdict == verdict


def test_a_shallow_box_keeps_the_six_inches() -> None:
    found = one(RULE, job(old={"contents": {"sheath_to_face": "2 in"}}))
    assert found.figures == "12 in left, least 6.25"


@pytest.mark.parametrize(("free", "verdict"), [("6 in", "pass"), ("5 in", "fail")])
def test_short_old_wires_are_told(free: str, verdict: str) -> None:
    found = findings(RULE, job(old={"contents": {"free": free}}))
    assert [(each.subject, each.verdict) for each in found] == [("run 1", "pass"), ("old", verdict)]


def test_a_short_tail_says_what_to_do() -> None:
    found = one(RULE, job(run={"tail": "6 in"}))
    assert found.remedy == "Leave a longer tail, or lengthen short old wires with pigtails."
    assert found.blocking
