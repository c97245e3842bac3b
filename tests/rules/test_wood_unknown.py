"""Studs of which something is not known: load, depth, doubling, wood or steel."""

from __future__ import annotations

from typing import Any

import pytest

from tests.rules.wood_case import NOTCHED, TYPED, hole, job, notch, one


@pytest.mark.parametrize("wall", [{"bearing": "unknown"}, {"exterior": "unknown"}])
@pytest.mark.parametrize(
    ("rule", "cut", "verdict"),
    [
        ("stud-notch", notch("7/8 in"), "pass"),
        ("stud-notch", notch("15/16 in"), "unknown"),
        ("stud-notch", notch("1.4 in"), "unknown"),
        ("stud-notch", notch("1-7/16 in"), "fail"),
        ("stud-hole", hole("1.4 in"), "pass"),
        ("stud-hole", hole("1-7/16 in"), "unknown"),
        ("stud-hole", hole("2.1 in"), "unknown"),
        ("stud-hole", hole("2-1/8 in"), "fail"),
    ],
)
def test_unknown_bearing_is_judged_by_both_limits(
    wall: dict[str, str], rule: str, cut: dict[str, Any], verdict: str
) -> None:
    cut["walls"][0] |= {"bearing": "no"} | wall
    found = one(rule, cut)
    assert found.verdict == verdict
    if verdict == "unknown":
        assert "Find out whether the wall bears load" in found.remedy


@pytest.mark.parametrize(
    ("rule", "cut", "verdict"),
    [
        # slimmest 2.5 in, deepest 7.25 in: 40 % is 1 and 2.9, 60 % is 1.5 and 4.35
        ("stud-notch", notch("1 in"), "pass"),
        ("stud-notch", notch("1-1/16 in"), "unknown"),
        ("stud-notch", notch("2.9 in"), "unknown"),
        ("stud-notch", notch("3 in"), "fail"),
        ("stud-hole", hole("1-1/4 in"), "pass"),
        ("stud-hole", hole("1-5/16 in"), "unknown"),
        ("stud-hole", hole("1.5 in"), "unknown"),
        ("stud-hole", hole("4.35 in"), "unknown"),
        ("stud-hole", hole("4.36 in"), "fail"),
    ],
)
def test_unknown_depth_is_judged_by_the_slimmest_and_the_deepest(
    rule: str, cut: dict[str, Any], verdict: str
) -> None:
    cut["walls"][0]["stud"] = "unknown"
    found = one(rule, cut)
    assert found.verdict == verdict
    if verdict == "unknown":
        assert found.remedy == "Measure the depth of the studs."


def test_a_typed_run_knows_neither_load_nor_doubling() -> None:
    typed = {**TYPED, "stud_depth": "3.5 in"}
    assert one("stud-hole", job(run=typed)).verdict == "pass"
    found = one("stud-hole", job(run={**typed, "hole": "1-1/2 in"}))
    assert found.verdict == "unknown"
    assert found.remedy == (
        "Find out whether the wall bears load: what stands on it, which way the joists run."
        " Look whether the studs are doubled."
    )


def test_a_typed_run_may_say_that_its_studs_are_doubled() -> None:
    typed = {**TYPED, "stud_depth": "3.5 in", "hole": "1-1/2 in"}
    assert one("stud-hole", job(run={**typed, "doubled_in_a_row": 2})).verdict == "pass"
    assert one("stud-hole", job(run={**typed, "doubled_in_a_row": 3})).verdict == "unknown"


def test_the_words_of_a_pass_in_spite_of_what_is_not_known() -> None:
    wall = {"bearing": "unknown", "stud": None}
    assert one("stud-hole", hole("3/4 in", wall=wall)).figures == (
        "4 bored studs (load not known), hole 0.75 in: at most 1 in (40 % of 2.5 in),"
        " whether the wall bears load or not and whether the studs are of any usual depth;"
        " wood left at the edge 0.875 in, at least 0.625 in"
    )


def test_the_words_of_what_is_not_known() -> None:
    found = one("stud-hole", hole("1-1/2 in", wall={"bearing": "unknown"}))
    assert found.figures == (
        "4 bored studs (load not known), hole 1.5 in: at most 1-3/8 in (40 % of 3.5 in) or"
        " 2-1/16 in (60 % of 3.5 in), depending on what is not known;"
        " wood left at the edge 1 in, at least 0.625 in"
    )
    assert not found.blocking


def test_the_depth_of_a_notch_is_asked_for() -> None:
    found = one("stud-notch", job(run=NOTCHED))
    assert (found.verdict, found.remedy) == ("unknown", "Say how deep the notches will be.")
    assert found.figures == (
        "4 notched studs (no load): depth of the notch unknown,"
        " 1-3/8 in (40 % of 3.5 in) is within in any case"
    )


@pytest.mark.parametrize("size", ["3/4 in", "3 in"])
def test_studs_of_wood_or_steel(size: str) -> None:
    found = one("stud-hole", hole(size, wall={"framing": "unknown"}))
    assert found.verdict == "unknown"
    assert found.remedy == "Find out whether the studs are wood or steel; a magnet tells."


def test_an_unknown_among_unknown_framing_keeps_its_own_question() -> None:
    wall = {"framing": "unknown", "bearing": "unknown"}
    remedy = one("stud-hole", hole("1-1/2 in", wall=wall)).remedy
    assert remedy.startswith("Find out whether the wall bears load")
    assert remedy.endswith("a magnet tells.")
