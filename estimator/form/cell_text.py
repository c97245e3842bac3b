"""What a job file says as the text of a cell: numbers, words, lists and names with values."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import date, datetime
from decimal import Decimal

from estimator.form.layout import Column, Kind
from estimator.toml_files import MOST_DIGITS
from estimator.toml_writing import toml_string, toml_value

NONE = "none"
"""Says that a list is empty, where an empty cell would say that nobody looked."""

_ASIDE = re.compile(r"[\x00-\x1f\x7f\x85\u2028\u2029\ufffe\uffff]|_(?=x[0-9A-Fa-f]{4}_)")
_QUOTED = re.compile(r'"(?:\\.|[^"\\\n])*"')
_NUMBER = re.compile(r"[+-]?\d+(?:\.\d+)?", re.ASCII)
_COMMA_NUMBER = re.compile(r"([+-]?\d+),(\d+)", re.ASCII)
_LIKE_THOUSANDS = re.compile(r"[+-]?[1-9]\d{0,2}[.,]\d{3}", re.ASCII)
_NUMERIC: tuple[Kind, ...] = ("number", "measure")
_LONGEST_DIGITS = 2 * MOST_DIGITS


def cell_text(column: Column, value: object, *, comma: bool) -> str:
    """Write the value of a fact as a cell shows it; reading it back gives an equal value.

    `value` is as TOML gives it; `comma` says that decimals have a comma in this job.
    """
    if column.kind == "pairs" and isinstance(value, Mapping):
        pairs = (
            f"{_word(key, ',;=')} = {_element(inner, comma=comma)}" for key, inner in value.items()
        )
        return _joined(pairs, comma=comma)
    if column.kind == "list" and isinstance(value, Sequence) and not isinstance(value, str):
        if not value and column.none_counts:
            return NONE
        return _joined((_element(each, comma=comma) for each in value), comma=comma)
    return _single(value, comma=comma)


def free_text(value: object) -> str:
    """Write a value of any kind so that `free_value` knows its kind again."""
    if not isinstance(value, str):
        return toml_value(value)
    return quoted(value) if isinstance(free_value(value), str) else toml_string(value)


def free_value(text: str) -> object:
    """Read a value of any kind: a number, true, a date, a list; else it is text."""
    try:
        found = tomllib.loads(f"value = {text}", parse_float=Decimal)
    except (ValueError, RecursionError, ArithmeticError):
        return unquoted(text)
    value: object = found["value"]
    usable = (len(found) == 1 and len(text) <= _LONGEST_DIGITS) or not isinstance(value, Decimal)
    return value if usable else text


def quoted(text: str) -> str:
    """Text as it stands, or in quotes where a cell would lose some of it."""
    odd = not text or text != text.strip() or text.startswith('"') or _ASIDE.search(text)
    return _in_quotes(text) if odd else text


def unquoted(text: str) -> str:
    """Take off the quotes that `quoted` puts on; other text is left as it is."""
    if not _QUOTED.fullmatch(text):
        return text
    try:
        return str(tomllib.loads(f"value = {text}")["value"])
    except ValueError:
        return text


def _in_quotes(text: str) -> str:
    """A TOML text; what a cell cannot hold is written by its number."""
    return '"' + _ASIDE.sub(lambda found: f"\\u{ord(found[0]):04X}", _slashes(text)) + '"'


def _slashes(text: str) -> str:
    return text.replace("\\", "\\\\").replace('"', '\\"')


def _single(value: object, *, comma: bool) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, int | Decimal):
        return number_text(value, comma=comma)
    if isinstance(value, datetime):
        return value.date().isoformat()
    return value.isoformat() if isinstance(value, date) else quoted(str(value))


def number_text(value: int | Decimal, *, comma: bool) -> str:
    """Write a number in full, so that no mark in it can be taken for a thousands mark."""
    shown = format(value, "f") if isinstance(value, Decimal) else str(value)
    if not comma:
        return shown
    return shown.replace(".", ",") + ("0" if _LIKE_THOUSANDS.fullmatch(shown) else "")


def _element(value: object, *, comma: bool) -> str:
    """One of several in a cell."""
    return _word(value, ",;") if isinstance(value, str) else _single(value, comma=comma)


def _word(text: str, marks: str) -> str:
    """Text in quotes where it holds a mark that parts it from the next."""
    plain = not any(mark in text for mark in marks)
    return quoted(text) if plain else _in_quotes(text)


def _joined(parts: Iterable[str], *, comma: bool) -> str:
    return ("; " if comma else ", ").join(parts)


def value_of(column: Column, text: str, *, comma: bool) -> object:
    """Read a cell as the job file would state it; what does not fit is left for the records."""
    if column.kind == "pairs":
        return dict(_pairs(text, comma=comma))
    if column.kind == "list":
        if column.none_counts and text.lower() == NONE:
            return []
        parts = _parts(text, comma=comma and column.item in _NUMERIC)
        return [_plain(column, column.item, part, comma=comma) for part in parts]
    return _plain(column, column.kind, text, comma=comma)


def _plain(column: Column, kind: Kind, text: str, *, comma: bool) -> object:
    if kind == "number":
        return _number(text, comma=comma)
    word = unquoted(text)
    if kind == "date":
        return _date(word)
    if kind not in ("choice", "yes or no"):
        return word
    word = {"true": "yes", "false": "no"}.get(word.lower(), word)
    word = next((each for each in column.choices if each.lower() == word.lower()), word)
    return {"yes": True, "no": False}.get(word, word) if kind == "yes or no" else word


def _number(text: str, *, comma: bool) -> object:
    """A number, or the text where it is none."""
    shown = text.strip()
    if comma and (found := _COMMA_NUMBER.fullmatch(shown)):
        shown = f"{found[1]}.{found[2]}"
    if not _NUMBER.fullmatch(shown) or len(shown) > _LONGEST_DIGITS:
        return unquoted(text)
    return Decimal(shown) if "." in shown else int(shown)


def _date(text: str) -> object:
    try:
        return date.fromisoformat(text)
    except ValueError:
        return text


def _pairs(text: str, *, comma: bool) -> Iterator[tuple[str, object]]:
    """Names with values; a name without one has none, which the records refuse."""
    for part in _parts(text, comma=comma):
        found = _QUOTED.match(part)
        end = part.find("=", found.end() if found else 0)
        name, value = (part, "") if end < 0 else (part[:end], part[end + 1 :])
        yield unquoted(name.strip()), _number(value.strip(), comma=comma)


def _parts(text: str, *, comma: bool) -> list[str]:
    """Split a cell at its semicolons, or at its commas where it has none.

    With `comma`, a comma stands before decimals, so that it parts nothing.
    """
    pieces = list(_split(text, ";"))
    if len(pieces) == 1 and not comma:
        pieces = list(_split(text, ","))
    return [piece for piece in pieces if piece]


def _split(text: str, mark: str) -> Iterator[str]:
    """Pieces between marks that stand outside quotes, where quotes begin a piece."""
    start = place = 0
    fresh = True
    while place < len(text):
        found = _QUOTED.match(text, place) if fresh else None
        if found:
            place, fresh = found.end(), False
            continue
        char = text[place]
        if char == mark:
            yield text[start:place].strip()
            start = place + 1
        fresh = char in ",;" or (fresh and char.isspace())
        place += 1
    yield text[start:].strip()
