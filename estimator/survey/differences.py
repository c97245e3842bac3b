"""What two job files state differently, as typed, fact by fact."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from typing import Any

from estimator.saying import listed, said
from estimator.survey.field_words import choice_said, key_said

NOT_STATED = said("not stated")
_LISTED = said("listed")
# What tells the rows of a list apart, the first that every row has.
_NAMES = ("id", "finding", "rule", "number", "name", "item", "wall")
# Facts about the file and the bid, not about the house.
_OTHER = ("format", "versions", "settings", "books")


@dataclass(frozen=True, slots=True)
class ChangedFact:
    """One fact that two job files state differently.

    Attributes:
        about: where it stands, in words ("boxes new: height").
        before, after: as typed in each file; "not stated" where a file has none. Words of the
            tool in all three can be told in other languages.
    """

    about: str
    before: str
    after: str


def changed_facts(old: Mapping[str, Any], new: Mapping[str, Any]) -> tuple[ChangedFact, ...]:
    """Facts that differ between two job files, in the order of the new file.

    Args:
        old: the first file, as TOML gives it.
        new: the later file. Rows of a list are matched by their id or name, so that a row moved
            up or down is no change.
    """
    before, after = dict(_flat(_house(old), "")), dict(_flat(_house(new), ""))
    return tuple(
        ChangedFact(about, before.get(about, NOT_STATED), after.get(about, NOT_STATED))
        for about in dict.fromkeys((*after, *before))
        if before.get(about) != after.get(about)
    )


def _house(raw: Mapping[str, Any]) -> dict[str, Any]:
    return {key: value for key, value in raw.items() if key not in _OTHER}


def _flat(value: object, about: str) -> Iterator[tuple[str, str]]:
    """Every single fact below a value, with its place in words."""
    if isinstance(value, Mapping):
        for key, inner in value.items():
            yield from _flat(inner, _joined(about, str(key)))
    elif isinstance(value, Sequence) and not isinstance(value, str) and _has_tables(value):
        for name, row in _named(value):
            yield from _flat(row, listed((about, name), " "))
    else:
        yield about, _shown(value)


def _joined(about: str, key: str) -> str:
    word = key_said(key)
    return listed((about, word), ": ") if about else word


def _has_tables(rows: Sequence[object]) -> bool:
    return any(isinstance(row, Mapping) for row in rows)


def _named(rows: Sequence[Any]) -> Iterator[tuple[str, object]]:
    """Rows by what they are called; by their number where that does not tell them apart."""
    for key in _NAMES:
        names = [row.get(key) for row in rows if isinstance(row, Mapping)]
        if len(set(map(str, names))) == len(rows) and None not in names:
            for name, row in zip(names, rows, strict=True):
                yield str(name), {at: each for at, each in row.items() if at != key} or _LISTED
            return
    yield from ((str(number), row) for number, row in enumerate(rows, start=1))


def _shown(value: object) -> str:
    if isinstance(value, bool):
        return choice_said("yes" if value else "no")
    if isinstance(value, Sequence) and not isinstance(value, str):
        return listed(map(_shown, value)) or said("none")
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, str):
        return choice_said(value)
    return f"{value:f}" if isinstance(value, Decimal) else str(value)
