"""What reaches the terminal: results on stdout, messages on stderr, and the exit codes."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from pathlib import Path

from estimator.files import cannot_write
from estimator.problems import InputError, Problem

BAD_INPUT = 1
WRONG_USAGE = 2
STOPPED = 130
READER_LEFT = 141


def say(lines: Iterable[str]) -> None:
    """Print a result on stdout.

    Raises:
        InputError: stdout is a file that cannot take it (a full disk).
        BrokenPipeError: the program that read the result has ended.
    """
    try:
        print("\n".join(lines), flush=True)
    except BrokenPipeError:
        _drop_stdout()
        raise
    except OSError as error:
        _drop_stdout()
        raise cannot_write(Path("standard output"), error) from None


def tell(lines: Iterable[str]) -> None:
    """Print a message on stderr; nothing where there is none."""
    message = "\n".join(lines)
    if message:
        print(message, file=sys.stderr, flush=True)


def _drop_stdout() -> None:
    """Send what is still buffered nowhere, so that the end of the program says no more of it."""
    nowhere = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nowhere, sys.stdout.fileno())
    os.close(nowhere)


@contextmanager
def told(*, as_json: bool = False) -> Iterator[None]:
    """Turn bad input, Ctrl-C and a pipe that closed into a message and an exit code."""
    try:
        yield
    except InputError as error:
        complain(error.problems)
        if as_json:
            _say_problems(error.problems)
        sys.exit(BAD_INPUT)
    except KeyboardInterrupt:
        tell(["Stopped."])
        sys.exit(STOPPED)
    except BrokenPipeError:
        sys.exit(READER_LEFT)


def complain(problems: tuple[Problem, ...]) -> None:
    """Print the problems on stderr, the first of them where there are very many."""
    from estimator.outputs.text_problems import problems_text

    tell(problems_text(problems))


def _say_problems(problems: tuple[Problem, ...]) -> None:
    from estimator.outputs.json_out import problems_json

    say([problems_json(problems)])
