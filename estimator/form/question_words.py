"""What the sheet of questions says of each: number, choices, condition, and what blank means."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from estimator.guide.defaults import WORKED, choices_of, say_here, value_of
from estimator.guide.questions import UNKNOWN, Answers, Question, questions

HEADS = (
    "No.", "Question", "Answer", "Unit", "If left blank", "What it means, and where to measure",
)  # fmt: skip
NUMBER, QUESTION, ANSWER, _, BLANK, _ = (head.lower() for head in HEADS)
NUMBERS = {question.key: number for number, question in enumerate(questions(), start=1)}
_WORKED_OUT = "worked out"
_SYSTEMS = ("us", "metric")
# What a bare number is, where nothing is known of the house, in inch houses, and in metric ones.
_UNITS = {
    "length": ("in, or mm", "in, or ft in", "mm"),
    "volume": ("in3, or cm3", "in3", "cm3"),
    "area": ("ft2, or m2", "ft2", "m2"),
    "date": ("year-month-day",) * 3,
}
ANYWHERE: Answers = MappingProxyType({})
"""What is known of the house (country, units, locale): nothing yet."""


def choices_for(question: Question, house: Answers = ANYWHERE) -> Mapping[str, str]:
    """Every word that a question may be answered with in a house, each with what it means.

    Where nothing is known of the house these are the words of every house.
    """
    say, found = say_here(house), dict[str, str]()
    for units in (value_of("units", house),) if house else _SYSTEMS:
        found |= choices_of(question, {**house, "units": units})
    local = {say(word): words for word, words in found.items()}
    return local | ({UNKNOWN: UNKNOWN} if found and question.may_be_unknown else {})


def unit_for(question: Question, house: Answers = ANYWHERE) -> str:
    """The unit of a bare number; empty where the answer has none."""
    if question.unit or question.kind not in _UNITS:
        return question.unit
    either, *each = _UNITS[question.kind]
    return each[_SYSTEMS.index(value_of("units", house))] if house else either


def shown_default(question: Question, house: Answers = ANYWHERE) -> str:
    """What is taken where a question has no answer, in a few words."""
    if question.default.startswith("="):
        name = question.default.removeprefix("=")
        return _WORKED_OUT if name in WORKED else f"as No. {NUMBERS[name]}"
    if question.default or not is_needed(question):
        return say_here(house)(question.default)
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


def meaning(question: Question, house: Answers = ANYWHERE) -> str:
    """The help of a question, with what its words mean."""
    choices = choices_for(question, house)
    words = [f"{word}: {said}" for word, said in choices.items() if said != word]
    told = say_here(house)(question.help)
    return " ".join([told, *(f"{'; '.join(words)}." for _ in words[:1])])
