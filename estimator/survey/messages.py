"""Turns what a record refused into words: what was read, and what to write instead."""

from __future__ import annotations

import difflib
from collections.abc import Mapping
from typing import Any

from pydantic import BaseModel
from pydantic_core import ErrorDetails

from estimator.reading import as_text
from estimator.survey.records import Survey
from estimator.survey.shape import keys_at
from estimator.toml_lines import TomlPath
from estimator.typed_dates import date_advice

_SHOWN_CHARS = 40
_TYPE_WORDS = {
    "string": 'Write text in quotes, such as "north".',
    "number": "Write a number, such as 2.",
    "int": "Write a whole number, such as 2.",
    "decimal": "Write a number with a point, such as 1.75.",
    "bool": "Write true or false.",
    "tuple": 'Write a list in brackets, such as ["a", "b"].',
    "dict": "Write a table: names and values.",
    "model": "Write a table with named values here.",
    "date": "Write a date as 2026-03-09.",
}
_FILLED_WORDS = {
    "greater_than": "Write a value above {gt}.",
    "greater_than_equal": "Write a value of at least {ge}.",
    "less_than_equal": "Write a value of at most {le}.",
    "string_too_long": "Write at most {max_length} characters.",
    "string_too_short": "Write at least {min_length} characters.",
    "too_long": "Write at most {max_length}.",
    "tables": "Write a [[{name}]] table for each.",
}


def problem_words(error: ErrorDetails, root: type[BaseModel] = Survey) -> tuple[TomlPath, str, str]:
    """Place, what was read and what to write, for one refusal of a file's records.

    Args:
        error: as pydantic gives it.
        root: the record that the whole file becomes.
    """
    place, kind, shown = error["loc"], error["type"], shown_value(error["input"])
    if kind == "extra_forbidden":
        return (
            place,
            f"the key {shown_value(str(place[-1]))} is not known here",
            _nearest(place, root),
        )
    if kind == "missing":
        return place, *_missing(place)
    if kind in ("measure", "record"):
        words = error["ctx"]
        reason = words["reason"] if kind == "record" else f"{shown}: {words['reason']}"
        return place, reason, str(words["hint"])
    if kind in ("literal_error", "enum"):
        return place, f"{shown} is not one of the words for this", _choices(error)
    if not error["input"] and kind in ("too_short", "string_too_short"):
        return place, f'"{place[-1]}" is empty', "Give at least one."
    if kind == "tuple_type" and len(place) == 1:
        kind = "tables"
    words = {"name": place[-1], **error.get("ctx", {})}
    typed = date_advice(str(error["input"])) if kind.startswith("date") else ""
    return place, f"{shown} does not fit here", typed or _advice(kind, words)


def _missing(place: TomlPath) -> tuple[str, str]:
    """A key that is not there, or a list that is too short."""
    if isinstance(place[-1], int):
        return f"this list needs at least {place[-1] + 1}", "Add what is missing."
    return f'the key "{place[-1]}" is missing', "Add it; every field is in the README."


def shown_value(value: object) -> str:
    """A value as it was written, shortened so that it prints on a line."""
    if isinstance(value, dict | list):
        return "a table" if isinstance(value, dict) else "a list"
    text = as_text(value) if isinstance(value, int) else str(value)
    more = "..." if len(text) > _SHOWN_CHARS else ""
    text = printable(text[:_SHOWN_CHARS]) + more
    return f'"{text}"' if isinstance(value, str) else text.lower()


def printable(text: str) -> str:
    """Text that prints on one line; what does not print is a question mark."""
    return text if text.isprintable() else "".join(c if c.isprintable() else "?" for c in text)


def _choices(error: ErrorDetails) -> str:
    expected = str(error.get("ctx", {}).get("expected", "")).replace("'", '"')
    return f"Write {expected}."


def _advice(kind: str, ctx: Mapping[str, Any]) -> str:
    if kind in _FILLED_WORDS:
        return _FILLED_WORDS[kind].format(**ctx)
    for start, words in _TYPE_WORDS.items():
        if kind.startswith(start):
            return words
    return "See the table of fields in the README."


def _nearest(place: TomlPath, root: type[BaseModel]) -> str:
    known = keys_at(place[:-1], root)
    near = difflib.get_close_matches(str(place[-1]), known, n=1)
    listed = ", ".join(sorted(known))
    return f'Did you mean "{near[0]}"? Known: {listed}.' if near else f"Known: {listed}."
