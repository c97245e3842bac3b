"""Holes and notches in joists (IRC R502.8), shares worked by hand for a 2x8: 7.25 in deep.

A third is 2.41667 in, a sixth 1.20833, a quarter 1.8125; of a span of 144 in the middle
third is from 48 to 96.
"""

from __future__ import annotations

from typing import Any

import pytest

from tests.rules.wood_case import TYPED, findings, job, one

CITE = "IRC 2021 R502.8 (from memory: check)"
MAKER = "Ask the maker of the joists, or a designer, before anything is cut."


def bored(**changes: Any) -> dict[str, Any]:
    return job(
        members=[{"wall": "w", "kind": "joist", "at": "50 in", "depth": "7.25 in"} | changes]
    )


def notched(run: dict[str, Any] | None = None, **changes: Any) -> dict[str, Any]:
    member = {
        "wall": "w", "kind": "joist", "at": "50 in", "depth": "7.25 in", "span": "144 in",
        "hole_at": "12 in", "notch_depth": "1 in", "notch_length": "2 in", "thickness": "1.5 in",
    } | changes  # fmt: skip
    return job(run={"method": "notched"} | (run or {}), members=[member])


@pytest.mark.parametrize("method", ["bored", "fished"])
def test_a_hole_within(method: str) -> None:
    raw = bored()
    raw["runs"][0]["method"] = method
    found = one("joist-cut", raw)
    assert (found.verdict, found.subject, found.cite) == ("pass", "run 1", CITE)
    assert found.figures == (
        "joist 1, hole 0.75 in: at most 2-3/8 in in 7.25 in, 2 in of wood round it"
    )
    assert found.remedy.startswith("Bore at mid depth, 2 in from other holes and notches.")


def test_a_hole_too_large() -> None:
    found = one("joist-cut", bored(hole="2.42 in"))
    assert (found.verdict, found.blocking) == ("fail", True)
    assert found.remedy == "Use a smaller bit, or another way."


@pytest.mark.parametrize(
    ("edge", "verdict"),
    [("2 in", "pass"), ("1.99 in", "fail"), ("4.5 in", "pass"), ("4.51 in", "fail")],
)
def test_wood_above_and_below(edge: str, verdict: str) -> None:
    # 7.25 - 0.75 - 4.5 = 2
    raw = bored()
    raw["runs"][0]["edge"] = edge
    found = one("joist-cut", raw)
    assert found.verdict == verdict
    if verdict == "fail":
        assert found.figures.endswith(" in left at an edge")
        assert found.remedy == "Bore at mid depth."


@pytest.mark.parametrize(
    ("changes", "verdict", "words"),
    [
        ({}, "pass", "notch 1 in deep: at most 1-3/16 in (1/6 of 7.25 in)"),
        ({"notch_depth": "1.21 in"}, "fail", "notch 1.21 in deep: at most 1-3/16 in"),
        ({"notch_length": "2.42 in"}, "fail", "notch 2.42 in long: at most 2-3/8 in"),
        ({"hole_at": "0 in", "notch_depth": "1.8125 in"}, "pass", "1-13/16 in (1/4 of 7.25 in)"),
        ({"hole_at": "0 in", "notch_depth": "1.82 in"}, "fail", "1-13/16 in (1/4 of 7.25 in)"),
        ({"hole_at": "46 in"}, "pass", "notch 46 in from the end: none from 48 to 96 in"),
        ({"hole_at": "46.1 in"}, "fail", "none from 48 to 96 in, the middle 1/3 of the span"),
        ({"hole_at": "96 in"}, "pass", "none from 48 to 96 in"),
        ({"hole_at": "95.9 in"}, "fail", "none from 48 to 96 in"),
    ],
)
def test_a_notch(changes: dict[str, str], verdict: str, words: str) -> None:
    found = one("joist-cut", notched(**changes))
    assert found.verdict == verdict
    assert words in found.figures


@pytest.mark.parametrize(
    ("changes", "remedy"),
    [
        ({"notch_depth": "3 in"}, "Bore the joist instead, or notch less deep."),
        ({"notch_length": "3 in"}, "Make the notch shorter, or bore the joist."),
        ({"hole_at": "60 in"}, "Bore the joist instead, or notch nearer to its end."),
    ],
)
def test_what_to_do(changes: dict[str, str], remedy: str) -> None:
    assert one("joist-cut", notched(**changes)).remedy == remedy


@pytest.mark.parametrize(
    ("changes", "verdict", "remedy"),
    [
        ({"hole_at": "unknown"}, "unknown", "Say how far the notch is from the joist's"),
        ({"hole_at": "unknown", "notch_depth": "1.5 in"}, "unknown", "Say how far the notch is"),
        ({"hole_at": "unknown", "notch_depth": "1.82 in"}, "fail", "Bore the joist instead"),
        ({"span": "unknown"}, "unknown", "Say how far the notch is"),
        ({"notch_length": "unknown"}, "unknown", "Say how long the notch will be. Say how far"),
        ({"notch_depth": "unknown"}, "unknown", "Say how deep it will be."),
        ({"depth": "unknown"}, "unknown", "Measure the depth of the joist."),
    ],
)
def test_a_notch_with_something_unknown(changes: dict[str, str], verdict: str, remedy: str) -> None:
    found = one("joist-cut", notched(**changes))
    assert found.verdict == verdict
    assert found.remedy.startswith(remedy)


