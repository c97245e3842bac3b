"""What the sheet of questions says of each: number, choices, condition, and what blank means."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from estimator.guide.defaults import WORKED, choices_of
from estimator.guide.questions import UNKNOWN, Question, questions

HEADS = (
    "No.", "Question", "Answer", "Unit", "If left blank", "What it means, and where to measure",
)  # fmt: skip
NUMBER, QUESTION, ANSWER, _, BLANK, _ = (head.lower() for head in HEADS)
NUMBERS = {question.key: number for number, question in enumerate(questions(), start=1)}
_WORKED_OUT = "worked out"
_SYSTEMS = ("us", "metric")


@cache
def choices_for(question: Question) -> Mapping[str, str]:
    """Every word that a question may be answered with in any job, each with what it means."""
    found: dict[str, str] = {}
    for units in _SYSTEMS:
        found |= choices_of(question, {"units": units})
    return found | ({UNKNOWN: UNKNOWN} if found and question.may_be_unknown else {})


def shown_default(question: Question) -> str:
    """What is taken where a question has no answer, in a few words."""
    if question.default.startswith("="):
        name = question.default.removeprefix("=")
        return _WORKED_OUT if name in WORKED else f"as No. {NUMBERS[name]}"
    if question.default or not is_needed(question):
        return question.default
    return "needed"


def is_needed(question: Question) -> bool:
    """True where a job cannot be without the answer, if the question is asked."""
    return question.first and not question.default and not question.may_be_unknown


def asked_when(question: Question) -> str:
    """When a question is asked, by the numbers of others; empty for always."""
    return ", ".join(_condition(each) for each in question.when.split(" & ") if each)


def _condition(condition: str) -> str:
    key, _, wanted = condition.partition("=")
    verb = "is not" if key.endswith("!") else "is"
    return f"if No. {NUMBERS[key.removesuffix('!')]} {verb} {wanted.replace('|', ' or ')}"


def meaning(question: Question) -> str:
    """The help of a question, with what its words mean."""
    words = [f"{word}: {said}" for word, said in choices_for(question).items() if said != word]
    return " ".join([question.help, *(f"{'; '.join(words)}." for _ in words[:1])])
