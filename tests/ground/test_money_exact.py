"""What money says when it refuses, word for word, and amounts longer than a context; by hand."""

from __future__ import annotations

import re
from collections.abc import Callable
from decimal import Decimal

import pytest

from estimator.money import (
    margin_from_markup,
    markup_from_margin,
    minor_unit,
    round_money,
    show_money,
    split_money,
)
from estimator.problems import InputError, Problem

ON_FILE = (
    "AUD, BHD, CAD, CHF, CLF, CLP, EUR, GBP, INR, IQD, ISK, JOD, JPY, KRW, KWD, LYD, MXN, NZD, "
    "OMR, PYG, TND, USD, UYW, VND, XAF, XOF"
)


@pytest.mark.parametrize("sign", [1, -1])
def test_an_amount_of_thirty_digits_is_rounded_and_split_exactly(sign: int) -> None:
    """Longer than the 28 digits that Decimal works with unless it is told otherwise."""
    long = Decimal("123456789012345678901234567890.125").copy_sign(sign)
    exact = Decimal("123456789012345678901234567890.13").copy_sign(sign)
    assert str(round_money(long)) == str(exact)
    assert split_money(exact, (1,)) == (exact,)


def test_a_currency_off_the_file_is_told_where_and_what_to_use() -> None:
    with pytest.raises(InputError) as told:
        minor_unit("ZZZ")
    assert told.value.problems == (
        Problem("currency", '"ZZZ" is not a currency on file.', f"Use one of {ON_FILE}."),
    )


def test_a_locale_that_nobody_knows_is_told_and_how_to_write_one() -> None:
    with pytest.raises(InputError) as told:
        show_money(Decimal(1), "USD", "nowhere")
    assert told.value.problems == (
        Problem(
            "locale", '"nowhere" is not a locale that can be shown.',
            "Write one such as en_US or de_DE.",
        ),
    )  # fmt: skip


def test_a_locale_may_be_written_with_a_hyphen() -> None:
    assert show_money(Decimal("1234.5"), "USD", "en-US") == "$1,234.50"


@pytest.mark.parametrize(
    ("refused", "words"),
    [
        (lambda: round_money(Decimal("NaN")), "NaN is not an amount of money"),
        (lambda: split_money(Decimal("0.005"), (1,)),
         "0.005 is not a whole number of 0.01 USD"),
        (lambda: split_money(Decimal(1), (1, -1)), "a weight to split by is never negative"),
        (lambda: split_money(Decimal(1), (0, 0)), "there is no weight above zero to split by"),
        (lambda: margin_from_markup(Decimal(-100)), "a markup is more than -100 %"),
        (lambda: markup_from_margin(Decimal(100)), "a margin is less than 100 %"),
    ],
)  # fmt: skip
def test_what_is_refused_is_said(refused: Callable[[], object], words: str) -> None:
    with pytest.raises(ValueError, match=f"^{re.escape(words)}$"):
        refused()
