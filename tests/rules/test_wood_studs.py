"""Notches and holes in studs, at the limit and just over (IRC R602.6, exact shares)."""

from __future__ import annotations

import pytest

from estimator.survey.reader import survey_from
from tests.rules.metric_case import in_metres, said_of
from tests.rules.wood_case import (
    BORED,
    IRC_2021,
    NOTCHED,
    TYPED,
    facts_of,
    findings,
    hole,
    job,
    notch,
    one,
)


# 25 %, 40 % and 60 % of 3.5, 5.5, 2.5 and 7.25 in, worked by hand.
@pytest.mark.parametrize(
    ("stud", "bearing", "depth", "verdict"),
    [
        ("2x4", "yes", "7/8 in", "pass"),  # 0.875 exactly
        ("2x4", "yes", "0.8751 in", "fail"),
        ("2x4", "no", "1.4 in", "pass"),
        ("2x4", "no", "1.4001 in", "fail"),
        ("2x6", "yes", "1.375 in", "pass"),
        ("2x6", "yes", "1-7/16 in", "fail"),
        ("2x6", "no", "2.2 in", "pass"),
        ("2x6", "no", "2-1/4 in", "fail"),
        ("2x3", "yes", "5/8 in", "pass"),
        ("2x8", "no", "2.9 in", "pass"),
    ],
)
def test_notch(stud: str, bearing: str, depth: str, verdict: str) -> None:
    found = one("stud-notch", notch(depth, wall={"stud": stud, "bearing": bearing}))
    assert (found.verdict, found.subject, found.cite) == (verdict, "run 1", IRC_2021)


@pytest.mark.parametrize(
    ("stud", "bearing", "size", "verdict"),
    [
        ("2x4", "yes", "1.4 in", "pass"),
        ("2x4", "yes", "1.4001 in", "fail"),
        ("2x4", "no", "2.1 in", "pass"),
        ("2x4", "no", "2.1001 in", "fail"),
        ("2x6", "yes", "2.2 in", "pass"),
        ("2x6", "yes", "2.2001 in", "fail"),
        ("2x6", "no", "3.3 in", "pass"),
        ("2x6", "no", "3.3001 in", "fail"),
        ("2x3", "yes", "1 in", "pass"),
        ("2x3", "yes", "1-1/16 in", "fail"),
        ("2x3", "no", "1-1/4 in", "pass"),  # 1.5 in by share, but 5/8 in stays on each side
        ("2x3", "no", "1-5/16 in", "fail"),
    ],
)
def test_hole(stud: str, bearing: str, size: str, verdict: str) -> None:
    found = one("stud-hole", hole(size, wall={"stud": stud, "bearing": bearing}))
    assert (found.verdict, found.subject, found.cite) == (verdict, "run 1", IRC_2021)


def test_a_measured_stud_goes_before_its_name() -> None:
    # 60 % of 3-5/8 in is 2.175
    wall = {"stud_depth": "3-5/8 in", "bearing": "no"}
    assert one("stud-hole", hole("2.175 in", wall=wall)).verdict == "pass"
    assert one("stud-hole", hole("2.18 in", wall=wall)).verdict == "fail"


def test_an_exterior_wall_counts_as_bearing() -> None:
    wall = {"bearing": "no", "exterior": "yes"}
    assert one("stud-notch", notch("1 in", wall=wall)).verdict == "fail"
    assert one("stud-hole", hole("1-1/2 in", wall=wall)).verdict == "fail"


