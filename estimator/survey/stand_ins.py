"""Stand-ins for what was refused, so that the rest of a job file is checked in the same go."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from copy import deepcopy
from fractions import Fraction
from itertools import count
from typing import Any, Literal, get_args, get_origin

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from estimator.measures import MAX_LENGTH_IN
from estimator.survey.closing import Opening
from estimator.survey.shape import fields_of, first_record, record_at
from estimator.toml_lines import TomlPath

MARK = "\0"
"""Begins every name that stands in; nobody types it."""

_LONGEST = Fraction(MAX_LENGTH_IN)
_NEEDED_TOO: dict[type[BaseModel], tuple[str, ...]] = {Opening: ("width", "height")}


def with_stand_ins(raw: Mapping[str, Any], refused: Iterable[TomlPath]) -> dict[str, Any]:
    """A copy of a job file's values where what was refused, or is missing, no longer stops it.

    What may be left out is left out. Names, records and what must be there stand in: names
    begin with `MARK`, lengths are the longest there are, words are the first that fit.
    """
    values = deepcopy(dict(raw))
    names = (f"{MARK}{number}" for number in count())
    for place in refused:
        container, key = _inside(values, place[:-1]), place[-1]
        if isinstance(container, dict):
            field = fields_of(record_at(place[:-1])).get(str(key))
            container.pop(key, None)
            if field is not None and _is_needed(field):
                container[key] = _stand_in(field.annotation, names)
        elif isinstance(container, list) and isinstance(key, int):
            container[key : key + 1] = [_element(place, names)]
    return values


def _element(place: TomlPath, names: Iterator[str]) -> object:
    """A record, a length or a name in the list that holds such."""
    record = record_at(place)
    if record is not None:
        return _record(record, names)
    field = fields_of(record_at(place[:-2])).get(str(place[-2]))
    return next(names) if field is None else _single(field.annotation, names)


def _inside(values: object, place: TomlPath) -> object:
    """What stands at a place; None where there is no such place."""
    inner = values
    for part in place:
        if isinstance(inner, dict):
            inner = inner.get(part)
        elif isinstance(inner, list) and isinstance(part, int) and part < len(inner):
            inner = inner[part]
        else:
            return None
    return inner


def _is_needed(field: FieldInfo) -> bool:
    """True where something else asks for it: names, lengths, records, and what must be there."""
    kind = field.annotation
    if get_origin(kind) is dict:
        return False
    asked = any(_holds(kind, wanted) for wanted in (str, Fraction))
    return field.is_required() or asked or first_record(kind) is not None


def _holds(kind: object, wanted: type) -> bool:
    return kind is wanted or any(_holds(inner, wanted) for inner in get_args(kind))


def _stand_in(kind: object, names: Iterator[str]) -> object:
    """A value of one type: a record or a list with one, a word, a length, a name or a few."""
    record, inner = first_record(kind), get_args(kind)
    if record is not None:
        made = _record(record, names)
        return made if record is kind else [made]
    if get_origin(kind) is Literal:
        return inner[0]
    if _is_list(kind):
        return [_single(kind, names) for _ in inner]
    return _single(kind, names)


def _is_list(kind: object) -> bool:
    return get_origin(kind) is tuple or any(_is_list(inner) for inner in get_args(kind))


def _single(kind: object, names: Iterator[str]) -> object:
    return _LONGEST if _holds(kind, Fraction) else next(names)


def _record(record: type[BaseModel], names: Iterator[str]) -> dict[str, Any]:
    """A record with no more than it must have."""
    needed = _NEEDED_TOO.get(record, ())
    made = {
        key: _stand_in(field.annotation, names)
        for key, field in fields_of(record).items()
        if field.is_required()
    }
    return made | {key: Fraction(1) for key in needed}
