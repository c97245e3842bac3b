"""The British sample: metric, in pounds, with VAT; worked by hand."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest

from tests.worked.job import MM_PER_IN, changed, cut_in, parts, run, tasks, worked

NAME = "terrace-bedroom"
SQUARE_M = Fraction(1_000_000)


# Sockets at 500, 1700 and 2900, all 450 high: 1200 + 2 x 200 each.
@pytest.mark.parametrize("run_id", ["1", "2"])
def test_each_cut_is_1600_mm(run_id: str) -> None:
    assert cut_in(worked(NAME), run_id) * MM_PER_IN == 1200 + 400


def test_the_order_is_four_metres() -> None:
    """3200 x 1.10 = 3520 mm, up to the half metre."""
    (order,) = worked(NAME).takeoff.cable
    assert order.with_allowance_in * MM_PER_IN == 3520
    assert (order.order, order.unit) == (Decimal("4"), "m")


def test_studs_on_the_400_grid() -> None:
    """800, 1200, 1600; then 2000, 2400, 2800."""
    assert [run(worked(NAME), each).studs for each in "12"] == [3, 3]
    assert tasks(worked(NAME))["bore-member"] == 6


def test_a_25_mm_hole_in_an_89_mm_stud_needs_no_plate() -> None:
    """(89 - 25) / 2 = 32 mm, the shop's limit; 26 mm leaves 31.5 at both faces of six studs."""
    assert parts(worked(NAME))["protection-plate"] == 0
    wide = changed(NAME, ('hole = "25 mm"', 'hole = "26 mm"'))
    assert parts(wide)["protection-plate"] == 12


# Strip 2500 x 100: seam 2 x 2600 = 5.2 m, 0.4 L each. Prime 2800 x 400 = 1.12 m2, 8 m2 a litre.
# Paint 3.6 x 2.4 = 8.64 m2, two coats, 14 m2 a litre = 1.234286 L. Screws 8 + 2.2 m x 7 = 23.4.
@pytest.mark.parametrize(
    ("item", "count"),
    [
        ("cable-2.5-2e", "4"),
        ("box-dry-lining-1g-35", "2"),
        ("socket-twin", "2"),
        ("pigtail-2.5", "6"),
        ("connector-lever-3", "6"),
        ("cable-clip", "0"),
        ("joint-tape", "5.2"),
        ("compound-drying", "2.08"),
        ("screw-drywall", "24"),
        ("primer", "0.14"),
        ("paint-wall", "1.234286"),
    ],
)
def test_parts(item: str, count: str) -> None:
    assert parts(worked(NAME))[item] == Decimal(count)


def test_patch_and_paint_areas() -> None:
    closing = worked(NAME).takeoff.closing
    areas = (closing.patch_in2, closing.prime_in2, closing.paint_in2)
    assert [area * MM_PER_IN**2 / SQUARE_M for area in areas] == [
        Fraction("0.25"), Fraction("1.12"), Fraction("8.64"),
    ]  # fmt: skip


# In sixths of an hour, low + 4 x likely + high of the shipped metric book: set-up 3.00, circuit
# 3.25, strip 1.07 x 2.5, studs 0.33 x 6, pull 0.40 x 2.4, cable ends 0.60 x 4, source box 2.60,
# joints 0.24 x 6, tests 0.65 x 3, cut-outs 1.25 x 2, boxes 1.20 x 2, sockets 1.80 x 2, patch 4.65
# and 19.8 x 0.25, prime 1.9 x 1.12, paint 0.39 x 17.28, visits 1.65 x 3, clean-up 3.25: 55.4222.
def test_hours() -> None:
    assert worked(NAME).hours.charged == Decimal("9.237033")


# Materials: 3.84 + 2.30 + 9.60 + 4.20 + 3.60 + 2.40 + 2.40 + 9.60 + 9.80 + 24.00 + 4.90 + 8.90
# + 3.60 + 3.40 + 2.40 + 3.80 + 3.40 = 102.14.
@pytest.mark.parametrize(
    ("step", "amount"),
    [
        ("labor", "443.38"),  # 9.237033 x 48.00
        ("materials_listed", "102.14"),
        ("small_items", "5.11"),  # 5 %
        ("materials_sell", "139.43"),  # 107.25 x 1.30 = 139.425
        ("trips", "100.00"),  # 4 x 25.00
        ("before_tax", "682.81"),
        ("tax", "136.56"),  # 20 %
        ("total", "819.37"),
        ("deposit", "245.81"),  # 30 %
    ],
)
def test_price_in_pounds(step: str, amount: str) -> None:
    assert getattr(worked(NAME).price, step) == Decimal(amount)
    assert worked(NAME).books.shop.currency == "GBP"
