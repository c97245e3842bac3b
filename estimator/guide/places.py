"""Where each fact of the questions stands in a job file, whatever the order of its tables."""

from __future__ import annotations

from collections.abc import Callable, Mapping, MutableMapping, Sequence
from dataclasses import dataclass, replace
from pathlib import PurePath
from typing import Any

from estimator.guide.questions import LONGEST_TEXT, NO_NAME
from estimator.toml_lines import TomlPath

Facts = Mapping[str, Any]
"""Values of a job file by path, such as `source.contents.setback`."""

Makers = tuple[Callable[[], Any], Callable[[], Any], Callable[[], Any]]
"""How a table, a row of a list and a list are made."""

TABLES = ("job", "circuit", "house", "finish", "guide")
LISTS = {
    "room": "rooms", "wall": "walls", "level": "levels", "source": "boxes", "new": "boxes",
    "run": "runs", "opening": "openings",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Names:
    """What the parts that the questions are about are called in one job file.

    Attributes:
        job: the job number, where nobody answered with another.
    """

    job: str = NO_NAME
    room: str = "room"
    wall: str = "1"
    source: str = "source"
    new: str = "new"
    run: str = "1"
    opening: str = "opening"


def job_name(path: str) -> str:
    """The job number that is usual for a file: its name without folder and ending.

    >>> job_name("jobs/smith.toml")
    'smith'
    """
    stem = "".join(each for each in PurePath(path).stem if each.isprintable())
    return stem[:LONGEST_TEXT].strip() or NO_NAME


def names_in(raw: Mapping[str, Any], path: str = "") -> Names:
    """The names that a job file uses, and the usual ones for what it does not have."""
    usual = Names(job=job_name(path))
    found = {
        role: str(part.get("id") or getattr(usual, role))
        for role in ("wall", "source", "new", "run", "opening")
        if (part := part_of(raw, role)) is not None
    }
    return replace(usual, **found)


def part_of(raw: Mapping[str, Any], role: str) -> Any | None:
    """The table that a role names in a job file; None where there is none."""
    if role in TABLES:
        table = raw.get(role)
        return table if isinstance(table, Mapping) else None
    rows = raw.get(LISTS[role])
    if not isinstance(rows, Sequence) or isinstance(rows, str):
        return None
    number = _number(raw, role, [row if isinstance(row, Mapping) else {} for row in rows])
    return None if number is None or number >= len(rows) else rows[number]


def _number(raw: Mapping[str, Any], role: str, rows: Sequence[Mapping[str, Any]]) -> int | None:
    """Which row of its list a role is."""
    if role in ("source", "new"):
        return _box_number(raw, role, rows)
    key, owner = {"wall": ("wall", "source"), "room": ("room", "new")}.get(role, ("", ""))
    if not owner:
        return 0
    name = (part_of(raw, owner) or {}).get(key)
    named = [number for number, row in enumerate(rows) if name and row.get("id") == name]
    return named[0] if named else (None if role == "room" and name else 0)


def _box_number(raw: Mapping[str, Any], role: str, rows: Sequence[Mapping[str, Any]]) -> int | None:
    run = part_of(raw, "run") or {}
    name = run.get("from" if role == "source" else "to")
    stands = role == "source"
    named = [number for number, row in enumerate(rows) if name and row.get("id") == name]
    fitting = [number for number, row in enumerate(rows) if bool(row.get("existing")) is stands]
    return next(iter([*named, *fitting]), None)


def place_in(raw: Mapping[str, Any], path: str) -> TomlPath | None:
    """Where a fact stands in a job file by its tables and rows; None where its table is not there.

    >>> place_in({"runs": [{"id": "1"}]}, "run.legs")
    ('runs', 0, 'legs')
    """
    role, *inner = path.split(".")
    table = part_of(raw, role)
    if table is None:
        return None
    if role not in LISTS:
        return (role, *inner)
    number = next((at for at, row in enumerate(raw[LISTS[role]]) if row is table), None)
    return None if number is None else (LISTS[role], number, *inner)


def find(raw: Mapping[str, Any], path: str) -> Any | None:
    """The value at a path; None where there is none."""
    role, *inner = path.split(".")
    if not inner:
        return raw.get(role)
    found: Any = part_of(raw, role)
    for key in inner:
        found = found.get(key) if isinstance(found, Mapping) else None
    return found


def put(
    raw: MutableMapping[str, Any],
    path: str,
    value: object,
    make: Makers = (dict, dict, list),
) -> None:
    """Set the value at a path, with the tables that it needs."""
    role, *inner = path.split(".")
    if not inner:
        raw[role] = value
        return
    table = part_of(raw, role)
    if table is None:
        table = _added(raw, role, make)
    for key in inner[:-1]:
        if key not in table:
            table[key] = make[0]()
        table = table[key]
    table[inner[-1]] = value


def _added(raw: MutableMapping[str, Any], role: str, make: Makers) -> Any:
    new_table, new_row, new_rows = make
    if role in TABLES:
        raw[role] = new_table()
        return raw[role]
    name = LISTS[role]
    if name not in raw:
        raw[name] = new_rows()
    raw[name].append(new_row())
    return raw[name][-1]


def take_out(raw: MutableMapping[str, Any], path: str) -> None:
    """Take the value at a path out, and the row of a list that is left without any."""
    role, *inner = path.split(".")
    table: Any = part_of(raw, role) if inner else raw
    for key in inner[:-1]:
        table = table.get(key) if table is not None else None
    if table is not None and (inner or [role])[-1] in table:
        del table[(inner or [role])[-1]]
    if role in LISTS and not part_of(raw, role):
        rows = raw.get(LISTS[role], [])
        rows[:] = [row for row in rows if row]
        if not rows:
            raw.pop(LISTS[role], None)


def raw_job(facts: Facts) -> dict[str, Any]:
    """A job file's values, from facts by path; boxes first, so that the others find them."""
    raw: dict[str, Any] = {"boxes": [{}, {}], "runs": [{}]}
    for role, number in (("source", 0), ("new", 1)):
        raw["boxes"][number] = {"id": facts[f"{role}.id"], "existing": role == "source"}
    for path, value in sorted(facts.items(), key=lambda each: each[0] not in _ENDS):
        put(raw, path, value)
    return raw


_ENDS = ("run.from", "run.to", "source.wall", "new.room", "room.id", "wall.id")
