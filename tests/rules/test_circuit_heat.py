"""Bundles, sealed holes and warm places: CS-03 to CS-09; the sums are worked by hand."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from estimator.rules.registry import FUNCTIONS
from estimator.survey.reader import survey_from
from tests.rules.circuit_case import facts, facts_of, findings, job, one
from tests.rules.metric_case import in_metres, said_of

RULE = "ampacity-adjustment"
TABLE = "NEC 2023 Table 310.15(C)(1)"
SPREAD = (
    "Spread the cables: at most 24 in side by side, and at most 2 in a hole that gets sealed or"
    " lies in insulation. Keep them out of hot places, or use thicker cable."
)


def heated(run: dict[str, Any], **circuit: Any) -> tuple[str, str]:
    """Verdict and figures of a run."""
    found = one(RULE, job(run=run, **circuit), "run 1")
    return found.verdict, found.figures


@pytest.mark.parametrize(
    ("bundled", "expected", "figures"),
    [
        (
            4, "pass",
            "8 wires that carry current, 86 F: 30 A x 70 % x 1 = 21 A, no more than 20 A;"
            " breaker 20 A",
        ),
        (
            5, "fail",
            "10 wires that carry current, 86 F: 30 A x 50 % x 1 = 15 A; breaker 20 A",
        ),
    ],
    ids=["four 12-2 give 21.0 A (electrical.md 3)", "five 12-2 give 15.0 A (electrical.md 3)"],
)  # fmt: skip
def test_the_derating_sums_of_the_reference(bundled: int, expected: str, figures: str) -> None:
    run = {"bundled": bundled, "bundled_length": "25 in"}
    assert heated(run) == (expected, figures)
    assert one(RULE, job(run=run), "run 1").cite == TABLE


@pytest.mark.parametrize(
    ("length", "expected"),
    [("24 in", "pass"), ("24-1/16 in", "fail"), ("10 ft", "fail"), ("unknown", "unknown")],
    ids=lambda each: f"CS-06 {each}",
)
def test_a_bundle_counts_above_24_inches(length: str, expected: str) -> None:
    run = {"bundled": 5, "bundled_length": length, "in_insulation": "no"}
    assert heated(run)[0] == expected


def test_a_short_bundle_warms_nothing() -> None:
    figures = "2 wires that carry current, 86 F: 30 A x 100 % x 1 = 30 A, no more than 20 A"
    assert heated({"bundled": 5, "bundled_length": "24 in", "in_insulation": "no"}) == (
        "pass", f"{figures}; breaker 20 A",
    )  # fmt: skip
    run = {"bundled": 5, "bundled_length": "24 in", "in_insulation": "no"}
    assert one(RULE, job(run=run), "run 1").cite == "NEC 2023 334.80"


@pytest.mark.parametrize(
    ("cables", "sealed", "expected", "wires"),
    [
        (2, "yes", "pass", 2), (3, "yes", "pass", 6), (5, "yes", "fail", 10), (5, "no", "pass", 2),
        (5, "unknown", "unknown", 10), (4, "unknown", "pass", 8),
    ],
)  # fmt: skip
def test_more_than_two_cables_in_a_sealed_hole(
    cables: int, sealed: str, expected: str, wires: int
) -> None:
    """CS-07; where even the worst case holds, what nobody knows is not needed."""
    verdict, figures = heated({"cables_in_hole": cables, "hole_sealed": sealed})
    assert verdict == expected
    assert f"{wires} wires that carry current" in figures


@pytest.mark.parametrize(
    ("bundled", "packed", "expected"),
    [(5, "yes", "fail"), (5, "unknown", "unknown"), (5, "no", "pass"), (2, "yes", "pass")],
)
def test_cables_together_in_insulation(bundled: int, packed: str, expected: str) -> None:
    run = {"bundled": bundled, "bundled_length": "1 in", "in_insulation": packed}
    assert heated(run)[0] == expected


def test_the_largest_group_counts() -> None:
    run = {"bundled": 3, "bundled_length": "30 in", "cables_in_hole": 5, "hole_sealed": "yes"}
    assert "10 wires" in heated(run)[1]
    assert "14 wires" in heated({**run, "bundled": 7})[1]


def test_holes_that_this_job_seals_are_sealed() -> None:
    """A wall plate bored by the job gets sealant, whatever was said of the studs."""
    legs = [{"go": "up", "length": "5 ft", "plates": 2}]
    assert heated({"cables_in_hole": 5, "legs": legs})[0] == "fail"
    assert heated({"cables_in_hole": 5})[0] == "unknown"


def test_another_run_that_is_sealed_says_nothing_of_this_one() -> None:
    raw = job(run={"cables_in_hole": 5})
    raw["boxes"].append({"id": "far"})
    legs = [{"go": "up", "length": "5 ft", "plates": 2}]
    sealed = {"id": "2", "from": "new", "to": "far", "legs": legs, "cables_in_hole": 1}
    raw["runs"].append({**raw["runs"][0], **sealed})
    verdicts = {subject: each.verdict for subject, each in findings(RULE, raw).items()}
    assert verdicts == {"run 1": "unknown", "run 2": "pass"}


@pytest.mark.parametrize(
    ("ambient", "cable", "breaker_a", "expected", "figures"),
    [
        (86, "12-2", 20, "pass", "86 F: 30 A x 100 % x 1 = 30 A, no more than 20 A"),
        (140, "12-2", 20, "pass", "140 F: 30 A x 100 % x 0.71 = 21.3 A, no more than 20 A"),
        (141, "12-2", 20, "fail", "141 F: 30 A x 100 % x 0.65 = 19.5 A"),
        (149, "14-2", 15, "pass", "149 F: 25 A x 100 % x 0.65 = 16.25 A, no more than 15 A"),
        (131, "10-2", 30, "pass", "131 F: 40 A x 100 % x 0.76 = 30.4 A, no more than 30 A"),
        (132, "10-2", 30, "fail", "132 F: 40 A x 100 % x 0.71 = 28.4 A"),
    ],
    ids=lambda each: f"CS-08 {each}",
)
def test_warm_places(ambient: int, cable: str, breaker_a: int, expected: str, figures: str) -> None:
    found = heated({"cable": cable}, ambient=ambient, breaker=breaker_a, wire="10")
    said = f"2 wires that carry current, {figures}; breaker {breaker_a} A"
    assert found == (expected, said)


def test_heat_and_company_multiply_and_both_are_cited() -> None:
    # 8 wires at 96 F: 30 x 0.70 x 0.91 = 19.11 A
    run = {"bundled": 4, "bundled_length": "3 ft"}
    found = one(RULE, job(run=run, ambient=96), "run 1")
    assert (found.verdict, found.remedy) == ("fail", SPREAD)
    assert "30 A x 70 % x 0.91 = 19.11 A; breaker 20 A" in found.figures
    assert found.cite == f"{TABLE}; NEC 2023 Table 310.15(B)(1)(1)"


def test_exactly_the_breaker_passes() -> None:
    """Worked by hand: 10 wires of 10 AWG, 40 x 0.50 = 20.0 A."""
    run = {"cable": "10-2", "bundled": 5, "bundled_length": "3 ft"}
    assert heated(run) == (
        "pass",
        "10 wires that carry current, 86 F: 40 A x 50 % x 1 = 20 A; breaker 20 A",
    )


@pytest.mark.parametrize("ambient", ["150", "149.5"])
def test_hotter_than_the_table_is_not_known(ambient: str) -> None:
    found = one(RULE, job(ambient=ambient), "run 1")
    said = f"{ambient} F; no factor is on file above 149 F"
    assert (found.verdict, found.figures) == ("unknown", said)
    assert found.cite == "NEC 2023 334.80"
    assert found.remedy.startswith("Keep the cable out of a place this hot")


@pytest.mark.parametrize(
    ("level", "cable", "breaker_a", "expected"),
    [
        ("attic", "12-2", 20, "unknown"), ("attic", "14-2", 15, "pass"),
        ("attic", "12-2", 15, "pass"), ("basement", "12-2", 20, "pass"),
    ],
)  # fmt: skip
def test_an_attic_nobody_measured_may_be_very_hot(
    level: str, cable: str, breaker_a: int, expected: str
) -> None:
    raw = job(run={"cable": cable, "level": level}, breaker=breaker_a)
    raw["levels"] = [{"kind": level, "accessible": "yes", "height": "100 in"}]
    found = one(RULE, raw, "run 1")
    assert found.verdict == expected
    assert (" 149 F" in found.figures) == (level == "attic")


def test_what_to_look_at() -> None:
    found = one(RULE, job(run={"cables_in_hole": 5}), "run 1")
    assert found.figures.startswith("at worst 10 wires that carry current")
    assert found.figures.endswith("breaker 20 A")
    assert found.cite == TABLE
    assert found.remedy == (
        "Find out how far the cables lie side by side, whether the hole is sealed or in"
        " insulation, how hot the place gets, and whether red and black share one white."
        f" {SPREAD}"
    )


@pytest.mark.parametrize(
    ("multiwire", "wires", "expected"),
    [("yes", 6, "pass"), ("no", 7, "fail"), ("unknown", 7, "unknown")],
    ids=lambda each: f"CS-09 {each}",
)
def test_three_wire_cable(multiwire: str, wires: int, expected: str) -> None:
    """Three 12-3 at 104 F: 6 wires 30 x 0.80 x 0.91 = 21.84 A; 7 wires 30 x 0.70 x 0.91 = 19.11."""
    run = {"cable": "12-3", "bundled": 3, "bundled_length": "3 ft"}
    verdict, figures = heated(run, multiwire=multiwire, ambient=104)
    assert verdict == expected
    assert f"{wires} wires that carry current" in figures


def test_three_wires_alone_take_nothing_off() -> None:
    assert "3 wires that carry current, 86 F: 30 A x 100 %" in heated({"cable": "12-3"})[1]


def test_a_breaker_nobody_read_is_not_known() -> None:
    found = one(RULE, job(breaker="unknown"), "run 1")
    assert (found.verdict, found.remedy) == ("unknown", "Read the number on the breaker.")
    assert found.figures.endswith("no more than 20 A; breaker unknown")


@pytest.mark.parametrize(("breaker_a", "count"), [(15, 1), (16, 0), (20, 0)])
def test_wire_too_thin_anywhere_is_for_the_breaker_rule(breaker_a: int, count: int) -> None:
    assert len(findings(RULE, job(run={"cable": "14-2"}, breaker=breaker_a))) == count


def test_a_size_not_on_file_is_for_the_breaker_rule() -> None:
    assert said_of(RULE, facts_of(in_metres(survey_from(job())))) == {}


@pytest.mark.parametrize(
    ("edition", "cite"),
    [
        ("nec-2017", "NEC 2017 Table 310.15(B)(3)(a) (from memory: check)"),
        ("nec-2020", "NEC 2020 Table 310.15(C)(1)"),
    ],
)
def test_each_edition_cites_its_own_table(edition: str, cite: str) -> None:
    run = {"bundled": 5, "bundled_length": "3 ft"}
    assert one(RULE, job(run=run, edition=edition), "run 1").cite == cite


def test_a_sealed_hole_of_no_run_of_this_way_is_passed_over() -> None:
    known = facts(job(run={"cables_in_hole": 5}))
    other = replace(known.takeoff.runs[0], run_id="9", sealant=2)
    takeoff = replace(known.takeoff, runs=(other,))
    (found,) = FUNCTIONS[RULE](replace(known, takeoff=takeoff))
    assert found.verdict == "unknown"
