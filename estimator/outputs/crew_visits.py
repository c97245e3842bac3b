"""Visits in order, each with its tasks and the hours that the labor book gives them."""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal
from typing import get_args

from estimator.drawing.kind_words import opening_called, room_called
from estimator.outputs.calendar_words import visit_words
from estimator.outputs.crew_records import CrewGroup, CrewLine, CrewPart
from estimator.outputs.text_layout import number
from estimator.pricing.assumed import subject_said
from estimator.pricing.calendar import plan_calendar, visits_of_tasks
from estimator.pricing.records import Bid, LaborLine
from estimator.saying import Saying, said, word
from estimator.takeoff.records import Phase

_HOUR_PLACES = 2
_PHASES: tuple[str, ...] = get_args(Phase)
"""In the order of the work."""


def visits(bid: Bid) -> CrewPart:
    """A group for each visit; a task that goes on over several stands under the first of them."""
    on, wheres = visits_of_tasks(bid), _wheres(bid)
    groups = []
    for visit in plan_calendar(bid).visits:
        begun = [line for line in bid.labor if on[line.task_line_id][0] == visit.number]
        begun.sort(key=lambda line: _PHASES.index(line.phase))  # remedies were added last
        lines = [
            CrewLine(_task(line, on[line.task_line_id], wheres), _subject(line), tick=True)
            for line in begun
        ]
        if begun:
            lines.append(_together(begun))
        if any(visit.number in each[1:] for each in on.values()):
            lines.append(CrewLine(said("Tasks of the visits before go on.")))
        title = said("Visit {number}: {what}", number=visit.number, what=visit_words(visit))
        groups.append(CrewGroup(title, tuple(lines)))
    return CrewPart("visits", said("Visits and work"), tuple(groups))


def _subject(line: LaborLine) -> str:
    return f"task:{line.task_line_id}"


def _together(begun: list[LaborLine]) -> CrewLine:
    hours = sum((line.hours_likely for line in begun), Decimal(0))
    shown = number(hours, _HOUR_PLACES)
    return CrewLine(said("Likely hours of the tasks above: {hours}.", hours=shown))


def _task(line: LaborLine, on: tuple[int, ...], wheres: Mapping[str, str]) -> str:
    """One task: what, where, how much, likely hours."""
    values = {
        "task": word(line.description),
        "where": wheres.get(line.where) or _elsewhere(line.where),
        "quantity": number(line.quantity, _HOUR_PLACES),
        "unit": word(line.unit),
        "hours": number(line.hours_likely, _HOUR_PLACES),
    }
    if len(on) == 1:
        return said("{task} ({where}): {quantity} {unit}, about {hours} h", **values)
    return said(
        "{task} ({where}): {quantity} {unit}, about {hours} h, on visits {visits}",
        **values,
        visits=", ".join(map(str, on)),
    )


def _elsewhere(where: str) -> str:
    """A place that the survey has no table for: a room that only a wall names, the whole job."""
    named = subject_said(where)
    return named if isinstance(named, Saying) else word(where)


def _wheres(bid: Bid) -> dict[str, str]:
    """Where work is done, as the takeoff and the checks name it, in words that can be told."""
    survey, found = bid.survey, dict[str, str]()
    for wall in survey.walls:
        found[f"wall {wall.id}"] = said("wall {wall}", wall=wall.id)
        found[f"room {wall.room}"] = said("room {room}", room=room_called(wall.room))
    for room in survey.rooms:
        found[f"room {room.id}"] = said("room {room}", room=room_called(room.id))
    for opening in survey.openings:
        found[f"opening {opening.id}"] = opening_called(opening.id)
    for box in survey.boxes:
        found[f"box {box.id}"] = found[box.id] = said("box {box}", box=box.id)
    for run in survey.runs:
        named = said("run {run}", run=run.id)
        found[f"run {run.id}"] = named
        found[f"run {run.id}, {run.from_box} to {run.to_box}"] = named
    return found
