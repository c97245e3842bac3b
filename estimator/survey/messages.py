"""Turns what a record refused into words: what was read, and what to write instead."""

from __future__ import annotations

import difflib
from collections.abc import Mapping
from typing import Any, get_args

from pydantic import BaseModel
from pydantic_core import ErrorDetails

from estimator.survey.records import Survey
from estimator.toml_lines import TomlPath

_SHOWN_CHARS = 40
_TYPE_WORDS = {
    "string": 'Write text in quotes, such as "north".',
    "int": "Write a whole number, such as 2.",
    "decimal": "Write a number with a point, such as 1.75.",
    "bool": "Write true or false.",
    "tuple": 'Write a list in brackets, such as ["a", "b"].',
    "dict": "Write a table: names and values.",
    "model": "Write a table with named values here.",
    "date": "Write a date as 2026-03-09.",
}


def problem_words(error: ErrorDetails) -> tuple[TomlPath, str, str]:
    """Place, what was read and what to write, for one refusal of the survey records."""
    place = tuple(part for part in error["loc"] if not _is_inner(part))
    kind = error["type"]
    if kind == "extra_forbidden":
        return place, f'the key "{place[-1]}" is not known here', _nearest(place)
    if kind == "missing":
        return place, f'the key "{place[-1]}" is missing', "Add it; every field is in the README."
    shown = _shown(error["input"])
    if kind == "measure":
        words = error["ctx"]
        return place, f"{shown}: {words['reason']}", str(words["hint"])
    if kind in ("literal_error", "enum"):
        return place, f"{shown} is not one of the words for this", _choices(error)
    if kind in ("too_short", "string_too_short"):
        return place, f'"{place[-1]}" is empty', "Give at least one."
    return place, f"{shown} does not fit here", _advice(kind, error.get("ctx", {}))


def _is_inner(part: str | int) -> bool:
    """Places that the record library adds for its own wrappers, not keys of the file."""
    return isinstance(part, str) and ("[" in part or part.startswith("function-"))


def _shown(value: object) -> str:
    if isinstance(value, dict | list):
        return "a table" if isinstance(value, dict) else "a list"
    text = str(value)
    if len(text) > _SHOWN_CHARS:
        text = text[:_SHOWN_CHARS] + "..."
    return f'"{text}"' if isinstance(value, str) else text.lower()


def _choices(error: ErrorDetails) -> str:
    expected = str(error.get("ctx", {}).get("expected", "")).replace("'", '"')
    return f"Write {expected}."


def _advice(kind: str, ctx: Mapping[str, Any]) -> str:
    if kind.startswith(("greater", "less")):
        limit = next(iter(ctx.values()))
        word = {
            "greater_than": "above",
            "greater_than_equal": "at least",
            "less_than": "below",
            "less_than_equal": "at most",
        }[kind]
        return f"Write a value {word} {limit}."
    if kind.startswith("string_too_long"):
        return f"Write at most {ctx['max_length']} characters."
    for start, words in _TYPE_WORDS.items():
        if kind.startswith(start):
            return words
    return "See the table of fields in the README."


def _nearest(place: TomlPath) -> str:
    known = keys_at(place[:-1])
    near = difflib.get_close_matches(str(place[-1]), known, n=1)
    listed = ", ".join(sorted(known))
    return f'Did you mean "{near[0]}"? Known: {listed}.' if near else f"Known: {listed}."


def keys_at(place: TomlPath) -> list[str]:
    """The keys that a table of the job file may have, at a place such as ("walls", 0)."""
    model: type[BaseModel] = Survey
    for name in place:
        if isinstance(name, str):
            inner = _model_of(model, name)
            if inner is None:
                return []
            model = inner
    return [field.alias or name for name, field in model.model_fields.items()]


def _model_of(model: type[BaseModel], key: str) -> type[BaseModel] | None:
    for name, field in model.model_fields.items():
        if key == (field.alias or name):
            return _first_model(field.annotation)
    return None


def _first_model(annotation: object) -> type[BaseModel] | None:
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    for inner in get_args(annotation):
        found = _first_model(inner)
        if found is not None:
            return found
    return None
