"""Areas and volumes are read; expected values follow from exact definitions, worked by hand."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest

from estimator.units import MeasureError, read_area, read_volume


@pytest.mark.parametrize(
    ("typed", "in3"),
    [
        ("18 in3", 18),
        ("18 cu in", 18),
        ("18 cu. in.", 18),
        ("18 cubic inches", 18),
        ("18 in³", 18),
        ("18 in^3", 18),
        ("18.0", 18),
        (Decimal("20.3"), Fraction("20.3")),
        ("1 ft3", 1728),
        ("1.5 gal", Fraction("346.5")),
        ("1 qt", Fraction(231, 4)),
        ("295 cm3", 295 / Fraction("16.387064")),
        ("295 mL", 295 / Fraction("16.387064")),
        ("2 L", 2000 / Fraction("16.387064")),
    ],
)
def test_a_volume_is_read(typed: str, in3: Fraction) -> None:
    """1 in = 2.54 cm, so 1 in3 = 16.387064 cm3; 1 US gal = 231 in3 (exact definitions)."""
    assert read_volume(typed, bare_unit="in3") == in3


@pytest.mark.parametrize(
    ("typed", "in2"),
    [
        ("2.5 ft2", 360),
        ("2.5 sq ft", 360),
        ("2 1/2 ft²", 360),
        ("360 square inches", 360),
        ("360", 360),
        (360, 360),
        ("0.3 m2", 3000 / Fraction("6.4516")),
        ("3000 cm²", 3000 / Fraction("6.4516")),
    ],
)
def test_an_area_is_read(typed: str, in2: Fraction) -> None:
    """1 in2 = 6.4516 cm2 (exact)."""
    assert read_area(typed, bare_unit="in2") == in2


@pytest.mark.parametrize(
    ("typed", "reason"),
    [
        ("18 in2", "is not a volume"),
        ("18 in3 x", "is not a volume"),
        ("18 19", "is not a volume"),
        ("large", "no digits"),
        ("-18", "negative"),
        ("10001 gal", "more than 10,000 gal"),
        (Decimal("1E+90"), "more than 10,000 gal"),
    ],
)
def test_what_is_no_volume_is_rejected(typed: str, reason: str) -> None:
    with pytest.raises(MeasureError, match=reason) as caught:
        read_volume(typed, bare_unit="in3")
    assert caught.value.hint == "Write a volume such as 18 in3, 295 mL or 1.5 gal."
