"""Boxes planned for a job: fill before and after, larger boxes, boxes chosen; worked by hand."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest

from estimator.pricing.stock import stock_of
from estimator.pricing.worst import if_it_turns_out_badly
from estimator.takeoff.box_choice import offered_clamps
from estimator.takeoff.boxes import plan_boxes, rules_for
from estimator.takeoff.records import BoxCount
from tests.rules.box_case import METRIC, PRACTICE, STOCK, facts, facts_of, job, survey
from tests.rules.metric_case import in_metres


def count(box_id: str, raw: dict[str, Any], **practice: Any) -> BoxCount:
    boxes = facts(raw, **practice).takeoff.boxes
    return next(each for each in boxes if each.box_id == box_id)


def test_before_and_after_of_source_through_and_end_boxes() -> None:
    raw = job()
    raw["boxes"].append({"id": "far", "wall": "w", "x": "150 in", "height": "14 in"})
    raw["runs"].append(raw["runs"][0] | {"id": "2", "from": "new", "to": "far"})
    counts = facts(raw).takeoff.boxes
    # old: 2 + 1 + 2 = 5, then 7; new, with the clamps of its box: 4 + 1 + 2 + 1 = 8; far: 6
    assert [each.role for each in counts] == ["source", "through", "end"]
    assert [each.fill_before for each in counts] == [Decimal("10.0"), None, None]
    assert [each.fill_after for each in counts] == [Decimal(14), Decimal(16), Decimal(12)]


def test_the_sum_of_a_planned_box_is_written_out() -> None:
    assert count("new", job()).fill_sum == "(2 + 1 + 2 + 1) x 2.00 = 12.0"


# Flaps of a plastic box: the setting; clamps of a metal box count always.
@pytest.mark.parametrize(
    ("metal", "counted", "after"),
    [("no", True, "16"), ("no", False, "14"), ("yes", True, "16"), ("yes", False, "16"),
     ("unknown", False, "16")],
)  # fmt: skip
def test_built_in_clamps_are_a_setting(metal: str, counted: bool, after: str) -> None:
    raw = job(old={"clamps": "yes", "metal": metal})
    found = count("old", raw, count_built_in_clamps=counted)
    assert found.fill_after == Decimal(after)


def test_a_shop_that_leaves_built_in_clamps_out_does_so_in_new_boxes() -> None:
    found = count("new", job(), count_built_in_clamps=False)
    assert (found.fill_after, found.clamps) == (Decimal("10.0"), "no")


def test_a_box_at_the_limit_stays_and_one_just_over_is_replaced() -> None:
    kept, over = (count("old", job(old={"volume": room})) for room in ("14 in3", "13.9 in3"))
    assert (kept.replaced, kept.item, kept.volume_in3) == (False, "", Decimal(14))
    assert (over.replaced, over.item) == (True, "box-old-work-1g-16")
    assert (over.old_volume_in3, over.volume_in3) == (Decimal("13.9"), Decimal(16))


def test_a_box_that_may_be_over_gets_a_larger_one_too() -> None:
    assert count("old", job(old={"volume": "14 in3", "clamps": "unknown"})).replaced


def test_a_declined_replacement_stays_out() -> None:
    kept = {"finding": "box-fill:old", "reason": "owner", "decision": "decline remedy"}
    raw = job(old={"volume": "12 in3"}, acceptances=[kept])
    assert not count("old", raw).replaced
    accepted = job(old={"volume": "12 in3"}, acceptances=[kept | {"decision": "accept"}])
    assert count("old", accepted).replaced


@pytest.mark.parametrize("old", [{"volume": "unknown"}, {"contents": {"barrier": "metal"}}])
def test_a_box_nobody_can_judge_is_not_replaced(old: dict[str, Any]) -> None:
    assert not count("old", job(old={"volume": "6 in3"} | old)).replaced


def test_a_box_that_nothing_on_file_replaces_stays() -> None:
    raw = job(old={"volume": "12 in3", "cables": ["12-3"] * 5})
    found = count("old", raw)
    assert (found.replaced, found.item, found.volume_in3) == (False, "", Decimal(12))


def test_the_smallest_box_that_holds_the_wires_is_chosen() -> None:
    assert count("new", job(cable="14-2")).item == "box-old-work-1g-14"
    # 12-3: 3 + 1 + 2 + 1 = 7 x 2.25 = 15.75
    assert count("new", job(cable="12-3")).item == "box-old-work-1g-16"


@pytest.mark.parametrize(
    ("new", "item"),
    [
        ({"volume": "20 in3"}, "box-old-work-1g-20"),
        ({"volume": "20.1 in3"}, "box-old-work-1g-22.5"),
        ({"volume": "99 in3"}, ""),
        ({"gangs": 2}, "box-old-work-2g-32"),
        ({"metal": "yes"}, "box-metal-old-work-1g-12.5"),
        ({"mount": "ceiling", "device": "luminaire"}, "box-ceiling-old-work-14"),
        ({"contents": {"table_box": "DEV-35"}, "metal": "yes"}, ""),
    ],
)
def test_the_box_fits_the_place_and_what_is_asked(new: dict[str, Any], item: str) -> None:
    assert count("new", job(new=new)).item == item


def test_a_metal_box_without_clamps_is_counted_without() -> None:
    # 12-2 and a receptacle: 2 + 1 + 2 = 5 x 2.25 = 11.25, with clamps it would be 13.5
    found = count("new", job(new={"metal": "yes"}, cable="12-2"))
    assert (found.item, found.clamps) == ("box-metal-old-work-1g-12.5", "no")
    assert found.fill_after == Decimal("11.25")


@pytest.mark.parametrize("counted", [True, False])
def test_clamps_of_a_metal_box_on_file_count_whatever_the_setting(counted: bool) -> None:
    offer = replace(STOCK.boxes[0], clamps=True, metal=True)
    assert offered_clamps(offer, replace(PRACTICE, count_built_in_clamps=counted)) == "yes"


def test_the_smallest_box_of_all_is_smaller_than_one_cubic_inch() -> None:
    tiny = replace(STOCK.boxes[0], item="box-tiny", metal=False, volume_in3=Decimal("0.5"))
    stock = replace(STOCK, boxes=(tiny,))
    (_, new) = plan_boxes(survey(job(job={"country": "GB"})), PRACTICE, stock)
    assert new.count.item == "box-tiny"


def test_a_marked_ring_on_a_new_box_lets_it_be_smaller() -> None:
    # 12-3 needs 15.75: the box of 14 with a ring of 2 holds it
    found = count("new", job(new={"contents": {"added_volumes": ["2 in3"]}}, cable="12-3"))
    assert (found.item, found.volume_in3) == ("box-old-work-1g-14", Decimal(16))


def test_rings_of_an_old_box_do_not_come_over_to_the_new_one() -> None:
    ringed = {"volume": "8 in3", "contents": {"added_volumes": ["3 in3"]}}
    found = count("old", job(old=ringed))
    assert (found.old_volume_in3, found.item) == (Decimal(11), "box-old-work-1g-16")
    assert found.volume_in3 == Decimal(16)


def test_the_volume_asked_for_in_the_place_of_an_old_box() -> None:
    asked = {"volume": "12 in3", "replacement_volume": "22.5 in3"}
    assert count("old", job(old=asked)).item == "box-old-work-1g-22.5"


def test_a_standard_box_is_judged_by_its_row() -> None:
    unmarked = {"volume": "unknown", "metal": "yes", "contents": {"table_box": "DEV-25"}}
    found = count("old", job(old=unmarked))
    assert (found.old_volume_in3, found.replaced) == (Decimal("12.5"), True)


@pytest.mark.parametrize(
    ("old", "new", "depths"),
    [
        ({}, {}, (None, Fraction(9, 4))),
        ({"depth": "2-1/2 in"}, {"depth": "3 in"}, (Fraction(5, 2), Fraction(3))),
        ({"depth": "2-1/2 in", "volume": "12 in3"}, {}, (Fraction(5, 2), Fraction(9, 4))),
    ],
)
def test_depth_of_the_boxes_that_will_be_there(
    old: dict[str, Any], new: dict[str, Any], depths: tuple[Any, Any]
) -> None:
    raw = job(old=old, new=new)
    assert (count("old", raw).depth_in, count("new", raw).depth_in) == depths


def test_a_metric_box_keeps_its_depth_exactly() -> None:
    metric = {"units": "metric", "country": "GB"}
    raw = job(job=metric, old={"cables": []}, cable="2.5 mm2 2-core and earth")
    assert count("new", raw).depth_in == Fraction(35) / Fraction("25.4")


def test_a_local_change_of_a_figure_is_counted() -> None:
    change = {"rule": "box-fill", "change": "figure", "figure": "box-fill-clamps", "value": "0",
              "reason": "city"}  # fmt: skip
    other = change | {"figure": "box-setback", "value": "1"}
    off = change | {"change": "off"}
    assert count("new", job(amendments=[change])).fill_after == Decimal("10.0")
    assert count("new", job(amendments=[other, off])).fill_after == Decimal("12.0")


@pytest.mark.parametrize(
    ("country", "rule"), [("US", "box-fill"), ("CA", "box-fill-canada"), ("GB", None)]
)
def test_the_country_decides_who_counts(country: str, rule: str | None) -> None:
    rules = rules_for(survey(job(job={"country": country})))
    assert (rules.rule if rules else None) == rule


def test_where_nobody_counts_the_smallest_box_on_file_is_taken() -> None:
    found = count("new", job(job={"country": "GB"}, cable="12-3"))
    assert (found.item, found.fill_after, found.fill_sum) == ("box-old-work-1g-14", None, "")
    assert count("old", job(job={"country": "GB"})).fill_before is None


def test_a_wire_without_a_figure_leaves_no_fill() -> None:
    boxes = facts_of(in_metres(survey(job()))).takeoff.boxes
    old = {each.box_id: each for each in boxes}["old"]
    assert (old.fill_after, old.fill_sum) == (None, "")


def test_canada_sizes_a_new_box_by_its_own_counting() -> None:
    # 12-3 and a receptacle: (3 + 2) x 28.7 = 143.5 mL is 8.76 in3; the US count is 15.75 in3
    raw = job(job={"country": "CA"}, cable="12-3")
    found = count("new", raw)
    assert (found.item, found.fill_after) == ("box-old-work-1g-14", None)
    deep = count(
        "new",
        raw
        | {
            "boxes": [
                raw["boxes"][0],
                raw["boxes"][1]
                | {"device": "gfci receptacle", "cables": [], "contents": {"device_depth": "2 in"}},
            ]
        },
    )
    # 3 x 28.7 + 32 x 5.08 = 248.66 mL: 14 in3 are 229.4 mL, 16 in3 are 262.2 mL
    assert deep.item == "box-old-work-1g-16"


def test_canada_replaces_an_old_box_under_the_name_of_its_rule() -> None:
    small = {"volume": "100 cm3", "contents": {"device_depth": "1 in"}}
    read = survey(job(job={"country": "CA"}, old=small))
    (old, _) = plan_boxes(read, PRACTICE, STOCK)
    assert (old.rule, old.count.replaced) == ("box-fill-canada", True)
    assert {line.remedy for line in facts(job(job={"country": "CA"}, old=small)).takeoff.parts
            if line.remedy} == {"box-fill-canada:old"}  # fmt: skip


@pytest.mark.parametrize(("country", "item"), [("US", ""), ("CA", ""), ("GB", "box-x")])
def test_a_box_without_a_volume_is_bought_only_where_nobody_counts(country: str, item: str) -> None:
    assert stock_of(METRIC).boxes[0].volume_in3 is not None
    nameless = replace(STOCK.boxes[0], item="box-x", metal=False, volume_in3=None)
    stock = replace(STOCK, boxes=(nameless,))
    (_, new) = plan_boxes(survey(job(job={"country": country})), PRACTICE, stock)
    assert (new.count.item, new.count.volume_in3) == (item, None)


def test_the_bad_case_replaces_a_box_whose_room_nobody_knows() -> None:
    unknown = {"volume": "unknown", "metal": "yes"}
    bad, said = if_it_turns_out_badly(survey(job(old=unknown, job={"occupied": "no"})))
    assert (bad.boxes[0].volume_in3, "box old is too small and is replaced" in said) == (0, True)
    looked_up = unknown | {"contents": {"table_box": "SQ4-150"}}
    assert if_it_turns_out_badly(survey(job(old=looked_up, job={"occupied": "no"})))[1] == ()


@pytest.mark.parametrize(
    ("country", "old", "said"),
    [
        ("US", {"volume": "unknown", "clamps": "unknown"}, ["its volume", "inner clamps"]),
        ("US", {"volume": "unknown", "metal": "yes", "contents": {"table_box": "SQ4-150"}}, []),
        ("CA", {"clamps": "unknown"}, []),
        ("GB", {"volume": "unknown", "clamps": "unknown"}, []),
    ],
)
def test_assumptions_about_a_box(country: str, old: dict[str, Any], said: list[str]) -> None:
    listed = facts(job(old=old, job={"country": country})).takeoff.assumptions
    about = [each.about for each in listed if each.about.startswith("box old")]
    assert len(about) == len(said)
    assert all(words in line for words, line in zip(said, about, strict=True))
