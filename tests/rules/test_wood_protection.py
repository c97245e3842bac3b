"""Plates by face, hole beside notch, steel studs, boring against notching."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest

from estimator.rules.records import RemedyPart
from estimator.rules.remedies import is_taken
from tests.rules.wood_case import (
    HOURS,
    IRC_2021,
    PRACTICE,
    TYPED,
    by_subject,
    facts,
    findings,
    job,
    one,
)

PLATES = "protection-plates"
FROM_NEC = "NEC 2023 300.4(A)(1)"


def plates(count: int) -> tuple[RemedyPart, ...]:
    return (RemedyPart("protection", "protection-plate", Decimal(count), "ea"),)


@pytest.mark.parametrize(
    ("run", "figures", "remedy"),
    [
        ({}, "hole 0.75 in, limit 1.25 in to the face: 0 plates in the takeoff", ""),
        (
            {"hole": "1-1/16 in"},
            "hole 1.0625 in, limit 1.25 in to the face: 8 plates in the takeoff",
            "Put a steel plate over each.",
        ),
        (
            {"method": "notched"},
            "4 notches, 4 plates in the takeoff",
            "Plate over every notch.",
        ),
    ],
)
def test_plates_in_the_takeoff(run: dict[str, Any], figures: str, remedy: str) -> None:
    found = one(PLATES, job(run=run))
    assert (found.verdict, found.subject, found.cite) == ("pass", "run 1", FROM_NEC)
    assert (found.figures, found.remedy, found.remedies) == (figures, remedy, ())


def test_a_shop_that_plates_less_gets_the_missing_plates() -> None:
    # 1-1/8 in centred in 3.5 in leaves 1.1875 in: two faces of four studs, by the shop none
    shop = replace(PRACTICE, plate_edge_in=Fraction(1))
    found = one(PLATES, job(run={"hole": "1-1/8 in"}), shop)
    assert (found.verdict, found.remedies, found.blocking) == ("fail", plates(8), True)
    assert found.figures.endswith("0 plates in the takeoff, 8 needed")
    assert found.remedy == "Put a steel plate over each face at risk: 8 in all."
    assert is_taken(found)


def test_one_face_at_risk_is_one_plate_a_stud() -> None:
    # 3/4 in from one face, 2 in from the other
    shop = replace(PRACTICE, plate_edge_in=Fraction(1, 2))
    assert one(PLATES, job(run={"edge": "3/4 in"}), shop).remedies == plates(4)


def test_a_member_with_a_larger_hole_gets_its_plates() -> None:
    king = {"wall": "w", "kind": "king", "at": "40 in", "hole": "1-1/4 in"}
    found = one(PLATES, job(members=[king]))
    assert (found.verdict, found.remedies) == ("fail", plates(2))


def test_plates_behind_trim_always_are_more_than_needed() -> None:
    shop = replace(PRACTICE, plate_behind_trim_always=True)
    found = one(PLATES, job(run={"way": "trim", "height": "3 in"}), shop)
    assert found.figures.endswith(": 4 plates in the takeoff")
    assert found.verdict == "pass"


def test_a_local_distance_asks_for_more_plates() -> None:
    local = {
        "rule": PLATES, "change": "figure", "figure": "hole-edge", "value": "1.5",
        "reason": "Sample county amendment",
    }  # fmt: skip
    found = one(PLATES, job(amendments=[local]))
    assert (found.verdict, found.remedies) == ("fail", plates(8))
    assert found.cite == "local: Sample county amendment"


def test_unknown_depth_is_not_known() -> None:
    found = one(PLATES, job(wall={"stud": None}))
    assert (found.verdict, found.remedies) == ("unknown", ())
    assert found.figures == "0 plates if the studs are of the usual depth"
    assert found.remedy.startswith("Measure the depth of the studs")


def test_unknown_depth_of_a_typed_run_is_priced_as_slim() -> None:
    found = one(PLATES, job(run=TYPED))
    assert (found.verdict, found.remedies) == ("unknown", plates(8))
    behind_none = job(run={**TYPED, "hole": "0 in"})
    assert one(PLATES, behind_none).remedies == ()


def test_unknown_depth_of_notches_needs_no_more_plates() -> None:
    found = one(PLATES, job(run={**TYPED, "method": "notched"}))
    assert (found.verdict, found.remedies) == ("unknown", ())


def test_wall_plates_are_judged_too() -> None:
    raw = job(run={**TYPED, "legs": [{"go": "up", "length": "6 ft", "plates": 2}]})
    raw["runs"][0] |= {"stud_depth": "3.5 in", "hole": "1-1/4 in"}
    # one hole through both, too near to both faces: two plates
    assert one(PLATES, raw).figures.endswith(": 2 plates in the takeoff")
    shop = replace(PRACTICE, plate_edge_in=Fraction(1))
    assert one(PLATES, raw, shop).remedies == plates(2)
    del raw["runs"][0]["stud_depth"]
    assert one(PLATES, raw).verdict == "unknown"


@pytest.mark.parametrize("method", ["bored", "exposed"])
def test_nothing_crossed_no_finding(method: str) -> None:
    legs = [{"go": "along", "length": "6 ft", "studs": 0 if method == "bored" else 4}]
    assert findings(PLATES, job(run={**TYPED, "legs": legs, "method": method})) == []


def test_an_exposed_leg_needs_no_known_depth() -> None:
    legs = [
        {"go": "along", "length": "6 ft", "studs": 4, "method": "exposed"},
        {"go": "down", "length": "1 ft", "studs": 1},
    ]
    raw = job(run={**TYPED, "legs": legs, "stud_depth": "3.5 in"})
    assert one(PLATES, raw).verdict == "pass"


@pytest.mark.parametrize(
    ("said", "verdict", "remedy"),
    [
        ("no", "pass", ""),
        ("yes", "fail", "Bore above or below the notch."),
        ("unknown", "unknown", "Look at the members for old notches and cuts before boring."),
    ],
)
@pytest.mark.parametrize("method", ["bored", "notched"])
def test_hole_and_notch(said: str, verdict: str, remedy: str, method: str) -> None:
    found = one("hole-and-notch", job(run={"hole_and_notch": said, "method": method}))
    assert (found.verdict, found.subject, found.remedy) == (verdict, "run 1", remedy)
    assert (found.cite, found.blocking) == (IRC_2021, verdict == "fail")


def test_hole_and_notch_of_a_run_that_cuts_nothing() -> None:
    assert findings("hole-and-notch", job(run={**TYPED, "method": "exposed"})) == []


def test_steel_studs_have_bushings() -> None:
    found = one("steel-studs", job(wall={"framing": "steel"}))
    assert (found.verdict, found.subject, found.cite) == ("pass", "run 1", "NEC 2023 300.4(B)")
    assert found.figures == "4 steel studs, a bushing for each in the takeoff"
    assert "at least 0.0625 in thick" in found.remedy
    parts = facts(job(wall={"framing": "steel"})).takeoff.parts
    assert [part.quantity for part in parts if part.item == "stud-bushing"] == [4]


def test_steel_or_wood_is_asked_and_priced() -> None:
    found = one("steel-studs", job(wall={"framing": "unknown"}))
    bushings = RemedyPart("protection", "stud-bushing", Decimal(4), "ea")
    assert (found.verdict, found.remedies) == ("unknown", (bushings,))
    assert found.figures == "4 members of wood or steel, nobody has said which"


@pytest.mark.parametrize("run", [{}, TYPED])
def test_wooden_studs_need_no_bushing(run: dict[str, Any]) -> None:
    assert findings("steel-studs", job(run=run)) == []


TRIM = {"way": "trim", "height": "3 in"}


def test_boring_against_notching_behind_trim() -> None:
    # 4 x 0.05 h = 0.2 h, 4 x 0.20 h = 0.8 h; a plate on each notch
    found = one("bore-or-notch", job(run=TRIM))
    assert (found.verdict, found.subject, found.cite) == ("note", "run 1", IRC_2021)
    assert found.figures == (
        "bored 0.75 in: 4 studs, 0.2 hours, 0 plates, hole at most 2-1/16 in (60 % of 3.5 in);"
        " notched: 4 studs, 0.8 hours, 4 plates, notch at most 1-3/8 in (40 % of 3.5 in) deep"
    )
    assert found.remedy == "Boring takes fewer hours here; a notch takes a plate at every stud."


def test_the_tightest_limit_of_an_unknown_wall_is_said() -> None:
    figures = one("bore-or-notch", job(run=TRIM, wall={"bearing": "unknown"})).figures
    assert "hole at most 1-3/8 in (40 % of 3.5 in)" in figures
    assert "notch at most 7/8 in (25 % of 3.5 in) deep" in figures


def test_near_holes_take_a_plate_on_each_face() -> None:
    assert "8 plates, hole" in one("bore-or-notch", job(run={**TRIM, "hole": "1-1/8 in"})).figures


def test_studs_of_unknown_depth_take_up_to_two_plates_each() -> None:
    figures = one("bore-or-notch", job(run=TRIM, wall={"stud": None})).figures
    assert "0.2 hours, up to 8 plates, hole at most 1-1/2 in (60 % of 2.5 in)" in figures


@pytest.mark.parametrize(
    ("hours", "bored", "remedy"),
    [
        ({}, "hours not in the book", "A stud may lose more of its depth to a hole"),
        ({"bore-member": Decimal(1)}, "4 hours", "A stud may lose more of its depth to a hole"),
        ({"notch-member": Decimal(1)}, "hours not in", "A stud may lose more of its depth"),
        (
            {"bore-member": Decimal(1), "notch-member": Decimal(1)},
            "4 hours",
            "A stud may lose more of its depth to a hole",
        ),
        (
            {"bore-member": Decimal(2), "notch-member": Decimal(1)},
            "8 hours",
            "Notching takes fewer hours here; a notch takes a plate at every stud.",
        ),
    ],
)
def test_hours_come_from_the_labor_book(hours: dict[str, Decimal], bored: str, remedy: str) -> None:
    from estimator.rules.registry import FUNCTIONS

    own = replace(facts(job(run=TRIM)), hours_each=hours)
    (found,) = FUNCTIONS["bore-or-notch"](own)
    assert f"4 studs, {bored}" in found.figures.split(";")[0]
    assert found.remedy.startswith(remedy)


def test_the_book_at_hand_is_the_shipped_one() -> None:
    assert (HOURS["bore-member"], HOURS["notch-member"]) == (Decimal("0.05"), Decimal("0.20"))


def test_a_typed_run_is_behind_trim_where_trim_comes_off() -> None:
    assert findings("bore-or-notch", job(run=TYPED)) == []
    assert len(findings("bore-or-notch", job(run={**TYPED, "trim_length": "6 ft"}))) == 1


def test_notched_runs_behind_trim_are_compared_too() -> None:
    run = {**TRIM, "method": "notched", "notch_depth": "1 in"}
    assert by_subject("bore-or-notch", job(run=run)) == {"run 1": "note"}


def test_no_stud_no_comparison() -> None:
    near = {"x": "30 in"}
    assert findings("bore-or-notch", job(run=TRIM, new=near)) == []
