"""A job file that the survey fills: its text, and the answers it holds so far."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from typing import Any

from estimator.guide.defaults import default_of, is_asked
from estimator.guide.facts import facts_of, lacking, pruned, with_defaults
from estimator.guide.from_job import answer_in, answers_from
from estimator.guide.places import Facts, find, job_name, names_in
from estimator.guide.questions import UNKNOWN, Answers, by_key, questions
from estimator.guide.typed import said
from estimator.guide.written import START, changed_text
from estimator.problems import InputError, Problem
from estimator.toml_files import read_toml

MARKED = "guide.answered"
LAST = "more"
"""The last of the first questions: once it is answered, defaults fill the rest of the file."""
NOT_A_JOB = "Name a new file, or a job file: it begins with format = 1."


@dataclass(frozen=True, slots=True)
class JobText:
    """A job file between two answers.

    Attributes:
        name: what to call it in problems. text: as it stands, or will stand.
        answers: what it holds of the questions. own: it was begun with the survey, so that
            what the questions leave open is filled with defaults.
    """

    name: str
    text: str
    answers: Answers
    own: bool


def new_job(name: str) -> JobText:
    """A job file with nothing answered."""
    return JobText(name, START, {}, own=True)


def job_text(text: str, name: str) -> JobText:
    """Read the text of a job file, whole or half filled.

    Raises:
        InputError: not good TOML, or not a job file.
    """
    raw = read_toml(text, name)
    if raw.get("format") != 1:
        raise InputError([Problem(name, "this is not a job file.", NOT_A_JOB)])
    marked = find(raw, MARKED)
    found = answers_from(raw)
    if marked is None:
        return JobText(name, text, found, own=False)
    keys = {str(key) for key in marked} | ({LAST} & found.keys())
    return JobText(name, text, _answered(found, keys, name), own=True)


def _answered(found: Answers, marked: set[str], name: str) -> dict[str, str]:
    """What was answered, and what somebody changed in the file since; defaults are not."""
    kept: dict[str, str] = {}
    for question in questions():
        if question.key in marked and is_asked(question, kept):
            value = found.get(question.key, UNKNOWN if question.may_be_unknown else None)
            kept |= {} if value is None else {question.key: value}
    usual = with_defaults(kept, job_name(name))
    for key, value in found.items():
        there = usual.get(key, UNKNOWN if by_key()[key].may_be_unknown else "")
        if key not in kept and _said(key, value, usual) != _said(key, there, usual):
            kept[key] = value
    return {question.key: kept[question.key] for question in questions() if question.key in kept}


def _said(key: str, value: str, answers: Answers) -> str:
    """An answer in plain words, so that two ways of writing it are one."""
    return said(by_key()[key], value, answers) if value else ""


def answered(job: JobText, answers: Answers) -> JobText:
    """The job file after its answers changed; nothing else in it is touched.

    Raises:
        InputError: the file holds more in such a place than the questions can say.
    """
    before = _before(job) if job.text != START else _empty()
    text = changed_text(job.text, before, _facts(job, answers), job.name)
    return replace(job, text=text, answers=dict(answers))


def kept_in_file(job: JobText, answers: Answers, keys: Iterable[str]) -> dict[str, str]:
    """The answers, with those of some questions as they stand in the file or are usual.

    In a file that was begun with the survey, what is usual is not put into the answers: it stands
    in the file until the question is answered.
    """
    raw, known = read_toml(job.text, job.name), dict(answers)
    for key in keys:
        usual = "" if job.own else default_of(by_key()[key], known)
        value = answer_in(raw, key) or usual
        known |= {key: value} if value else {}
    return pruned(known)


def _before(job: JobText) -> Facts:
    """What the answers in the file made, and which were marked there as answered."""
    facts = _facts(job, job.answers)
    if not job.own:
        return facts
    return {**facts, MARKED: find(read_toml(job.text, job.name), MARKED)}


def _facts(job: JobText, answers: Answers) -> Facts:
    names = names_in(read_toml(job.text, job.name), job.name)
    facts = facts_of(answers, names, finished=job.own and LAST in answers)
    if not job.own:
        return facts
    # Where a change made more to ask, the last is left out: a bid then says how to go on.
    more = {LAST} if lacking(answers) else set()
    return {**facts, MARKED: [key for key in answers if key not in more]}


def _empty() -> Mapping[str, Any]:
    """What stands in a file that was only begun."""
    return facts_of({}, finished=False)
