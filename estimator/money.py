"""Money as Decimal: rounded to the currency's minor unit, split to the cent, and shown."""

from __future__ import annotations

import csv
import re
from collections.abc import Sequence
from copy import copy
from decimal import ROUND_HALF_UP, Context, Decimal
from fractions import Fraction
from functools import cache
from importlib.resources import files
from typing import TYPE_CHECKING

from estimator.price_text import read_money
from estimator.problems import InputError, Problem

if TYPE_CHECKING:
    import datetime

    from babel import Locale
    from babel.numbers import NumberPattern

__all__ = [
    "margin_from_markup",
    "markup_from_margin",
    "minor_unit",
    "read_money",
    "round_money",
    "show_date",
    "show_money",
    "split_money",
]

_HALF_UP = Context(prec=60, rounding=ROUND_HALF_UP)
_PERCENT = Decimal(100)
# CLDR puts a no-break space between a currency's letters and a digit; Babel leaves it out.
_LETTER_DIGIT = re.compile(r"(?<=[^\W\d_])(?=\d)|(?<=\d)(?=[^\W\d_])")


@cache
def _minor_units() -> dict[str, int]:
    """Decimals of each currency on file (tables/data/currencies.csv)."""
    text = files("estimator").joinpath("tables", "data", "currencies.csv").read_text("utf-8")
    return {row["currency"]: int(row["minor_unit"]) for row in csv.DictReader(text.splitlines())}


def minor_unit(currency: str) -> int:
    """How many decimals a currency has: 2 for USD, 0 for JPY.

    Raises:
        InputError: a currency that is not on file; the message lists those that are.

    Source: iso-4217.
    """
    try:
        return _minor_units()[currency]
    except KeyError:
        known = ", ".join(_minor_units())
        read = f'"{currency}" is not a currency on file.'
        raise InputError([Problem("currency", read, f"Use one of {known}.")]) from None


@cache
def _quantum(currency: str) -> Decimal:
    """One minor unit: 0.01 for USD."""
    return Decimal(f"1E-{minor_unit(currency)}")


def round_money(amount: Decimal, currency: str = "USD") -> Decimal:
    """Round to the minor unit, half away from zero, so that a credit mirrors its charge.

    Zero never has a sign.

    Raises:
        InputError: a currency that is not on file.
        ValueError: an amount that is not a number; a missing amount is never rounded.

    >>> round_money(Decimal("169.425"))
    Decimal('169.43')
    """
    if not amount.is_finite():
        raise ValueError(f"{amount} is not an amount of money")
    rounded = amount.quantize(_quantum(currency), ROUND_HALF_UP, _HALF_UP)
    return rounded or abs(rounded)


def split_money(
    total: Decimal, weights: Sequence[Decimal | Fraction | int], currency: str = "USD"
) -> tuple[Decimal, ...]:
    """Split a total by weights so that the parts add up to it exactly.

    Each part is its exact share rounded down, then the units left over go to the largest
    remainders, the earlier line first where they tie. A credit is split like its charge.

    Raises:
        ValueError: a total with parts of a minor unit, a negative weight, or a total
            above zero and no weight above zero.

    >>> split_money(Decimal("1.00"), (1, 1, 1))
    (Decimal('0.34'), Decimal('0.33'), Decimal('0.33'))
    """
    quantum = _quantum(currency)
    units = Fraction(total) / Fraction(quantum)
    if units.denominator != 1:
        raise ValueError(f"{total} is not a whole number of {quantum} {currency}")
    sign = -1 if units < 0 else 1
    parts = _largest_remainder(int(abs(units)), weights)
    return tuple(_HALF_UP.multiply(sign * part, quantum) for part in parts)


def _largest_remainder(units: int, weights: Sequence[Decimal | Fraction | int]) -> list[int]:
    """Split whole units by weights, with the largest remainders rounded up."""
    exact = [Fraction(weight) for weight in weights]
    whole = sum(exact)
    if any(weight < 0 for weight in exact):
        raise ValueError("a weight to split by is never negative")
    if not whole:
        if units:
            raise ValueError("there is no weight above zero to split by")
        return [0] * len(exact)
    shares = [units * weight / whole for weight in exact]
    parts = [int(share) for share in shares]
    by_remainder = sorted(range(len(parts)), key=lambda line: parts[line] - shares[line])
    for line in by_remainder[: units - sum(parts)]:
        parts[line] += 1
    return parts


def margin_from_markup(markup_pct: Decimal) -> Decimal:
    """Margin (percent of the price) that a markup (percent of the cost) makes; not rounded.

    Raises:
        ValueError: a markup of -100 % or less, which leaves no price.
    """
    if markup_pct <= -_PERCENT:
        raise ValueError("a markup is more than -100 %")
    return _PERCENT * markup_pct / (_PERCENT + markup_pct)


def markup_from_margin(margin_pct: Decimal) -> Decimal:
    """Markup (percent of the cost) that makes a margin (percent of the price); not rounded.

    Raises:
        ValueError: a margin of 100 % or more, which no price reaches.
    """
    if margin_pct >= _PERCENT:
        raise ValueError("a margin is less than 100 %")
    return _PERCENT * margin_pct / (_PERCENT - margin_pct)


def show_money(amount: Decimal, currency: str, locale: str) -> str:
    """Show an amount as people of a locale write it, rounded to the minor unit.

    Raises:
        InputError: a currency that is not on file, or a locale that Babel does not know.

    >>> show_money(Decimal("1234.5"), "USD", "en_US")
    '$1,234.50'
    """
    pattern, place = _money_pattern(currency, locale)
    rounded = round_money(amount, currency)
    text = pattern.apply(rounded, place, currency=currency, currency_digits=False)
    return _LETTER_DIGIT.sub("\u00a0", text)


def show_date(date: datetime.date, locale: str) -> str:
    """Show a date with the month as a word, so that day and month cannot be mixed up.

    Raises:
        InputError: a locale that Babel does not know.
    """
    from babel.dates import format_date

    return format_date(date, "long", locale=_locale(locale))


@cache
def _money_pattern(currency: str, locale: str) -> tuple[NumberPattern, Locale]:
    """Find the pattern of a locale, with the currency's decimals by ISO 4217 instead of CLDR."""
    place = _locale(locale)
    pattern = copy(place.currency_formats["standard"])
    pattern.frac_prec = (minor_unit(currency), minor_unit(currency))
    return pattern, place


@cache
def _locale(name: str) -> Locale:
    """Find a locale by a name such as en_US or en-US."""
    from babel import Locale, UnknownLocaleError

    try:
        return Locale.parse(name.replace("-", "_"))
    except (UnknownLocaleError, ValueError):
        read = f'"{name}" is not a locale that can be shown.'
        raise InputError([Problem("locale", read, "Write one such as en_US or de_DE.")]) from None
