"""Runs of several legs, walls and members: sums, the tightest limit, the words of each."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest

from estimator.rules.records import RemedyPart
from tests.rules.wood_case import PRACTICE, TYPED, findings, hole, job, notch, one

TRIM = {"way": "trim", "height": "3 in"}


def two_walls(run: dict[str, Any], **second: str) -> dict[str, Any]:
    """From x = 20 on w round the corner to x = 20 on v: 7 studs, none at the corner, 1 stud."""
    raw = job(run=run, new={"wall": "v", "x": "20 in"})
    raw["walls"].append(raw["walls"][0] | {"id": "v"} | second)
    raw["corners"] = [{"walls": ["w", "v"], "members": 0}]
    return raw


def legs(*each: dict[str, Any], **run: Any) -> dict[str, Any]:
    return job(run={**TYPED, "legs": list(each), "stud_depth": "3.5 in", **run})


def missing(raw: dict[str, Any]) -> Decimal:
    """Plates that a shop which asks none is told to add."""
    (part,) = one("protection-plates", raw, replace(PRACTICE, plate_edge_in=Fraction(0))).remedies
    assert isinstance(part, RemedyPart)
    return part.quantity


def test_plates_of_all_legs_are_summed() -> None:
    up = {"go": "up", "length": "6 ft", "members": {"nog": 1}, "method": "bored"}
    along = {"go": "along", "length": "6 ft", "studs": 3}
    # 1-1/8 in in 3.5 in: two faces of four members
    assert missing(legs(up, along, hole="1-1/8 in")) == 8


def test_notches_of_all_legs_are_summed() -> None:
    first = {"go": "along", "length": "6 ft", "studs": 3, "method": "notched"}
    second = {"go": "across", "length": "3 ft", "studs": 2, "method": "notched"}
    bored = {"go": "along", "length": "3 ft", "studs": 1, "method": "bored"}
    raw = legs(first, second, bored, hole="1-1/8 in")
    # five notches have their plates; the hole of one stud takes two
    assert missing(raw) == 2
    assert missing(legs(bored, first, second, hole="1-1/8 in")) == 2


def test_one_plate_too_few_is_a_fail() -> None:
    one_stud = {"go": "along", "length": "6 ft", "studs": 1}
    assert missing(legs(one_stud, edge="1 in")) == 1


def test_one_plate_of_an_unknown_stud_is_priced() -> None:
    one_stud = {"go": "along", "length": "6 ft", "studs": 1}
    raw = legs(one_stud, edge="1-1/4 in", hole="1/8 in")
    del raw["runs"][0]["stud_depth"]
    # slim: 2.5 - 0.125 - 1.25 = 1.125 on the other side
    found = one("protection-plates", raw)
    assert (found.verdict, found.cite) == ("unknown", "NEC 2023 300.4(A)(1)")
    assert found.remedies == (RemedyPart("protection", "protection-plate", Decimal(1), "ea"),)


def test_the_hole_through_wall_plates_has_the_edge_of_the_run() -> None:
    up = {"go": "up", "length": "6 ft", "plates": 2}
    assert missing(legs(up, edge="1 in")) == 1


def test_an_edge_stated_for_a_corner_goes_before_that_of_the_run() -> None:
    raw = two_walls({"edge": "3/8 in"})
    raw["corners"][0] |= {"members": 2, "edge": "3/4 in"}
    assert "2 bored studs (no load), hole 0.75 in" in one("stud-hole", raw).figures
    figures = one("stud-hole", raw).figures
    assert "wood left at the edge 0.375 in" in figures
    assert "wood left at the edge 0.75 in" in figures


def test_a_member_without_edge_has_that_of_the_run() -> None:
    king = {"wall": "w", "kind": "king", "at": "40 in"}
    found = one("stud-hole", job(members=[king], run={"edge": "3/4 in"}))
    assert found.figures.startswith("5 bored studs (no load), hole 0.75 in")


@pytest.mark.parametrize("second", [{}, {"stud": "2x6"}])
def test_the_tightest_limit_is_said_whichever_wall_comes_first(second: dict[str, str]) -> None:
    raw = two_walls(TRIM, **second)
    figures = one("bore-or-notch", raw).figures
    assert "hole at most 2-1/16 in (60 % of 3.5 in)" in figures
    raw["walls"][0], raw["walls"][1] = (
        raw["walls"][1] | {"id": "w"},
        raw["walls"][0] | {"id": "v"},
    )
    assert one("bore-or-notch", raw).figures == figures


def test_plates_of_the_comparison_are_summed_and_go_by_the_edge() -> None:
    raw = two_walls(TRIM | {"hole": "1-1/8 in"}, bearing="yes")
    assert "bored 1.125 in: 8 studs, 0.4 hours, 16 plates" in one("bore-or-notch", raw).figures
    raw = job(run=TRIM | {"edge": "1 in"})
    assert "4 studs, 0.2 hours, 4 plates" in one("bore-or-notch", raw).figures


def test_steel_in_the_first_wall_hides_no_wood_in_the_second() -> None:
    raw = two_walls({})
    raw["walls"][0]["framing"] = "steel"
    assert one("stud-hole", raw).figures.startswith("1 bored stud (no load)")
    assert one("steel-studs", raw).figures.startswith("7 steel studs")


def test_a_fail_in_spite_of_what_is_not_known_says_the_larger_limit() -> None:
    assert "2-1/8 in" not in one("stud-hole", hole("2.2 in", wall={"bearing": "unknown"})).figures
    assert "hole 2.2 in: at most 2-1/16 in (60 % of 3.5 in)" in (
        one("stud-hole", hole("2.2 in", wall={"bearing": "unknown"})).figures
    )
    assert "1.5 in deep: at most 1-3/8 in (40 % of 3.5 in)" in (
        one("stud-notch", notch("1.5 in", wall={"bearing": "unknown"})).figures
    )


def test_an_edge_that_only_the_deepest_stud_has() -> None:
    # 7.25 - 6 = 1.25: 5/8 on each side of the deepest, nothing left of the slimmest
    found = one("stud-hole", hole("6 in", wall={"stud": None}))
    assert "wood left at the edge 0 in, at least 0.625 in, if the studs are slim" in found.figures


def test_doubling_is_not_asked_where_it_does_not_matter() -> None:
    wall = {"stud": None, "doubled_studs": "unknown"}
    assert one("stud-hole", hole("1-1/2 in", wall=wall)).remedy == "Measure the depth of the studs."


JOISTS = {"go": "across", "length": "6 ft", "members": {"joist": 3}}


def test_typed_joists_have_the_edge_of_the_run() -> None:
    found = one("joist-cut", legs(JOISTS, joist_depth="7.25 in", edge="1 in"))
    assert found.verdict == "fail"
    assert found.figures.startswith("3 joists, hole 0.75 in")
    assert found.figures.endswith("; 1 in left at an edge")


def test_typed_notched_joists_have_no_hole() -> None:
    raw = legs(JOISTS, joist_depth="7.25 in", method="notched", notch_depth="1 in")
    figures = one("joist-cut", raw).figures
    assert "hole" not in figures
    raw["runs"][0]["notch_depth"] = "1.5 in"
    assert one("joist-cut", raw).remedy == (
        "Say how far the notch is from the joist's bearing end, and the span."
        " Say how long the notch will be."
    )


def test_the_words_about_engineered_joists_stand_under_every_hole() -> None:
    found = one("joist-cut", legs(JOISTS, joist_depth="7.25 in"))
    assert found.remedy == (
        "Bore at mid depth, 2 in from other holes and notches."
        " This is for solid wood: an engineered joist goes by its maker."
    )


def test_typed_plates_are_as_wide_as_the_studs_and_may_bear() -> None:
    up = {"go": "up", "length": "6 ft", "members": {"plate": 1}, "method": "bored"}
    found = one("plate-cut", legs(up, hole="1.76 in"))
    assert found.verdict == "unknown"
    assert "at most 1-3/4 in (50 % of 3.5 in)" in found.figures


@pytest.mark.parametrize(
    ("bearing", "verdict"), [("no", "pass"), ("yes", "fail"), ("unknown", "unknown")]
)
def test_a_listed_plate_stands_in_its_wall(bearing: str, verdict: str) -> None:
    plate = {"wall": "w", "kind": "plate", "height": "30 in", "hole": "2 in"}
    raw = job(new={"height": "50 in"}, members=[plate], wall={"bearing": bearing})
    found = one("plate-cut", raw)
    assert found.verdict == verdict
    if verdict == "fail":
        assert found.remedy.endswith("across each cut and to the plate on both sides of it.")


def test_the_words_about_a_rated_wall() -> None:
    raw = job(wall={"fire_rated": "yes"}, run={"way": "through"}, new={"x": "30 in"})
    note, boxes = findings("rated-wall", raw)
    assert (note.figures, note.cite) == (
        # two boxes of 2-1/4 x 3-3/4 in
        "a fire-rated wall is opened; largest box 8.44 in2, at most 16 in2; boxes together 16.88"
        " in2, at most 100 in2 in any 100 ft2",
        "NEC 2023 300.21; IRC 2021 R302.4.2 (from memory: check)",
    )
    assert note.remedy == (
        "Fill every hole by a system tested for that wall, and keep boxes on its two sides"
        " 24 in apart or protect them as listed. Use single-gang and two-gang boxes, and few of"
        " them in one wall. Ask the building office first."
    )
    assert (boxes.figures, boxes.remedy) == (
        "boxes on its two sides 10 in apart, usual least 24 in",
        "Move the new box.",
    )


def test_one_hole_is_said_as_one() -> None:
    crawl = {"kind": "crawlspace", "accessible": "yes", "below_floor": "10 in"}
    up = {"go": "up", "length": "6 ft", "floor_holes": 1, "members": {"plate": 2}}
    blocked = {"go": "up", "length": "6 ft", "members": {"block": 2}}
    assert one("fire-seal", legs(blocked)).figures.startswith("2 holes through blocks, 2 filled")
    assert one("fire-seal", legs(up)).figures == (
        "2 holes through wall plates, 1 floor hole, 3 filled in the takeoff"
    )
    raw = job(run={"way": "under", "level": "crawlspace"}, levels=[crawl])
    assert one("fire-seal", raw).figures.startswith("2 floor holes,")
