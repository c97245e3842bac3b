"""The bid in the words of its country: reasons, findings and assumptions."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from estimator.pricing.records import Bid
from estimator.rules.records import Finding
from estimator.survey.records import Survey
from estimator.tables.local_words import Say, as_said, is_british, local_words
from estimator.takeoff.records import Assumption, Takeoff


def in_local_words(bid: Bid) -> Bid:
    """Say what this tool says of the job as people of its country do.

    Names and texts of the job, and what the books call things, stay as they are.
    """
    job = bid.survey.job
    if not is_british(job.country, job.locale):
        return bid
    say = words_of(bid.survey)
    return replace(
        bid,
        takeoff=_takeoff(bid.takeoff, say),
        findings=tuple(_finding(each, say) for each in bid.findings),
        routes=tuple(replace(each, why=say(each.why)) for each in bid.routes),
        second_total_why=say(bid.second_total_why),
    )


def words_of(survey: Survey) -> Say:
    """The words of a job's country; the job's own names stay as they were typed."""
    job = survey.job
    if not is_british(job.country, job.locale):
        return as_said
    return local_words(job.country, job.locale, _names(survey))


def _names(survey: Survey) -> Iterator[str]:
    """What the job calls its rooms, walls, boxes, runs and openings."""
    for box in survey.boxes:
        yield from (box.id, box.room or "")
    for wall in survey.walls:
        yield from (wall.id, wall.room)
    for hole in survey.openings:
        yield from (hole.id, hole.room or "")
    yield from (run.id for run in survey.runs)
    yield from (room.id for room in survey.rooms)
    yield from survey.circuit.serves


def _takeoff(taken: Takeoff, say: Say) -> Takeoff:
    return replace(
        taken,
        parts=tuple(replace(each, reason=say(each.reason)) for each in taken.parts),
        tasks=tuple(replace(each, reason=say(each.reason)) for each in taken.tasks),
        assumptions=tuple(_assumption(each, say) for each in taken.assumptions),
    )


def _assumption(each: Assumption, say: Say) -> Assumption:
    taken = each.taken if each.decided else say(each.taken)
    return replace(each, about=say(each.about), taken=taken)


def _finding(each: Finding, say: Say) -> Finding:
    return replace(each, title=say(each.title), figures=say(each.figures), remedy=say(each.remedy))
