"""The box-fill rule by NEC 314.16: verdicts, figures, citations and remedies; sums by hand."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from estimator.rules.facts import Facts
from estimator.rules.records import Finding
from estimator.rules.registry import FUNCTIONS
from tests.rules.box_case import facts, facts_of, job, of, screened, survey
from tests.rules.metric_case import CABLE, in_metres, said_of

RULE = "box-fill"
CARRY_ON = {"finding": "box-fill:old", "reason": "owner", "decision": "decline remedy"}


def old(raw: dict[str, Any], **practice: Any) -> Finding:
    return of(RULE, "old", raw, **practice)


def declined(**box: Any) -> dict[str, Any]:
    """The job with an old box that is to stay."""
    return job(old=box, acceptances=[CARRY_ON])


# One 14-2, one more: 4 + 1 + 2 = 7 x 2.00 = 14.0 in3.
@pytest.mark.parametrize(
    ("room", "verdict"), [("14 in3", "pass"), ("13.99 in3", "fail"), ("14.01 in3", "pass")]
)
def test_equality_passes_and_there_is_no_tolerance(room: str, verdict: str) -> None:
    assert old(declined(volume=room)).verdict == verdict


def test_the_figures_say_before_and_after() -> None:
    found = old(job())
    assert found.figures == "before 10.0 in3, after (4 + 1 + 2) x 2.00 = 14.0 of 18.0 in3"
    assert (found.verdict, found.remedy, found.blocking) == ("pass", "", False)


def test_a_new_box_has_no_before() -> None:
    found = of(RULE, "new", job())
    assert found.figures == "(2 + 1 + 2 + 1) x 2.00 = 12.0 of 14.0 in3"


@pytest.mark.parametrize(
    ("edition", "cite"),
    [("nec-2017", "NEC 2017 314.16 (from memory: check)"), ("nec-2020", "NEC 2020 314.16"),
     ("nec-2023", "NEC 2023 314.16")],
)  # fmt: skip
def test_the_citation_names_the_edition(edition: str, cite: str) -> None:
    found = old(job(job={"edition": edition}))
    assert (found.cite, found.edition) == (cite, edition)


# Five cables with grounds in a luminaire box: 10 wires, then 1 or 1.25 for the grounds.
@pytest.mark.parametrize(
    ("edition", "sum_"),
    [("nec-2017", "(10 + 1) x 2.00 = 22.0"), ("nec-2020", "(10 + 1.25) x 2.00 = 22.5"),
     ("nec-2023", "(10 + 1.25) x 2.00 = 22.5")],
)  # fmt: skip
def test_grounds_by_edition(edition: str, sum_: str) -> None:
    box = {"device": "luminaire", "cables": ["14-2"] * 4, "volume": "22 in3"}
    found = old(job(old=box, job={"edition": edition}, acceptances=[CARRY_ON]))
    assert f"after {sum_} of 22.0 in3" in found.figures
    assert found.verdict == ("pass" if edition == "nec-2017" else "fail")


@pytest.mark.parametrize(("edition", "verdict"), [("nec-2020", "pass"), ("nec-2023", "fail")])
def test_terminal_blocks_by_edition(edition: str, verdict: str) -> None:
    box = {"volume": "14 in3", "contents": {"terminal_blocks": ["14"]}}
    found = old(job(old=box, job={"edition": edition}, acceptances=[CARRY_ON]))
    assert found.verdict == verdict


@pytest.mark.parametrize(("counted", "verdict"), [(True, "fail"), (False, "pass")])
def test_disputed_clamps_of_a_plastic_box_by_the_setting(counted: bool, verdict: str) -> None:
    raw = declined(volume="14 in3", clamps="yes", metal="no")
    assert old(raw, count_built_in_clamps=counted).verdict == verdict


@pytest.mark.parametrize(
    ("room", "verdict"), [("13.9 in3", "fail"), ("14 in3", "unknown"), ("16 in3", "pass")]
)
def test_clamps_nobody_looked_for_matter_only_between_the_two_counts(
    room: str, verdict: str
) -> None:
    found = old(declined(volume=room, clamps="unknown"))
    assert found.verdict == verdict


def test_what_to_look_for_where_one_fact_decides() -> None:
    found = old(declined(volume="14 in3", clamps="unknown"))
    assert found.remedy == "Look whether it has inner clamps: it may fit."
    assert found.figures.endswith("= 16.0 of 14.0 in3, at most")
    mixed = declined(volume="17 in3", clamps="unknown", cables=["12-2"])
    assert "inner clamps, and which wires are on the device" in old(mixed).remedy


def test_a_replaced_box_is_put_right_with_both_boxes_in_its_figures() -> None:
    found = old(job(old={"volume": "12 in3"}))
    assert (found.verdict, found.remedied, found.stops_the_bid) == ("fail", True, False)
    assert found.figures == (
        "old box: 12.0 in3 for 10.0 before the work; new box: (4 + 1 + 2 + 1) x 2.00 = 16.0 "
        "of 16.0 in3"
    )
    assert found.remedy.startswith("The old box is replaced by a larger one")


def test_a_box_that_is_put_right_stays_so_where_the_rule_is_only_a_note() -> None:
    local = {"rule": "box-fill", "change": "note", "reason": "town"}
    raw = job(old={"volume": "12 in3"}, amendments=[local])
    found = next(each for each in screened(raw) if each.finding_id == "box-fill:old")
    assert (found.verdict, found.remedied, found.stops_the_bid) == ("fail", True, False)


def test_a_box_that_only_makes_way_for_a_fan_box_was_within() -> None:
    found = old(job(old={"volume": "22 in3", "mount": "ceiling", "replacement": "fan box"}))
    assert (found.verdict, found.remedied) == ("pass", False)


def test_a_replaced_box_whose_cables_were_only_assumed_is_not_passed() -> None:
    found = old(job(old={"volume": "12 in3", "cables": []}))
    assert found.verdict == "unknown"
    assert found.figures.endswith("of 20.0 in3, cables assumed")
    assert found.remedy.startswith("Open the box with the circuit off and count the cables. The")


@pytest.mark.parametrize("box", [{"cables": []}, {"unknown_cables": True}])
def test_cables_nobody_counted_are_unknown(box: dict[str, Any]) -> None:
    found = old(job(old={"volume": "40 in3"} | box))
    assert found.verdict == "unknown"
    assert found.figures.endswith("of 40.0 in3, cables assumed")


@pytest.mark.parametrize(
    ("box", "remedy"),
    [
        ({"metal": "yes"}, "Read the volume stamped inside the box, or measure"),
        ({"metal": "no"}, "A plastic box without a mark has no volume to count on."),
        ({"metal": "no", "contents": {"table_box": "DEV-35"}}, "A plastic box without a mark"),
    ],
)
def test_a_box_without_a_volume_is_unknown(box: dict[str, Any], remedy: str) -> None:
    found = old(job(old={"volume": "unknown"} | box))
    assert (found.verdict, found.remedies) == ("unknown", ())
    assert found.figures.endswith("after (4 + 1 + 2) x 2.00 = 14.0 in3; its volume is unknown")
    assert found.remedy.startswith(remedy)


def test_a_standard_box_is_named() -> None:
    box = {"volume": "unknown", "metal": "yes", "contents": {"table_box": "DEV-275"}}
    found = old(job(old=box))
    assert found.verdict == "pass"
    assert found.figures.endswith("of 14.0 in3 (standard box DEV-275)")


def test_a_ring_without_a_mark_adds_nothing_and_is_told() -> None:
    ring = {"added_volumes": ["unknown"]}
    found = old(declined(volume="13 in3", contents=ring))
    assert found.verdict == "fail"
    assert found.figures.endswith("of 13.0 in3; a ring or cover without a mark adds nothing")
    marked = old(declined(volume="13 in3", contents={"added_volumes": ["1 in3"]}))
    assert (marked.verdict, "ring" in marked.figures) == ("pass", False)


def test_both_words_about_the_room_come_together() -> None:
    inside = {"table_box": "DEV-275", "added_volumes": ["unknown"]}
    found = old(job(old={"volume": "unknown", "metal": "yes", "contents": inside}))
    assert found.figures.endswith(
        "of 14.0 in3 (standard box DEV-275); a ring or cover without a mark adds nothing"
    )


def test_words_about_the_old_box_are_not_said_of_the_new_one() -> None:
    found = of(RULE, "new", job(new={"contents": {"added_volumes": ["unknown"]}}))
    assert found.figures.endswith("of 14.0 in3")


@pytest.mark.parametrize(
    ("acceptances", "words"),
    [([CARRY_ON], "Replace the box by a larger one"), ([], "No box on file for this place")],
)
def test_what_to_do_about_an_old_box_that_is_over(
    acceptances: list[dict[str, str]], words: str
) -> None:
    found = old(job(old={"cables": ["12-3"] * 5}, acceptances=acceptances))
    assert (found.verdict, found.blocking) == ("fail", True)
    assert found.remedy.startswith(words)


def test_what_fits_no_box_on_file_is_offered_two_gangs_or_a_separate_box() -> None:
    found = old(job(old={"cables": ["12-3"] * 5}))
    assert "use a two-gang box, or set a separate box beside it" in found.remedy


def test_a_new_box_that_is_not_on_file_fails() -> None:
    found = of(RULE, "new", job(new={"cables": ["12-3"] * 5}))
    assert (found.verdict, found.blocking) == ("fail", True)
    assert found.figures.endswith("in3; no box on file holds it")
    assert "use two gangs, or set a separate box" in found.remedy


def test_a_new_box_of_a_stated_volume_that_is_too_small_fails() -> None:
    found = of(RULE, "new", job(new={"volume": "99 in3", "cables": ["12-3"] * 15}))
    assert (found.verdict, "of 99.0 in3" in found.figures) == ("fail", True)
    assert found.remedy.startswith("Put a larger box in the materials book")


SIDES = [{"cables": ["14-2"], "takes_new": True}, {"cables": ["14-2"], "device": "switch"}]


# Sides of 14 and 10 in3 with a metal barrier of 0.5: twice 14 and 0.5 is 28.5 in3.
@pytest.mark.parametrize(("room", "verdict"), [("28.5 in3", "pass"), ("28.4 in3", "fail")])
def test_a_barrier_makes_two_boxes_of_one(room: str, verdict: str) -> None:
    inside = {"barrier": "metal", "sides": SIDES}
    found = old(job(old={"gangs": 2, "volume": room, "contents": inside}))
    assert found.verdict == verdict
    assert "(4 + 1 + 2) x 2.00 = 14.0; (2 + 1 + 2) x 2.00 = 10.0" in found.figures
    assert found.remedy == (
        "" if verdict == "pass"
        else "Plan a box with more room on that side of the barrier, or a separate box."
    )  # fmt: skip


def test_a_barrier_without_its_sides_is_unknown() -> None:
    found = old(job(old={"contents": {"barrier": "metal"}}))
    assert (found.verdict, found.cite) == ("unknown", "NEC 2023 314.16")
    assert found.figures == "no figure without knowing what is on each side of the barrier"
    assert found.remedy.startswith("Look into the box with the circuit off")


def test_every_missing_fact_is_named() -> None:
    inside = {"terminal_blocks": ["3"], "device_wire": "20"}
    found = old(job(old={"contents": inside}))
    assert found.figures == (
        "no figure without knowing how much room a wire of size 3 takes, and how much room a wire "
        "of size 20 takes"
    )


def test_a_wire_in_millimetres_has_no_figure_here() -> None:
    metric = said_of(RULE, facts_of(in_metres(survey(job()))))
    assert {name: each.verdict for name, each in metric.items()} == {
        "old": "unknown", "new": "unknown",
    }  # fmt: skip


def test_a_metric_house_in_canada_is_counted_by_no_guess() -> None:
    raw = job(job={"country": "CA", "units": "metric"}, old={"cables": []}, cable=CABLE)
    found = {each.finding_id: each.verdict for each in screened(raw)}
    assert "box-fill:old" not in found
    assert found["box-fill-canada:old"] == found["box-fill-canada:new"] == "unknown"


@pytest.mark.parametrize("old", [{}, {"volume": "12 in3"}], ids=["kept", "replaced"])
def test_a_takeoff_without_the_volume_of_a_box_is_no_pass(old: dict[str, Any]) -> None:
    known = facts(job(old=old))
    boxes = tuple(replace(each, volume_in3=None) for each in known.takeoff.boxes)
    verdicts = {each.subject: each.verdict for each in FUNCTIONS[RULE](_with(known, boxes))}
    assert verdicts == {"old": "unknown" if old else "pass", "new": "unknown"}


def _with(known: Facts, boxes: tuple[Any, ...]) -> Facts:
    return replace(known, takeoff=replace(known.takeoff, boxes=boxes))


def test_old_cables_without_a_ground_bring_none() -> None:
    found = of(RULE, "old", job(old={"volume": "12 in3", "contents": {"ground_present": "no"}}))
    # 2 + 2 = 4 wires, 8.0 before; the new cable brings the one ground: 4 + 1 + 2, 14.0 after
    assert found.figures.startswith("old box: 12.0 in3 for 8.0 before the work")
    assert "(4 + 1 + 2 + 1) x 2.00" in found.figures


@pytest.mark.parametrize("country", ["GB", "CA"])
def test_the_rule_is_silent_outside_its_country(country: str) -> None:
    assert [each for each in screened(job(job={"country": country})) if each.rule == RULE] == []


def test_the_rule_gives_nothing_where_nobody_counts() -> None:
    assert list(FUNCTIONS[RULE](facts(job(job={"country": "GB"})))) == []


OVER = ["12-3"] * 5
CITED: list[tuple[str, dict[str, Any]]] = [
    ("unknown", {"volume": "unknown"}),
    ("unknown", {"cables": []}),
    ("unknown", {"volume": "14 in3", "clamps": "unknown"}),
    ("unknown", {"contents": {"barrier": "metal"}}),
    ("fail", {"volume": "12 in3", "replacement_volume": "20 in3"}),
    ("fail", {"cables": OVER}),
]


@pytest.mark.parametrize(("verdict", "box"), CITED)
def test_every_verdict_is_cited_and_says_what_to_do(verdict: str, box: dict[str, Any]) -> None:
    keep = [] if "replacement_volume" in box else [CARRY_ON]
    found = old(job(old=box, acceptances=keep))
    assert (found.verdict, found.cite) == (verdict, "NEC 2023 314.16")
    assert len(found.remedy) > len("Look.")


def test_what_is_not_on_file_is_cited_too() -> None:
    assert of(RULE, "new", job(new={"cables": OVER})).cite == "NEC 2023 314.16"


def test_another_box_s_remedy_that_was_declined_changes_nothing() -> None:
    other = {"finding": "box-fill:new", "reason": "owner", "decision": "decline remedy"}
    found = old(job(old={"cables": OVER}, acceptances=[other]))
    assert found.remedy.startswith("No box on file for this place")
    accepted = {"finding": "box-fill:old", "reason": "owner"}
    found = old(job(old={"cables": OVER}, acceptances=[accepted]))
    assert found.remedy.startswith("No box on file for this place")


@pytest.mark.parametrize("unseen", [{"cables": []}, {"unknown_cables": True}])
def test_what_to_do_about_cables_nobody_counted(unseen: dict[str, Any]) -> None:
    found = old(job(old={"volume": "40 in3"} | unseen))
    assert found.remedy == "Open the box with the circuit off and count the cables."


def test_the_title_is_in_plain_words() -> None:
    assert old(job()).title == "Wires in each box"
