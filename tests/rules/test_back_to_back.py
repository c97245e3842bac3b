"""Two boxes in one cavity: the closet charger (S3) worked by hand, and its limits."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from estimator.rules.records import Finding
from estimator.survey.reader import read_job
from estimator.tables.facts import sources
from tests.rules.box_case import ROOT, by_subject, job, of, with_box
from tests.worked.job import worked

RULE = "box-back-to-back"
PLACE = {"wall": "w", "height": "14 in"}


def pair(
    x: str = "50 in", wall: dict[str, Any] | None = None, country: str = "US", **new: Any
) -> Finding:
    """An old box 2-3/4 in deep at 50 in; the new one as deep, on the other face of a 2x4 wall."""
    opposite = {"room": "closet", "x": x, "depth": "2-3/4 in"} | new
    raw = job(old={"depth": "2-3/4 in"}, new=opposite, wall=wall, job={"country": country})
    return of(RULE, "new", raw)


def test_s3_passes_by_five_inches_to_the_side() -> None:
    found = next(each for each in worked("closet-charger").findings if each.rule == RULE)
    assert (found.subject, found.verdict) == ("closet", "pass")
    assert found.figures == "box hall on the other face is 5 in to the side, asked 2 3/4 in"


def test_s3_face_to_face_does_not_fit_the_cavity() -> None:
    found = pair()
    assert (found.verdict, found.blocking) == ("fail", True)
    assert found.figures == (
        "box old is on the other face: both 5 1/2 in deep in a cavity of 3 1/2 in; box old on "
        "the other face is 0 in to the side, asked 2 3/4 in"
    )
    assert found.remedy == "Move one of them sideways, up or down, or use shallower boxes."
    assert found.cite.startswith(sources()["common-practice"]["title"])


# 2-1/4 in wide each, 1/2 in between: 2-3/4 in from centre to centre.
@pytest.mark.parametrize(
    ("x", "verdict"),
    [("52-3/4 in", "pass"), ("52-47/64 in", "fail"), ("47-1/4 in", "pass"), ("48 in", "fail")],
)
def test_the_distance_to_the_side(x: str, verdict: str) -> None:
    assert pair(x).verdict == verdict


def test_two_gangs_are_wider_by_a_gang() -> None:
    # half of 1-13/16 more: 2-3/4 + 29/32 = 3-21/32
    assert pair("53-21/32 in", gangs=2).verdict == "pass"
    assert pair("53-5/8 in", gangs=2).verdict == "fail"


# 3-3/4 in high, 1/2 in between: 4-1/4 in from centre to centre.
@pytest.mark.parametrize(
    ("height", "verdict"), [("18-1/4 in", "pass"), ("18-3/16 in", "fail"), ("9-3/4 in", "pass")]
)
def test_the_distance_in_height(height: str, verdict: str) -> None:
    assert pair(height=height).verdict == verdict


# Depths of both against the cavity: 2-3/4 + 3/4 = 3-1/2 fits a 2x4, a hair more does not.
@pytest.mark.parametrize(("depth", "verdict"), [("3/4 in", "pass"), ("49/64 in", "fail")])
def test_two_shallow_boxes_fit_face_to_face(depth: str, verdict: str) -> None:
    found = pair(depth=depth)
    assert found.verdict == verdict
    assert found.figures.startswith("box old is on the other face: both 3 ")
    assert found.cite == pair().cite


@pytest.mark.parametrize(
    ("wall", "verdict"),
    [({"stud": "2x6"}, "pass"), ({"stud_depth": "5-1/2 in"}, "pass"),
     ({"stud_depth": "5-7/16 in"}, "fail"), ({"stud": "unknown"}, "unknown")],
)  # fmt: skip
def test_the_cavity_is_as_deep_as_the_studs(wall: dict[str, Any], verdict: str) -> None:
    assert pair(wall=wall).verdict == verdict


def test_measures_that_are_missing() -> None:
    raw = job(old={"x": "unknown"}, new={"room": "closet", "depth": "2-3/4 in"})
    found = of(RULE, "new", raw)
    assert found.cite == pair().cite
    assert (found.verdict, found.remedy) == (
        "unknown",
        "Measure where both boxes stand, how deep they are and how deep the studs are.",
    )
    assert found.figures == "box old is on the other face; measures are missing"


@pytest.mark.parametrize("key", ["x", "height"])
def test_a_place_nobody_measured_is_unknown_where_the_depths_do_not_fit(key: str) -> None:
    deep = {"depth": "2-3/4 in"}
    new = deep | {"room": "closet", "x": "50 in"}
    found = of(RULE, "new", job(old=deep | {key: "unknown"}, new=new))
    assert (found.verdict, found.cite) == ("unknown", pair().cite)
    assert found.figures.endswith("both 5 1/2 in deep in a cavity of 3 1/2 in")
    assert found.remedy.startswith("Measure where both boxes stand")
    shallow = job(old={"depth": "1/2 in", key: "unknown"}, new=new)
    assert of(RULE, "new", shallow).verdict == "pass"


def test_a_box_higher_up_with_no_place_to_the_side() -> None:
    new = {"room": "closet", "x": "unknown", "height": "60 in"}
    found = of(RULE, "new", job(new=new))
    assert (found.verdict, found.figures) == (
        "pass",
        "box old on the other face stands higher or lower",
    )


@pytest.mark.parametrize(
    ("rated", "x", "verdict"),
    [("yes", "73-15/16 in", "note"), ("yes", "74 in", "pass"), ("no", "60 in", "pass"),
     ("unknown", "60 in", "pass")],
)  # fmt: skip
def test_a_rated_wall_wants_two_feet(rated: str, x: str, verdict: str) -> None:
    assert pair(x, {"fire_rated": rated}).verdict == verdict


def test_what_is_said_of_a_rated_wall() -> None:
    found = pair("60 in", {"fire_rated": "yes"})
    assert found.figures.endswith("asked 2 3/4 in; in a rated wall 24 in apart is usual")
    assert (found.cite, found.remedy[:24]) == ("NEC 2023 300.21", "Ask the building office:")
    assert pair("60 in", {"fire_rated": "yes"}, country="GB").verdict == "pass"


def test_a_rated_wall_with_shallow_boxes_or_no_place_gets_the_note_too() -> None:
    wall = {"fire_rated": "yes"}
    assert pair(wall=wall, depth="1/2 in").verdict == "note"
    raw = job(wall=wall, old={"x": "unknown", "depth": "1/2 in"},
              new={"room": "closet", "depth": "1/2 in"})  # fmt: skip
    assert of(RULE, "new", raw).verdict == "note"


def test_a_pair_that_does_not_fit_fails_in_a_rated_wall_too() -> None:
    assert pair(wall={"fire_rated": "yes"}).verdict == "fail"


def test_boxes_on_one_face_or_in_other_places_are_no_pair() -> None:
    assert by_subject(RULE, job(new={"x": "50 in"})) == {}
    assert by_subject(RULE, job(new={"x": "50 in", "mount": "ceiling", "out": "9 in",
                                     "room": "closet"})) == {}  # fmt: skip
    raw = job(new={"room": "closet", "x": "50 in"})
    del raw["boxes"][1]["wall"]
    assert by_subject(RULE, raw) == {}
    ceiling = job(old={"mount": "ceiling", "out": "9 in"}, new={"room": "closet", "x": "50 in"})
    assert by_subject(RULE, ceiling) == {}


def test_an_old_box_that_stays_starts_no_pair() -> None:
    assert set(by_subject(RULE, job(new={"room": "closet"}))) == {"new"}


def test_two_planned_boxes_are_one_pair_told_of_the_later() -> None:
    raw = job(old={"volume": "12 in3"}, new={"room": "closet", "x": "50 in"})
    assert set(by_subject(RULE, raw)) == {"new"}
    before = job(old={"volume": "12 in3", "room": "closet"}, new={"x": "100 in"})
    assert set(by_subject(RULE, before)) == {"new"}


def test_the_worst_of_several_pairs_is_told() -> None:
    near = PLACE | {"id": "near", "existing": True, "x": "101 in", "depth": "3 in"}
    raw = with_box(job(new={"room": "closet", "depth": "2-3/4 in"}), near)
    found = of(RULE, "new", raw)
    assert (found.verdict, found.figures.startswith("box near")) == ("fail", True)


def test_a_planned_box_of_another_way_is_not_there() -> None:
    other = PLACE | {"id": "other", "x": "100 in", "depth": "3 in"}
    raw = with_box(job(old={"x": "1 in"}, new={"room": "closet"}), other)
    assert of(RULE, "new", raw).verdict == "pass"


def test_the_depth_of_a_box_to_buy_is_looked_up() -> None:
    # the 14 in3 box is 2-1/4 in deep
    raw = job(old={"depth": "1-1/4 in"}, new={"room": "closet", "x": "50 in"})
    found = of(RULE, "new", raw)
    assert (found.verdict, found.figures) == (
        "pass",
        "box old is on the other face: both 3 1/2 in deep in a cavity of 3 1/2 in",
    )


def test_the_sample_says_where_the_measures_come_from() -> None:
    sample = read_job(Path(ROOT / "samples" / "closet-charger.toml")).survey
    assert [each.x_in for each in sample.boxes] == [50, 55]
