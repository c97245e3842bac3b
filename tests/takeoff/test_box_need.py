"""What a box asks for, read from the survey: contents, unknown facts, sides of a barrier."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from estimator.survey.electrical import Box
from estimator.survey.fields import YesNo
from estimator.tables.box_fill import FillRules, canada_fill_rules, us_fill_rules
from estimator.takeoff.box_need import Holding, Need, need_of
from tests.rules.box_case import job, survey

US, CANADA = us_fill_rules("nec-2023"), canada_fill_rules()
TWO = ("14-2", "14-2")


def box(contents: dict[str, Any] | None = None, **keys: Any) -> Box:
    return survey(job(old=keys | {"contents": contents or {}})).boxes[0]


def need(
    contents: dict[str, Any] | None = None,
    cables: tuple[str, ...] = TWO,
    clamps: YesNo = "no",
    rules: FillRules = US,
    **keys: Any,
) -> Need:
    return need_of(box(contents, **keys), Holding(cables, (), 0), clamps, rules)


# Two 14-2 are 4 wires and grounds: 10 in3; each further allowance is 2 in3. By hand.
@pytest.mark.parametrize(
    ("contents", "taken"),
    [
        ({}, "14"),
        ({"luminaire_stud": True}, "16"),
        ({"hickey": True}, "16"),
        ({"loops": 2}, "22"),
        ({"passing": 2}, "18"),
        ({"passing": 2, "through_wire": "12"}, "18.5"),
        ({"fixture_wires": [{"wire": "18", "count": 2}]}, "17"),
        ({"fixture_wires": [{"wire": "18", "count": 2}], "canopy": True}, "14"),
        ({"terminal_blocks": ["14"]}, "16"),
        ({"isolated_grounds": 3}, "14.5"),
        ({"bonding_jumpers": 5}, "14"),
        ({"yokes": 2}, "18"),
        ({"yokes": 0}, "10"),
        ({"device_wire": "14"}, "14"),
        ({"ground_present": "no"}, "12"),
        ({"wire_connectors": 5}, "14"),
    ],
)
def test_contents_are_counted(contents: dict[str, Any], taken: str) -> None:
    assert need(contents).taken == Fraction(taken)


@pytest.mark.parametrize(
    ("keys", "taken"),
    [
        ({"gangs": 2}, "18"),
        ({"gangs": 3}, "22"),
        ({"device": "luminaire"}, "10"),
        ({"device": "none", "gangs": 2}, "10"),
        ({"device": "switch"}, "14"),
    ],
)
def test_a_device_in_each_gang_unless_it_has_no_strap(keys: dict[str, Any], taken: str) -> None:
    assert need(**keys).taken == Fraction(taken)


# 10-2 with ground is 2 x 2.5 + 2.5; a range receptacle needs two gangs: 2 x 2 x 2.5.
@pytest.mark.parametrize(
    ("contents", "gangs", "taken"),
    [
        ({"wide_gangs": 2}, 2, "17.5"),
        ({"wide_gangs": 2}, 1, "17.5"),
        ({"wide_gangs": 2, "yokes": 1}, 2, "17.5"),
        ({"wide_gangs": 2, "yokes": 2}, 3, "22.5"),
        ({"wide_gangs": 2}, 3, "22.5"),
        ({"yokes": 1}, 2, "12.5"),
    ],
)
def test_wide_devices_and_several_straps(contents: dict[str, Any], gangs: int, taken: str) -> None:
    assert need(contents, ("10-2",), gangs=gangs).taken == Fraction(taken)


def test_a_luminaire_box_with_a_strap_named_counts_it() -> None:
    assert need({"yokes": 1}, device="luminaire").taken == 14


def test_new_cables_bring_a_ground_into_a_box_without_one() -> None:
    held = Holding(("12-2",), ("14-2",), 0)
    found = need_of(box({"ground_present": "no", "device_wire": "12"}), held, "no", US)
    assert found.taken == Fraction("4.5") + 4 + 2 + Fraction("4.5")


@pytest.mark.parametrize(
    ("clamps", "most", "least", "fact"),
    [("yes", 16, 16, ()), ("no", 14, 14, ()),
     ("unknown", 16, 14, ("whether it has inner clamps",))],
)  # fmt: skip
def test_unknown_clamps_count_both_ways(
    clamps: YesNo, most: int, least: int, fact: tuple[str, ...]
) -> None:
    found = need(clamps=clamps)
    assert (found.most, found.least, found.open) == (most, least, fact)


def test_an_unknown_wire_on_the_device_counts_both_ways_where_sizes_are_mixed() -> None:
    found = need(cables=("14-2", "12-2"))
    # 2 x 2.00 + 2 x 2.25 + 2.25 for the grounds + 2 x 2.25 or 2 x 2.00 for the device
    assert (found.most, found.least) == (Fraction("15.25"), Fraction("14.75"))
    assert found.open == ("which wires are on the device",)


def test_a_device_wire_that_is_told_leaves_nothing_open() -> None:
    found = need({"device_wire": "14"}, ("14-2", "12-2"))
    assert (found.most, found.least, found.open) == (Fraction("14.75"), Fraction("14.75"), ())


def test_mixed_sizes_without_a_device_leave_nothing_open() -> None:
    assert need(cables=("14-2", "12-2"), device="none").open == ()


def test_unbroken_wires_of_unknown_size_count_both_ways() -> None:
    found = need({"passing": 2}, ("14-2", "12-2"), device="none")
    assert (found.most, found.least) == (Fraction("15.25"), Fraction("14.75"))
    assert found.open == ("the size of the wires that pass unbroken",)


def test_the_open_facts_of_one_box_come_together() -> None:
    found = need({"loops": 1}, ("14-2", "12-2"), "unknown")
    assert len(found.open) == 3
    assert found.most - found.least == Fraction("2.25") + Fraction("0.5") + Fraction("0.5")


@pytest.mark.parametrize(
    ("contents", "size"),
    [
        ({"fixture_wires": [{"wire": "20", "count": 1}]}, "20"),
        ({"terminal_blocks": ["1/0"]}, "1/0"),
        ({"device_wire": "14 AWG"}, "14 AWG"),
        ({"passing": 1, "through_wire": "4"}, "4"),
    ],
)
def test_a_size_without_a_row_is_missing(contents: dict[str, Any], size: str) -> None:
    found = need(contents)
    assert found.missing == (f"how much room a wire of size {size} takes",)
    assert (found.taken, found.said, found.open) == (None, "", ())


def test_bonding_jumpers_count_with_the_grounds_in_2020() -> None:
    # 4 wires, 2 for the device, 1.75 for 7 grounds: 7.75 x 2.00
    assert need({"bonding_jumpers": 5}, rules=us_fill_rules("nec-2020")).taken == Fraction("15.5")


def test_an_old_edition_does_not_look_at_terminal_blocks() -> None:
    assert need({"terminal_blocks": ["1/0"]}, rules=us_fill_rules("nec-2020")).taken == 14


def test_unbroken_wires_alone_need_their_size() -> None:
    found = need({"passing": 2}, ())
    assert found.missing == ("how much room a wire of size unknown takes",)


def test_equality_fits_and_a_hair_more_does_not() -> None:
    found = need(clamps="unknown")
    assert found.fits(Fraction(16)) and not found.fits(Fraction("15.999999"))
    assert found.is_over(Fraction("13.999999")) and not found.is_over(Fraction(14))


SIDES = [{"cables": ["14-2"], "takes_new": True}, {"cables": ["14-2"], "device": "switch"}]


def barrier(contents: dict[str, Any], new: tuple[str, ...] = ("14-2",)) -> Need:
    held = Holding(TWO, new, 0)
    return need_of(box(contents, gangs=2), held, "no", US)


# 314.16(A): each side alone, after the barrier: 2 x 14-2 and a device are 14 in3, the other
# side 4 + 2 + 4 = 10; two equal sides need twice the larger one, and the barrier.
@pytest.mark.parametrize(("kind", "room"), [("metal", "28.5"), ("nonmetallic", "29")])
def test_each_side_of_a_barrier_is_counted_alone(kind: str, room: str) -> None:
    found = barrier({"barrier": kind, "sides": SIDES})
    assert (found.most, found.least, found.taken) == (Fraction(room), Fraction(room), 24)
    assert found.said == "(4 + 1 + 2) x 2.00 = 14.0; (2 + 1 + 2) x 2.00 = 10.0"


def test_sides_share_the_room_by_their_gangs() -> None:
    wide = [SIDES[0] | {"gangs": 2}, SIDES[1]]
    found = barrier({"barrier": "metal", "sides": wide})
    # first side (4 + 1 + 4) x 2 = 18 of two thirds: 27; second 10 of one third: 30
    assert found.most == Fraction("30.5")


def test_fittings_whose_side_is_unknown_count_on_both_or_on_none() -> None:
    found = barrier({"barrier": "metal", "sides": SIDES, "luminaire_stud": True})
    assert (found.most, found.least) == (Fraction("32.5"), Fraction("28.5"))
    assert found.open == ("on which side of the barrier its other wires and fittings are",)


def test_a_side_with_a_splice_alone_has_no_device() -> None:
    bare = [SIDES[0], {"cables": ["14-2"], "device": "none"}]
    found = barrier({"barrier": "metal", "sides": bare})
    assert found.said == "(4 + 1 + 2) x 2.00 = 14.0; (2 + 1) x 2.00 = 6.0"


@pytest.mark.parametrize(
    "fitting",
    [{"hickey": True}, {"loops": 1}, {"passing": 1}, {"terminal_blocks": ["14"]},
     {"fixture_wires": [{"wire": "18", "count": 1}]}],
)  # fmt: skip
def test_each_fitting_may_be_on_either_side(fitting: dict[str, Any]) -> None:
    found = barrier({"barrier": "metal", "sides": SIDES} | fitting)
    assert (found.least, len(found.open)) == (Fraction("28.5"), 1)
    assert found.most > found.least


def test_clamps_of_a_box_with_a_barrier_are_on_both_sides() -> None:
    held = Holding(TWO, ("14-2",), 0)
    found = need_of(box({"barrier": "metal", "sides": SIDES}, gangs=2), held, "yes", US)
    assert (found.most, found.least, found.open) == (Fraction("32.5"), Fraction("32.5"), ())


@pytest.mark.parametrize(
    ("contents", "fact"),
    [
        ({"barrier": "metal"}, "what is on each side of the barrier"),
        ({"barrier": "metal", "sides": [SIDES[1], SIDES[1]]},
         "which side of the barrier the new cable enters"),
        ({"barrier": "metal", "sides": [SIDES[0], SIDES[0]]},
         "which side of the barrier the new cable enters"),
    ],
)  # fmt: skip
def test_a_barrier_with_facts_missing(contents: dict[str, Any], fact: str) -> None:
    assert barrier(contents).missing == (fact,)


def test_before_the_work_no_side_needs_the_new_cable() -> None:
    found = barrier({"barrier": "metal", "sides": [SIDES[1], SIDES[1]]}, new=())
    assert found.missing == ()
    assert found.most == Fraction("20.5")


def test_a_side_without_cables_takes_nothing() -> None:
    found = barrier({"barrier": "metal", "sides": [SIDES[0], {"device": "none"}]})
    assert found.said == "(4 + 1 + 2) x 2.00 = 14.0; no wires"


def test_a_barrier_has_no_figure_in_canada() -> None:
    found = need_of(box({"barrier": "metal", "sides": SIDES}), Holding(TWO), "no", CANADA)
    assert found.missing == ("how much room the barrier takes",)


def test_canada_asks_for_the_depth_and_the_connectors() -> None:
    found = need_of(box(), Holding(TWO), "no", CANADA)
    assert found.missing == (
        "how far the device reaches behind its strap",
        "how many wire connectors are in it",
    )
    known = need_of(box({"device_depth": "1 in"}), Holding(TWO, (), 3), "unknown", CANADA)
    assert (known.taken, known.open) == (Fraction("172.2"), ())


def test_a_device_to_be_bought_is_as_deep_as_planned_unless_told() -> None:
    planned = Holding(TWO, (), 0, Fraction(2))  # 4 x 24.6 + 32 x 5.08
    assert need_of(box(), planned, "no", CANADA).taken == Fraction("260.96")
    assert need_of(box({"device_depth": "1 in"}), planned, "no", CANADA).taken == Fraction("147.6")


def test_canada_does_not_ask_for_the_depth_where_no_device_is() -> None:
    assert need_of(box(device="none"), Holding(TWO, (), 0), "no", CANADA).missing == ()
