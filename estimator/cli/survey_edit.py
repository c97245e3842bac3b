"""`estimator survey --edit`: the answers by number, and some of them changed in the job file."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from estimator.cli.survey_talk import command, open_job, saved
from estimator.cli.terminal import say
from estimator.problems import InputError, Problem

if TYPE_CHECKING:
    from estimator.guide.changing import Change
    from estimator.guide.job_text import JobText
    from estimator.guide.questions import Answers

ASK = "Which one? (its number, or key=value; Enter leaves all as it is)"


def edit_job(path: Path, changes: Sequence[str]) -> None:
    """Change answers, each named by its number or as key=value; without any, show them all.

    Where one of them does not fit, none is changed.

    Raises:
        InputError: no such file or answer, or a value that does not fit.
    """
    if not path.exists():
        write = f"Begin one: {command('survey', path)}"
        raise InputError([Problem(str(path), "there is no such job file.", write)])
    job = open_job(path)
    if not changes:
        chosen = _chosen(job, path)
        changes = [chosen] if chosen else []
    if changes:
        _change(job, path, changes)


def _chosen(job: JobText, path: Path) -> str:
    """Show the answers; at a terminal, ask for the one to change."""
    from estimator.guide.changing import answers_shown

    say(answers_shown(job.answers))
    if not _at_terminal():
        say(["", "To change one:", f"  {command('survey --edit', path)} KEY=VALUE"])
        return ""
    say(["", ASK])
    return _typed("> ")


def _at_terminal() -> bool:
    return sys.stdin.isatty() and sys.stdout.isatty()


def _typed(shown: str) -> str:
    try:
        return input(shown).strip()
    except EOFError:
        return ""


def _change(job: JobText, path: Path, typed: Sequence[str]) -> None:
    from estimator.guide.job_text import kept_in_file
    from estimator.guide.typed import AnswerRefused

    answers, lines, fresh = job.answers, list[str](), list[str]()
    for each in typed:
        try:
            change = _one_change(job, answers, each)
        except AnswerRefused as refused:
            raise InputError([Problem(str(path), refused.read, refused.write)]) from None
        lines += change.lines
        fresh += change.missing
        answers = kept_in_file(job, change.answers, change.missing)
    after = saved(path, job, answers)
    say([*lines, *_next(after, path, [key for key in fresh if key not in answers])])


def _one_change(job: JobText, answers: Answers, typed: str) -> Change:
    from estimator.guide.changing import change_of, new_answers

    key, value = change_of(answers, typed, job.answers)
    if value is None:
        value = _asked(replace(job, answers=answers), key)
    return new_answers(answers, key, value)


def _asked(job: JobText, key: str) -> str:
    """Ask the question of one answer again; Enter keeps what is there."""
    from estimator.guide.places import job_name
    from estimator.guide.session import State, asking, explained, offered, prompt

    state = State(job.answers, key, job=job_name(job.name))
    if not _at_terminal():
        return offered(state)
    say(asking(state))
    typed = _typed(prompt(state))
    while typed == "?":
        say(explained(state))
        typed = _typed(prompt(state))
    return typed or offered(state)


def _next(job: JobText, path: Path, fresh: Sequence[str]) -> list[str]:
    """The next command to type; `fresh` are questions that are asked only since the change."""
    from estimator.guide.facts import lacking
    from estimator.guide.session import next_key

    asks, bids = f"  {command('survey', path)}", f"  {command('bid', path)}"
    if lacking(job.answers) and (fresh or job.own):
        return ["Saved. Now more is asked; to answer it:", asks]
    if not (fresh or (job.own and next_key(job.answers))):
        return ["Saved. To see the price:", bids]
    usual = "Saved. Now more is asked; to answer it, where the usual is not right:"
    return [usual, asks, "To see the price:", bids]
