"""Reads typed measures: what a person wrote becomes exact numbers, each with its unit."""

from __future__ import annotations

import re
from collections.abc import Mapping
from decimal import Decimal
from fractions import Fraction
from typing import Literal, NamedTuple

from estimator.problems import Problem

MAX_CHARS = 200
MAX_DECIMALS = 100
SHOWN_CHARS = 40

Shape = Literal["whole", "decimal", "fraction", "mixed", "dashed"]

_MARKS = str.maketrans(
    dict.fromkeys("\u2019\u2018\u201b\u2032\u02b9\u02bc\u00b4\u0060\uff07", "'")
    | dict.fromkeys("\u201d\u201c\u201f\u2033\u02ba\u02ee\u3003\uff02", '"')
    | dict.fromkeys("\u2010\u2011\u2012\u2013\u2014\u2015\u2212", "-")
    | {"\u2044": "/", "\u2215": "/", "\u00d7": "x", "\u00b2": "^2", "\u00b3": "^3"}
)
_VULGAR = {
    "½": "1/2", "⅓": "1/3", "⅔": "2/3", "¼": "1/4", "¾": "3/4", "⅕": "1/5", "⅖": "2/5",
    "⅗": "3/5", "⅘": "4/5", "⅙": "1/6", "⅚": "5/6", "⅐": "1/7", "⅛": "1/8", "⅜": "3/8",
    "⅝": "5/8", "⅞": "7/8", "⅑": "1/9", "⅒": "1/10",
}  # fmt: skip
_VULGAR_MARKS = str.maketrans(_VULGAR)
_ANY_VULGAR = "".join(_VULGAR)
_VULGAR_SEAM = re.compile(
    f"(?<=[0-9{_ANY_VULGAR}])(?=[{_ANY_VULGAR}])|(?<=[{_ANY_VULGAR}])(?=[0-9])"
)

# Groups: whole, gap, top, bottom of a fraction; or one plain number.
_NUMBER = r"(?:(?:([0-9]+)([- ]))?([0-9]+)/([0-9]+)|([0-9]+(?:[.,][0-9]+)*|[.,][0-9]+))"
_LONE_NUMBER = re.compile(_NUMBER)
_PART = re.compile(_NUMBER + r""" ?(['"]|[a-z]+(?:\.(?![0-9]))?)?""")
_BETWEEN = re.compile(r" ?(?:(?:-|,|and\b) ?)?(?=[0-9.,])")
_THOUSANDS = re.compile(r"[1-9][0-9]{0,2}[.,][0-9]{3}")
_BOARD = re.compile(r"[0-9./ -]+(?:x|by|\*) ?[0-9]")


class MeasureError(ValueError):
    """A typed measure or price that was not taken.

    Attributes:
        text: what was typed, kept as it was.
        kind: "ask" where it has more than one likely reading, "reject" where it has none.
        reason: what is wrong, as the rest of a sentence that begins with the text.
        hint: what to write instead, as a sentence.
    """

    def __init__(self, text: str, kind: Literal["ask", "reject"], reason: str, hint: str) -> None:
        self.text = text
        self.kind: Literal["ask", "reject"] = kind
        self.reason = reason
        self.hint = hint
        super().__init__(f"{self.read}. {hint}")

    @property
    def read(self) -> str:
        """What was read and what is wrong with it, shortened so that it prints on a line."""
        shown = "".join(char if char.isprintable() else "?" for char in self.text[:SHOWN_CHARS])
        more = "..." if len(self.text) > SHOWN_CHARS else ""
        return f'"{shown}{more}" {self.reason}'

    def problem(self, where: str) -> Problem:
        """Give the same as a `Problem` at a place in a file."""
        return Problem(where=where, read=f"{self.read}.", write=self.hint)


class Typed(NamedTuple):
    """What was typed into one field, and how to read it.

    Attributes:
        raw: as typed.
        text: tidied: lower case, single spaces, plain quotes and dashes.
        decimal_comma: a comma stands before the decimals.
        thing: what the field asks for, in words ("a length").
        example: a sentence that shows what to write.
    """

    raw: str
    text: str
    decimal_comma: bool
    thing: str
    example: str

    def ask(self, reason: str, hint: str) -> MeasureError:
        """Make the error for text with more than one likely reading."""
        return MeasureError(self.raw, "ask", reason, hint)

    def reject(self, reason: str, hint: str = "") -> MeasureError:
        """Make the error for text with no sound reading."""
        return MeasureError(self.raw, "reject", reason, hint or self.example)


class Part(NamedTuple):
    """One number with its unit: `top / bottom` of `unit`; the unit is None where none was typed."""

    top: int
    bottom: int
    unit: str | None
    shape: Shape
    token: str


def take_in(raw: str, thing: str, example: str, *, decimal_comma: bool) -> Typed:
    """Tidy what was typed; refuse it where it is empty or too long to be a measure."""
    typed = Typed(raw, _tidy(raw[: MAX_CHARS + 1]), decimal_comma, thing, example)
    if len(raw) > MAX_CHARS:
        raise typed.reject(f"is too long to be {thing}")
    if not typed.text:
        raise typed.reject("is empty")
    return typed


def _tidy(raw: str) -> str:
    """Lower case, single spaces, plain quotes and dashes; two apostrophes are an inch mark."""
    text = raw
    if not raw.isascii():
        text = _VULGAR_SEAM.sub(" ", raw).translate(_VULGAR_MARKS).translate(_MARKS)
    return " ".join(text.lower().split()).replace("''", '"')


