"""The one-page test and safety list that prints with a job."""

from __future__ import annotations

from collections.abc import Iterable

from estimator.rules.records import Finding
from estimator.survey.records import Survey
from estimator.tables.house import safety_lines
from estimator.tables.local_words import local_words

THIS_JOB = "This job"
Section = tuple[str, tuple[str, ...]]


def safety_list(survey: Survey, findings: Iterable[Finding]) -> tuple[Section, ...]:
    """Headings with their lines, in the order of the work.

    Lines that hang on a rule are there only where that rule found something to look at.
    """
    asked = {finding.rule for finding in findings if finding.verdict != "pass"}
    say = local_words(survey.job.country, survey.job.locale)
    sections: dict[str, list[str]] = {THIS_JOB: _this_job(survey)}
    for line in safety_lines(survey.job.country):
        if not line.rule or line.rule in asked:
            sections.setdefault(line.heading, []).append(say(line.text))
    return tuple((heading, tuple(lines)) for heading, lines in sections.items())


def _this_job(survey: Survey) -> list[str]:
    """The breaker to turn off and the boxes to test."""
    breaker_a, serves = survey.circuit.breaker_a, ", ".join(survey.circuit.serves)
    rating = "of unknown rating" if breaker_a is None else f"{breaker_a} A"
    touched = {name for run in survey.runs for name in (run.from_box, run.to_box)}
    boxes = [box for box in survey.boxes if box.id in touched]
    old = ", ".join(box.id for box in boxes if box.existing) or "none listed"
    new = ", ".join(box.id for box in boxes if not box.existing) or "none"
    return [
        f"Turn off: breaker {rating}{f', {serves}' if serves else ''}",
        f"Open and prove dead: {old}",
        f"Test after the work: {new}",
    ]
