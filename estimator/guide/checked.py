"""Answers held against each other: a whole job is made of them with stand-ins, and read."""

from __future__ import annotations

from typing import Literal

from estimator.guide.defaults import is_asked, stand_in
from estimator.guide.facts import job_from, pruned
from estimator.guide.questions import Answers, questions
from estimator.guide.typed import AnswerRefused
from estimator.problems import InputError
from estimator.survey.reader import survey_from
from estimator.survey.records import Survey

Guess = Literal["low", "high"]


def filled(answers: Answers, guess: Guess) -> dict[str, str]:
    """The answers, with a stand-in for each first question that has none."""
    known = dict(answers)
    for question in questions():
        if question.first and question.key not in known and is_asked(question, known):
            wanted = question.low if guess == "low" else question.high
            value = stand_in(question, known, wanted)
            if value:
                known[question.key] = value
    return known


def survey_of(answers: Answers, guess: Guess) -> Survey:
    """A survey of the answers so far, stand-ins in the place of the rest.

    Raises:
        InputError: the answers do not go together.
    """
    return survey_from(job_from(filled(answers, guess)))


def problem_of(answers: Answers, key: str) -> AnswerRefused | None:
    """Why the last answer does not go with the others; None where it does.

    What was wrong before the answer came is not its fault.
    """
    found = _problem(answers, "low")
    if found is None:
        return None
    others = pruned({name: value for name, value in answers.items() if name != key})
    return None if _problem(others, "low") else found


def _problem(answers: Answers, guess: Guess) -> AnswerRefused | None:
    try:
        survey_of(answers, guess)
    except InputError as error:
        first = error.problems[0]
        return AnswerRefused(f"{first.read[:1].upper()}{first.read[1:]}.", first.write)
    return None
