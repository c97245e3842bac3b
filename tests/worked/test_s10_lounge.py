"""S10, the metric lounge with no country's rules; worked by hand."""

from __future__ import annotations

import re
from decimal import Decimal
from fractions import Fraction

import pytest

from tests.worked.job import MM_PER_IN, cut_in, parts, run, tasks, worked

NAME = "lounge"


@pytest.mark.parametrize(("run_id", "cut_mm"), [("1", 1800 + 400), ("2", 750 + 950 + 400)])
def test_cuts(run_id: str, cut_mm: int) -> None:
    assert cut_in(worked(NAME), run_id) * MM_PER_IN == cut_mm


def test_order_is_rounded_up_to_half_a_metre() -> None:
    order = worked(NAME).takeoff.cable[0]
    assert order.with_allowance_in * MM_PER_IN == 4945
    assert (order.order, order.unit) == (Decimal("5"), "m")


def test_studs_and_nog() -> None:
    counts = [run(worked(NAME), each) for each in "12"]
    assert [count.studs for count in counts] == [3, 1]
    assert [dict(count.listed).get("nog", 0) for count in counts] == [0, 1]
    assert tasks(worked(NAME))["bore-member"] == 5


@pytest.mark.parametrize(
    ("item", "count"),
    [
        ("cable-2.5-2e", "5"),
        ("box-dry-lining-1g-35", "2"),
        ("socket-twin", "2"),
        ("cable-clip", "0"),
        ("joint-tape", "6.14"),
        ("compound-drying", "2.456"),
        ("paint-wall", "1.44"),
    ],
)
def test_parts(item: str, count: str) -> None:
    assert parts(worked(NAME))[item] == Decimal(count)


def test_patch_and_paint_areas() -> None:
    closing = worked(NAME).takeoff.closing
    square_m = Fraction(1_000_000)
    assert closing.patch_in2 * MM_PER_IN**2 / square_m == Fraction("0.3405")
    assert closing.paint_in2 * MM_PER_IN**2 / square_m == Fraction("10.08")


def test_a_two_litre_tin_is_bought() -> None:
    paint = next(line for line in worked(NAME).shopping if line.item == "paint-wall")
    assert [(pack.pack_size, pack.count) for pack in paint.packs] == [(2, 1)]


def test_no_us_rule_speaks() -> None:
    assert [each.cite for each in worked(NAME).findings if "NEC" in each.cite] == []


US_MEASURE = re.compile(r"\d (in|in3|ft|ft2|gal)\b|AWG|NEC")


def test_no_us_measure_stands_in_any_line() -> None:
    takeoff = worked(NAME).takeoff
    texts = [f"{line.reason}; 1 {line.unit}" for line in (*takeoff.parts, *takeoff.tasks)]
    assert [text for text in texts if US_MEASURE.search(text)] == []