def test_a_notch_at_the_end_needs_no_span() -> None:
    changes = {"hole_at": "0 in", "span": "unknown", "notch_length": "unknown"}
    assert one("joist-cut", notched(**changes)).verdict == "pass"


def test_the_words_of_an_unknown_notch() -> None:
    assert one("joist-cut", notched(notch_depth="unknown", hole_at="0 in")).figures == (
        "joist 1: notch at most 1-13/16 in (1/4 of 7.25 in) deep, its depth is unknown"
    )
    assert "joist 1: length of the notch unknown, at most 2-3/8 in (1/3 of 7.25 in)" in (
        one("joist-cut", notched(notch_length="unknown")).figures
    )


def test_a_notch_of_the_run() -> None:
    found = one("joist-cut", notched({"notch_depth": "2 in"}, notch_depth="unknown"))
    assert (found.verdict, found.blocking) == ("fail", True)
    assert "notch 2 in deep" in found.figures


def test_a_joist_that_is_bored_and_notched() -> None:
    changes = {"notch_depth": "1 in", "notch_length": "2 in", "hole_at": "12 in", "span": "12 ft"}
    figures = one("joist-cut", bored(**changes)).figures
    assert "hole 0.75 in" in figures
    assert "notch 1 in deep" in figures
    assert "hole 1 in" in one("joist-cut", notched(hole="1 in")).figures
    assert "hole" not in one("joist-cut", notched()).figures


def test_an_engineered_joist_goes_by_its_maker() -> None:
    found = one("joist-cut", bored(engineered="yes", hole="5 in"))
    assert (found.verdict, found.remedy, found.blocking) == ("unknown", MAKER, False)
    assert found.figures == (
        "joist 1: engineered joist: nothing may be cut unless its maker or a designer allows it"
    )


def test_a_joist_of_unknown_kind() -> None:
    found = one("joist-cut", bored(engineered="unknown"))
    assert (found.verdict, found.remedy) == ("unknown", f"Look at the joist. {MAKER}")
    assert one("joist-cut", bored(engineered="unknown", hole="3 in")).verdict == "fail"


def test_two_joists_are_one_finding_worst_first() -> None:
    one_more = {"wall": "w", "kind": "joist", "at": "70 in", "depth": "5.5 in", "hole": "2 in"}
    raw = bored()
    raw["members"].append(one_more)
    found = one("joist-cut", raw)
    assert found.verdict == "fail"
    assert found.figures.startswith("joist 2, hole 2 in: at most 1-1/2 in in 5.5 in")


def test_a_joist_that_the_run_does_not_meet_is_not_judged() -> None:
    assert findings("joist-cut", bored(at="100 in")) == []


TYPED_JOISTS = {**TYPED, "legs": [{"go": "across", "length": "6 ft", "members": {"joist": 3}}]}


@pytest.mark.parametrize(
    ("run", "verdict", "words"),
    [
        ({}, "unknown", "3 joists: its depth is unknown"),
        ({"joist_depth": "7.25 in"}, "pass", "3 joists, hole 0.75 in: at most 2-3/8 in"),
        ({"joist_depth": "5.5 in", "hole": "1.51 in"}, "fail", "3 joists, hole 1.51 in"),
        # over a sixth (0.917), within a quarter (1.375): it hangs on where the notch is
        (
            {"joist_depth": "5.5 in", "method": "notched", "notch_depth": "1 in"},
            "unknown",
            "3 joists, notch 1 in deep: at most 7/8 in (1/6 of 5.5 in) or 1-3/8 in",
        ),
    ],
)
def test_typed_joists(run: dict[str, str], verdict: str, words: str) -> None:
    found = one("joist-cut", job(run={**TYPED_JOISTS, **run}))
    assert found.verdict == verdict
    assert words in found.figures


def test_joists_beside_an_exposed_cable_are_not_cut() -> None:
    assert findings("joist-cut", job(run={**TYPED_JOISTS, "method": "exposed"})) == []


@pytest.mark.parametrize(
    ("thickness", "side", "hole_at", "want"),
    [
        ("3.99 in", "bottom", "12 in", "pass"),
        ("4 in", "bottom", "12 in", "fail"),
        ("4 in", "top", "12 in", "pass"),
        ("4 in", "unknown", "12 in", "unknown"),
        ("unknown", "bottom", "12 in", "unknown"),
        ("unknown", "top", "12 in", "pass"),
        ("4 in", "bottom", "0 in", "pass"),
    ],
)
def test_a_thick_joist_keeps_its_lower_edge(
    thickness: str, side: str, hole_at: str, want: str
) -> None:
    """Building.md 1.6: from 4 in on no notch on the side drawn apart, except at the ends."""
    raw = notched(thickness=thickness, notch_side=side, hole_at=hole_at)
    assert one("joist-cut", raw).verdict == want


def test_the_words_of_a_thick_joist() -> None:
    found = one("joist-cut", notched(thickness="5.5 in", notch_side="bottom"))
    assert found.figures.startswith(
        "joist 1, thickness 5.5 in, notched edge: bottom; no notch in the lower edge from 4 in on"
    )
    assert (found.remedy, found.cite) == ("Notch the upper edge, or bore the joist.", CITE)
    asked = one("joist-cut", notched(thickness="unknown"))
    assert asked.remedy == "Say how thick the joist is and which edge is notched."
    assert "thickness unknown, notched edge: unknown" in asked.figures
