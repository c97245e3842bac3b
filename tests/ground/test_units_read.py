"""Lengths are read the way people write them; each row is worked by hand."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest

from estimator.units import LengthUnit, read_length

MM = Fraction(5, 127)  # inches in a millimetre: 1 / 25.4

# typed, inches, echo; every row worked by hand
READ_AS_TYPED = [
    ("12' 6-1/2\"", Fraction("150.5"), "12'-6 1/2\""),
    ("12'6 1/2", Fraction("150.5"), "12'-6 1/2\""),
    ("12’ 6½”", Fraction("150.5"), "12'-6 1/2\""),
    ("12′ 6½″", Fraction("150.5"), "12'-6 1/2\""),
    ("12 ft 6.5 in", Fraction("150.5"), "12'-6 1/2\""),
    ("12ft6.5in", Fraction("150.5"), "12'-6 1/2\""),
    ("12.5 ft", Fraction(150), "12'-6\""),
    ("12.5'", Fraction(150), "12'-6\""),
    ("150 in", Fraction(150), "12'-6\""),
    ('150"', Fraction(150), "12'-6\""),
    ("3.8 m", 3800 * MM, "3800 mm"),
    ("380 cm", 3800 * MM, "3800 mm"),
    ("3800 mm", 3800 * MM, "3800 mm"),
    ("5'6", Fraction(66), "5'-6\""),
    ("5' 6", Fraction(66), "5'-6\""),
    ("4 ft 3", Fraction(51), "4'-3\""),
    ("2′ 9″", Fraction(33), "2'-9\""),
    ("11'-0 3/8\"", Fraction("132.375"), "11'-0 3/8\""),
    ('1/2"', Fraction(1, 2), '1/2"'),
    ('6 1/2"', Fraction("6.5"), '6 1/2"'),
    ('6-1/2"', Fraction("6.5"), '6 1/2"'),
    # forms of building.md section 7 and further ways to write the same
    ("12'-6 1/2\"", Fraction("150.5"), "12'-6 1/2\""),
    ("12' 6.5\"", Fraction("150.5"), "12'-6 1/2\""),
    ("12.54'", Fraction("150.48"), "12'-6 1/2\""),
    ('150.5"', Fraction("150.5"), "12'-6 1/2\""),
    ("150 1/2 in", Fraction("150.5"), "12'-6 1/2\""),
    ("3.82 m", 3820 * MM, "3820 mm"),
    ("3823 mm", 3823 * MM, "3823 mm"),
    ("12' - 6\"", Fraction(150), "12'-6\""),
    ("12 ft. 6 in.", Fraction(150), "12'-6\""),
    ("12 ft, 6 in", Fraction(150), "12'-6\""),
    ("12 feet and 6 inches", Fraction(150), "12'-6\""),
    ("1 FOOT 1 Inch", Fraction(13), "1'-1\""),
    ("12ft.5in", Fraction("144.5"), "12'-0 1/2\""),
    ("6-½″", Fraction("6.5"), '6 1/2"'),
    ("5½ ft", Fraction(66), "5'-6\""),
    ("1⁄2 in", Fraction(1, 2), '1/2"'),
    (".5 in", Fraction(1, 2), '1/2"'),
    ("1 m 20 cm", 1200 * MM, "1200 mm"),
    ("1 m 20 cm 5 mm", 1205 * MM, "1205 mm"),
    ("3.8 Metres", 3800 * MM, "3800 mm"),
    ("2 meters", 2000 * MM, "2000 mm"),
    ("5 1/3 ft", Fraction(64), "5'-4\""),
    ("149 77/127 in", 3800 * MM, "12'-5 5/8\""),
    ("0 in", Fraction(0), '0"'),
    ("\u00a012\u202fft\t6 in ", Fraction(150), "12'-6\""),
]

# typed, unit of the field, inches, echo; no note
BARE = [
    ("150", "in", Fraction(150), "12'-6\""),
    ("12", "ft", Fraction(144), "12'-0\""),
    ("6 1/2", "ft", Fraction(78), "6'-6\""),
    ("6-1/2", "in", Fraction("6.5"), '6 1/2"'),
    ("2650", "mm", 2650 * MM, "2650 mm"),
    ("2.65", "m", 2650 * MM, "2650 mm"),
    ("265", "cm", 2650 * MM, "2650 mm"),
    (150, "in", Fraction(150), "12'-6\""),
    (Decimal("3.8"), "m", 3800 * MM, "3800 mm"),
    (Fraction(1, 3), "ft", Fraction(4), '4"'),
    (Decimal("12.0"), "ft", Fraction(144), "12'-0\""),
]

# typed, unit of the field, inches, part of the note
NOTED = [
    ("12.6", "ft", Fraction("151.2"), "write 12'-6\" or 150 in"),
    ("12.06", "ft", Fraction("144.72"), "write 12'-6\" or 150 in"),
    (Decimal("12.6"), "ft", Fraction("151.2"), "write 12'-6\" or 150 in"),
    (".6", "ft", Fraction("7.2"), "write 0'-6\" or 6 in"),
    ("12.75", "ft", Fraction(153), "12.75 is read as decimal feet."),
    ("12'14\"", "in", Fraction(158), "14\" after 12' is a whole foot or more"),
    ("0' 33\"", "in", Fraction(33), "33\" after 0' is a whole foot or more"),
    ("1'12", "in", Fraction(24), "12 after 1' is a whole foot or more"),
    ("1 m 120 cm", "in", 2200 * MM, "120 cm after 1 m is a whole metre or more"),
    ("12''", "in", Fraction(12), "Two apostrophes"),
    ("12’’", "in", Fraction(12), "Two apostrophes"),
    ('11/2"', "in", Fraction("5.5"), "larger than one"),
]


@pytest.mark.parametrize(("typed", "inches", "echo"), READ_AS_TYPED, ids=repr)
def test_a_length_is_read_as_people_write_it(typed: str, inches: Fraction, echo: str) -> None:
    reading = read_length(typed, bare_unit="in")
    assert (reading.inches, reading.echo, reading.notes) == (inches, echo, ())


@pytest.mark.parametrize(("typed", "unit", "inches", "echo"), BARE, ids=repr)
def test_a_bare_number_takes_the_unit_of_its_field(
    typed: str, unit: LengthUnit, inches: Fraction, echo: str
) -> None:
    reading = read_length(typed, bare_unit=unit)
    assert (reading.inches, reading.echo, reading.notes) == (inches, echo, ())


@pytest.mark.parametrize(("typed", "unit", "inches", "note"), NOTED, ids=repr)
def test_a_doubtful_length_is_read_with_a_note(
    typed: str, unit: LengthUnit, inches: Fraction, note: str
) -> None:
    reading = read_length(typed, bare_unit=unit)
    assert reading.inches == inches
    assert note in reading.notes[0]


def test_decimal_feet_echo_shows_the_inches() -> None:
    """S18: 12.6 in a feet field is 12'-7 3/16", never 12'-6"."""
    assert read_length("12.6", bare_unit="ft").echo == "12'-7 3/16\""


def test_four_segments_of_mixed_notation_add_up() -> None:
    """S18: 150.5 + 150 + 150 + 149.606299... = 600.106299... in, exactly 76213.5 / 127."""
    typed = ("12' 6-1/2\"", "12.5 ft", "150 in", "3.8 m")
    total = sum(read_length(each, bare_unit="in").inches for each in typed)
    assert total == Fraction("450.5") + Fraction(3800 * 10, 254)
    assert abs(total - Fraction("600.106299")) < Fraction(1, 2_000_000)


@pytest.mark.parametrize(
    ("typed", "inches"),
    [
        ("3,8 m", 3800 * MM),
        (",5 m", 500 * MM),
        ("0,125 m", 125 * MM),
        ("12', 6,5\"", Fraction("150.5")),
        ("3.8 m", 3800 * MM),
    ],
)
def test_a_decimal_comma_is_read_where_it_is_set(typed: str, inches: Fraction) -> None:
    assert read_length(typed, bare_unit="mm", decimal_comma=True).inches == inches
