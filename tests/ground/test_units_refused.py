"""What is not a length, or may be more than one, is refused with a reason and what to write."""

from __future__ import annotations

from decimal import Decimal

import pytest

from estimator.problems import Problem
from estimator.units import LengthUnit, MeasureError, read_length

# typed, unit of the field, part of the reason, part of the hint
ASKED = [
    ("12-6", "in", "numbers without a unit", "12'-6\" or 150 in"),
    ("12-6", "ft", "numbers without a unit", "12'-6\" or 150 in"),
    ("12–6", "in", "numbers without a unit", "12'-6\" or 150 in"),
    ('12-6"', "in", "numbers without a unit", "12'-6\" or 150 in"),
    ("12 6", "in", "numbers without a unit", "12'-6\" or 150 in"),
    ("12-6 1/2", "in", "numbers without a unit", "unit after each number"),
    ('6 - 1/2"', "in", "numbers without a unit", "unit after each number"),
    ("½5", "in", "numbers without a unit", "unit after each number"),
    ("½½", "in", "numbers without a unit", "unit after each number"),
    ("6-1/2", "ft", "fraction of an inch", "unit after each number"),
    ("3 m 50", "m", "ends in a number without a unit", "3 m 50 cm"),
    ("5''6", "in", "ends in a number without a unit", "unit after each number"),
    ("12.5' 6\"", "in", "part of a unit", "unit after each number"),
    ("12' 6'", "in", "larger unit to a smaller", "unit after each number"),
    ("6\" 12'", "in", "larger unit to a smaller", "unit after each number"),
    ("1 ft 3 mm", "in", "larger unit to a smaller", "unit after each number"),
    ("12ft2", "ft", "area or volume", "unit after each number"),
    ("12/6", "in", "larger than one", "unit after each number"),
    ("6 12/8 in", "in", "fraction of one or more", "smaller than one"),
    ("3,8 m", "m", "comma", "3.8"),
]

# typed, part of the reason
REJECTED = [
    ("2x4", "size of a board"),
    ("2×4", "size of a board"),
    ("2 by 4", "size of a board"),
    ("twelve", "no digits"),
    ("NaN", "no digits"),
    ("-inf", "negative"),
    ('-3"', "negative"),
    ("−3 in", "negative"),
    ("12'-", "stops after a dash"),
    ("", "empty"),
    (" \t", "empty"),
    ("1/0", "divides by zero"),
    ("6 1/0 in", "divides by zero"),
    ("1/2/3", "is not a length"),
    ("1.2.3", "thousands marks"),
    ("12.", "is not a length"),
    ("1e5", "is not a length"),
    ("5 yd", '"yd" is not a unit'),
    ("12 ft²", "is not a length"),
    ("٣ m", "digits other than 0 to 9"),
    ("1\u00b2", "is not a length"),
    ("about 5 ft", "is not a length"),
    ("1,200", "thousands comma"),
    ("10000 ft 1 in", "longer than 10,000 ft"),
    ("9" * 201, "too long"),
    (Decimal("NaN"), "is not a length"),
    (Decimal("Infinity"), "is not a length"),
    (Decimal("1E-999999"), "is not a length"),
    (Decimal("1E+999999"), "is not a length"),
    (Decimal("-1"), "negative"),
    (-3, "negative"),
]


@pytest.mark.parametrize(("typed", "unit", "reason", "hint"), ASKED, ids=repr)
def test_more_than_one_likely_reading_is_asked_about(
    typed: str, unit: LengthUnit, reason: str, hint: str
) -> None:
    with pytest.raises(MeasureError) as caught:
        read_length(typed, bare_unit=unit)
    assert (caught.value.kind, caught.value.text) == ("ask", typed)
    assert reason in caught.value.reason
    assert hint in caught.value.hint


@pytest.mark.parametrize(("typed", "reason"), REJECTED)
def test_what_is_no_length_is_rejected(typed: str, reason: str) -> None:
    with pytest.raises(MeasureError) as caught:
        read_length(typed, bare_unit="ft")
    assert caught.value.kind == "reject"
    assert reason in caught.value.reason
    assert caught.value.hint.startswith("Write ")


@pytest.mark.parametrize(
    ("number", "reason"),
    [(10**5000, "longer than 10,000 ft"), (-(10**5000), "negative")],
    ids=["huge", "huge and negative"],
)
def test_a_number_too_long_to_print_is_rejected(number: int, reason: str) -> None:
    with pytest.raises(MeasureError, match=reason):
        read_length(number, bare_unit="in")


@pytest.mark.parametrize("typed", ["1,200 mm", "1.200 mm", "12,125"])
def test_three_decimals_may_be_thousands_where_a_decimal_comma_is_set(typed: str) -> None:
    with pytest.raises(MeasureError, match="three decimals") as caught:
        read_length(typed, bare_unit="mm", decimal_comma=True)
    assert caught.value.kind == "ask"


@pytest.mark.parametrize("typed", [12.5, True, None, ["12"]])
def test_floats_and_bools_are_never_lengths(typed: object) -> None:
    with pytest.raises(TypeError, match="a length is text or an exact number"):
        read_length(typed, bare_unit="in")  # type: ignore[arg-type]


def test_an_error_keeps_the_text_and_prints_on_a_line() -> None:
    with pytest.raises(MeasureError) as caught:
        read_length("12\x00" + "6" * 60, bare_unit="in")
    assert caught.value.text == "12\x00" + "6" * 60
    assert caught.value.read.startswith(f'"12?{"6" * 37}..." is not a length')


def test_an_error_becomes_a_problem_at_its_place() -> None:
    error = MeasureError("12-6", "ask", "is not clear", "Write 150 in.")
    assert error.problem("job.toml: line 3") == Problem(
        "job.toml: line 3", '"12-6" is not clear.', "Write 150 in."
    )
