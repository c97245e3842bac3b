"""Readers for the settings of [risk] and [calendar]: named risks, weekdays, days off."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from decimal import Decimal
from typing import Any

from estimator.catalog.setting_readers import (
    ALL_PCT,
    Manner,
    Reader,
    each_of,
    number,
    percent,
    refuse,
    text,
)
from estimator.settings_risk import NamedRisk

WEEKDAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
DAY_H = 24
_RANGES = ("hours", "parts")
_ENDS = ("low", "likely", "high")
_EXAMPLE = (
    'Write name = "a pipe in the way", chance_pct = 10, hours_low = 0.5, hours_likely = 1, '
    "hours_high = 3, and the same three for parts."
)


def day_hours(value: object, manner: Manner) -> Decimal:
    """Read the length of a working day, above 0 and up to 24 hours."""
    hours = number(value, manner)
    if not 0 < hours <= DAY_H:
        raise refuse(value, "is not the length of a working day", f"Write hours, up to {DAY_H}.")
    return hours


def lost_hours(value: object, manner: Manner) -> Decimal:
    """Read hours that a working day loses; fewer than there are in a day."""
    hours = number(value, manner)
    if hours >= DAY_H:
        raise refuse(value, "leaves nothing of the day", "Write the hours lost, such as 1.5.")
    return hours


def some_percent(most: int) -> Reader:
    """Make a reader of percentages above 0 up to `most`."""
    read_percent = percent(most)

    def read(value: object, manner: Manner) -> Decimal:
        found: Decimal = read_percent(value, manner)
        if found == 0:
            raise refuse(value, "is zero", f"Write a percentage above 0, at most {most}.")
        return found

    return read


def one_of(*allowed: int) -> Reader:
    """Make a reader of one whole number out of several."""

    def read(value: object, _manner: Manner) -> int:
        if isinstance(value, bool) or not isinstance(value, int) or value not in allowed:
            shown = " or ".join(map(str, allowed))
            raise refuse(value, "is not one of the numbers for this setting", f"Write {shown}.")
        return value

    return read


def weekdays(value: object, manner: Manner) -> tuple[int, ...]:
    """Read a list of weekdays in English, Monday as 0; at least one."""
    found = tuple(sorted({*_several(_weekday, value, manner)}))
    if not found:
        raise refuse(value, "names no working day", 'Write a list such as ["monday", "tuesday"].')
    return found


def _weekday(value: object, manner: Manner) -> int:
    name = text(value, manner).lower()
    if name not in WEEKDAYS:
        raise refuse(value, "is not a weekday", f"Write one of {', '.join(WEEKDAYS)}.")
    return WEEKDAYS.index(name)


def dates(value: object, manner: Manner) -> tuple[date, ...]:
    """Read a list of dates such as 2026-12-24; each once, in order."""
    return tuple(sorted({*_several(_date, value, manner)}))


def _date(value: object, _manner: Manner) -> date:
    try:
        return value if isinstance(value, date) else date.fromisoformat(str(value).strip())
    except ValueError:
        raise refuse(value, "is not a date", "Write it as 2026-12-24.") from None


def risks(value: object, manner: Manner) -> tuple[NamedRisk, ...]:
    """Read the list of named risks."""
    if not isinstance(value, Sequence) or isinstance(value, str):
        raise refuse(value, "is not a list of tables", "Write [[risk.usual]] for each risk.")
    return tuple(each_of(_risk, value, manner))


def _risk(row: object, manner: Manner) -> NamedRisk:
    keys = {f"{what}_{end}" for what in _RANGES for end in _ENDS}
    if not isinstance(row, Mapping) or not {"name", "chance_pct"} <= set(row) <= {
        "name", "chance_pct", "source", *keys
    }:  # fmt: skip
        raise refuse(row, "does not hold the fields of a risk", _EXAMPLE)
    read = {key: number(row.get(key, 0), manner) for key in sorted(keys)}
    for what in _RANGES:
        low, likely, high = (read[f"{what}_{end}"] for end in _ENDS)
        if not low <= likely <= high:
            said = f"has {what} of {low:f}, {likely:f} and {high:f}"
            raise refuse(row, said, "Low is the least of the three and high the most.")
    name = text(row["name"], manner)
    if not name:
        raise refuse(row, "has no name", _EXAMPLE)
    chance = percent(ALL_PCT)(row["chance_pct"], manner)
    source = text(row.get("source", "not stated"), manner)
    return NamedRisk(name=name, chance_pct=chance, source=source, **read)


def _several(read: Reader, value: object, manner: Manner) -> Iterator[Any]:
    """Read a list, element by element."""
    if not isinstance(value, Sequence) or isinstance(value, str):
        raise refuse(value, "is not a list", 'Write a list in [brackets], such as ["monday"].')
    return each_of(read, value, manner)
