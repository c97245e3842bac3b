"""The house and its boxes, word for word, where the other tests look at a part of it."""

from __future__ import annotations

from typing import Any

import pytest

from tests.rules import box_case
from tests.rules.told import Told, told
from tests.rules.wood_case import findings, job, one

PROBE = (
    "Look from both sides and probe before you cut. Set the blade just deeper than the board, know"
    " where water and gas are shut off, and stop at any pipe."
)
HABIT = "Trade habit; common practice, no source"
LATH = (
    "Find the lath, centre the cut between two laths, and never cut both ends of one lath. Cut"
    " slowly by hand. Measure the real thickness before you buy the box."
)
GAP_CITE, DEEP_CITE = "NEC 2023 314.21", "NEC 2023 314.20"


def said(rule: str, subject: str, raw: dict[str, Any]) -> Told:
    """What one rule says of one subject of a job."""
    return told(next(each for each in findings(rule, raw) if each.subject == subject))


@pytest.mark.parametrize(
    ("tested", "verdict", "remedy"),
    [
        ("none found", "pass", ""),
        (
            "found",
            "fail",
            "Leave sound material alone. What must be cut is taken out by trained people first.",
        ),
    ],
)
def test_asbestos_that_was_tested(tested: str, verdict: str, remedy: str) -> None:
    found = said("asbestos-age", "job", job(house={"asbestos_tested": tested}))
    assert (found.verdict, found.remedy) == (verdict, remedy)
    assert found.figures == f"tested, {'asbestos ' if verdict == 'fail' else 'none '}found"


def test_the_sources_of_the_asbestos_words() -> None:
    none = said("asbestos-age", "job", job(house={"asbestos_tested": "none found"}))
    assert none.cite == said("asbestos-age", "job", job()).cite
    found = said("asbestos-age", "job", job(house={"asbestos_tested": "found"}))
    assert found.cite.endswith(", asbestos advice")


def test_an_office_that_wants_a_survey_first() -> None:
    found = said("asbestos-age", "survey", job(house={"local_survey_first": "yes"}))
    assert (found.verdict, found.figures) == ("note", "not tested yet")
    assert found.remedy == (
        "An office asks for a survey of the house first: order it before the first cut."
    )


def test_plaster_that_is_cut() -> None:
    found = said("plaster", "wall w", job(wall={"finish": "plaster"}))
    assert (found.verdict, found.figures, found.remedy) == ("note", "plaster is cut", LATH)


def test_plaster_in_an_opening_on_no_wall() -> None:
    hole = {"id": "hole", "width": "6 in", "height": "6 in", "fill": "plaster", "room": "den"}
    found = said("plaster", "job", job(openings=[hole]))
    assert (found.verdict, found.figures, found.remedy) == ("note", "plaster is cut", LATH)


def test_plaster_or_board() -> None:
    raw = job(wall={"finish": "unknown"})
    found = said("plaster", "wall w", raw)
    assert found.figures == "plaster or board, nobody has said which"
    assert found.cite == said("plaster", "wall w", job(wall={"finish": "plaster"})).cite
    assert found.remedy == f"Look at the edge inside a box with the circuit off. If plaster: {LATH}"


@pytest.mark.parametrize(
    ("lines", "subject", "want"),
    [
        ("yes", "wall w", Told("note", "pipes, ducts or wires inside the wall", HABIT, PROBE)),
        ("no", "job", Told("pass", "looked, nothing in wall w", HABIT)),
        (
            "unknown",
            "job",
            Told("unknown", "nobody has said what is inside wall w", HABIT, PROBE),
        ),
    ],
)
def test_lines_inside_the_walls(lines: str, subject: str, want: Told) -> None:
    assert said("hidden-lines", subject, job(wall={"hidden_lines": lines})) == want


def test_every_box_outdoors_is_named() -> None:
    raw = job(new={"room": "outdoors"})
    raw["boxes"][0]["room"] = "outdoors"
    assert one("digging", raw).figures == "outdoors: box old, new"


def old_box(rule: str, **contents: Any) -> Told:
    """What one rule says of the old box."""
    raw = box_case.job(old={"contents": contents})
    return told(box_case.of(rule, "old", raw))


def test_a_gap_nobody_measured() -> None:
    assert old_box("box-gap") == Told(
        "unknown",
        "nobody has measured it; at most 1/8 in",
        GAP_CITE,
        "With the cover off, measure the widest gap beside the box.",
    )


def test_a_gap_that_is_small_enough() -> None:
    want = Told("pass", "gap 1/8 in at its widest, at most 1/8 in", GAP_CITE)
    assert old_box("box-gap", gap="1/8 in") == want


def test_a_setback_nobody_measured() -> None:
    assert old_box("box-setback") == Told(
        "unknown",
        "nobody has measured it; at most 1/4 in behind the surface",
        DEEP_CITE,
        "With the cover off, measure from the surface back to the edge of the box.",
    )


@pytest.mark.parametrize("first", [{"combustible_finish": "yes"}, {}])
def test_a_box_that_is_not_judged_does_not_hide_the_next(first: dict[str, str]) -> None:
    wood = {"id": "v", "room": "den", "length": "20 ft", "stud": "2x4"} | first
    raw = box_case.job(old={"wall": "v", "contents": {}}, walls=[*box_case.JOB["walls"], wood])
    found = box_case.by_subject("box-gap", raw)
    assert list(found) == (["new"] if first else ["old", "new"])


@pytest.mark.parametrize(
    ("buried", "verdict", "remedy"),
    [
        (
            "yes",
            "fail",
            "Move the box or its cover to where it can be reached, or take it out.",
        ),
        ("unknown", "unknown", "Make sure that the box keeps a cover that can be reached."),
    ],
)
def test_a_box_behind_the_finish(buried: str, verdict: str, remedy: str) -> None:
    found = old_box("box-buried", buried=buried)
    assert (found.verdict, found.remedy) == (verdict, remedy)


def test_lead_paint_that_was_tested() -> None:
    raw = job(job={"year_built": 1950}, house={"lead_tested": "none found"})
    found = said("lead-paint", "job", raw)
    assert (found.verdict, found.figures) == ("pass", "tested, no lead paint")
    assert found.remedy.startswith("Keep the report with the job's papers.")


def test_lead_paint_in_ones_own_home() -> None:
    raw = job(job={"year_built": 1950}, house={"work_for_pay": "no"})
    found = said("lead-paint", "job", raw)
    assert found.figures == "built 1950; the rule speaks of work for pay"
    late = said("lead-paint", "job", job(job={"year_built": 1978}))
    assert (late.verdict, found.cite) == ("pass", late.cite)
    assert found.remedy == (
        "Lead dust harms all the same: keep pieces whole, close off the room, clean wet."
    )


@pytest.mark.parametrize(
    ("metal", "remedy"),
    [
        (
            "yes",
            "Read the volume stamped inside the box, or measure an unmarked metal box and name its"
            " row of the standard boxes (table_box); without it nobody can say.",
        ),
        (
            "no",
            "A plastic box without a mark has no volume to count on. Find the mark, or plan a box"
            " that has one.",
        ),
    ],
)
def test_a_box_without_a_volume(metal: str, remedy: str) -> None:
    raw = box_case.job(old={"volume": "unknown", "metal": metal})
    found = box_case.of("box-fill", "old", raw)
    assert (found.verdict, found.remedy) == ("unknown", remedy)
