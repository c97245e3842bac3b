"""Finds hours of a phase or a task that nobody knows, so that a slip makes no new phase."""

from __future__ import annotations

from collections.abc import Iterator
from difflib import get_close_matches
from typing import get_args

from estimator.ledger.estimated import Closed
from estimator.problems import Problem
from estimator.takeoff.records import Phase


def unknown_hours(closed: Closed) -> Iterator[Problem]:
    """One problem for each line of hours whose phase, or task without a phase, is not known."""
    phases, tasks = _phases(closed), _tasks(closed)
    by_lower = {each.lower() for each in tasks}
    for at, worked in enumerate(closed.file.record.hours):
        if worked.phase and worked.phase not in phases:
            where = closed.file.where("hours", at, "phase")
            write = f"{_meant(worked.phase, phases)}Known phases: {', '.join(phases)}."
            yield Problem(where, f'"{worked.phase}" is not a phase', write)
        elif not worked.phase and worked.task.strip().lower() not in by_lower:
            where = closed.file.where("hours", at, "task")
            write = f"{_meant(worked.task, tasks)}Known phases: {', '.join(phases)}."
            yield Problem(where, f'"{worked.task}" is not a task of labor.csv', write)


def _meant(typed: str, known: tuple[str, ...]) -> str:
    near = get_close_matches(typed.lower(), known, n=1)
    return f'Did you mean "{near[0]}"? ' if near else ""


def _phases(closed: Closed) -> tuple[str, ...]:
    """Those of the labor book, and those of an estimate that was typed."""
    typed = closed.file.record.estimate
    own = [each.phase for each in typed.phases] if typed else []
    return tuple(dict.fromkeys((*get_args(Phase), *own)))


def _tasks(closed: Closed) -> tuple[str, ...]:
    lines = closed.bid.labor if closed.bid else ()
    return tuple(dict.fromkeys((*closed.books.labor, *(line.task for line in lines))))
