"""The Canadian sample: AWG cable, a tape in millimetres, Canadian dollars; worked by hand."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest

from tests.worked.job import MM_PER_IN, cut_in, ft2, parts, places, run, verdicts, worked

NAME = "rec-room"


def test_a_tape_in_millimetres_beside_tails_in_inches() -> None:
    """1900 - 600 = 1300 mm, and two tails of 12 in: 609.6 mm."""
    assert cut_in(worked(NAME), "1") * MM_PER_IN == Fraction("1909.6")


def test_the_order_is_seven_feet() -> None:
    """1909.6 x 1.1 = 2100.56 mm = 82.699 in = 6.89 ft."""
    (order,) = worked(NAME).takeoff.cable
    assert (order.kind, order.order, order.unit) == ("14-2", Decimal("7"), "ft")


def test_studs_on_the_16_inch_grid() -> None:
    """Between 600 and 1900 mm (23.62 and 74.80 in): 32, 48, 64."""
    counted = run(worked(NAME), "1")
    assert (counted.studs, counted.protection_plates) == (3, 0)


# Strip 1350 x 100 mm: 0.135 m2 / 0.09290304. Prime 1654.8 x 404.8 mm = 669,863.04 mm2.
def test_patch_and_primed_areas() -> None:
    closing = worked(NAME).takeoff.closing
    assert places(ft2(closing.patch_in2), 4) == Decimal("1.4531")
    assert places(ft2(closing.prime_in2), 6) == Decimal("7.210346")
    assert closing.paint_in2 == closing.prime_in2


# Screws 8 + 2 x 4: 1350 mm is 4.43 ft, 3.43 beyond the first. Seam 2900 mm = 9.514436 ft,
# 0.04 gal a foot. Paint 7.210346 x 2 / 350 gal.
@pytest.mark.parametrize(
    ("item", "count"),
    [
        ("box-old-work-1g-20", "1"),
        ("receptacle-15", "1"),
        ("plate-receptacle-1g", "1"),
        ("pigtail-14", "3"),
        ("connector-medium", "3"),
        ("screw-drywall", "16"),
        ("joint-tape", "9.514436"),
        ("compound-setting", "0.380577"),
        ("paint-wall", "0.041202"),
    ],
)
def test_parts(item: str, count: str) -> None:
    assert parts(worked(NAME))[item] == Decimal(count)


# Rule 12-3034 in 24.6 mL: four wires, the strap 2, a pair of the two connectors found: 7. With
# the third cable six wires, and three connectors still make one pair: 9. The new box 2 + 2.
def test_boxes_are_counted_in_millilitres() -> None:
    found = {each.finding_id: each.figures for each in worked(NAME).findings}
    assert (
        "before 172.2 mL, after (6 + 2 + 1) x 24.6 = 221.4 of 295.0 mL"
        in (found["box-fill-canada:by the stairs"])
    )
    assert "(2 + 2) x 24.6 = 98.4 of" in found["box-fill-canada:desk"]


def test_no_us_rule_speaks() -> None:
    assert verdicts(worked(NAME))["box-fill-canada:desk"] == "pass"
    assert not any("NEC" in each.cite or "IRC" in each.cite for each in worked(NAME).findings)


# In sixths of an hour, low + 4 x likely + high of the shipped book: set-up 3.00 x 1.175, circuit
# 3.25, strip 0.33 x 4.4291, studs 0.33 x 3, pull 0.13 x 4.2651, cable ends 0.60 x 2, source box
# 2.60, joints 0.24 x 3, tests 0.65 x 2, cut-out 1.25, box 1.20, receptacle 1.80, patch 4.65 and
# 1.85 x 1.4531, prime 0.19 x 7.2103, paint 0.038 x 14.4207 x 1.175, visit 1.65, clean-up
# 3.25 x 1.175: 34.67196.
def test_hours() -> None:
    assert worked(NAME).hours.charged == Decimal("5.778660")


# Materials: 4.34 + 2.85 + 1.95 + 0.65 + 2.95 + 2.10 + 3.20 + 3.10 + 8.30 + 11.50 + 17.50 + 6.80
# + 13.50 + 5.20 + 5.60 + 3.60 + 6.90 + 4.60 = 104.64.
@pytest.mark.parametrize(
    ("step", "amount"),
    [
        ("labor", "491.19"),  # 5.778660 x 85.00
        ("materials_listed", "104.64"),
        ("materials_sell", "142.83"),  # (104.64 + 5.23) x 1.30 = 142.831
        ("trips", "90.00"),  # 2 x 45.00
        ("before_tax", "789.02"),  # and the permit at 65.00
        ("tax", "102.57"),  # 13 %
        ("total", "891.59"),
        ("deposit", "267.48"),  # 30 %
    ],
)
def test_price_in_canadian_dollars(step: str, amount: str) -> None:
    assert getattr(worked(NAME).price, step) == Decimal(amount)
    assert worked(NAME).books.shop.currency == "CAD"
