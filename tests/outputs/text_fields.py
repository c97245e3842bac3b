"""Puts a text into every field of a bid that holds free text."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator, Mapping
from itertools import cycle
from typing import Any, Literal, get_args, get_origin, get_type_hints

from pydantic import BaseModel

from estimator.pricing.records import Bid

# Words that steer the workbook, and names it looks up; a person cannot type these freely.
KEPT = frozenset(("country", "locale", "currency", "units", "edition", "price_form", "mode",
                  "tax_mode", "basis", "unit", "bare_unit", "forbidden"))  # fmt: skip


def with_text(bid: Bid, *texts: str) -> Bid:
    """The same bid with other text in every free text field, keys of lines and items included.

    Of several texts each field gets the next one, over and over.
    """
    filled = _filled(bid, cycle(texts))
    assert isinstance(filled, Bid)
    return filled


def _filled(value: Any, text: Iterator[str]) -> Any:
    if isinstance(value, str):
        return next(text)
    if isinstance(value, BaseModel):
        hints = {name: field.annotation for name, field in type(value).model_fields.items()}
        return value.model_copy(update=_fields(value, hints, text))
    if dataclasses.is_dataclass(value) and not isinstance(value, type):
        return dataclasses.replace(value, **_fields(value, get_type_hints(type(value)), text))
    if isinstance(value, tuple):
        return tuple(_filled(item, text) for item in value)
    if isinstance(value, Mapping):
        return {key: _filled(item, text) for key, item in value.items()}
    return value


def _fields(record: Any, hints: Mapping[str, Any], text: Iterator[str]) -> dict[str, Any]:
    return {
        name: _filled(getattr(record, name), text)
        for name, hint in hints.items()
        if name not in KEPT and not _is_choice(hint)
    }


def _is_choice(hint: Any) -> bool:
    """Whether a field takes only a few words of the program's own."""
    return get_origin(hint) is Literal or any(_is_choice(part) for part in get_args(hint))
