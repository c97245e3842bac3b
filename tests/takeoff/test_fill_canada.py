"""Room taken in a box by Rule 12-3034 of the Canadian code; sums worked by hand in millilitres."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from estimator.tables.box_fill import canada_fill_rules
from estimator.takeoff.fill import Inside, Wires, fill_of

RULES = canada_fill_rules()
IN_PER_CM = 1 / Fraction("2.54")


def total(sizes: dict[str, int], grounds: int = 0, **inside: Any) -> Fraction:
    return fill_of(Wires(tuple(sizes.items()), grounds), Inside(**inside), RULES).total


@pytest.mark.parametrize(
    ("sizes", "taken"),
    [({"14": 4}, "98.4"), ({"12": 4}, "114.8"), ({"10": 2}, "73.8"), ({"8": 3}, "135.3"),
     ({"6": 2}, "147.4"), ({"14": 2, "12": 2}, "106.6")],
)  # fmt: skip
def test_each_insulated_wire_at_its_own_size(sizes: dict[str, int], taken: str) -> None:
    assert total(sizes) == Fraction(taken)


@pytest.mark.parametrize("grounds", [0, 1, 4, 9])
def test_bare_grounds_take_no_room(grounds: int) -> None:
    assert total({"14": 4}, grounds) == Fraction("98.4")
    assert total({"14": 4}, grounds, isolated_grounds=1) == Fraction("98.4")


# One wire for each pair of connectors; an odd one over makes no pair.
@pytest.mark.parametrize(
    ("connectors", "wires"), [(0, 0), (1, 0), (2, 1), (3, 1), (4, 2), (5, 2), (6, 3)]
)
def test_connectors_count_one_a_pair(connectors: int, wires: int) -> None:
    assert total({"14": 4}, connectors=connectors) == Fraction("24.6") * (4 + wires)


def test_a_strap_device_counts_two_at_its_wire() -> None:
    mixed = {"14": 2, "12": 2}
    assert total(mixed, device_gangs=1, device_wire="14") == Fraction("155.8")
    assert total(mixed, device_gangs=2, device_wire="12") == Fraction("221.4")


# Deeper than 2.54 cm behind the strap: 32 cm3 a centimetre in the place of the two wires.
@pytest.mark.parametrize(
    ("depth_cm", "taken"),
    [("2.54", "147.6"), ("2.55", "180"), ("4", "226.4"), ("3.175", "200"), ("1", "147.6")],
)
def test_a_deep_device_takes_its_depth(depth_cm: str, taken: str) -> None:
    depth_in = Fraction(depth_cm) * IN_PER_CM
    assert total({"14": 4}, device_gangs=1, device_depth_in=depth_in) == Fraction(taken)


def test_depth_without_a_device_takes_nothing() -> None:
    assert total({"14": 4}, device_depth_in=Fraction(3)) == Fraction("98.4")


def test_stud_hickey_loops_and_passing_wires() -> None:
    assert total({"14": 4}, stud=True, hickey=True) == Fraction("147.6")
    assert total({"14": 4}, loops=1, passing=1, through_wire="14") == Fraction("172.2")


def test_thin_fixture_wires_and_clamps_take_no_room() -> None:
    thin = {"fixture_wires": (("18", 6), ("16", 2))}
    assert total({"14": 4}, clamps=True, canopy=True, **thin) == Fraction("98.4")
    assert total({"14": 4}, fixture_wires=(("14", 2),)) == Fraction("147.6")


def test_the_sum_can_be_redone_by_hand() -> None:
    inside = Inside(device_gangs=1, device_depth_in=4 * IN_PER_CM, connectors=3)
    found = fill_of(Wires((("14", 4),), 2), inside, RULES)
    assert found.said == "(4 + 1) x 24.6 + 128.0 = 251.0"
    assert found.total == 251
