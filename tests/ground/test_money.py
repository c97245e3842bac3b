"""Money is rounded, split and shown to the cent; expected values are worked by hand."""

from __future__ import annotations

import datetime
import subprocess
import sys
from decimal import Decimal, localcontext
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator.money import (
    margin_from_markup,
    markup_from_margin,
    minor_unit,
    round_money,
    show_date,
    show_money,
    split_money,
)
from estimator.problems import InputError

PRICES = ("4.97", "12.49", "0.38", "2.19")

# amount, factor, rounded; the long product stands beside each
ROUNDED = [
    ("10.50", "0.07", "0.74"),  # 0.735
    ("0.07", "0.0625", "0.00"),  # 0.004375
    ("0.08", "0.0625", "0.01"),  # 0.005
    ("1.00", "0.0449", "0.04"),
    ("1.00", "0.0450", "0.05"),
    ("1.15", "0.10", "0.12"),  # 0.115; binary floats give 0.11
    ("2.675", "1", "2.68"),  # binary floats give 2.67
    ("125.50", "1.35", "169.43"),  # 169.425, job S23; binary floats may give 169.42
    ("159.84", "0.06", "9.59"),  # 9.5904, job S23
    ("118.40", "0.06", "7.10"),  # 7.104, job S23
    ("135.17", "0.0825", "11.15"),  # 11.151525, job S19
    ("-7.85", "0.10", "-0.79"),  # -0.785: a credit mirrors its charge
    ("-0.004", "1", "0.00"),
    ("0", "1", "0.00"),
]
CURRENCIES = [("USD", 2), ("EUR", 2), ("JPY", 0), ("XOF", 0), ("KWD", 3), ("TND", 3), ("CLF", 4)]


@pytest.mark.parametrize(("amount", "factor", "expected"), ROUNDED)
def test_half_a_cent_goes_up(amount: str, factor: str, expected: str) -> None:
    assert str(round_money(Decimal(amount) * Decimal(factor))) == expected


@pytest.mark.parametrize(
    ("rate", "lines", "invoice"), [("0.0725", "1.46", "1.45"), ("0.08875", "1.77", "1.78")]
)
def test_tax_by_line_differs_from_tax_on_the_invoice(rate: str, lines: str, invoice: str) -> None:
    """0.36 + 0.91 + 0.03 + 0.16 and 20.03 x 7.25 % = 1.452; 0.44 + 1.11 + 0.03 + 0.19."""
    taxes = [round_money(Decimal(price) * Decimal(rate)) for price in PRICES]
    total = sum(Decimal(price) for price in PRICES)
    assert str(sum(taxes)) == lines
    assert str(round_money(total * Decimal(rate))) == invoice


def test_vat_by_line_and_on_the_total() -> None:
    """3 x 1.12 at 20 %: three lines of 0.224 -> 0.22 make 0.66; 3.36 gives 0.672 -> 0.67."""
    assert 3 * round_money(Decimal("1.12") * Decimal("0.20")) == Decimal("0.66")
    assert round_money(Decimal("3.36") * Decimal("0.20")) == Decimal("0.67")


@pytest.mark.parametrize(
    ("gross", "rate", "net"),
    [("107.25", "0.0725", "100.00"), ("589.88", "0.0725", "550.00"), ("100.00", "0.20", "83.33")],
)
def test_tax_is_backed_out_of_a_gross_price(gross: str, rate: str, net: str) -> None:
    """The tax in 100.00 gross at 20 % is 16.67, so 83.33 net."""
    assert str(round_money(Decimal(gross) / (1 + Decimal(rate)))) == net


@pytest.mark.parametrize(("currency", "decimals"), CURRENCIES)
def test_decimals_are_those_of_iso_4217(currency: str, decimals: int) -> None:
    assert minor_unit(currency) == decimals
    assert round_money(Decimal("1.23456"), currency).as_tuple().exponent == -decimals


def test_a_currency_not_on_file_lists_those_that_are() -> None:
    with pytest.raises(InputError) as caught:
        round_money(Decimal(1), "ABC")
    problem = caught.value.problems[0]
    assert problem.read == '"ABC" is not a currency on file.'
    assert problem.write.startswith("Use one of AUD, BHD, CAD, ")


@pytest.mark.parametrize("amount", ["NaN", "sNaN", "Infinity", "-Infinity"])
def test_what_is_no_number_is_never_rounded(amount: str) -> None:
    with pytest.raises(ValueError, match="not an amount"):
        round_money(Decimal(amount))


def test_rounding_does_not_depend_on_the_context_of_the_caller() -> None:
    with localcontext(prec=3, rounding="ROUND_DOWN"):
        assert str(round_money(Decimal("1234567.885"))) == "1234567.89"
        assert split_money(Decimal("1234567.89"), (0, 1))[1] == Decimal("1234567.89")


