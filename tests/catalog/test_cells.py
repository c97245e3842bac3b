"""Single cells: what is taken, and what is said about the rest."""

from __future__ import annotations

from datetime import date
from decimal import Decimal

import pytest

from estimator.catalog import cells
from estimator.catalog.cells import Habits, has_day_first, has_decimal_comma
from estimator.reading import MeasureError

COMMA = Habits(decimal_comma=True)


@pytest.mark.parametrize(
    ("text", "comma", "want"),
    [
        ("1", False, "1"),
        ("0.033", False, "0.033"),
        ("1.250", False, "1.250"),
        ("0,033", True, "0.033"),
        ("1,250", True, "1.250"),
        ("12", True, "12"),
    ],
)
def test_numbers(text: str, comma: bool, want: str) -> None:
    read = cells.amount(Habits(decimal_comma=comma), thing="a number")
    assert str(read(text)) == want


@pytest.mark.parametrize(
    ("text", "comma", "says", "write"),
    [
        ("1,25", False, 'has a "," where "." stands', "Write 1.25, or change decimal_comma"),
        ("1.25", True, 'has a "." where "," stands', "Write 1,25, or change decimal_comma"),
        ("1,250.5", False, "has a thousands mark", "Write 1250.5."),
        ("1.250", True, "has a thousands mark", "Write 1250."),
        ("-1", False, "is below zero", "without a sign"),
        ("(1)", False, "is below zero", "without a sign"),
        ("", False, "is empty where a number is needed", "Write 1.25."),
        ("ten", False, "is not a number", "Write digits only"),
        ("1e3", False, "is not a number", "Write digits only"),
        ("12345678901", False, "is not a number", "Write digits only"),
        ("nan", False, "is not a number", "Write digits only"),
        ("١٢", False, "is not a number", "Write digits only"),
    ],
)
def test_what_is_no_number(text: str, comma: bool, says: str, write: str) -> None:
    with pytest.raises(MeasureError) as caught:
        cells.amount(Habits(decimal_comma=comma), thing="a number")(text)
    assert says in caught.value.read
    assert write in caught.value.hint


@pytest.mark.parametrize(
    ("texts", "expected", "comma"),
    [
        (["0.62", "1"], True, False),
        (["0,62", "1"], True, True),
        (["0,62", "0.62"], True, True),
        (["1.000", "1,000"], True, True),
        (["1.234,50"], True, True),
        (["1,234.50"], True, False),
        (["0,033"], True, True),
        (["25"], True, True),
        (["0,62"], False, False),
    ],
)
def test_decimal_commas_are_judged_by_the_whole_column(
    texts: list[str], expected: bool, comma: bool
) -> None:
    assert has_decimal_comma(texts, expected=expected) is comma


@pytest.mark.parametrize(
    ("text", "day_first", "want"),
    [
        ("2026-11-02", False, (2026, 11, 2)),
        ("2026/11/2", False, (2026, 11, 2)),
        ("2026-11-02 00:00:00", False, (2026, 11, 2)),
        ("11/2/2026", False, (2026, 11, 2)),
        ("11/02/26", False, (2026, 11, 2)),
        ("02/11/2026", True, (2026, 11, 2)),
        ("2-11-2026", True, (2026, 11, 2)),
        ("02.11.2026", False, (2026, 11, 2)),
        ("29/02/2028", True, (2028, 2, 29)),
    ],
)
def test_dates(text: str, day_first: bool, want: tuple[int, int, int]) -> None:
    assert cells.day(Habits(day_first=day_first))(text) == date(*want)


@pytest.mark.parametrize(
    "text",
    ["31/02/2026", "2026-13-01", "29.02.2027", "yesterday", "45000", "1/2", "1/2-2026", "0/0/00"],
)
def test_what_is_no_date(text: str) -> None:
    with pytest.raises(MeasureError, match="is not a date") as caught:
        cells.day(Habits())(text)
    assert caught.value.hint == "Write it as 2026-11-30."


@pytest.mark.parametrize(
    ("texts", "expected", "first"),
    [
        (["13/2/2026", "3/9/2026"], False, True),
        (["2/13/2026", "3/9/2026"], True, False),
        (["3/9/2026"], True, True),
        (["3/9/2026"], False, False),
        (["13.2.2026", "2026-12-13"], False, False),
        ([], True, True),
    ],
)
def test_the_order_of_day_and_month_is_judged_by_the_whole_column(
    texts: list[str], expected: bool, first: bool
) -> None:
    assert has_day_first(texts, expected=expected) is first


@pytest.mark.parametrize(
    ("text", "want"),
    [
        ("ea", "ea"),
        ("EACH", "ea"),
        ("Feet", "ft"),
        ("l", "L"),
        ("L", "L"),
        ("sq ft", "ft2"),
        ("m²", "m2"),
    ],
)
def test_units(text: str, want: str) -> None:
    assert cells.unit(*cells.MATERIAL_UNITS)(text) == want


def test_a_unit_of_another_book_is_refused_with_those_that_serve() -> None:
    with pytest.raises(MeasureError, match="is not a unit of this book") as caught:
        cells.unit(*cells.MATERIAL_UNITS)("bundle")
    assert caught.value.hint == "Write one of ea, ft, m, ft2, m2, gal, L, application."


@pytest.mark.parametrize(
    ("text", "want"),
    [
        ("14:2-3 12:2-2", "14:2-3 12:2-2"),
        ("14:2-3, 12:2-2", "14:2-3 12:2-2"),
        ("2,5:2-3 1,5:2-3", "2.5:2-3 1.5:2-3"),
        ("", ""),
    ],
)
def test_what_a_connector_holds(text: str, want: str) -> None:
    assert cells.holds(text) == want


@pytest.mark.parametrize("text", ["14", "14:3", "14:3-2", "14:0-2", "two 14"])
def test_what_a_connector_cannot_hold(text: str) -> None:
    with pytest.raises(MeasureError, match="does not say how many conductors"):
        cells.holds(text)


def test_a_number_kept_as_text_has_a_point() -> None:
    assert cells.number_text(COMMA, thing="a volume")("20,0") == "20.0"


def test_prices() -> None:
    read = cells.price(Habits(currency="GBP"))
    assert (read(""), read("0.62"), read("£3.50")) == (None, Decimal("0.62"), Decimal("3.50"))
    with pytest.raises(MeasureError):
        read("€3.50")
