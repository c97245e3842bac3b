"""The survey at a terminal: questions one by one, each answer saved to the job file at once."""

from __future__ import annotations

import shlex
import sys
from contextlib import suppress
from pathlib import Path
from typing import TYPE_CHECKING

from estimator.cli.terminal import STOPPED, WRONG_USAGE, say, tell
from estimator.problems import InputError, Problem

if TYPE_CHECKING:
    from estimator.catalog.records import Books
    from estimator.guide.job_text import JobText
    from estimator.guide.questions import Answers
    from estimator.guide.session import State

USUAL = "my-job.toml"
SUFFIX = ".toml"
NO_TERMINAL = f"""\
The questions need a terminal to type in. Fill in a file instead:
  estimator survey --template > {USUAL}
  (change it with any text editor)
  estimator bid {USUAL}"""


def talk(path: Path, books_folder: Path | None) -> None:
    """Ask what is not answered yet, and say what to type next.

    Raises:
        InputError: the file is no job file, or cannot be written.
    """
    from estimator.guide.places import job_name
    from estimator.guide.session import begin

    need_terminal()
    job = open_job(path)
    state = begin(job.answers, job_name(job.name))
    say(_opening(path, state))
    _ask_all(path, job, state, books_folder)


def need_terminal() -> None:
    """End with a word on what to do instead where nobody can type."""
    if not (sys.stdin.isatty() and sys.stdout.isatty()):
        tell([NO_TERMINAL])
        sys.exit(WRONG_USAGE)
    with suppress(ImportError):
        import readline  # noqa: F401  (arrow keys and corrections on the line)


def open_job(path: Path) -> JobText:
    """Read a job file, or begin one where there is none."""
    from estimator.guide.job_text import job_text, new_job
    from estimator.text_files import read_text

    if path.suffix.lower() != SUFFIX:
        read, write = "the survey keeps a job file, a text.", f"Name it such as {USUAL}."
        raise InputError([Problem(str(path), read, write)])
    if not path.exists():
        return new_job(str(path))
    return job_text(read_text(path, str(path)), str(path))


def save(path: Path, job: JobText) -> None:
    """Put the job file in its place in one step."""
    from estimator.files import replace_file

    replace_file(path, job.text.encode("utf-8"))


def _opening(path: Path, state: State) -> list[str]:
    """What a person reads first: where the answers go, and the words that always work."""
    from estimator.guide.session import COMMANDS

    if state.key is None:
        return []
    begun = f"Going on with {path}: {len(state.answers)} answers are there."
    head = begun if state.answers else f"A survey for {path}. Every answer is saved there at once."
    return [head, *COMMANDS]


def _ask_all(path: Path, job: JobText, state: State, books_folder: Path | None) -> None:
    from estimator.guide.session import asking, prompt, reply

    rough = _Rough(path, books_folder)
    while state.key is not None:
        say(asking(state))
        line = _typed(prompt(state), path)
        state, lines = reply(state, line)
        if state.stopped:
            say(_how_to_go_on(path))
            return
        if state.answers != job.answers:
            job = saved(path, job, state.answers)
            lines = [*lines, *rough.lines(job)]
        if lines:
            say(lines)
    say(_end(path, state))


def saved(path: Path, job: JobText, answers: Answers) -> JobText:
    """The job file with its new answers, in its place on the disk."""
    from estimator.guide.job_text import answered

    job = answered(job, answers)
    save(path, job)
    return job


def _typed(shown: str, path: Path) -> str:
    """One line; the end of input and Ctrl-C end the survey, with nothing lost."""
    try:
        return input(shown)
    except EOFError:
        say(["", *_how_to_go_on(path)])
        sys.exit(0)
    except KeyboardInterrupt:
        say(["", *_how_to_go_on(path)])
        sys.exit(STOPPED)


def command(word: str, path: Path) -> str:
    """A command to type, with a name that a shell reads as one word."""
    return f"estimator {word} {shlex.quote(str(path))}"


def _how_to_go_on(path: Path) -> list[str]:
    return ["Stopped. Every answer is saved. To go on, type:", f"  {command('survey', path)}"]


def _end(path: Path, state: State) -> list[str]:
    """What is done, what is not known, and the next command to type."""
    from estimator.guide.session import unknown_count

    count = unknown_count(state.answers)
    unknown = [f"{count} answers are unknown; the bid says what was assumed."] if count else []
    return [
        "",
        f"All questions are answered: {path}",
        *unknown,
        "To change an answer, or to answer the rest (more=yes):",
        f"  {command('survey --edit', path)}",
        "Next, the price and the workbook:",
        f"  {command('bid', path)}",
    ]


class _Rough:
    """Says a rough price after each answer, where it has changed."""

    def __init__(self, path: Path, folder: Path | None) -> None:
        self._path, self._folder = path, folder
        self._books: dict[str, Books] = {}
        self._last = ""

    def lines(self, job: JobText) -> list[str]:
        """The rough price on what is known; nothing where it stays the same."""
        from estimator.guide.defaults import value_of
        from estimator.guide.rough import FROM_ANSWERS, rough_price
        from estimator.money import show_money

        if len(job.answers) < FROM_ANSWERS:
            return []
        try:
            rough = rough_price(job.answers, self._read(job))
        except InputError:  # books or a file that do not fit: the bid will say what is wrong
            return []
        if rough is None:
            return []
        locale = value_of("locale", job.answers)
        low, high = (show_money(each, rough.currency, locale) for each in (rough.low, rough.high))
        line = f"  Rough price so far: {low} to {high}"
        fresh, self._last = line != self._last, line
        return [line] if fresh else []

    def _read(self, job: JobText) -> Books:
        """The books, read once for each system of units."""
        from estimator.cli.own_books import own_books
        from estimator.guide.checked import survey_of
        from estimator.pricing.books_for import books_for
        from estimator.survey.reader import JobFile

        survey = survey_of(job.answers, "low")
        units = survey.job.units
        if units not in self._books:
            file = JobFile(self._path, job.text, survey, ())
            self._books[units] = books_for(file, self._folder, own_books())
        return self._books[units]
