"""Puts accepted remedies into the job: changed plans before the takeoff, extra lines after it."""

from __future__ import annotations

from dataclasses import replace

from estimator.rules.records import Finding, RemedyChange, RemedyPart, RemedyTask
from estimator.survey.electrical import Box
from estimator.survey.records import Survey
from estimator.takeoff.amounts import trim
from estimator.takeoff.box_choice import FAN_BOX
from estimator.takeoff.records import PartLine, Takeoff, TaskLine
from estimator.takeoff.stock import Stock


def is_taken(finding: Finding, *, bad_case: bool = False) -> bool:
    """True where the remedy goes into the job: a fail whose remedy nobody declined.

    In the bad case an unknown counts as a fail.
    """
    verdicts = ("fail", "unknown") if bad_case else ("fail",)
    open_fail = finding.verdict in verdicts and not finding.accepted
    return open_fail and not finding.declined and bool(finding.remedies)


def changed_survey(survey: Survey, findings: tuple[Finding, ...]) -> Survey:
    """The survey with the cable, the devices and the boxes that taken remedies ask for."""
    changes = [
        each for finding in findings for each in finding.remedies if isinstance(each, RemedyChange)
    ]
    if not changes:
        return survey
    cables = {each.subject: each.value for each in changes if each.what == "cable"}
    devices = {each.subject: each.value for each in changes if each.what == "device"}
    runs = tuple(
        run.model_copy(update={"cable": cables[run.id]}) if run.id in cables else run
        for run in survey.runs
    )
    boxes = tuple(
        box.model_copy(update={"device": devices[box.id]}) if box.id in devices else box
        for box in survey.boxes
    )
    for_fans = {each.subject for each in changes if each.what == "box"}
    boxes = tuple(_for_fans(box) if box.id in for_fans else box for box in boxes)
    return survey.model_copy(update={"runs": runs, "boxes": boxes})


def _for_fans(box: Box) -> Box:
    """A box made for paddle fans, planned so or in the place of an old one."""
    contents = box.contents.model_copy(update={"fan_rated": "yes"})
    return box.model_copy(update={"contents": contents, "replacement": FAN_BOX})


def with_remedies(takeoff: Takeoff, findings: tuple[Finding, ...], stock: Stock) -> Takeoff:
    """The takeoff with the lines of taken remedies at its end, each marked with its finding."""
    parts, tasks = list(takeoff.parts), list(takeoff.tasks)
    for finding in findings:
        for each in finding.remedies:
            if isinstance(each, RemedyPart):
                parts.append(_part(len(parts) + 1, each, finding, stock))
            elif isinstance(each, RemedyTask):
                tasks.append(_task(len(tasks) + 1, each, finding))
    if len(parts) == len(takeoff.parts) and len(tasks) == len(takeoff.tasks):
        return takeoff
    return replace(takeoff, parts=tuple(parts), tasks=tuple(tasks))


def _part(number: int, part: RemedyPart, finding: Finding, stock: Stock) -> PartLine:
    return PartLine(
        line_id=f"P{number:02d}",
        group=part.group,
        item=part.item,
        description=stock.descriptions.get(part.item, part.item.replace("-", " ")),
        quantity=trim(part.quantity),
        unit=part.unit,
        where=finding.subject,
        reason=f"remedy: {finding.title.lower()}",
        source=finding.cite,
        remedy=finding.finding_id,
    )


def _task(number: int, task: RemedyTask, finding: Finding) -> TaskLine:
    return TaskLine(
        line_id=f"W{number:02d}",
        phase=task.phase,
        task=task.task,
        quantity=trim(task.quantity),
        unit=task.unit,
        where=finding.subject,
        reason=f"remedy: {finding.title.lower()}",
        source=finding.cite,
        remedy=finding.finding_id,
    )
