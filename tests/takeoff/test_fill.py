"""Room taken in a box: magazine examples, and each counting rule by NEC 314.16(B).

The examples are from EC&M magazine's "Code Quiz" and "Code Calculations" columns, each sum
redone by hand; "old" is the counting through 2017, "new" that of 2020 and later. Where no
answer key was seen, or the printed one counts nothing but wires, the sum worked by hand stands.
"""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction
from itertools import permutations
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator.tables.box_fill import FillRules, standard_boxes, us_fill_rules
from estimator.takeoff.fill import Inside, Wires, fill_of, roomiest, wires_of

OLD, NEW = us_fill_rules("nec-2017"), us_fill_rules("nec-2020")
NOW = us_fill_rules("nec-2023")
NONE = Inside()


def wires(sizes: dict[str, int], grounds: int = 0, ground_wire: str = "") -> Wires:
    return Wires(tuple(sizes.items()), grounds, "", ground_wire)


def total(held: Wires, rules: FillRules = NOW, **inside: Any) -> Fraction:
    return fill_of(held, Inside(**inside), rules).total


TWO_14 = {"fixture_wires": (("14", 2),)}
EXAMPLES = [
    # id, conductors, grounds and their size, what else, old, new
    ("BF-11", {"14": 4}, (2, "14"), TWO_14 | {"stud": True, "hickey": True}, "18", "18"),
    ("BF-12", {"12": 4}, (2, "12"),
     {"fixture_wires": (("18", 2),), "clamps": True, "stud": True}, "18.75", "18.75"),
    ("BF-13", {"14": 8, "12": 8}, (8, "12"), {}, "36.25", "38.5"),
    ("BF-14", {"14": 4}, (2, "14"), {"clamps": True, "device_gangs": 1}, "16", "16"),
    ("BF-21", {"12": 18}, (3, "12"), {}, "42.75", "42.75"),
    ("BF-28", {"12": 9}, (0, ""), {}, "20.25", "20.25"),
]  # fmt: skip


@pytest.mark.parametrize("example", EXAMPLES, ids=[each[0] for each in EXAMPLES])
def test_magazine_examples(example: tuple[Any, ...]) -> None:
    _, conductors, (grounds, size), inside, old, new = example
    held = wires(conductors, grounds, size)
    assert total(held, OLD, **inside) == Fraction(old)
    assert total(held, NEW, **inside) == total(held, NOW, **inside) == Fraction(new)


# What the examples ask: the smallest of the boxes offered that holds it.
@pytest.mark.parametrize(
    ("need", "offered", "answer"),
    [
        ("18", ["OCT-125", "OCT-150", "OCT-2125"], "OCT-2125"),
        ("18.75", ["OCT-125", "OCT-150", "OCT-2125"], "OCT-2125"),
        ("36.25", ["SQ4-150", "SQ4-2125", "SQ411-150", "SQ411-2125"], "SQ411-2125"),
        ("38.5", ["SQ4-150", "SQ4-2125", "SQ411-150", "SQ411-2125"], "SQ411-2125"),
        ("16", ["DEV-15", "HAN-150", "HAN-2125", "DEV-35"], "DEV-35"),
        ("20.25", ["SQ4-125", "SQ4-150", "SQ4-2125"], "SQ4-150"),
    ],
    ids=["BF-11", "BF-12", "BF-13 old", "BF-13 new", "BF-14", "BF-28"],
)
def test_the_box_that_a_magazine_example_picks(need: str, offered: list[str], answer: str) -> None:
    volumes = {box: standard_boxes()[box].volume_in3 for box in offered}
    holding = [box for box in offered if volumes[box] >= Fraction(need)]
    assert min(holding, key=volumes.__getitem__) == answer


def test_bf_21_nineteen_wires_against_the_eight_that_the_box_takes() -> None:
    """The 4 x 1-1/4 in square box takes 8 wires of 12 AWG; the example puts in 18 and grounds."""
    assert standard_boxes()["SQ4-125"].most["12"] == 8
    assert total(wires({"12": 18}, 3, "12")) / Fraction("2.25") == 19


@pytest.mark.parametrize(("size", "count"), [("14", 7), ("12", 6)])
def test_bf_29_wires_of_one_size_in_a_4_by_1_1_2_octagon(size: str, count: int) -> None:
    room = standard_boxes()["OCT-150"].volume_in3
    assert total(wires({size: count})) <= room < total(wires({size: count + 1}))


# 314.16(B)(1), each conductor at its own size (BF-C1): worked by hand.
@pytest.mark.parametrize(
    ("conductors", "taken"),
    [({"14": 3}, "6"), ({"12": 3}, "6.75"), ({"10": 2, "12": 2, "14": 2}, "13.5"),
     ({"18": 2, "16": 2}, "6.5"), ({"8": 2, "6": 1}, "11"), ({}, "0")],
)  # fmt: skip
def test_bf_c1_each_conductor_at_its_own_size(conductors: dict[str, int], taken: str) -> None:
    assert total(wires(conductors)) == Fraction(taken)


