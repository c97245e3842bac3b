"""Writes plain values as TOML text that people can read and change."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from datetime import date, time
from decimal import Decimal
from typing import Any

_BARE_KEY = re.compile(r"[A-Za-z0-9_-]+")
_SHORT = {"\b": "\\b", "\t": "\\t", "\n": "\\n", "\f": "\\f", "\r": "\\r", '"': '\\"', "\\": "\\\\"}
_FIRST_PRINTED, _DELETE = 0x20, 0x7F


def toml_text(values: Mapping[str, Any]) -> str:
    """Write a whole file: names and values first, then its tables in their order.

    Numbers are int or Decimal; a binary float is refused, for it may have lost what was typed.

    >>> print(toml_text({"a": 1, "walls": [{"id": "north"}]}), end="")
    a = 1
    <BLANKLINE>
    [[walls]]
    id = "north"
    """
    return "\n".join(_table(values, ())).lstrip("\n") + "\n"


def toml_value(value: object) -> str:
    """Write one value on one line.

    Raises:
        TypeError: not a value that TOML has.
    """
    if isinstance(value, str):
        return toml_string(value)
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, int | Decimal):
        return _number(value)
    if isinstance(value, date | time):
        return value.isoformat()
    if isinstance(value, Mapping):
        pairs = (f"{toml_key(key)} = {toml_value(inner)}" for key, inner in value.items())
        return f"{{ {', '.join(pairs)} }}" if value else "{}"
    if isinstance(value, Sequence):
        return f"[{', '.join(map(toml_value, value))}]"
    raise TypeError(f"TOML has no {type(value).__name__}")


def _number(value: int | Decimal) -> str:
    """Write a number in full; one with a point stays one with a point."""
    shown = format(value, "f") if isinstance(value, Decimal) else str(value)
    return shown if "." in shown or isinstance(value, int) else f"{shown}.0"


def toml_string(text: str) -> str:
    """Write a text in double quotes, on one line."""
    return f'"{"".join(map(_escaped, text))}"'


def toml_key(key: str) -> str:
    """Write a key, in quotes where it needs them."""
    return key if _BARE_KEY.fullmatch(key) else toml_string(key)


def _escaped(char: str) -> str:
    if char in _SHORT:
        return _SHORT[char]
    code = ord(char)
    return f"\\u{code:04X}" if code < _FIRST_PRINTED or code == _DELETE else char


def _table(values: Mapping[str, Any], path: tuple[str, ...]) -> Iterator[str]:
    """Lines of a table: what is written on one line goes before what has a heading."""
    headed = {key: value for key, value in values.items() if _has_heading(value)}
    for key, value in values.items():
        if key not in headed:
            yield f"{toml_key(key)} = {toml_value(value)}"
    for key, value in headed.items():
        inside = (*path, key)
        name = ".".join(map(toml_key, inside))
        if isinstance(value, Mapping):
            yield from ("", f"[{name}]", *_table(value, inside))
            continue
        for row in value:
            yield from ("", f"[[{name}]]", *_table(row, inside))


def _has_heading(value: object) -> bool:
    """True for a table, and for a list of nothing but tables."""
    if isinstance(value, Mapping):
        return True
    if not isinstance(value, Sequence) or isinstance(value, str) or not value:
        return False
    return all(isinstance(row, Mapping) for row in value)
