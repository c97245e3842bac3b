"""Marks the lines of a takeoff that are there because a remedy planned something differently."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal
from typing import TypeVar

from estimator.rules.records import Finding, RemedyChange
from estimator.survey.electrical import Run
from estimator.takeoff.records import PartLine, Takeoff, TaskLine

_Key = tuple[str, str, Decimal]
_Place = tuple[set[str], Finding]
_Line = TypeVar("_Line", PartLine, TaskLine)
_CABLE = "cable"


def with_marks(
    takeoff: Takeoff, before: Takeoff, findings: tuple[Finding, ...], runs: tuple[Run, ...]
) -> Takeoff:
    """The takeoff of the changed plan; each line that was not in the old one names its finding.

    A line is put down to the first change that bears on its place: the cable of a run on that
    cable and on the boxes at both its ends, a box or a device on its box.

    Args:
        takeoff: of the survey as remedies changed it.
        before: of the survey as it was.
        findings: those whose remedies were taken.
        runs: of the survey.
    """
    changes = [
        (each, finding)
        for finding in findings
        for each in finding.remedies
        if isinstance(each, RemedyChange)
    ]
    places = [(set(_places(change, runs)), finding) for change, finding in changes]
    old_parts = {(line.item, line.where, line.quantity) for line in before.parts}
    old_tasks = {(line.task, line.where, line.quantity) for line in before.tasks}
    parts = tuple(
        line if _is_told(line, (line.item, line.where, line.quantity), old_parts)
        else _marked(line, places)
        for line in takeoff.parts
    )  # fmt: skip
    tasks = tuple(
        line if _is_told(line, (line.task, line.where, line.quantity), old_tasks)
        else _marked(line, places)
        for line in takeoff.tasks
    )  # fmt: skip
    return replace(takeoff, parts=parts, tasks=tasks)


def _places(change: RemedyChange, runs: tuple[Run, ...]) -> Iterator[str]:
    """Where a change is felt, as the lines name it."""
    if change.what != _CABLE:
        yield f"box {change.subject}"
        return
    yield f"run {change.subject}"
    for run in runs:
        if run.id == change.subject:
            yield from (f"box {run.from_box}", f"box {run.to_box}")


def _is_told(line: PartLine | TaskLine, key: _Key, old: set[_Key]) -> bool:
    """True for a line that was there before, or that names its finding already."""
    return bool(line.remedy) or key in old


def _marked(line: _Line, places: list[_Place]) -> _Line:
    finding = _asking(line.where, places)
    if finding is None:
        return line
    reason = f"{line.reason}; remedy: {finding.title.lower()}"
    return replace(line, remedy=finding.finding_id, reason=reason)


def _asking(where: str, places: list[_Place]) -> Finding | None:
    """The finding whose change is felt at a place; a line of cable names all its runs."""
    here = set(where.split(", "))
    return next((finding for felt, finding in places if here & felt), None)
