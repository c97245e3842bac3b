"""`estimator survey --edit`: the answers by number, and one of them changed in the job file."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING

from estimator.cli.survey_talk import command, open_job, saved
from estimator.cli.terminal import say
from estimator.problems import InputError, Problem

if TYPE_CHECKING:
    from estimator.guide.changing import Change
    from estimator.guide.job_text import JobText

ASK = "Which one? (its number, or key=value; Enter leaves all as it is)"


def edit_job(path: Path, change: str) -> None:
    """Change one answer, named by its number or as key=value; without one, show them all.

    Raises:
        InputError: no such file or answer, or a value that does not fit.
    """
    if not path.exists():
        write = f"Begin one: {command('survey', path)}"
        raise InputError([Problem(str(path), "there is no such job file.", write)])
    job = open_job(path)
    if not change:
        change = _chosen(job, path)
    if change:
        _change(job, path, change)


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


def _change(job: JobText, path: Path, typed: str) -> None:
    from estimator.guide.changing import change_of, new_answers
    from estimator.guide.job_text import kept_in_file
    from estimator.guide.typed import AnswerRefused

    try:
        key, value = change_of(job.answers, typed)
        if value is None:
            value = _asked(job, key)
        change = new_answers(job.answers, key, value)
    except AnswerRefused as refused:
        raise InputError([Problem(str(path), refused.read, refused.write)]) from None
    answers = kept_in_file(job, change.answers, change.missing)
    say(_said(saved(path, job, answers), change, path))


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


def _said(job: JobText, change: Change, path: Path) -> list[str]:
    """The answer before and after, and the next command to type."""
    from estimator.guide.facts import lacking
    from estimator.guide.session import next_key

    asks, bids = f"  {command('survey', path)}", f"  {command('bid', path)}"
    fresh = [key for key in change.missing if key not in job.answers]
    if lacking(job.answers) and (fresh or job.own):
        return [*change.lines, "Saved. Now more is asked; to answer it:", asks]
    if not (fresh or (job.own and next_key(job.answers))):
        return [*change.lines, "Saved. To see the price:", bids]
    usual = "Saved. Now more is asked; to answer it, where the usual is not right:"
    return [*change.lines, usual, asks, "To see the price:", bids]
