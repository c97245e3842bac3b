"""Surveys that no job file gives: a house in the US in metres, with cable sized in mm2.

The reader refuses such a file. A program that makes the records itself can still hand one over,
and a rule must then say what it does not know, or speak in millimetres.
"""

from __future__ import annotations

from estimator.rules.facts import Facts
from estimator.rules.records import Finding
from estimator.rules.registry import FUNCTIONS
from estimator.survey.records import Survey

CABLE = "2.5 mm2 2-core and earth"


def in_metres(survey: Survey) -> Survey:
    """The survey in metres, its runs of metric cable, nothing seen in its boxes."""
    runs = tuple(run.model_copy(update={"cable": CABLE}) for run in survey.runs)
    boxes = tuple(box.model_copy(update={"cables": ()}) for box in survey.boxes)
    job = survey.job.model_copy(update={"units": "metric"})
    return survey.model_copy(update={"job": job, "runs": runs, "boxes": boxes})


def said_of(rule: str, facts: Facts) -> dict[str, Finding]:
    """What one rule says of the facts, by subject."""
    return {each.subject: each for each in FUNCTIONS[rule](facts)}
