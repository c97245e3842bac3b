"""Wall plates cut over half their width (IRC R602.6.1): half of 3.5 in is 1.75 in."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest

from estimator.rules.records import Remedy, RemedyPart, RemedyTask
from estimator.rules.remedies import is_taken
from tests.rules.wood_case import TYPED, findings, job, one

CITE = "IRC 2021 R602.6.1 (from memory: check)"
ATTIC = {"kind": "attic", "accessible": "yes", "height": "100 in"}
OVER = {"way": "over", "level": "attic"}


def ties(count: int) -> tuple[Remedy, ...]:
    return (
        RemedyPart("protection", "plate-tie", Decimal(count), "ea"),
        RemedyTask("rough-in", "fit-plate-tie", Decimal(count), "ea"),
    )


def attic(size: str, **wall: str) -> dict[str, Any]:
    """Up through the top plates beside one box and down beside the other: two holes."""
    return job(run={**OVER, "hole": size}, levels=[ATTIC], wall=wall)


def test_a_cable_hole_is_far_from_half() -> None:
    found = one("plate-cut", attic("3/4 in", bearing="yes"))
    assert (found.verdict, found.subject, found.cite) == ("pass", "run 1", CITE)
    assert (
        found.figures == "1 hole of 0.75 in through wall plates: at most 1-3/4 in (50 % of 3.5 in)"
    )
    assert found.remedies == ()


@pytest.mark.parametrize(
    ("stud", "size", "verdict"),
    [
        ("2x4", "1.75 in", "pass"),
        ("2x4", "1.76 in", "fail"),
        ("2x6", "2-3/4 in", "pass"),
        ("2x6", "2.76 in", "fail"),
    ],
)
def test_half_of_the_plate(stud: str, size: str, verdict: str) -> None:
    found = one("plate-cut", attic(size, stud=stud, bearing="yes"))
    assert (found.verdict, found.blocking) == (verdict, verdict == "fail")


def test_a_larger_cut_takes_a_steel_tie() -> None:
    found = one("plate-cut", attic("2 in", bearing="no", exterior="yes"))
    assert (found.verdict, found.remedies) == ("fail", ties(2))
    assert "galvanized steel tie, at least 0.054 in thick" in found.remedy
    assert is_taken(found)


def test_a_wall_without_load_needs_no_tie() -> None:
    found = one("plate-cut", attic("2 in", bearing="no"))
    assert found.verdict == "pass"
    assert found.figures == "1 hole of 2 in through wall plates, in a wall that bears no load"


@pytest.mark.parametrize(
    ("wall", "size", "verdict"),
    [
        ({"bearing": "unknown"}, "1.75 in", "pass"),
        ({"bearing": "unknown"}, "2 in", "unknown"),
        # unmeasured: half of 2.5 in is 1.25, half of 7.25 in is 3.625
        ({"bearing": "yes", "stud": "unknown"}, "1.25 in", "pass"),
        ({"bearing": "yes", "stud": "unknown"}, "1.26 in", "unknown"),
        ({"bearing": "yes", "stud": "unknown"}, "3.625 in", "unknown"),
        ({"bearing": "yes", "stud": "unknown"}, "3.63 in", "fail"),
        ({"bearing": "no", "stud": "unknown"}, "3.63 in", "pass"),
    ],
)
def test_what_is_not_known(wall: dict[str, str], size: str, verdict: str) -> None:
    found = one("plate-cut", attic(size, **wall))
    assert found.verdict == verdict
    if verdict == "unknown":
        assert found.remedies == ties(2)
        assert found.remedy.startswith("Find out whether the wall bears load")


def test_a_typed_hole() -> None:
    legs = [{"go": "up", "length": "6 ft", "plates": 2}]
    run = {**TYPED, "legs": legs, "stud_depth": "3.5 in"}
    assert one("plate-cut", job(run=run)).verdict == "pass"
    found = one("plate-cut", job(run={**run, "hole": "2 in"}))
    assert (found.verdict, found.remedies) == ("unknown", ties(1))


def test_typed_members_of_the_kind_plate() -> None:
    legs = [{"go": "up", "length": "6 ft", "members": {"plate": 2}, "method": "bored"}]
    run = {**TYPED, "legs": legs, "stud_depth": "3.5 in", "hole": "2 in"}
    assert one("plate-cut", job(run=run)).figures.startswith("2 holes of 2 in")


PLATE = {"wall": "w", "kind": "plate", "height": "30 in"}
RISING = {"height": "50 in"}


@pytest.mark.parametrize(
    ("member", "verdict", "words"),
    [
        ({}, "pass", "1 hole of 0.75 in through wall plates: at most 1-3/4 in"),
        ({"hole": "2 in"}, "fail", "1 hole of 2 in"),
        ({"notch_depth": "1.8 in", "hole": "1 in"}, "fail", "1 hole of 1.8 in"),
        ({"hole": "2 in", "depth": "5.5 in"}, "pass", "at most 2-3/4 in (50 % of 5.5 in)"),
    ],
)
def test_a_listed_plate_has_its_own_measures(
    member: dict[str, str], verdict: str, words: str
) -> None:
    raw = job(run={}, new=RISING, members=[PLATE | member], wall={"bearing": "yes"})
    raw["boxes"][1]["x"] = "24 in"
    found = one("plate-cut", raw)
    assert found.verdict == verdict
    assert words in found.figures


def test_ties_only_where_the_cut_is_too_large() -> None:
    second = {"wall": "w", "kind": "plate", "height": "40 in", "hole": "2 in"}
    raw = job(new=RISING, members=[PLATE, second], wall={"bearing": "yes"})
    found = one("plate-cut", raw)
    assert (found.verdict, found.remedies) == ("fail", ties(1))


def test_steel_or_open_framing_has_no_wall_plate_to_cut() -> None:
    assert findings("plate-cut", attic("3 in", framing="steel")) == []
    legs = [{"go": "up", "length": "6 ft", "plates": 2, "method": "exposed"}]
    assert findings("plate-cut", job(run={**TYPED, "legs": legs})) == []


def test_no_wall_plate_no_finding() -> None:
    assert findings("plate-cut", job()) == []
