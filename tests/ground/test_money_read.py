"""Prices are read the way people write them, or refused; every row is worked by hand."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from estimator.money import read_money
from estimator.units import MeasureError

# typed, currency, decimal comma, read
READ = [
    ("1.25", "USD", False, "1.25"),
    ("12", "USD", False, "12"),
    ("0.62", "USD", False, "0.62"),
    (".50", "USD", False, "0.50"),
    ("1.234", "USD", False, "1.234"),
    ("$1.25", "USD", False, "1.25"),
    (" $ 1.25 ", "CAD", False, "1.25"),
    ("US$5", "USD", False, "5"),
    ("$5.00 USD", "USD", False, "5.00"),
    ("usd 5", "USD", False, "5"),
    ("£3.50", "GBP", False, "3.50"),
    ("1,234.50", "USD", False, "1234.50"),
    ("12,345,678", "USD", False, "12345678"),
    ("1 234.50", "USD", False, "1234.50"),
    ("1,25", "EUR", True, "1.25"),
    ("0,625", "EUR", True, "0.625"),
    ("1,234", "EUR", True, "1.234"),
    ("1.234,50 €", "EUR", True, "1234.50"),
    ("1.234.567", "EUR", True, "1234567"),
    ("1\u202f234,50\u00a0$", "CAD", True, "1234.50"),
]
# typed, decimal comma, kind, part of the message
REFUSED = [
    ("1,25", False, "ask", "Write 1.25"),
    ("1,234", False, "ask", "may be 1234 or 1.234"),
    ("1.25", True, "ask", "Write 1,25"),
    ("1.234", True, "ask", "may be 1234 or 1,234"),
    ("1.234,50", False, "reject", "with a point, such as 1.25"),
    ("1,234.50", True, "reject", "with a comma, such as 1,25"),
    ("1,2,3", False, "reject", "is not a price"),
    ("1 23", False, "reject", "is not a price"),
    ("", False, "reject", "is empty"),
    (" \u00a0", False, "reject", "is empty"),
    ("-5", False, "reject", "is negative"),
    ("$-5", False, "reject", "is negative"),
    ("−5", False, "reject", "is negative"),
    ("(5.00)", False, "reject", "is negative"),
    ("5.00-", False, "reject", "is negative"),
    ("NaN", False, "reject", "is not a price"),
    ("Infinity", False, "reject", "is not a price"),
    ("1e5", False, "reject", "is not a price"),
    ("5.", False, "reject", "is not a price"),
    ("٣", False, "reject", "is not a price"),
    ("$", False, "reject", "is not a price"),
    ("5/ft", False, "reject", "number alone"),
    ("5 %", False, "reject", "number alone"),
    ("€5", False, "reject", "in USD"),
    ("5 EUR", False, "reject", "in USD"),
    ("=1+2", False, "reject", "is not a price"),
    ("9" * 41, False, "reject", "too long"),
]


@pytest.mark.parametrize(("typed", "currency", "decimal_comma", "expected"), READ)
def test_a_price_is_read(typed: str, currency: str, decimal_comma: bool, expected: str) -> None:
    price = read_money(typed, currency=currency, decimal_comma=decimal_comma)
    assert str(price) == expected


@pytest.mark.parametrize(("typed", "decimal_comma", "kind", "message"), REFUSED)
def test_what_is_no_price_is_refused(
    typed: str, decimal_comma: bool, kind: str, message: str
) -> None:
    with pytest.raises(MeasureError) as caught:
        read_money(typed, decimal_comma=decimal_comma)
    assert (caught.value.kind, caught.value.text) == (kind, typed)
    assert message in str(caught.value)


@given(st.text(max_size=50) | st.text("0123456789.,- $€\u00a0", max_size=14), st.booleans())
@example("\ud8001", False)
def test_any_text_is_a_price_or_a_measure_error(text: str, decimal_comma: bool) -> None:
    try:
        price = read_money(text, decimal_comma=decimal_comma)
    except MeasureError as error:
        assert error.text == text
    else:
        assert price.is_finite()
        assert price >= 0


@given(st.decimals(0, 10**12, places=6))
def test_a_written_decimal_reads_back(price: Decimal) -> None:
    assert read_money(f"{price.copy_abs():f}") == price
