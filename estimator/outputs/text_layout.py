"""Plain text that fits a terminal of 80 columns: wrapped paragraphs and simple tables."""

from __future__ import annotations

import re
import textwrap
from collections.abc import Sequence
from decimal import Decimal
from unicodedata import category

from estimator.measures import to_decimal

COLUMNS = 80
QUANTITY_PLACES = 3
GAP = "  "

# No-break spaces stay: they hold an amount and its currency together.
_SPACES = re.compile(r"[ \t\r\n\v\f]+")
_FORMAT = "Cf"
_UNPRINTABLE = ("Cc", "Cs")


def printable(text: str) -> str:
    """Make text from a file harmless on a terminal: one line, and no control characters."""
    shown = "".join(char for char in _SPACES.sub(" ", text) if category(char) != _FORMAT)
    return "".join("?" if category(char) in _UNPRINTABLE else char for char in shown.strip())


def wrapped(text: str, first: str = "", rest: str | None = None) -> list[str]:
    """Wrap a paragraph; `first` stands before its first line, `rest` before the others."""
    return textwrap.wrap(
        printable(text),
        COLUMNS - 1,
        initial_indent=first,
        subsequent_indent=" " * len(first) if rest is None else rest,
        break_on_hyphens=False,
    )


def heading(text: str) -> list[str]:
    """Set a heading off by an empty line before it and a rule below it."""
    return ["", text, "-" * len(text)]


def pairs(rows: Sequence[tuple[str, str]]) -> list[str]:
    """Set names on the left and what they are on the right, wrapped under itself."""
    width = max((len(name) for name, _ in rows), default=0)
    return [
        line
        for name, text in rows
        for line in wrapped(text, first=f"{name:<{width}}{GAP}") or [name]
    ]


def number(amount: Decimal, places: int = QUANTITY_PLACES) -> str:
    """Show a quantity rounded half up, without needless zeros and never with an exponent.

    >>> number(Decimal("5.0")), number(Decimal("1E+1")), number(Decimal("0.891429"))
    ('5', '10', '0.891')
    """
    text = f"{to_decimal(amount, places):f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def counted(count: int, thing: str) -> str:
    """Say how many of a thing, with its plural in s.

    >>> counted(1, "visit"), counted(2, "visit")
    ('1 visit', '2 visits')
    """
    return f"{count} {thing}" if count == 1 else f"{count} {thing}s"
