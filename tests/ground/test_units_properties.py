"""What must hold for any length and any text, tried on cases that hypothesis makes up."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

from hypothesis import example, given
from hypothesis import strategies as st

from estimator.units import (
    LengthUnit,
    MeasureError,
    System,
    ceil_to_step,
    read_area,
    read_length,
    read_volume,
    show_length,
    to_decimal,
    write_length,
)

MAX_IN = 120_000
SYSTEMS: st.SearchStrategy[System] = st.sampled_from(["us", "metric"])
UNITS: st.SearchStrategy[LengthUnit] = st.sampled_from(["in", "ft", "mm", "cm", "m"])
LENGTHS = st.fractions(0, MAX_IN, max_denominator=10**30)
AMOUNTS = st.fractions(-(10**9), 10**9, max_denominator=10**9)
TYPED = st.text(max_size=30) | st.text(" 0123456789.,/-'\"½′”ftinmcx\u00a0–", max_size=16)


@given(LENGTHS, SYSTEMS, UNITS, st.booleans())
@example(Fraction(1, 3), "us", "ft", False)
@example(Fraction("0.005"), "metric", "in", True)
def test_what_is_written_reads_back_exactly(
    inches: Fraction, system: System, unit: LengthUnit, decimal_comma: bool
) -> None:
    text = write_length(inches, system)
    assert read_length(text, bare_unit=unit, decimal_comma=decimal_comma).inches == inches


@given(st.integers(0, MAX_IN * 16), UNITS, st.booleans())
def test_sixteenths_as_shown_read_back(
    sixteenths: int, unit: LengthUnit, decimal_comma: bool
) -> None:
    inches = Fraction(sixteenths, 16)
    reading = read_length(show_length(inches, "us"), bare_unit=unit, decimal_comma=decimal_comma)
    assert (reading.inches, reading.notes) == (inches, ())


@given(st.integers(0, MAX_IN * 25), UNITS, st.booleans())
def test_millimetres_as_shown_read_back(mm: int, unit: LengthUnit, decimal_comma: bool) -> None:
    inches = Fraction(mm * 10, 254)
    text = show_length(inches, "metric")
    assert read_length(text, bare_unit=unit, decimal_comma=decimal_comma).inches == inches


@given(LENGTHS, SYSTEMS)
def test_an_echo_is_at_most_half_a_step_off(inches: Fraction, system: System) -> None:
    step = Fraction(1, 16) if system == "us" else Fraction(10, 254)
    reading = read_length(write_length(inches, system), bare_unit="in")
    shown = read_length(reading.echo, bare_unit="in").inches if inches < MAX_IN - 1 else inches
    assert abs(shown - inches) <= step / 2


@given(TYPED, UNITS, st.booleans())
@example("12-6", "in", False)
@example("\ud800 1'", "in", False)
@example("1/0", "ft", True)
def test_any_text_is_a_length_or_a_measure_error(
    text: str, unit: LengthUnit, decimal_comma: bool
) -> None:
    try:
        reading = read_length(text, bare_unit=unit, decimal_comma=decimal_comma)
    except MeasureError as error:
        assert (error.text, bool(error.reason), bool(error.hint)) == (text, True, True)
    else:
        assert 0 <= reading.inches <= MAX_IN


@given(TYPED, st.booleans())
def test_any_text_is_an_area_or_a_measure_error(text: str, decimal_comma: bool) -> None:
    try:
        assert read_area(text, bare_unit="ft2", decimal_comma=decimal_comma) >= 0
    except MeasureError as error:
        assert error.text == text


@given(TYPED, st.booleans())
def test_any_text_is_a_volume_or_a_measure_error(text: str, decimal_comma: bool) -> None:
    try:
        assert read_volume(text, bare_unit="gal", decimal_comma=decimal_comma) >= 0
    except MeasureError as error:
        assert error.text == text


@given(st.decimals() | st.integers() | st.fractions(), UNITS)
def test_any_exact_number_is_a_length_or_a_measure_error(
    number: Decimal | int | Fraction, unit: LengthUnit
) -> None:
    try:
        assert 0 <= read_length(number, bare_unit=unit).inches <= MAX_IN
    except MeasureError as error:
        assert error.kind == "reject"


@given(AMOUNTS, st.fractions(Fraction(1, 1000), 1000))
def test_rounding_up_is_the_least_whole_step(amount: Fraction, step: Fraction) -> None:
    up = ceil_to_step(amount, step)
    assert (up / step).denominator == 1
    assert amount <= up < amount + step


@given(AMOUNTS, st.integers(0, 12))
def test_decimals_are_within_half_a_unit_of_the_last_place(amount: Fraction, places: int) -> None:
    rounded = to_decimal(amount, places)
    assert rounded.as_tuple().exponent == -places
    assert abs(Fraction(rounded) - amount) <= Fraction(1, 2 * 10**places)
