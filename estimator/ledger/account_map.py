"""A second name for each kind of line, such as its name on a tax form of one year."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from estimator.catalog.csv_table import Table, read_table
from estimator.catalog.shipped import shipped_catalogs
from estimator.ledger.kinds import GROUPS
from estimator.problems import InputError, Problem
from estimator.text_files import read_text

COLUMNS = ("name", "year", "line", "line_kinds", "confidence", "source", "note")
NEEDED = COLUMNS[:4]
_SUFFIX = ".csv"


@dataclass(frozen=True, slots=True)
class MappedName:
    """One name of a map; lines move from year to year, so it is known by name and year.

    Attributes:
        line: of the form, in that year; empty where it is on none.
        confidence: seen, memory or common practice: how far to trust the row.
    """

    name: str
    year: str
    line: str
    confidence: str
    note: str


@dataclass(frozen=True, slots=True)
class AccountMap:
    """Names by kind of line.

    Attributes:
        title: the map's own name, such as schedule-c-2024.
    """

    title: str
    file: str
    by_kind: Mapping[str, MappedName]


def shipped_maps() -> tuple[str, ...]:
    """Names of the maps that come along."""
    return tuple(path.stem for path in sorted(shipped_catalogs().glob(f"schedule-c-*{_SUFFIX}")))


def read_map(name: str) -> AccountMap:
    """Read a map that comes along, by its name, or one of your own, by its file.

    Raises:
        InputError: no such map, a kind of line that is not one or stands twice, no name.
    """
    shipped = shipped_catalogs() / f"{name}{_SUFFIX}"
    path = shipped if name in shipped_maps() else Path(name)
    if path.suffix != _SUFFIX:
        read, known = f'there is no map called "{name}"', ", ".join(shipped_maps())
        raise InputError([Problem("--map", read, f"Use {known}, or a CSV file of your own.")])
    table = read_table(read_text(path, str(path)), str(path), COLUMNS, NEEDED)
    problems = list(_problems(table))
    if problems:
        raise InputError(problems)
    by_kind = {kind: _named(row) for _, row in _rows(table) for kind in row["line_kinds"].split()}
    return AccountMap(path.stem, str(path), by_kind)


def _rows(table: Table) -> Iterator[tuple[int, dict[str, str]]]:
    for row, cells in table.rows:
        yield row, dict.fromkeys(COLUMNS, "") | dict(zip(table.heading.keys, cells, strict=True))


def _named(row: Mapping[str, str]) -> MappedName:
    confidence = row["confidence"] or "memory"
    return MappedName(row["name"], row["year"], row["line"], confidence, row["note"])


def _problems(table: Table) -> Iterator[Problem]:
    """Names that are missing, kinds that are none, and kinds that stand twice."""
    first: dict[str, int] = {}
    for row, values in _rows(table):
        if not values["name"] or not values["year"]:
            yield Problem(f"{table.name}: row {row}", "has no name or no year.", "Fill both in.")
        for kind in values["line_kinds"].split():
            where = f"{table.name}: row {row}, column line_kinds"
            if kind not in GROUPS:
                read = f'"{kind}" is not a kind of line.'
                yield Problem(where, read, f"Use some of {', '.join(GROUPS)}.")
            elif first.setdefault(kind, row) != row:
                read = f"{kind} stands already in row {first[kind]}."
                yield Problem(where, read, "Keep it in one of the two rows.")


def need_all(account_map: AccountMap, kinds: Iterable[str]) -> None:
    """See that every kind of line has a name.

    Raises:
        InputError: naming every kind that has none.
    """
    missing = [kind for kind in dict.fromkeys(kinds) if kind not in account_map.by_kind]
    if missing:
        write = "Put it into the column line_kinds of one row."
        raise InputError(
            Problem(account_map.file, f'no row for lines of kind "{kind}"', write)
            for kind in missing
        )