def test_tax_on_a_receipt_splits_to_the_cent() -> None:
    """Job S19: plain rounding would give 11.16, a cent too much."""
    parts = split_money(Decimal("11.15"), [Decimal(w) for w in ("62.10", "41.05", "22.50", "9.52")])
    assert [str(part) for part in parts] == ["5.12", "3.39", "1.86", "0.78"]


@pytest.mark.parametrize(
    ("total", "weights", "currency", "parts"),
    [
        ("1.00", (1, 1, 1), "USD", "0.34 0.33 0.33"),
        ("0.02", (1, 1, 1), "USD", "0.01 0.01 0.00"),
        ("-1.00", (1, 1, 1), "USD", "-0.34 -0.33 -0.33"),
        ("100", (1, 2, 3), "JPY", "17 33 50"),  # 16.67, 33.33, 50
        ("0.010", (Fraction(1, 3), Fraction(1, 6)), "KWD", "0.007 0.003"),
        ("0.00", (0, 0), "USD", "0.00 0.00"),
        ("5.00", (0, 2), "USD", "0.00 5.00"),
        ("0.00", (), "USD", ""),
    ],
)
def test_leftover_units_go_to_the_largest_remainders(
    total: str, weights: tuple[int, ...], currency: str, parts: str
) -> None:
    assert " ".join(str(p) for p in split_money(Decimal(total), weights, currency)) == parts


@pytest.mark.parametrize(
    ("total", "weights", "reason"),
    [
        ("1.005", (1, 1), "whole number of 0.01 USD"),
        ("1.00", (2, -1), "never negative"),
        ("1.00", (0, 0), "no weight above zero"),
        ("1.00", (), "no weight above zero"),
    ],
)
def test_what_cannot_be_split_says_why(total: str, weights: tuple[int, ...], reason: str) -> None:
    with pytest.raises(ValueError, match=reason):
        split_money(Decimal(total), weights)


WEIGHTS = st.lists(
    st.decimals(0, 10**6, places=3) | st.fractions(0, 10**6), min_size=1, max_size=12
)


@given(st.integers(-(10**9), 10**9), WEIGHTS.filter(any))
def test_a_split_adds_up_and_is_fair(cents: int, weights: list[Decimal | Fraction]) -> None:
    parts = split_money(Decimal(cents) / 100, weights)
    whole = sum(Fraction(weight) for weight in weights)
    assert sum(parts) == Decimal(cents) / 100
    for part, weight in zip(parts, weights, strict=True):
        assert abs(Fraction(part) * 100 - cents * Fraction(weight) / whole) < 1


def test_markup_and_margin_are_two_views_of_one_profit() -> None:
    """Markup 35 % = margin 25.93 % (S23); markup 50 % = margin 33.3 % (1,000 sold at 1,500)."""
    assert round_money(margin_from_markup(Decimal(35))) == Decimal("25.93")
    assert round_money(margin_from_markup(Decimal(50))) == Decimal("33.33")
    assert markup_from_margin(Decimal(20)) == Decimal(25)
    assert markup_from_margin(Decimal(0)) == margin_from_markup(Decimal(0)) == 0


def test_a_margin_that_no_price_reaches_is_refused() -> None:
    with pytest.raises(ValueError, match="less than 100 %"):
        markup_from_margin(Decimal(100))
    with pytest.raises(ValueError, match="more than -100 %"):
        margin_from_markup(Decimal(-100))


@pytest.mark.parametrize(
    ("amount", "currency", "text"),
    [
        ("169.425", "USD", "$169.43"),  # rounded as charged, not half to even
        ("1234.5", "KWD", "KWD\u00a01,234.500"),
        ("1234.5", "IQD", "IQD\u00a01,234.500"),  # ISO 4217 has 3 decimals, CLDR none
        ("1234.5", "JPY", "¥1,235"),
    ],
)
def test_money_is_shown_to_its_minor_unit(amount: str, currency: str, text: str) -> None:
    assert show_money(Decimal(amount), currency, "en_US") == text


@pytest.mark.parametrize("locale", ["xx_YY", "not a locale", "", "../en_US"])
def test_an_unknown_locale_is_an_input_error(locale: str) -> None:
    with pytest.raises(InputError, match="is not a locale"):
        show_money(Decimal(1), "USD", locale)
    with pytest.raises(InputError, match="is not a locale"):
        show_date(datetime.date(2026, 3, 9), locale)


def test_importing_money_does_not_load_babel() -> None:
    code = "import sys, estimator.money, estimator.units; sys.exit('babel' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
