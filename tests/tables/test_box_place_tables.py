"""Depths, rooms for fans and single figures of boxes, against NEC 314.20 to 314.27."""

from __future__ import annotations

from fractions import Fraction

import pytest

from estimator.tables.box_places import depth_rule, fan_is_likely, usual_device_depth_in
from estimator.tables.limits import limit

EDITIONS = ("nec-2017", "nec-2020", "nec-2023")


# NEC 2020 314.24(A) and (B): least depth, and the device depth above which more is asked.
@pytest.mark.parametrize("edition", EDITIONS)
@pytest.mark.parametrize(
    ("wire", "least", "over"),
    [("none", "1/2", "15/8"), ("18", "15/16", "15/8"), ("16", "15/16", "15/8"),
     ("14", "15/16", "15/8"), ("12", "19/16", "1"), ("10", "19/16", "1"),
     ("8", "33/16", "15/8"), ("6", "33/16", "15/8"), ("4", "33/16", "15/8")],
)  # fmt: skip
def test_least_depth_by_wire(edition: str, wire: str, least: str, over: str) -> None:
    rule = depth_rule(wire, edition)
    assert rule is not None
    assert (rule.least.value, rule.device_over.value) == (Fraction(least), Fraction(over))
    assert rule.behind_device.value == Fraction(1, 4)
    assert (rule.least.unit, rule.least.source) == ("in", edition)


def test_a_size_or_an_edition_without_a_row_is_none() -> None:
    assert depth_rule("2", "nec-2023") is None
    assert depth_rule("14", "nec-2011") is None


# Worked by hand from 314.24(B): at the threshold the wire's depth, above it device + 1/4 in.
@pytest.mark.parametrize(
    ("wire", "device", "asked"),
    [("14", "1", "15/16"), ("14", "15/8", "15/16"), ("14", "31/16", "35/16"),
     ("12", "1", "19/16"), ("12", "17/16", "21/16"), ("12", "2", "9/4"),
     ("8", "15/8", "33/16"), ("8", "2", "9/4"), ("none", "0", "1/2")],
)  # fmt: skip
def test_a_deep_device_asks_for_its_depth_and_a_quarter_inch(
    wire: str, device: str, asked: str
) -> None:
    rule = depth_rule(wire, "nec-2020")
    assert rule is not None
    assert rule.asked_in(Fraction(device)) == Fraction(asked)


@pytest.mark.parametrize("edition", EDITIONS)
@pytest.mark.parametrize("wire", ["18", "16", "14", "12", "10", "8", "6", "4"])
def test_a_deep_device_never_asks_for_less_than_its_wire(wire: str, edition: str) -> None:
    rule = depth_rule(wire, edition)
    assert rule is not None
    assert rule.device_over.value + rule.behind_device.value >= rule.least.value


@pytest.mark.parametrize(
    ("device", "depth"),
    [("receptacle", "1"), ("switch", "1"), ("gfci receptacle", "11/8"), ("luminaire", None)],
)
def test_usual_depth_of_a_device(device: str, depth: str | None) -> None:
    assert usual_device_depth_in(device) == (None if depth is None else Fraction(depth))


@pytest.mark.parametrize(
    ("use", "edition", "confidence"),
    [("bedroom", "nec-2020", "memory"), ("bedroom", "nec-2023", "memory"),
     ("bedroom", "nec-2017", None), ("closet", "nec-2023", None)],
)  # fmt: skip
def test_rooms_where_a_fan_is_likely(use: str, edition: str, confidence: str | None) -> None:
    assert fan_is_likely(use, edition) == confidence


# NEC 2020: 314.20, 314.21, 300.21, 314.27(A) and (C); box sizes are common practice.
@pytest.mark.parametrize(
    ("figure", "value", "where"),
    [("box-setback", "1/4", "314.20"), ("box-setback-combustible", "0", "314.20"),
     ("box-gap", "1/8", "314.21"), ("rated-wall-offset", "24", "300.21"),
     ("luminaire-ceiling-weight", "50", "314.27(A)"), ("fan-weight", "70", "314.27(C)"),
     ("luminaire-device-box-weight", "6", "314.27(A)"),
     ("fan-weight-unmarked", "35", "314.27(C)"),
     ("box-width", "9/4", "single-gang device box"),
     ("box-height", "15/4", "single-gang device box"),
     ("box-gang-pitch", "29/16", "device boxes of several gangs"),
     ("box-clearance", "1/2", "between two boxes in one cavity"),
     ("plaster-thick-least", "3/4", "plaster against gypsum board"),
     ("plaster-thick-most", "5/4", "plaster against gypsum board")],
)  # fmt: skip
def test_single_figures(figure: str, value: str, where: str) -> None:
    found = limit(figure, "nec-2020")
    assert (found.value, found.where) == (Fraction(value), where)


@pytest.mark.parametrize("figure", ["luminaire-ceiling-weight", "fan-weight"])
def test_what_only_one_edition_was_read_for_is_marked_in_the_others(figure: str) -> None:
    told = [limit(figure, edition).confidence for edition in EDITIONS]
    assert told == ["memory", "seen", "memory"]
