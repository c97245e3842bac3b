"""Reads typed prices: $1,234.50 or 1 234,50 becomes a Decimal, and nothing else is guessed at."""

from __future__ import annotations

import re
from decimal import Decimal

from estimator.reading import MeasureError

MAX_CHARS = 40
# Signs that people put at a price. "$" is read as the job's own dollar or peso.
_SIGNS = {
    "$": frozenset(("USD", "CAD", "AUD", "NZD", "MXN", "CLP")),
    "US$": frozenset(("USD",)),
    "CA$": frozenset(("CAD",)),
    "€": frozenset(("EUR",)),
    "£": frozenset(("GBP",)),
    "¥": frozenset(("JPY",)),
    "₩": frozenset(("KRW",)),
    "₹": frozenset(("INR",)),
}
_PLAIN_PRICE = re.compile(r"[0-9]{1,18}(?:\.[0-9]{1,18})?")
_SIGNED = re.compile(r"([^0-9.,()\s-]*) ?([0-9., ]*[0-9]) ?([^0-9.,()\s-]*)")
_NEGATIVE = re.compile(r"[^0-9]*[-(] ?[0-9.,]|[0-9., ]+-$")
_ONE_GROUP = re.compile(r"[1-9][0-9]{0,2}[.,][0-9]{3}")
_CODE = re.compile(r"[A-Z]{3}")
_SPACES = str.maketrans("\u00a0\u202f\u2009\u2212", "   -")
_EXAMPLES = (
    "Write the price with a point, such as 1.25.",
    "Write the price with a comma, such as 1,25.",
)


def _number_pattern(marks: str) -> re.Pattern[str]:
    """Numbers that can be read one way only; `marks` is the decimal, then the thousands mark."""
    point, group = (re.escape(mark) for mark in marks)
    first, decimals = "[1-9][0-9]{0,2}", f"{point}[0-9]+"
    ways = (
        f"[0-9]+(?:{decimals})?",
        decimals,
        f"{first}(?:{group}[0-9]{{3}})+{decimals}",
        f"{first}(?:{group}[0-9]{{3}}){{2,}}",
        f"{first}(?: [0-9]{{3}})+(?:{decimals})?",
    )
    return re.compile("|".join(ways))


_NUMBERS = {marks: _number_pattern(marks) for marks in (".,", ",.")}


def read_money(text: str, *, currency: str = "USD", decimal_comma: bool = False) -> Decimal:
    """Read a price the way people write it: 1.25, $1,234.50, 1 234,50 €, EUR 5.

    A thousands mark is taken only where it cannot be a decimal mark. The sign or code of
    another currency than `currency` is refused. Decimals are kept as typed, not rounded.

    Raises:
        MeasureError: not a price, negative, or more than one likely reading.

    >>> read_money("$1,234.50")
    Decimal('1234.50')
    """
    if not decimal_comma and _PLAIN_PRICE.fullmatch(text):
        return Decimal(text)
    tidy = " ".join(text.translate(_SPACES).split())
    found = _SIGNED.fullmatch(tidy) if len(tidy) <= MAX_CHARS else None
    if found is None:
        raise _not_a_price(text, tidy, decimal_comma=decimal_comma)
    before, number, after = found.groups()
    for sign in (before, after):
        _check_sign(text, sign, currency)
    marks = ",." if decimal_comma else ".,"
    if not _NUMBERS[marks].fullmatch(number):
        raise _unclear(text, number, marks)
    plain = number.replace(" ", "").replace(marks[1], "")
    return Decimal(plain.replace(",", "."))


def _check_sign(text: str, sign: str, currency: str) -> None:
    """Refuse a sign or code that is not one of the currency."""
    if not sign or sign.upper() == currency or currency in _SIGNS.get(sign.upper(), ()):
        return
    if sign in _SIGNS or _CODE.fullmatch(sign):
        raise MeasureError(
            text,
            "reject",
            f'is marked "{sign}", but prices here are in {currency}',
            f"Write the price in {currency}, as a number.",
        )
    raise MeasureError(text, "reject", "is not a price", "Write the price as a number alone.")


def _not_a_price(text: str, tidy: str, *, decimal_comma: bool) -> MeasureError:
    """Make the error that says best why a text is no price."""
    reason = "is not a price"
    if not tidy:
        reason = "is empty"
    elif len(tidy) > MAX_CHARS:
        reason = "is too long to be a price"
    elif _NEGATIVE.match(tidy):
        reason = "is negative, so it is not a price"
    return MeasureError(text, "reject", reason, _EXAMPLES[decimal_comma])


def _unclear(text: str, number: str, marks: str) -> MeasureError:
    """Make the error for a number whose commas and points do not tell what they mean.

    `marks` is the decimal mark, then the thousands mark.
    """
    point, group = marks[0], marks[1]
    hint = _EXAMPLES[point == ","]
    if number.count(group) != 1 or point in number or " " in number:
        return MeasureError(text, "reject", "is not a price", hint)
    joined, pointed = number.replace(group, ""), number.replace(group, point)
    if _ONE_GROUP.fullmatch(number):
        return MeasureError(
            text, "ask", f"may be {joined} or {pointed}", f"Write {joined} or {pointed}."
        )
    return MeasureError(
        text,
        "ask",
        f'has a "{group}" where the decimal mark is "{point}"',
        f"Write {pointed}, or set which decimal mark this file has.",
    )
