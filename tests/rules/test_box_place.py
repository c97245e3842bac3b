"""Setback, gap and reach of boxes: NEC 314.20, 314.21 and 314.29; plaster by the trade."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest

from estimator.rules.records import Finding, RemedyPart, RemedyTask
from tests.rules.box_case import by_subject, facts_of, job, of, survey
from tests.rules.metric_case import in_metres, said_of

SETBACK, GAP, BURIED = "box-setback", "box-gap", "box-buried"
ONE = Decimal(1)


def old(rule: str, wall: dict[str, Any] | None = None, **contents: Any) -> Finding:
    return of(rule, "old", job(old={"contents": contents}, wall=wall))


@pytest.mark.parametrize("finish", ["gypsum board", "plaster"])
@pytest.mark.parametrize(
    ("setback", "verdict"),
    [("0 in", "pass"), ("1/4 in", "pass"), ("17/64 in", "fail"), ("1/2 in", "fail")],
)
def test_setback_in_a_surface_that_does_not_burn(finish: str, setback: str, verdict: str) -> None:
    found = old(SETBACK, {"finish": finish}, setback=setback)
    assert (found.verdict, found.cite) == (verdict, "NEC 2023 314.20")


@pytest.mark.parametrize(("setback", "verdict"), [("0 in", "pass"), ("1/64 in", "fail")])
def test_setback_in_a_surface_that_burns(setback: str, verdict: str) -> None:
    found = old(SETBACK, {"combustible_finish": "yes"}, setback=setback)
    assert found.verdict == verdict
    assert found.figures.endswith("behind the surface, at most 0 in")


@pytest.mark.parametrize(
    ("setback", "verdict"), [("0 in", "pass"), ("1/8 in", "unknown"), ("3/8 in", "fail")]
)
@pytest.mark.parametrize(
    "wall", [{"combustible_finish": "unknown"}, {"finish": "unknown"}], ids=["burns", "finish"]
)
def test_setback_in_a_surface_nobody_named(
    wall: dict[str, str], setback: str, verdict: str
) -> None:
    assert old(SETBACK, wall, setback=setback).verdict == verdict


def test_what_is_said_of_a_surface_nobody_named() -> None:
    found = old(SETBACK, {"finish": "unknown"}, setback="1/8 in")
    assert found.figures == (
        "1/8 in behind the surface, at most 1/4 in, and 0 in if the surface is wood"
    )
    assert found.remedy.startswith("Look what the surface is made of")
    assert found.cite == "NEC 2023 314.20"


def test_the_ceiling_is_not_judged_by_the_wall_and_a_box_may_have_no_wall() -> None:
    ceiling = {"mount": "ceiling", "out": "20 in", "contents": {"setback": "1/8 in"}}
    assert of(SETBACK, "old", job(old=ceiling)).verdict == "unknown"
    raw = job(old={"contents": {"setback": "1/8 in"}})
    del raw["boxes"][0]["wall"]
    assert of(SETBACK, "old", raw).verdict == "unknown"


def test_an_old_box_nobody_measured_is_unknown() -> None:
    found = old(SETBACK)
    assert (found.verdict, found.remedies) == ("unknown", ())
    assert found.figures == "nobody has measured it; at most 1/4 in behind the surface"
    assert found.remedy.startswith("With the cover off, measure from the surface")


SET = "to be set by this job: at most 1/4 in behind the surface"
SET_OR_NONE = f"{SET}, and 0 in if the surface is wood"


@pytest.mark.parametrize(
    ("wall", "figures"),
    [
        ({}, SET),
        ({"combustible_finish": "yes"}, SET.replace("1/4", "0")),
        ({"finish": "unknown"}, SET_OR_NONE),
    ],
)
def test_a_box_that_this_job_sets_gets_the_figure_to_keep(
    wall: dict[str, str], figures: str
) -> None:
    """BX-02: nobody can have measured it yet, so it is a note and no pass."""
    found = of(SETBACK, "new", job(wall=wall))
    assert (found.verdict, found.figures, found.cite) == ("note", figures, "NEC 2023 314.20")
    assert found.remedy == "Set it flush with the finished surface."
    assert not found.blocking


def test_a_box_in_the_place_of_an_old_one_is_set_as_well() -> None:
    found = by_subject(SETBACK, job(old={"volume": "12 in3"}))
    assert {subject: each.verdict for subject, each in found.items()} == {
        "old": "note", "new": "note",
    }  # fmt: skip
    assert of(GAP, "old", job(old={"volume": "12 in3"})).verdict == "note"


def test_a_new_box_in_an_old_hole_is_judged() -> None:
    raw = job(new={"contents": {"setback": "1/2 in"}})
    assert of(SETBACK, "new", raw).verdict == "fail"


@pytest.mark.parametrize("gangs", [1, 2])
def test_an_extender_of_so_many_gangs_is_the_remedy(gangs: int) -> None:
    raw = job(old={"gangs": gangs, "contents": {"setback": "1/2 in"}})
    found = of(SETBACK, "old", raw)
    assert found.remedies == (
        RemedyPart("boxes", f"extender-{gangs}g", ONE, "ea"),
        RemedyTask("terminate", "fit-box-extender", ONE, "ea"),
    )
    assert found.remedy.startswith("Fit a box extender, or take the box out")
    assert found.blocking


def test_three_gangs_are_mounted_again() -> None:
    found = of(SETBACK, "old", job(old={"gangs": 3, "contents": {"setback": "1/2 in"}}))
    assert found.remedies == ()
    assert found.remedy == "Take the box out and mount it flush with the surface."


@pytest.mark.parametrize(
    ("thickness", "figures"),
    [("unknown", "plaster is usually 3/4 in to 1 1/4 in thick"),
     ("7/8 in", "plaster is usually 3/4 in to 1 1/4 in thick; measured 7/8 in")],
)  # fmt: skip
def test_a_new_box_in_plaster_gets_a_note(thickness: str, figures: str) -> None:
    wall = {"finish": "plaster", "finish_thickness": thickness}
    found = of(SETBACK, "new", job(wall=wall))
    assert (found.verdict, found.figures) == ("note", f"{SET}; {figures}")
    assert found.cite.startswith("NEC 2023 314.20; ")
    assert found.cite.endswith("plaster against gypsum board (worked out)")
    assert "flush with the finished surface. Set its ears to the real thickness" in found.remedy


def test_a_ceiling_box_and_one_without_a_wall_get_no_note_of_plaster() -> None:
    ceiling = {"mount": "ceiling", "out": "20 in"}
    found = of(SETBACK, "new", job(new=ceiling, wall={"finish": "plaster"}))
    assert found.figures == SET_OR_NONE
    raw = job(wall={"finish": "plaster"})
    del raw["boxes"][1]["wall"]
    assert of(SETBACK, "new", raw).figures == SET_OR_NONE


@pytest.mark.parametrize(
    ("gap", "verdict"), [("0 in", "pass"), ("1/8 in", "pass"), ("9/64 in", "fail")]
)
def test_gap_round_a_box(gap: str, verdict: str) -> None:
    found = old(GAP, gap=gap)
    assert (found.verdict, found.cite) == (verdict, "NEC 2023 314.21")
    assert found.figures.endswith("at its widest, at most 1/8 in")


def test_a_gap_in_wood_is_not_this_rule_s() -> None:
    assert by_subject(GAP, job(old={"contents": {"gap": "1 in"}},
                               wall={"combustible_finish": "yes"})) == {}  # fmt: skip


def test_a_gap_nobody_measured_is_unknown_at_an_old_box_alone() -> None:
    """BX-03: at a box that this job cuts the figure to keep is said."""
    found = by_subject(GAP, job())
    assert found["new"].verdict == "note"
    assert found["new"].figures == "to be cut by this job: at most 1/8 in left open round the box"
    assert found["new"].remedy.startswith("Trace the box itself")
    assert found["new"].cite == "NEC 2023 314.21"
    assert (found["old"].verdict, found["old"].remedies) == ("unknown", ())
    assert found["old"].figures == "nobody has measured it; at most 1/8 in"


# Seam round the box: 2 x (2-1/4 + 3-3/4) = 12 in, two gangs 2 x 29/16 more; 0.04 gal a foot.
@pytest.mark.parametrize(("gangs", "gallons"), [(1, "0.04"), (2, "0.052083")])
def test_patch_compound_round_the_box_is_the_remedy(gangs: int, gallons: str) -> None:
    found = of(GAP, "old", job(old={"gangs": gangs, "contents": {"gap": "1/4 in"}}))
    assert found.remedies == (
        RemedyPart("closing", "compound-setting", Decimal(gallons), "gal"),
        RemedyTask("close", "fill-box-gap", ONE, "ea"),
    )
    assert (found.remedy, found.blocking) == ("Fill the gap round the box with patch compound.",
                                              True)  # fmt: skip


@pytest.mark.parametrize(
    ("buried", "verdict"), [("no", "pass"), ("yes", "fail"), ("unknown", "unknown")]
)
def test_a_box_stays_within_reach(buried: str, verdict: str) -> None:
    found = old(BURIED, buried=buried)
    assert (found.verdict, found.cite) == (verdict, "NEC 2023 314.29")
    assert (found.blocking, bool(found.remedy)) == (verdict == "fail", verdict != "pass")


@pytest.mark.parametrize(
    ("buried", "figures"),
    [("no", "it stays within reach, with a cover"), ("yes", "the finish would cover it"),
     ("unknown", "nobody has said whether the finish would cover it")],
)  # fmt: skip
def test_what_is_said_of_reach(buried: str, figures: str) -> None:
    assert old(BURIED, buried=buried).figures == figures


def test_every_box_of_the_job_stays_within_reach() -> None:
    assert {key: each.verdict for key, each in by_subject(BURIED, job()).items()} == {
        "old": "pass", "new": "pass",
    }  # fmt: skip


def test_lengths_of_a_metric_job_are_in_millimetres() -> None:
    metric = in_metres(survey(job(old={"contents": {"setback": "10 mm"}})))
    assert said_of(SETBACK, facts_of(metric))["old"].figures == (
        "10 mm behind the surface, at most 6.35 mm"
    )
