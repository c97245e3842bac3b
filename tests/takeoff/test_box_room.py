"""Room of a box: its mark, the standard boxes, rings and covers (NEC 314.16(A))."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest

from estimator.survey.electrical import Box
from estimator.tables.box_fill import canada_fill_rules, us_fill_rules
from estimator.takeoff.box_room import bare_volume_in3, room_in, room_of, volume_in3
from tests.rules.box_case import job, survey

US, CANADA = us_fill_rules("nec-2023"), canada_fill_rules()


def box(**old: Any) -> Box:
    return survey(job(old={"volume": "unknown"} | old)).boxes[0]


# Worked by hand from Table 314.16(A); rings and covers add what is marked on them.
@pytest.mark.parametrize(
    ("old", "room"),
    [
        ({"volume": "18 in3"}, "18"),
        ({"volume": "18 in3", "contents": {"added_volumes": ["6 in3", "2.5 in3"]}}, "26.5"),
        ({"volume": "18 in3", "contents": {"added_volumes": ["6 in3", "unknown"]}}, "24"),
        ({"metal": "yes", "contents": {"table_box": "DEV-25"}}, "12.5"),
        ({"metal": "unknown", "contents": {"table_box": "DEV-25"}}, "12.5"),
        ({"metal": "yes", "gangs": 2, "contents": {"table_box": "DEV-25"}}, "25"),
        ({"metal": "yes", "gangs": 2, "contents": {"table_box": "SQ4-150"}}, "21"),
        ({"metal": "yes", "gangs": 3, "contents": {"table_box": "MAS-35"}}, "63"),
        ({"metal": "yes", "contents": {"table_box": "SQ4-150", "added_volumes": ["5 in3"]}}, "26"),
    ],
)
def test_room_as_marked_or_by_the_table(old: dict[str, Any], room: str) -> None:
    assert volume_in3(box(**old), US) == Decimal(room)
    assert room_of(box(**old), US) == Fraction(room)


def test_a_mark_goes_before_the_table() -> None:
    marked = box(volume="14 in3", metal="yes", contents={"table_box": "DEV-25"})
    assert volume_in3(marked, US) == 14


@pytest.mark.parametrize(
    "old",
    [{}, {"metal": "no", "contents": {"table_box": "DEV-25"}},
     {"metal": "yes", "contents": {"added_volumes": ["6 in3"]}}],
)  # fmt: skip
def test_room_that_nobody_knows(old: dict[str, Any]) -> None:
    """A plastic box without a mark has none to count on; a ring alone is no box."""
    assert (volume_in3(box(**old), US), room_of(box(**old), US)) == (None, None)


def test_the_us_table_holds_in_the_us_alone() -> None:
    unmarked = box(metal="yes", contents={"table_box": "DEV-25"})
    assert bare_volume_in3(unmarked, CANADA) is None
    assert bare_volume_in3(unmarked, None) is None


def test_a_row_that_is_not_there_is_no_volume() -> None:
    """A job file with such a name is refused; a program may still hand one over."""
    known = box(metal="yes", contents={"table_box": "DEV-25"})
    strange = known.contents.model_copy(update={"table_box": "DEV-99"})
    assert bare_volume_in3(known.model_copy(update={"contents": strange}), US) is None


# A mark in millilitres comes back as marked, so that equality stays equality.
@pytest.mark.parametrize("marked", ["295.2", "147.6", "230", "0.01", "172.2"])
def test_a_mark_in_millilitres_is_kept_exactly(marked: str) -> None:
    assert room_of(box(volume=f"{marked} cm3"), CANADA) == Fraction(marked)


def test_marks_in_millilitres_add_up_exactly() -> None:
    ringed = box(volume="147.6 cm3", contents={"added_volumes": ["24.6 cm3", "24.6 cm3"]})
    assert room_of(ringed, CANADA) == Fraction("196.8")


def test_a_mark_in_cubic_inches_is_converted_exactly() -> None:
    assert room_in(Decimal("18.0"), CANADA) == 18 * Fraction("16.387064")
    assert room_in(Decimal("18.0"), US) == 18
