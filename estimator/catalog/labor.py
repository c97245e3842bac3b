"""The labor book and the accounts book: hours for one unit of a task, accounts for lines."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping
from difflib import get_close_matches
from typing import NamedTuple

from estimator.catalog import cells
from estimator.catalog.cells import CellReader, Habits
from estimator.catalog.columns import Fault, fault_at, habits_of, read_rows
from estimator.catalog.csv_table import Heading, Table, read_table
from estimator.catalog.records import Account, LaborUnit
from estimator.problems import Problem

LABOR_NEEDED = ("task", "unit", "hours_low", "hours_likely", "hours_high")
LABOR_TEXTS = ("description", "includes", "source")
ACCOUNT_NEEDED = ("line_kind", "account_code", "account_name")
HOURS = LABOR_NEEDED[2:]
_ACCOUNT_KEYS = (*ACCOUNT_NEEDED, "note")


class LaborRead(NamedTuple):
    """The labor book by task key, and what is wrong with it."""

    labor: Mapping[str, LaborUnit]
    problems: tuple[Problem, ...]


class AccountsRead(NamedTuple):
    """The accounts book by kind of line, and what is wrong with it."""

    accounts: Mapping[str, Account]
    problems: tuple[Problem, ...]


def read_labor(text: str, name: str, expected: Habits, conditions: Collection[str]) -> LaborRead:
    """Read the labor book.

    Args:
        text: the whole file.
        name: what to call it in problems.
        expected: how the shop writes decimals, for a file that does not show it.
        conditions: the conditions that the shop has a factor for.

    Raises:
        InputError: headings that cannot be used, or a quote out of place.
    """
    known = (*LABOR_NEEDED, *LABOR_TEXTS, "conditions")
    table = read_table(text, name, known, LABOR_NEEDED)
    hours = (cell for key in HOURS for cell in table.column(key))
    faults: list[Fault] = []
    readers = _labor_readers(habits_of(expected, table.heading, hours, ()))
    made = [
        LaborUnit(**{key: values.get(key, "") for key in (*LABOR_NEEDED, *LABOR_TEXTS)},
                  conditions=values.get("conditions", ()), row=row)
        for row, values in read_rows(table, readers, faults)
    ]  # fmt: skip
    for one in made:
        faults += [*_order(one, table.heading), *_conditions(one, table.heading, conditions)]
    faults += _repeats(((one.task, one.row) for one in made), table.heading, "task")
    return LaborRead({one.task: one for one in made}, _problems(faults, table))


def _labor_readers(habits: Habits) -> dict[str, CellReader]:
    """Give the reader of each column of the labor book that is not plain text."""
    return {key: cells.amount(habits, thing="a number of hours") for key in HOURS} | {
        "task": cells.item_key,
        "unit": cells.unit(*cells.LABOR_UNITS),
        "conditions": cells.words,
    }


def _order(one: LaborUnit, heading: Heading) -> Iterator[Fault]:
    """Check that low is not above likely, nor likely above high."""
    if not one.hours_low <= one.hours_likely <= one.hours_high:
        read = (
            f"hours low {one.hours_low}, likely {one.hours_likely}, high {one.hours_high} "
            "do not rise."
        )
        write = "Write the least hours as low, the usual as likely and the most as high."
        yield fault_at(heading, one.row, "hours_likely", read, write)


def _conditions(one: LaborUnit, heading: Heading, known: Collection[str]) -> Iterator[Fault]:
    """Check that the shop has a factor for each condition of a task."""
    for condition in one.conditions:
        if condition not in known:
            near = get_close_matches(condition, known, n=1)
            write = f"Did you mean {near[0]}?" if near else f"Use some of {', '.join(known)}."
            read = f'"{condition}" is not a condition in shop.toml.'
            yield fault_at(heading, one.row, "conditions", read, write)


def read_accounts(text: str, name: str) -> AccountsRead:
    """Read the accounts book.

    Args:
        text: the whole file.
        name: what to call it in problems.

    Raises:
        InputError: headings that cannot be used, or a quote out of place.
    """
    table = read_table(text, name, _ACCOUNT_KEYS, ACCOUNT_NEEDED)
    readers: dict[str, CellReader] = dict.fromkeys(ACCOUNT_NEEDED, cells.filled)
    faults: list[Fault] = []
    made = [
        Account(**{key: values.get(key, "") for key in _ACCOUNT_KEYS}, row=row)
        for row, values in read_rows(table, readers | {"line_kind": cells.item_key}, faults)
    ]
    faults += _repeats(((one.line_kind, one.row) for one in made), table.heading, "line_kind")
    return AccountsRead({one.line_kind: one for one in made}, _problems(faults, table))


def _repeats(keys: Iterable[tuple[str, int]], heading: Heading, column: str) -> Iterator[Fault]:
    """Find keys that stand in more than one row."""
    first: dict[str, int] = {}
    for key, row in keys:
        if first.setdefault(key, row) != row:
            read = f"{key} stands already in row {first[key]}."
            yield fault_at(heading, row, column, read, "Keep one of the two rows.")


def _problems(faults: list[Fault], table: Table) -> tuple[Problem, ...]:
    """Give the problems in row order."""
    return tuple(fault.problem(table.name, table.heading) for fault in sorted(faults))
