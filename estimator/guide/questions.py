"""The list of questions as data: what is asked, of which kind, when, and where it is kept."""

from __future__ import annotations

import csv
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import Literal, cast

Answers = Mapping[str, str]
"""What was answered, by the key of the question, as text; `unknown` where nobody knows."""

Kind = Literal["text", "number", "length", "volume", "area", "choice", "yes-no", "date"]
UNKNOWN = "unknown"
NO_NAME = "1"
"""The job number where the job file has no name yet."""
LONGEST_TEXT = 200
YES_NO = {"yes": "yes", "no": "no"}


@dataclass(frozen=True, slots=True)
class Question:
    """One question of the survey, and one field of the form.

    Attributes:
        key: its short name. section: the part of the walk it belongs to.
        first: asked at first; the others only where the person wants to answer the rest.
        unit: said after a number, such as A.
        choices: written `value:words|value:words`, or `=name` of a list in `defaults`.
        default: the answer that Enter takes; `=name` is worked out by `defaults`; "" is none.
        may_be_unknown: `unknown` is an answer.
        path: where the answer stands in the job file; its first word names a table, such as
            `source` (the box that the run begins at) or `run` (the first run).
        when: conditions on other answers, joined with ` & `; "" is always.
        low, high: stand-ins for a rough price before it is answered; "" takes the default.
        help: what is meant, and where to measure.
    """

    key: str
    section: str
    first: bool
    ask: str
    kind: Kind
    unit: str
    choices: str
    default: str
    may_be_unknown: bool
    path: str
    when: str
    low: str
    high: str
    help: str


@cache
def questions() -> tuple[Question, ...]:
    """Every question, in the order they are asked: those of the first go before the rest."""
    text = files("estimator.guide").joinpath("data/questions.csv").read_text(encoding="utf-8")
    return tuple(_question(row) for row in csv.DictReader(text.splitlines()))


def _question(row: Mapping[str, str]) -> Question:
    return Question(
        key=row["key"],
        section=row["section"],
        first=row["level"] == "first",
        ask=row["ask"],
        kind=cast(Kind, row["kind"]),
        unit=row["unit"],
        choices=row["choices"],
        default=row["default"],
        may_be_unknown=row["unknown"] == "yes",
        path=row["path"],
        when=row["when"],
        low=row["low"],
        high=row["high"],
        help=row["help"],
    )


@cache
def by_key() -> Mapping[str, Question]:
    """Every question, by its key."""
    return {question.key: question for question in questions()}


def listed(choices: str) -> dict[str, str]:
    """Values and their words, from the way a row writes them.

    >>> listed("re-set:the piece goes back|mesh:mesh")
    {'re-set': 'the piece goes back', 'mesh': 'mesh'}
    """
    pairs = (each.partition(":") for each in choices.split("|") if each)
    return {value: words or value for value, _, words in pairs}
