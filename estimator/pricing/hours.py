"""Hours: each task of the takeoff against the labor book, with the conditions that hold."""

from __future__ import annotations

from decimal import ROUND_HALF_UP, Decimal

from estimator.catalog.records import Books, LaborUnit
from estimator.pricing.records import Hours, LaborLine
from estimator.problems import InputError, Problem
from estimator.survey.records import Survey
from estimator.takeoff.amounts import trim
from estimator.takeoff.records import Takeoff, TaskLine

HOURS_STEP = Decimal("0.000001")
_LIKELY_WEIGHT = 4
_WEIGHTS = 6


def labor_lines(survey: Survey, takeoff: Takeoff, books: Books) -> tuple[LaborLine, ...]:
    """Hours for every task.

    Raises:
        InputError: tasks that the labor book has no row for, all of them.
    """
    missing = dict.fromkeys(
        line.task
        for line in takeoff.tasks
        if line.task not in books.labor and line.task not in survey.overrides.hours
    )
    if missing:
        raise InputError(_no_row(books, task) for task in missing)
    return tuple(_line(survey, books, task) for task in takeoff.tasks)


def _no_row(books: Books, task: str) -> Problem:
    write = "Add a row with its hours, or write [overrides.hours] in the job."
    return Problem(books.files.get("labor", "labor.csv"), f'no row for the task "{task}"', write)


def _line(survey: Survey, books: Books, task: TaskLine) -> LaborLine:
    row = books.labor.get(task.task)
    low, likely, high = _unit_hours(survey, task.task, row)
    active = [key for key in task.conditions if row is not None and key in row.conditions]
    factor = Decimal(1)
    for key in active:
        factor *= books.shop.conditions.get(key, Decimal(1))
    factor = trim(factor)
    share = task.quantity * factor
    return LaborLine(
        task_line_id=task.line_id,
        task=task.task,
        description=row.description if row is not None else task.task.replace("-", " "),
        phase=task.phase,
        quantity=task.quantity,
        unit=task.unit,
        where=task.where,
        unit_low=low,
        unit_likely=likely,
        unit_high=high,
        factor=factor,
        factor_why=", ".join(key.replace("-", " ") for key in active),
        hours_low=hours(share * low),
        hours_likely=hours(share * likely),
        hours_high=hours(share * high),
    )


def _unit_hours(
    survey: Survey, task: str, row: LaborUnit | None
) -> tuple[Decimal, Decimal, Decimal]:
    """Hours for one unit: the job's own figure goes before the book."""
    own = survey.overrides.hours.get(task)
    if own is not None or row is None:
        own = own or Decimal(0)
        return own, own, own
    return row.hours_low, row.hours_likely, row.hours_high


def hours(amount: Decimal) -> Decimal:
    """Hours to six places, half up; money rounds once, from these."""
    return amount.quantize(HOURS_STEP, ROUND_HALF_UP)


def total_hours(survey: Survey, lines: tuple[LaborLine, ...], books: Books) -> Hours:
    """Sums over the lines, the three-point expected value, and what is charged."""
    low = sum((line.hours_low for line in lines), Decimal(0))
    likely = sum((line.hours_likely for line in lines), Decimal(0))
    high = sum((line.hours_high for line in lines), Decimal(0))
    expected = three_point(low, likely, high)
    stated = survey.overrides.labor_hours
    if stated is not None:
        return Hours(low, likely, high, expected, stated, "override")
    basis = books.shop.price.hours_basis
    charged = expected if basis == "expected" else likely
    return Hours(low, likely, high, expected, charged, basis)


def three_point(low: Decimal, likely: Decimal, high: Decimal) -> Decimal:
    """Expected value (low + 4 x likely + high) / 6, to six places.

    >>> three_point(Decimal("4.5"), Decimal("6.25"), Decimal("10.5"))
    Decimal('6.666667')
    """
    return hours((low + _LIKELY_WEIGHT * likely + high) / _WEIGHTS)