@pytest.mark.parametrize(
    ("doubled", "row", "size", "verdict"),
    [
        ("yes", 2, "2.1 in", "pass"),
        ("yes", 2, "2-1/8 in", "fail"),
        ("yes", 3, "1-1/2 in", "fail"),  # three in a row
        ("yes", 3, "1.4 in", "pass"),
        ("yes", 0, "1-1/2 in", "fail"),  # unsaid: all four studs crossed stand in a row
        ("no", 2, "1-1/2 in", "fail"),
        ("unknown", 2, "1-1/2 in", "unknown"),
        ("unknown", 3, "1-1/2 in", "fail"),
        ("unknown", 2, "1.4 in", "pass"),
    ],
)
def test_doubled_studs_of_a_bearing_wall(doubled: str, row: int, size: str, verdict: str) -> None:
    wall = {"bearing": "yes", "doubled_studs": doubled}
    found = one("stud-hole", hole(size, wall=wall, run={"doubled_in_a_row": row}))
    assert found.verdict == verdict
    if verdict == "unknown":
        assert found.remedy == "Look whether the studs are doubled."


def test_two_studs_in_a_leg_are_two_in_a_row() -> None:
    wall = {"bearing": "yes", "doubled_studs": "yes"}
    found = one("stud-hole", hole("1-1/2 in", wall=wall, new={"x": "60 in"}))
    assert (found.verdict, found.figures[:14]) == ("pass", "2 bored studs ")


def test_a_notch_has_no_relief_by_doubling() -> None:
    wall = {"bearing": "yes", "doubled_studs": "yes"}
    assert one("stud-notch", notch("1 in", wall=wall)).verdict == "fail"
    wall = {"bearing": "unknown", "doubled_studs": "unknown"}
    assert "doubled" not in one("stud-notch", notch("1 in", wall=wall)).remedy


@pytest.mark.parametrize(
    ("edge", "verdict", "left"),
    [
        ("5/8 in", "pass", "0.625"),
        ("9/16 in", "fail", "0.5625"),
        ("2.125 in", "pass", "0.625"),  # 3.5 - 0.75 - 2.125 = 0.625 on the other side
        ("2.2 in", "fail", "0.55"),
        ("2.75 in", "fail", "0"),
        ("3 in", "fail", "0"),
    ],
)
def test_wood_left_at_the_edge(edge: str, verdict: str, left: str) -> None:
    found = one("stud-hole", hole("3/4 in", run={"edge": edge}))
    assert found.verdict == verdict
    assert f"wood left at the edge {left} in, at least 0.625 in" in found.figures
    if verdict == "fail":
        assert found.remedy == "Bore in the middle of the stud, or use a smaller bit."


def test_the_words_of_a_pass() -> None:
    assert one("stud-hole", hole("3/4 in")).figures == (
        "4 bored studs (no load), hole 0.75 in: at most 2-1/16 in (60 % of 3.5 in);"
        " wood left at the edge 1.375 in, at least 0.625 in"
    )
    assert one("stud-notch", notch("3/4 in", wall={"bearing": "yes"})).figures == (
        "4 notched studs (bearing or outside wall), 0.75 in deep: at most 7/8 in (25 % of 3.5 in)"
    )


@pytest.mark.parametrize(
    ("bearing", "size", "remedy"),
    [
        ("no", "2-1/4 in", "Use a smaller bit, or another way."),
        (
            "yes",
            "2.1 in",
            "Use a smaller bit, or another way."
            " Doubled studs take a larger hole, no more than 2 of them in a row.",
        ),
        ("yes", "2.11 in", "Use a smaller bit, or another way."),
    ],
)
def test_what_to_do_about_a_hole_too_large(bearing: str, size: str, remedy: str) -> None:
    found = one("stud-hole", hole(size, wall={"bearing": bearing}))
    assert found.blocking
    assert found.remedy == remedy


def test_what_to_do_about_a_notch_too_deep() -> None:
    found = one("stud-notch", notch("2 in"))
    assert (found.blocking, found.remedy) == (True, "Bore the studs instead, or notch less deep.")


def test_steel_studs_have_no_limit_of_wood() -> None:
    assert findings("stud-hole", hole("3 in", wall={"framing": "steel"})) == []


def test_nothing_cut_no_finding() -> None:
    assert findings("stud-notch", job()) == []
    assert findings("stud-hole", job(run=NOTCHED)) == []
    exposed = {**TYPED, "method": "exposed"}
    assert findings("stud-hole", job(run=exposed)) == []