def read_parts(typed: Typed, words: Mapping[str, str]) -> list[Part]:
    """Split a text into numbers with units, in the order typed.

    Args:
        typed: the tidied text.
        words: unit for each way to write it, in lower case, without a full stop.

    Raises:
        MeasureError: anything that is not a row of numbers with known units.
    """
    text, end, parts = typed.text, 0, []
    while end < len(text):
        found = _PART.match(text, end)
        if found is None:
            raise not_a_measure(typed)
        parts.append(_part(typed, found, words))
        end = found.end()
        if between := _BETWEEN.match(text, end):
            end = between.end()
    return parts


def _part(typed: Typed, found: re.Match[str], words: Mapping[str, str]) -> Part:
    """Read one match of `_PART`."""
    top, bottom, shape = _number(typed, found)
    word = found[6]
    if word is None:
        return Part(top, bottom, None, shape, found[0])
    unit = words.get(word.rstrip("."))
    if unit is None:
        raise not_a_measure(typed, f'"{word}" is not a unit of {typed.thing.split()[-1]} here')
    return Part(top, bottom, unit, shape, found[0])


def read_one(typed: Typed, words: Mapping[str, str]) -> Part:
    """Read one number and one unit that may be several words ("cu in"), as areas have.

    `words` holds the units without spaces, full stops and "^".

    Raises:
        MeasureError: anything else.
    """
    found = _LONE_NUMBER.match(typed.text)
    if found is None:
        raise not_a_measure(typed)
    top, bottom, shape = _number(typed, found)
    rest = typed.text[found.end() :]
    key = rest.replace(" ", "").replace(".", "").replace("^", "")
    if key not in words and rest:
        raise not_a_measure(typed)
    return Part(top, bottom, words.get(key), shape, found[0])


def _number(typed: Typed, found: re.Match[str]) -> tuple[int, int, Shape]:
    """Top and bottom of the number that `_NUMBER` matched, and how it was written."""
    whole, gap, top, bottom, plain = found.group(1, 2, 3, 4, 5)
    if plain is not None:
        if plain.isdigit():
            return int(plain), 1, "whole"
        return *_decimal(typed, plain), "decimal"
    over, under = int(top), int(bottom)
    if under == 0:
        raise typed.reject("divides by zero", "Write a fraction such as 1/2.")
    if whole is None:
        return over, under, "fraction"
    if over >= under:
        raise typed.ask(
            "has a fraction of one or more after a whole number",
            "Write the fraction smaller than one, such as 6 1/2.",
        )
    return int(whole) * under + over, under, "dashed" if gap == "-" else "mixed"


def _decimal(typed: Typed, token: str) -> tuple[int, int]:
    """Top and bottom of a number with a decimal point or comma."""
    if token.count(".") + token.count(",") > 1:
        raise typed.reject("has thousands marks", "Write the number without them, such as 1200.5.")
    _check_decimal_mark(typed, token)
    whole, _, decimals = token.replace(",", ".").partition(".")
    return int(whole + decimals), 10 ** len(decimals)


def _check_decimal_mark(typed: Typed, token: str) -> None:
    """Stop where a comma or point may be a thousands mark as well as a decimal mark."""
    comma = "," in token
    if not comma and not typed.decimal_comma:
        return
    joined, pointed = token.replace(",", "").replace(".", ""), token.replace(",", ".")
    if _THOUSANDS.fullmatch(token):
        if not typed.decimal_comma:
            raise typed.reject(
                "has a thousands comma", f"Write {joined}, or {pointed} if you mean decimals."
            )
        raise typed.ask(
            f"may be {joined} or a number with three decimals",
            f"Write {joined}, or {token}0 if you mean decimals.",
        )
    if comma and not typed.decimal_comma:
        raise typed.ask(
            "has a comma where a decimal point is expected",
            f"Write {pointed}, or set the decimal comma for this job.",
        )


def not_a_measure(typed: Typed, otherwise: str = "") -> MeasureError:
    """Make the error that says best why a text is no measure."""
    text = typed.text
    if text.startswith("-"):
        return typed.reject(f"is negative, so it is not {typed.thing}")
    if _BOARD.match(text):
        return typed.reject(f"is the size of a board, not {typed.thing}")
    if text.endswith("-"):
        return typed.reject("stops after a dash")
    if any(char.isdigit() and not char.isascii() for char in text):
        return typed.reject("has digits other than 0 to 9")
    if not any(char.isdigit() for char in text):
        return typed.reject(f"is not {typed.thing}: it has no digits")
    return typed.reject(f"is not {typed.thing}" + (f": {otherwise}" if otherwise else ""))


def exact(number: int | Decimal | Fraction, thing: str, example: str) -> Fraction:
    """Turn a number that came without a unit into a fraction.

    Raises:
        TypeError: a bool, a float or anything else that is not an exact number.
        MeasureError: not finite, negative, or with more than 100 decimals or digits.
    """
    if isinstance(number, bool) or not isinstance(number, int | Decimal | Fraction):
        raise TypeError(f"{thing} is text or an exact number, not {type(number).__name__}")
    if isinstance(number, Decimal) and not _is_plain(number):
        raise MeasureError(as_text(number), "reject", f"is not {thing}", example)
    if number < 0:
        raise MeasureError(as_text(number), "reject", f"is negative, so it is not {thing}", example)
    return Fraction(number)


def _is_plain(number: Decimal) -> bool:
    """Tell whether a Decimal is finite and of a size that turns into a fraction quickly."""
    if not number.is_finite():
        return False
    exponent = number.as_tuple().exponent
    return isinstance(exponent, int) and -MAX_DECIMALS <= exponent <= MAX_DECIMALS


def as_text(typed: str | int | Decimal | Fraction) -> str:
    """Give what was typed as text for a message; Python refuses to print very long numbers."""
    try:
        return str(typed)
    except ValueError:
        return "a number of thousands of digits"
