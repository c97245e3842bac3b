"""What a cell can hold: text without forbidden characters, numbers in full, days as numbers."""

from __future__ import annotations

import re
from datetime import date, timedelta
from decimal import Context, Decimal
from fractions import Fraction
from functools import cache

from estimator.measures import Exact

LONGEST_TEXT = 32_767
"""Characters (UTF-16 code units) that a cell of a workbook holds."""
CUT_NOTE = " [cut: longer than a cell holds]"

_SURROGATES = set(range(0xD800, 0xE000))
_NOT_CHARACTERS = {0xFFFE, 0xFFFF}
_LINE_ENDS = re.compile("\r\n?")
_LOOKS_ESCAPED = re.compile("_(?=x[0-9A-Fa-f]{4}_)")
_REPLACEMENT = "\ufffd"
_UNDERSCORE = "_x005F_"
_FIFTEEN_DIGITS = Context(prec=15)
_DAY_ZERO = date(1899, 12, 30)


def clean_text(text: str, longest: int = LONGEST_TEXT) -> str:
    r"""Make any text fit to stand in a cell: no character that XML forbids, and not too long.

    A control character becomes a visible replacement sign, a carriage return a line end;
    what is longer than a cell holds is cut, and says so.

    >>> clean_text("a\x00b") == "a\ufffdb"
    True
    """
    if not text.isprintable():
        text = _LINE_ENDS.sub("\n", text).translate(_illegal())
    return text if 2 * len(text) <= longest else _cut(text, longest)


@cache
def _illegal() -> dict[int, str]:
    """Map characters that XML forbids to the replacement sign."""
    controls = set(range(ord(" "))) - set(map(ord, "\t\n"))
    return dict.fromkeys(controls | _SURROGATES | _NOT_CHARACTERS, _REPLACEMENT)


def _cut(text: str, longest: int) -> str:
    units = text.encode("utf-16-le")
    if len(units) <= 2 * longest:
        return text
    kept = units[: 2 * (longest - len(CUT_NOTE))].decode("utf-16-le", "ignore")
    return kept + CUT_NOTE


def escape(text: str) -> str:
    """Escape the three characters that XML text reserves."""
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")


def plain_number(number: Exact) -> str:
    """Write a number in full, no exponent; a fraction that does not end gets 15 digits.

    >>> plain_number(Decimal("1E+2")), plain_number(Fraction(1, 3))
    ('100', '0.333333333333333')
    """
    if isinstance(number, Fraction):
        over, under = number.as_integer_ratio()
        number = _FIFTEEN_DIGITS.divide(Decimal(over), Decimal(under))
    return format(number, "f") if isinstance(number, Decimal) else str(number)


def day_number(day: date) -> int:
    """Count the days as a workbook does: 1 January 1900 is 2, every later day one more."""
    return (day - _DAY_ZERO).days


def day_of(number: int) -> date:
    """The day that a workbook's number of a day stands for.

    >>> day_of(day_number(date(2026, 3, 2))).isoformat()
    '2026-03-02'
    """
    return _DAY_ZERO + timedelta(days=number)


def as_text(text: str) -> str:
    """Text as a cell stores it: an underscore that would begin an escape is escaped itself."""
    return _LOOKS_ESCAPED.sub(_UNDERSCORE, text) if "_x" in text else text
