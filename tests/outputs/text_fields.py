"""Puts a text into every field of a bid that holds free text."""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Mapping
from itertools import cycle
from typing import Any, Literal, get_args, get_origin, get_type_hints

from pydantic import BaseModel

from estimator.pricing.records import Bid

New = Callable[[str], str]
# Words that steer the workbook, and names it looks up; a person cannot type these freely.
KEPT = frozenset(("country", "locale", "currency", "units", "edition", "price_form", "mode",
                  "tax_mode", "basis", "unit", "bare_unit", "forbidden"))  # fmt: skip


def with_text(bid: Bid, *texts: str) -> Bid:
    """The same bid with other text in every free text field, keys of lines and items included.

    Of several texts each old text gets the next one, over and over; what was the same text
    stays the same, so that a run still names the boxes it joins.
    """
    following, given = cycle(texts), dict[str, str]()

    def new(old: str) -> str:
        if old not in given:
            given[old] = next(following)
        return given[old]

    filled = _filled(bid, new)
    assert isinstance(filled, Bid)
    return filled


def _filled(value: Any, new: New) -> Any:
    if isinstance(value, str):
        return new(value)
    if isinstance(value, BaseModel):
        hints = {name: field.annotation for name, field in type(value).model_fields.items()}
        return value.model_copy(update=_fields(value, hints, new))
    if dataclasses.is_dataclass(value) and not isinstance(value, type):
        return dataclasses.replace(value, **_fields(value, get_type_hints(type(value)), new))
    if isinstance(value, tuple):
        return tuple(_filled(item, new) for item in value)
    if isinstance(value, Mapping):
        return {key: _filled(item, new) for key, item in value.items()}
    return value


def _fields(record: Any, hints: Mapping[str, Any], new: New) -> dict[str, Any]:
    return {
        name: _filled(getattr(record, name), new)
        for name, hint in hints.items()
        if name not in KEPT and not _is_choice(hint)
    }


def _is_choice(hint: Any) -> bool:
    """Whether a field takes only a few words of the program's own."""
    return get_origin(hint) is Literal or any(_is_choice(part) for part in get_args(hint))