def test_a_fished_cable_passes_bored_studs() -> None:
    assert one("stud-hole", job(run={"method": "fished"})).verdict == "pass"


@pytest.mark.parametrize("kind", ["king", "jack", "cripple", "post", "stud"])
def test_upright_members_are_judged_as_studs(kind: str) -> None:
    member = {"wall": "w", "kind": kind, "at": "40 in", "hole": "2.2 in"}
    found = one("stud-hole", job(members=[member]))
    assert found.verdict == "fail"
    assert found.figures.startswith("1 bored stud (no load), hole 2.2 in: at most 2-1/16 in")


@pytest.mark.parametrize("kind", ["block", "nog", "plate", "joist"])
def test_other_members_are_not_studs(kind: str) -> None:
    member = {"wall": "w", "kind": kind, "at": "40 in", "hole": "3 in"}
    assert one("stud-hole", job(members=[member])).verdict == "pass"


def test_a_member_with_its_own_notch() -> None:
    member = {"wall": "w", "kind": "king", "at": "40 in", "notch_depth": "1-1/2 in"}
    found = one("stud-notch", notch("1 in", members=[member]))
    assert found.figures.startswith("1 notched stud (no load), 1.5 in deep: at most 1-3/8 in")
    assert found.verdict == "fail"


def test_studs_of_two_walls_are_one_finding_worst_first() -> None:
    wall = job()["walls"][0] | {"id": "v", "bearing": "yes"}
    raw = job(new={"wall": "v", "x": "20 in"}, run={"hole": "1-1/2 in"})
    raw["walls"].append(wall)
    raw["corners"] = [{"walls": ["w", "v"], "members": 2, "edge": "3/4 in"}]
    found = one("stud-hole", raw)
    # v: the stud at 16, and two at the corner 0.75 in from the face; w: 32 to 128 by 16 is 7
    assert found.verdict == "fail"
    assert [words.split(",")[0] for words in found.figures.split("; ")] == [
        "1 bored stud (bearing or outside wall)",
        "wood left at the edge 1 in",
        "2 bored studs (bearing or outside wall)",
        "wood left at the edge 0.75 in",
        "7 bored studs (no load)",
        "wood left at the edge 1 in",
    ]
    assert found.remedy.count("Use a smaller bit, or another way.") == 1


@pytest.mark.parametrize(
    ("edition", "cite"),
    [
        ("irc-2015", "IRC 2015 R602.6 (from memory: check)"),
        ("irc-2018", "IRC 2018 R602.6"),
        ("irc-2021", "IRC 2021 R602.6 (from memory: check)"),
    ],
)
def test_the_edition_is_cited_with_its_confidence(edition: str, cite: str) -> None:
    for rule, run in (("stud-hole", BORED), ("stud-notch", NOTCHED)):
        assert one(rule, job(run=run, job={"building_edition": edition})).cite == cite


def test_a_local_figure_goes_before_the_table() -> None:
    local = {
        "rule": "stud-notch", "change": "figure", "figure": "stud-notch-other", "value": "50",
        "reason": "Sample county amendment",
    }  # fmt: skip
    found = one("stud-notch", notch("1-3/4 in", amendments=[local]))
    assert found.verdict == "pass"
    assert found.figures.endswith("at most 1-3/4 in (50 % of 3.5 in)")


def test_metric_words_round_down_to_the_millimetre() -> None:
    # 40 % of 89 mm is 35.6 mm; (89 - 20) / 2 = 34.5; 5/8 in = 15.875 mm
    raw = job(run={"hole": "20 mm"}, wall={"stud_depth": "89 mm", "bearing": "yes"})
    (found,) = said_of("stud-hole", facts_of(in_metres(survey_from(raw)))).values()
    assert found.figures == (
        "4 bored studs (bearing or outside wall), hole 20 mm: at most 35 mm (40 % of 89 mm);"
        " wood left at the edge 34.5 mm, at least 15.875 mm"
    )
