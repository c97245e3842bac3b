"""Plain numbers as they stand in a book: digits with a decimal point, or a comma where set."""

from __future__ import annotations

import re
from decimal import Decimal

from estimator.reading import MeasureError

LARGEST = Decimal(1_000_000_000)
MOST_CHARS = 40

_POINT = re.compile(r"\d{1,10}(?:\.\d{1,18})?", re.ASCII)
_COMMA = re.compile(r"\d{1,10}(?:,\d{1,18})?", re.ASCII)
_GROUPED = {
    False: re.compile(r"[1-9]\d{0,2}(?:,\d{3})+(?:\.\d{1,18})?", re.ASCII),
    True: re.compile(r"[1-9]\d{0,2}(?:\.\d{3})+(?:,\d{1,18})?", re.ASCII),
}


def read_number(text: str, *, decimal_comma: bool = False, thing: str = "a number") -> Decimal:
    """Read a number of zero or more; its decimals stay as typed.

    Args:
        text: what stands in the cell or after the = sign.
        decimal_comma: a comma stands before the decimals.
        thing: what the place asks for, for the message.

    Raises:
        MeasureError: anything else, with what to write.

    >>> read_number("0,033", decimal_comma=True)
    Decimal('0.033')
    """
    if not decimal_comma and _POINT.fullmatch(text):
        return Decimal(text)
    if decimal_comma and _COMMA.fullmatch(text):
        return Decimal(text.replace(",", "."))
    raise _no_number(text, thing, decimal_comma)


def _no_number(text: str, thing: str, decimal_comma: bool) -> MeasureError:
    """Make the error that says best why a text is no number here."""
    tidy = text.strip().replace("\u2212", "-")
    mark, other = (",", ".") if decimal_comma else (".", ",")
    shown = f"1{mark}25"
    if not tidy:
        return MeasureError(text, "reject", f"is empty where {thing} is needed", f"Write {shown}.")
    if tidy.startswith(("-", "(")) and any(char.isdigit() for char in tidy):
        return MeasureError(text, "reject", "is below zero", f"Write {thing} without a sign.")
    if _GROUPED[decimal_comma].fullmatch(tidy) and len(tidy) <= MOST_CHARS:
        plain = tidy.replace(other, "")
        return MeasureError(text, "ask", "has a thousands mark", f"Write {plain}.")
    if (_POINT if decimal_comma else _COMMA).fullmatch(tidy):
        return MeasureError(
            text, "ask", f'has a "{other}" where "{mark}" stands before the decimals',
            f"Write {tidy.replace(other, mark)}, or change decimal_comma in shop.toml.",
        )  # fmt: skip
    return MeasureError(text, "reject", f"is not {thing}", f"Write digits only, such as {shown}.")