def test_bf_c2_an_unbroken_wire_counts_once_and_bf_c3_a_long_loop_twice() -> None:
    held = wires({"14": 2})
    assert total(held, passing=3, through_wire="12") == 4 + Fraction("6.75")
    assert total(held, loops=3, through_wire="14") == 4 + 12
    assert total(held, loops=1, passing=1, through_wire="14") == 4 + 6


def test_bf_c4_wire_connectors_take_no_room() -> None:
    assert total(wires({"14": 4}), connectors=5) == 8


# 314.16(B)(1) exception: four fixture wires thinner than 14 AWG from a canopy may be left out.
@pytest.mark.parametrize(
    ("fixture_wires", "canopy", "taken"),
    [
        ((("18", 4),), True, "4"),
        ((("18", 5),), True, "11.5"),
        ((("18", 4),), False, "10"),
        ((("14", 2),), True, "8"),
        ((("18", 2), ("16", 2)), True, "4"),
        ((("18", 2), ("16", 3)), True, "12.25"),
        ((("18", 4), ("14", 1)), True, "6"),
    ],
)
def test_bf_c5_fixture_wires_under_a_canopy(
    fixture_wires: tuple[tuple[str, int], ...], canopy: bool, taken: str
) -> None:
    held = wires({"14": 2})
    assert total(held, fixture_wires=fixture_wires, canopy=canopy) == Fraction(taken)


def test_bf_k1_clamps_count_once_at_the_thickest_wire_in_the_box() -> None:
    assert total(wires({"14": 4, "12": 2}), clamps=True) == 8 + 4.5 + Fraction("2.25")
    loop = {"passing": 1, "through_wire": "10"}
    assert total(wires({"14": 4}), clamps=True, **loop) == 8 + 5


def test_bf_s1_a_stud_and_a_hickey_count_once_each_at_the_thickest_wire() -> None:
    held = wires({"14": 2, "12": 2})
    assert total(held, stud=True) == total(held, hickey=True) == Fraction("8.5") + Fraction("2.25")
    assert total(held, stud=True, hickey=True) == 13


def test_bf_d1_a_device_counts_two_at_the_thickest_wire_on_it() -> None:
    held = wires({"14": 4, "12": 2})
    assert total(held, device_gangs=1, device_wire="14") == Fraction("12.5") + 4
    assert total(held, device_gangs=1, device_wire="12") == Fraction("12.5") + Fraction("4.5")
    assert total(held, device_gangs=1) == 17


def test_bf_d2_a_wide_device_counts_two_for_each_gang() -> None:
    assert total(wires({"10": 3}), device_gangs=2, device_wire="10") == Fraction("7.5") + 10


# BF-G1 and BF-G2: V x (1 + 1/4 x (n - 4)) since 2020; any number is one until 2017.
@pytest.mark.parametrize(
    ("grounds", "old", "new"),
    [(0, "0", "0"), (1, "2", "2"), (4, "2", "2"), (5, "2", "2.5"), (6, "2", "3"), (9, "2", "4.5")],
)
def test_bf_g1_and_g2_grounds(grounds: int, old: str, new: str) -> None:
    held, without = wires({"14": 2}, grounds, "14"), 4
    assert total(held, OLD) - without == Fraction(old)
    assert total(held, NEW) - without == total(held, NOW) - without == Fraction(new)


# Quarter allowances: 0.5, 0.5625 and 0.625 in3 for 14, 12 and 10 AWG.
@pytest.mark.parametrize(("size", "share"), [("14", "0.5"), ("12", "0.5625"), ("10", "0.625")])
def test_bf_g2_a_fifth_ground_takes_a_quarter(size: str, share: str) -> None:
    five, four = (total(wires({size: 2}, count, size)) for count in (5, 4))
    assert five - four == Fraction(share)


def test_grounds_count_at_the_thickest_ground_and_not_at_the_thickest_wire() -> None:
    assert total(wires({"12": 2}, 1, "14")) == Fraction("6.5")
    assert total(wires({"14": 2}, 2, "10")) == Fraction("6.5")


def test_an_isolated_set_counts_apart_until_2017_and_with_the_rest_after() -> None:
    held, four = wires({"14": 2}, 2, "14"), {"isolated_grounds": 3}
    assert total(held, OLD, **four) == 4 + 2 + 2
    assert total(held, NEW, **four) == 4 + Fraction("2.5")
    assert total(wires({"14": 2}), OLD, isolated_grounds=1) == 6


