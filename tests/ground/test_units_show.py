"""Measures as shown, converted and rounded; expected values are published or worked by hand."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest

from estimator import units
from estimator.units import (
    System,
    ceil_to_step,
    show_area,
    show_length,
    show_volume,
    to_decimal,
    write_length,
)

# The feet-inches form of the LibreTexts book on drawings and specifications (4'-3 1/2", 7'-0",
# inches alone under a foot), and carries worked by hand.
SHOWN_US = [
    (Fraction("51.5"), "4'-3 1/2\""),
    (Fraction(84), "7'-0\""),
    (Fraction(6), '6"'),
    (Fraction("6.5"), '6 1/2"'),
    (Fraction(1, 2), '1/2"'),
    (Fraction(0), '0"'),
    (Fraction("132.375"), "11'-0 3/8\""),
    (Fraction("12.5"), "1'-0 1/2\""),
    (11 + Fraction(31, 32), "1'-0\""),  # 191.5 sixteenths go up to 192
    (11 + Fraction(61, 64), '11 15/16"'),  # 191.25 sixteenths go down to 191
    (143 + Fraction(63, 64), "12'-0\""),
    (Fraction(1, 32), '1/16"'),
    (Fraction(1, 33), '0"'),
    (Fraction("151.2"), "12'-7 3/16\""),
    (Fraction("-51.5"), "-4'-3 1/2\""),
    (Fraction(-1, 33), '0"'),
]
SHOWN_METRIC = [
    (Fraction(2650 * 5, 127), "2650 mm"),
    (Fraction(12655 * 5, 127), "12655 mm"),
    (Fraction(1), "25 mm"),  # 25.4
    (Fraction(5, 254), "1 mm"),  # half a millimetre goes up
    (Fraction(0), "0 mm"),
    (Fraction(-1), "-25 mm"),
]
WRITTEN: list[tuple[Fraction, System, str]] = [
    (Fraction("150.5"), "us", "150 1/2 in"),
    (Fraction(150), "us", "150 in"),
    (Fraction(1, 3), "us", "1/3 in"),
    (Fraction(0), "us", "0 in"),
    (Fraction(19000, 127), "metric", "3800 mm"),
    (Fraction("150.5"), "metric", "3822.7 mm"),  # 150.5 x 25.4
    (Fraction("0.005"), "metric", "127/1000 mm"),  # three decimals could be thousands
    (Fraction(1, 3), "metric", "8 7/15 mm"),  # 25.4 / 3 = 127/15
]
# name of the function, in, out: exact definitions 1 in = 25.4 mm, 1 gal = 231 in3, 1 L = 1000 cm3
CONVERTED = [
    ("ft_to_in", Decimal("12.5"), Fraction(150)),
    ("in_to_ft", 150, Fraction("12.5")),
    ("mm_to_in", 254, Fraction(10)),
    ("in_to_mm", 10, Fraction(254)),
    ("m_to_in", Decimal("25.4"), Fraction(1000)),
    ("in_to_m", 1000, Fraction("25.4")),
    ("ft2_to_in2", Decimal("2.5"), Fraction(360)),
    ("in2_to_ft2", 360, Fraction("2.5")),
    ("in2_to_m2", 10000, Fraction("6.4516")),
    ("m2_to_in2", Decimal("6.4516"), Fraction(10000)),
    ("cm3_to_in3", Decimal("16.387064"), Fraction(1)),
    ("in3_to_cm3", 1, Fraction("16.387064")),
    ("gal_to_in3", 2, Fraction(462)),
    ("in3_to_gal", 462, Fraction(2)),
    ("in3_to_l", 231, Fraction("3.785411784")),
]


@pytest.mark.parametrize(("inches", "text"), SHOWN_US)
def test_us_lengths_show_feet_and_inches(inches: Fraction, text: str) -> None:
    assert show_length(inches, "us") == text


@pytest.mark.parametrize(("inches", "text"), SHOWN_METRIC)
def test_metric_lengths_show_whole_millimetres(inches: Fraction, text: str) -> None:
    assert show_length(inches, "metric") == text


@pytest.mark.parametrize(("inches", "system", "text"), WRITTEN)
def test_a_length_is_written_exactly(inches: Fraction, system: System, text: str) -> None:
    assert write_length(inches, system) == text


@pytest.mark.parametrize(
    ("inches", "reason"),
    [
        (Fraction(-1), "from 0 to 10,000 ft"),
        (Fraction(120_001), "from 0 to 10,000 ft"),
        (Fraction(1, 3**500), "more than 200 characters"),
    ],
    ids=["negative", "too long", "too fine"],
)
def test_nothing_is_written_that_cannot_be_read(inches: Fraction, reason: str) -> None:
    with pytest.raises(ValueError, match=reason):
        write_length(inches, "us")


@pytest.mark.parametrize(("name", "given", "expected"), CONVERTED)
def test_conversions_are_exact(name: str, given: Decimal | int, expected: Fraction) -> None:
    assert getattr(units, name)(given) == expected


@pytest.mark.parametrize(
    ("in2", "system", "text"),
    [
        (Fraction(280), "us", "1.944 ft2"),  # S14: 4 x 70 in
        (Fraction(360), "us", "2.5 ft2"),
        (Fraction(0), "us", "0 ft2"),
        (Fraction(6), "metric", "0.004 m2"),  # 38.7 cm2
        (Fraction(15500), "metric", "10 m2"),  # 9.99998
    ],
)
def test_areas_are_shown(in2: Fraction, system: System, text: str) -> None:
    assert show_area(in2, system) == text


@pytest.mark.parametrize(
    ("in3", "system", "text"),
    [
        (Fraction(18), "us", "18 in3"),
        (Fraction("20.3"), "us", "20.3 in3"),
        (Fraction(18), "metric", "295 cm3"),  # 294.967
        (Fraction("2.25"), "metric", "36.9 cm3"),  # 36.871
    ],
)
def test_volumes_are_shown(in3: Fraction, system: System, text: str) -> None:
    assert show_volume(in3, system) == text


@pytest.mark.parametrize(
    ("amount", "step", "expected"),
    [
        (Fraction("27.5") * Fraction("1.2"), 1, 33),  # binary floats give 34
        (Decimal("27.5") * Decimal("1.2"), 1, 33),
        (Fraction(33) + Fraction(1, 10**12), 1, 34),
        (Fraction("22.367"), 1, 23),
        (Fraction("7.01"), Fraction(1, 2), Fraction("7.5")),
        (0, 1, 0),
        (Fraction(-5, 2), 1, -2),
    ],
)
def test_rounding_up_goes_to_a_whole_step(
    amount: Fraction, step: Fraction, expected: Fraction
) -> None:
    assert ceil_to_step(amount, step) == expected


@pytest.mark.parametrize("step", [0, -1])
def test_a_step_is_above_zero(step: int) -> None:
    with pytest.raises(ValueError, match="above zero"):
        ceil_to_step(1, step)


@pytest.mark.parametrize(
    ("amount", "places", "text"),
    [
        (Fraction(1, 8), 2, "0.13"),
        (Fraction(-1, 8), 2, "-0.13"),
        (Fraction(2, 3), 3, "0.667"),
        (Fraction(5, 2), 0, "3"),
        (Fraction(-1, 1000), 2, "0.00"),
        (Fraction(10**40 + 1, 2), 0, "5" + "0" * 38 + "1"),
        (Decimal("2.675"), 2, "2.68"),
    ],
)
def test_decimals_are_rounded_half_up(amount: Fraction, places: int, text: str) -> None:
    assert str(to_decimal(amount, places)) == text
