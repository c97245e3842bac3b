"""Sheets and columns of the form, read off the survey's own records, so that none is forgotten."""

from __future__ import annotations

import types
from collections.abc import Iterator
from datetime import date
from decimal import Decimal
from fractions import Fraction
from functools import cache
from typing import Any, Literal, NamedTuple, Union, get_args, get_origin

from pydantic import BaseModel
from pydantic.fields import FieldInfo
from pydantic_core import PydanticUndefined

from estimator.survey.records import Survey
from estimator.survey.shape import fields_of, first_record

Kind = Literal["text", "number", "measure", "choice", "yes or no", "date", "list", "pairs"]
Shape = Literal["one", "many"]

SETTINGS = ("settings",)
OWNER_KEY = "id"
_NAMES = {
    ("boxes", "contents"): "Box contents",
    ("boxes", "contents", "sides"): "Box sides",
    ("boxes", "contents", "fixture_wires"): "Fixture wires",
    ("boxes", "spot"): "Box places",
    ("runs", "legs"): "Legs",
    ("compare", "tools"): "Tools",
    ("compare", "hire"): "Hire",
}
_PLAIN: dict[object, Kind] = {tuple: "list", dict: "pairs", date: "date"}
_OWNERS = {"boxes": "box", "runs": "run"}
_MEASURES = {"in": "length", "in2": "area", "in3": "volume"}
_UNITS = {
    **_MEASURES, "count": "number", "a": "A", "lb": "lb", "f": "deg F", "pct": "%",
    "days": "days", "hours": "hours",
}  # fmt: skip


class Column(NamedTuple):
    """One fact of a table.

    Attributes:
        key: as the job file calls it. heading: the same as people read it.
        kind: what is written there; of a list, `item` is what it is a list of.
        choices: the words that fit, where there are only a few.
        unit: what its numbers count, in a word; empty where it has none.
        about: what it is, in words. blank: what is taken where nothing is written.
        none_counts: an empty list says something else than no list ("none" is written).
    """

    key: str
    heading: str
    kind: Kind
    item: Kind = "text"
    choices: tuple[str, ...] = ()
    unit: str = ""
    about: str = ""
    blank: str = ""
    needed: bool = False
    none_counts: bool = False


class Table(NamedTuple):
    """One sheet: a table of the job file.

    Attributes:
        path: its keys from the top of the job file.
        lists: for each of these keys, whether a list stands there.
        owner: heading of the column that says to which row of another sheet a row belongs;
            empty where it belongs to none.
    """

    sheet: str
    path: tuple[str, ...]
    lists: tuple[bool, ...]
    columns: tuple[Column, ...]
    owner: str = ""

    @property
    def is_list(self) -> bool:
        """True where the sheet has a row for each record."""
        return any(self.lists)


@cache
def tables() -> tuple[Table, ...]:
    """Every table of a job file but [settings], in the order of the records."""
    found: list[Table] = []
    for key, field in fields_of(Survey).items():
        record = first_record(field.annotation)
        if record is not None:
            found += _tables(record, (key,), (_is_tuple(field.annotation),))
    return tuple(found)


def table_at(path: tuple[str | int, ...]) -> Table | None:
    """The table that holds a place; None above all tables."""
    keys = tuple(part for part in path if isinstance(part, str))
    fits = [table for table in tables() if keys[: len(table.path)] == table.path]
    return max(fits, key=lambda table: len(table.path), default=None)


def _tables(
    record: type[BaseModel], path: tuple[str, ...], lists: tuple[bool, ...]
) -> Iterator[Table]:
    """The table of one record and those inside it."""
    plain = {key: field for key, field in fields_of(record).items() if not _inside(field)}
    columns = tuple(_column(record, key, field) for key, field in plain.items())
    owner = _OWNERS.get(path[0], "") if path[1:] else ""
    yield Table(_sheet(path), path, lists, columns, owner)
    for key, field in fields_of(record).items():
        inner = _inside(field)
        if inner is not None:
            yield from _tables(inner, (*path, key), (*lists, _is_tuple(field.annotation)))


def _sheet(path: tuple[str, ...]) -> str:
    return _NAMES.get(path) or " ".join(path).replace("_", " ").capitalize()


def _inside(field: FieldInfo) -> type[BaseModel] | None:
    return first_record(field.annotation)


def _is_tuple(kind: object) -> bool:
    return get_origin(kind) is tuple


def _column(record: type[BaseModel], key: str, field: FieldInfo) -> Column:
    """One column, from the field's type, name, description and default."""
    name = next(name for name, each in record.model_fields.items() if each is field)
    suffix = name.rpartition("_")[2] if "_" in name else ""
    inner = _without_none(field.annotation)
    kind, choices = _kind(inner, suffix)
    item: Kind = "text"
    if kind == "list":
        item, choices = _kind(_without_none(get_args(inner)[0]), suffix)
    return Column(
        key=key,
        heading=key.replace("_", " "),
        kind=kind,
        item=item,
        choices=choices,
        unit=_UNITS.get(suffix, "") if kind not in ("choice", "text", "pairs") else "",
        about=field.description or "",
        blank=_shown_default(field),
        needed=field.is_required(),
        none_counts=kind == "list" and field.default is None,
    )


def _without_none(kind: object) -> Any:  # noqa: ANN401 - a type as typing gives it
    """The type without the part that stands for "not known"."""
    if get_origin(kind) in (Union, types.UnionType):
        left = [each for each in get_args(kind) if each is not type(None)]
        return _without_none(left[0])
    return _bare(kind)


def _bare(kind: object) -> Any:  # noqa: ANN401 - a type as typing gives it
    """The type without its notes."""
    return _without_none(get_args(kind)[0]) if hasattr(kind, "__metadata__") else kind


def _kind(kind: object, suffix: str) -> tuple[Kind, tuple[str, ...]]:
    """What is written for a type."""
    if get_origin(kind) is Literal:
        return "choice", tuple(map(str, get_args(kind)))
    if kind is bool:
        return "yes or no", ("yes", "no")
    if kind in (int, Decimal, Fraction):
        return ("measure" if suffix in _MEASURES else "number"), ()
    return _PLAIN.get(get_origin(kind) or kind, "text"), ()


def _shown_default(field: FieldInfo) -> str:
    """What is taken where a cell stays empty, in a word or two."""
    if field.is_required():
        return "needed"
    default = field.default
    if default is None or default is PydanticUndefined or default == ():
        return ""
    if isinstance(default, bool):
        return "yes" if default else "no"
    return str(default)
