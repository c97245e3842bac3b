"""Problems with the input, for the terminal."""

from __future__ import annotations

from collections.abc import Sequence

from estimator.outputs.text_layout import counted, wrapped
from estimator.problems import Problem

MOST_SHOWN = 50


def problems_text(problems: Sequence[Problem]) -> list[str]:
    """List the problems, at most the first 50, with a closing line that counts them."""
    shown = [line for problem in problems[:MOST_SHOWN] for line in problem_lines(problem)]
    more = len(problems) - MOST_SHOWN
    left = f", {more} of them not shown here" if more > 0 else ""
    closing = f"{counted(len(problems), 'problem')}{left}. Put it right and run this again."
    return [*shown, "", *wrapped(closing)]


def problem_lines(problem: Problem) -> list[str]:
    """Say where and what was read; below it, indented, what to write instead."""
    head = wrapped(f"{problem.where}: {problem.read}", rest="    ")
    return [*head, *wrapped(problem.write, first="  ")]
