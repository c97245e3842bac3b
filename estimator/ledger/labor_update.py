"""What a closed job would change in the labor book, and the changed file."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

from estimator.catalog.cell_edits import change_cells
from estimator.catalog.cells import Habits
from estimator.catalog.columns import habits_of
from estimator.catalog.csv_table import Heading, read_table
from estimator.catalog.labor import HOURS, LABOR_NEEDED, LABOR_TEXTS, read_labor
from estimator.catalog.records import LaborUnit
from estimator.catalog.setting_keys import CONDITIONS
from estimator.ledger.estimated import Closed, estimate_of
from estimator.ledger.records import WorkedHours
from estimator.ledger.shrinkage import HOURS_PLACES, moved, weight
from estimator.measures import to_decimal
from estimator.problems import InputError, Problem
from estimator.text_files import decode_text, read_bytes

SOURCE = "source"
_BOM = b"\xef\xbb\xbf"
_TOLD = re.compile(r"(?:; )?likely hours moved by (\d+) jobs?, last \d{4}-\d\d-\d\d: ([^;]*)$")
_ODD = re.compile(r"[^\w.-]+")
NOT_ON_FILE = "the labor book has no such task"
NO_QUANTITY = "how much was done is not known; write quantity"
SOME_QUANTITY = "quantity stands in some of its rows only; write it in all or in none"
COUNTED = "this job has moved it before"


@dataclass(frozen=True, slots=True)
class LaborChange:
    """One row of the labor book before and after.

    Attributes:
        observed: hours of one unit on this job, conditions taken out, to four places.
        jobs: how many jobs have moved the row, this one with them.
        weight_pct: what this job weighs in the new figure, to one decimal.
        low, likely, high: hours of one unit before; new_low and the others after. Low and high
            give way only where likely would pass them.
        source: the text of the source column after.
    """

    task: str
    row: int
    unit: str
    observed: Decimal
    jobs: int
    weight_pct: Decimal
    low: Decimal
    likely: Decimal
    high: Decimal
    new_low: Decimal
    new_likely: Decimal
    new_high: Decimal
    source: str


@dataclass(frozen=True, slots=True)
class LaborUpdate:
    """All changes that a closed job would make to one labor book.

    Attributes:
        left: tasks whose row stays as it is, each with the reason.
        data: the file as it would be written.
    """

    path: Path
    changes: tuple[LaborChange, ...]
    left: tuple[tuple[str, str], ...]
    data: bytes


@dataclass(frozen=True, slots=True)
class _Book:
    """A labor book as text and as rows."""

    text: str
    marked: bool
    heading: Heading
    labor: dict[str, LaborUnit]
    decimal_comma: bool


def labor_update(closed: Closed, path: Path) -> LaborUpdate:
    """Work out what the hours of a closed job would change; nothing is written.

    Raises:
        InputError: the labor book cannot be read, or has no column for the source.
    """
    book = _read(path, closed.books.shop.decimal_comma)
    left: list[tuple[str, str]] = []
    changes = tuple(_changes(closed, book, left))
    cells = {place: text for change in changes for place, text in _cells(change, book).items()}
    text = change_cells(book.text, book.heading.delimiter, cells)
    data = (_BOM if book.marked else b"") + text.encode()
    return LaborUpdate(path, changes, tuple(left), data)


def _read(path: Path, decimal_comma: bool) -> _Book:
    name = str(path)
    raw = read_bytes(path, name)
    text = decode_text(raw, name)
    expected = Habits(decimal_comma)
    read = read_labor(text, name, expected, CONDITIONS)
    table = read_table(text, name, (*LABOR_NEEDED, *LABOR_TEXTS, "conditions"), LABOR_NEEDED)
    problems = list(read.problems)
    if SOURCE not in table.heading.keys:
        said = "there is no column for where the hours are from"
        problems.append(Problem(name, said, "Add a column with the heading source."))
    if problems:
        raise InputError(problems)
    hours = (cell for key in HOURS for cell in table.column(key))
    habits = habits_of(expected, table.heading, hours, ())
    marked = raw.startswith(_BOM)
    return _Book(text, marked, table.heading, dict(read.labor), habits.decimal_comma)


def _changes(closed: Closed, book: _Book, left: list[tuple[str, str]]) -> Iterator[LaborChange]:
    """The change of each task that hours were written down for."""
    rows: dict[str, list[WorkedHours]] = {}
    for worked in closed.file.record.hours:
        if worked.task:
            rows.setdefault(worked.task.strip().lower(), []).append(worked)
    for task, mine in rows.items():
        unit = book.labor.get(task)
        done = _done(closed, task, mine)
        if unit is None:
            left.append((task, NOT_ON_FILE))
        elif isinstance(done, str):
            left.append((task, done))
        elif _job_name(closed) in _moved_by(unit.source)[1]:
            left.append((task, COUNTED))
        else:
            hours = sum((Fraction(each.hours) for each in mine), Fraction(0))
            yield _change(closed, unit, hours / done)


def _done(closed: Closed, task: str, rows: list[WorkedHours]) -> Fraction | str:
    """How much was done, weighted by the conditions of the job; or why it is not known."""
    known = {each.task: each for each in estimate_of(closed).tasks}.get(task)
    typed = [each.quantity for each in rows if each.quantity is not None]
    if typed and len(typed) < len(rows):
        return SOME_QUANTITY
    if known is None or not known.quantity or not known.weighted_quantity:
        return sum(map(Fraction, typed), Fraction(0)) if typed else NO_QUANTITY
    factor = Fraction(known.weighted_quantity) / Fraction(known.quantity)
    quantity = sum(map(Fraction, typed), Fraction(0)) if typed else Fraction(known.quantity)
    return quantity * factor


def _change(closed: Closed, unit: LaborUnit, observed: Fraction) -> LaborChange:
    before, names = _moved_by(unit.source)
    share = weight(before, closed.books.shop.ledger.credibility_jobs)
    likely = moved(unit.hours_likely, observed, share)
    told = f"likely hours moved by {before + 1} job{'s' if before else ''}, last "
    told += f"{closed.file.record.close_out.date.isoformat()}: "
    told += " ".join((*names, _job_name(closed)))
    own = _TOLD.sub("", unit.source)
    return LaborChange(
        task=unit.task,
        row=unit.row,
        unit=unit.unit,
        observed=to_decimal(observed, HOURS_PLACES),
        jobs=before + 1,
        weight_pct=to_decimal(share * 100, 1),
        low=unit.hours_low,
        likely=unit.hours_likely,
        high=unit.hours_high,
        new_low=min(unit.hours_low, likely),
        new_likely=likely,
        new_high=max(unit.hours_high, likely),
        source=f"{own}; {told}" if own else told,
    )


def _job_name(closed: Closed) -> str:
    """The job's number as one word."""
    return _ODD.sub("_", closed.file.job)


def _moved_by(source: str) -> tuple[int, tuple[str, ...]]:
    """How many jobs have moved a row, and which."""
    found = _TOLD.search(source)
    return (int(found[1]), tuple(found[2].split())) if found else (0, ())


def _cells(change: LaborChange, book: _Book) -> dict[tuple[int, int], str]:
    """The cells of one row that differ."""
    figures = (
        ("hours_low", change.low, change.new_low),
        ("hours_likely", change.likely, change.new_likely),
        ("hours_high", change.high, change.new_high),
    )
    keys = book.heading.keys
    mark = "," if book.decimal_comma else "."
    made = {
        (change.row, keys.index(key)): f"{new:f}".replace(".", mark)
        for key, old, new in figures
        if new != old
    }
    return made | {(change.row, keys.index(SOURCE)): change.source}