# Equipment bonding jumpers: with the grounds until 2020, not named in 2023.
@pytest.mark.parametrize(("rules", "taken"), [(OLD, "6"), (NEW, "6.5"), (NOW, "6")])
def test_bonding_jumpers_by_edition(rules: FillRules, taken: str) -> None:
    assert total(wires({"14": 2}, 4, "14"), rules, bonding_jumpers=1) == Fraction(taken)


@pytest.mark.parametrize(("rules", "taken"), [(OLD, "6"), (NEW, "6"), (NOW, "4")])
def test_a_bonding_jumper_alone(rules: FillRules, taken: str) -> None:
    assert total(wires({"14": 2}), rules, bonding_jumpers=1) == Fraction(taken)


@pytest.mark.parametrize(("rules", "taken"), [(OLD, "4"), (NEW, "4"), (NOW, "8.25")])
def test_bf_t1_a_terminal_block_counts_since_2023(rules: FillRules, taken: str) -> None:
    held = wires({"14": 2})
    assert total(held, rules, terminal_blocks=("14", "12")) == Fraction(taken)


def test_nothing_but_fittings_is_no_wires() -> None:
    found = fill_of(wires({}), Inside(clamps=True, device_gangs=1), NOW)
    assert (found.total, found.said) == (0, "no wires")


@pytest.mark.parametrize(
    ("held", "inside", "said"),
    [
        (wires({"14": 6}, 3, "14"), Inside(device_gangs=1), "(6 + 1 + 2) x 2.00 = 18.0"),
        (wires({"14": 8, "12": 8}, 8, "12"), NONE, "(8) x 2.00 + (8 + 2) x 2.25 = 38.5"),
        (wires({"12": 4}, 2, "12"), Inside(fixture_wires=(("18", 2),), clamps=True, stud=True),
         "(2) x 1.50 + (4 + 1 + 1 + 1) x 2.25 = 18.75"),
        (wires({"14": 2}, 5, "14"), NONE, "(2 + 1.25) x 2.00 = 6.5"),
    ],
)  # fmt: skip
def test_the_sum_can_be_redone_by_hand(held: Wires, inside: Inside, said: str) -> None:
    assert fill_of(held, inside, NOW).said == said


def test_cables_bring_their_wires_and_one_ground_each() -> None:
    assert wires_of(("14-2", "12-3", "14-2")) == Wires((("12", 3), ("14", 4)), 3, "12", "12")
    assert wires_of(()) == Wires((), 0, "", "")


def test_the_thicker_awg_is_the_smaller_number() -> None:
    assert wires_of(("14-2", "10-2")).largest == "10"


def test_a_fitting_that_a_code_counts_for_nothing_takes_nothing() -> None:
    free = {"stud": Decimal(0), "hickey": Decimal(0), "passing": Decimal(0)}
    rules = replace(NOW, counts=replace(NOW.counts, **free))
    inside = {"stud": True, "hickey": True, "passing": 2, "through_wire": "14"}
    assert total(wires({"14": 2}), rules, **inside) == 4


def test_thicker_wires_come_later_in_the_sum() -> None:
    found = fill_of(wires({"10": 2, "14": 2, "8": 1}), NONE, NOW)
    assert found.said == "(2) x 2.00 + (2) x 2.50 + (1) x 3.00 = 12.0"


def test_in_square_millimetres_the_larger_number_is_the_thicker_wire() -> None:
    kinds = ("1.5 mm2 2-core and earth", "2.5 mm2 2-core and earth")
    assert wires_of(kinds).largest == "2.5"


@given(
    count=st.integers(0, 30),
    grounds=st.integers(0, 12),
    thin=st.integers(0, 8),
    canopy=st.booleans(),
    rules=st.sampled_from([OLD, NEW, NOW]),
)
def test_more_wires_never_lower_a_fill(
    count: int, grounds: int, thin: int, canopy: bool, rules: FillRules
) -> None:
    def taken(more: int, more_grounds: int, more_thin: int) -> Fraction:
        held = wires({"12": 1, "14": count + more}, grounds + more_grounds, "12")
        fixture = (("18", thin + more_thin),)
        return total(held, rules, fixture_wires=fixture, canopy=canopy)

    assert taken(0, 0, 0) < taken(1, 0, 0)
    assert taken(0, 0, 0) <= min(taken(0, 1, 0), taken(0, 0, 1))


@pytest.mark.parametrize(
    ("cables", "want"),
    [
        (("14-2",), "14-2"),
        (("14-2", "14-3", "10-2"), "14-3"),  # 3 x 2.00 = 6.0, 2 x 2.50 = 5.0, 2 x 2.00 = 4.0
        (("14-3", "10-3", "12-3"), "10-3"),  # 3 x 2.50 = 7.5
    ],
)
def test_the_kind_that_takes_most_room_whatever_the_order(
    cables: tuple[str, ...], want: str
) -> None:
    assert {roomiest(order) for order in permutations(cables)} == {want}
