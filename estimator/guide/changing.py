"""One answer changed: the answers by number, the change as it was typed, and what it does."""

from __future__ import annotations

import difflib
from collections.abc import Iterator
from dataclasses import dataclass
from textwrap import wrap

from estimator.guide.checked import problem_of
from estimator.guide.defaults import is_asked, say_here
from estimator.guide.facts import pruned
from estimator.guide.questions import Answers, Question, by_key, questions
from estimator.guide.session import INDENT, WIDTH
from estimator.guide.typed import AnswerRefused, read_answer, said

NOT_ANSWERED = "not answered"


@dataclass(frozen=True, slots=True)
class Change:
    """Answers after one was changed.

    Attributes:
        lines: the change in words, before and after.
        missing: questions that are asked only since the change, without an answer.
    """

    answers: dict[str, str]
    lines: tuple[str, ...]
    missing: tuple[str, ...]


def numbered(answers: Answers) -> tuple[Question, ...]:
    """Every question that this job may answer, in the order of their numbers."""
    return tuple(each for each in questions() if is_asked(each, answers))


def answers_shown(answers: Answers) -> list[str]:
    """The answers with number, key and words, part by part."""
    lines: list[str] = []
    section = ""
    for number, question in enumerate(numbered(answers), start=1):
        if question.section != section:
            section = question.section
            lines += ["", section]
        lines += _row(number, question, answers)
    return lines


def _row(number: int, question: Question, answers: Answers) -> list[str]:
    head = f"{number:3}  {question.key:16}  "
    text = _words(question, answers)
    return wrap(head + text, WIDTH, subsequent_indent=" " * len(head), drop_whitespace=True) or []


def _words(question: Question, answers: Answers) -> str:
    there = answers.get(question.key)
    return NOT_ANSWERED if there is None else said(question, there, answers)


def change_of(answers: Answers, typed: str, shown: Answers | None = None) -> tuple[str, str | None]:
    """The key and the new value that were typed; no value where only a number or key was.

    Args:
        answers: as they stand.
        typed: a number or a key, or key=value.
        shown: the answers whose numbers were shown, where others were changed since.

    Raises:
        AnswerRefused: no such answer.
    """
    name, equals, value = typed.partition("=")
    key, asked = name.strip(), numbered(answers if shown is None else shown)
    if key.isascii() and key.isdigit() and 0 < int(key) <= len(asked):
        key = asked[int(key) - 1].key
    if key not in by_key():
        near = difflib.get_close_matches(key, list(by_key()), n=1)
        guess = f"Did you mean {near[0]}? " if near else ""
        write = f"{guess}Write a number from 1 to {len(asked)}, or key=value."
        raise AnswerRefused(f'There is no answer "{key}".', write)
    if not is_asked(by_key()[key], answers):
        write = f"It hangs on: {by_key()[key].when}."
        raise AnswerRefused(f"{key} is not asked in this job.", write)
    return key, value.strip() if equals else None


def new_answers(answers: Answers, key: str, value: str) -> Change:
    """The answers with one of them changed.

    Raises:
        AnswerRefused: the value does not fit, or not to the other answers.
    """
    question = by_key()[key]
    if not value:
        raise AnswerRefused(f"{key} was given no value.", f"Write {key}=value, or its number.")
    answer = read_answer(question, value, answers)
    after = pruned({**answers, key: answer.value})
    problem = problem_of(after, key)
    if problem is not None:
        raise problem
    fresh = [each for each in numbered(after) if not is_asked(each, answers)]
    missing = tuple(each.key for each in fresh if each.first and each.key not in after)
    return Change(after, tuple(_told(question, answers, after)), missing)


def _told(question: Question, before: Answers, after: Answers) -> Iterator[str]:
    yield from wrap(say_here(after)(question.ask), WIDTH)
    yield from _indented("before: ", _words(question, before))
    yield from _indented("after:  ", _words(question, after))
    for key in before:
        if key not in after:
            there = said(by_key()[key], before[key], before)
            yield from _indented("no longer asked: ", f"{key} ({there})")


def _indented(head: str, text: str) -> list[str]:
    first = f"{INDENT}{head}"
    return wrap(first + text, WIDTH, subsequent_indent=" " * len(first))
