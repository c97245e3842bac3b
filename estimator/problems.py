"""What was wrong with the input: one record a problem, one error that carries them all."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing a person has to put right.

    Attributes:
        where: file and place as the person sees it ("job.toml: line 12, walls[0].length").
        read: what was found there, in words (12-6 may be 12'-6" or 12 less 6).
        write: what to write instead (Write 12'-6" or 150 in).
    """

    where: str
    read: str
    write: str = ""

    def __str__(self) -> str:
        """Two lines: the place and what was read; what to do, indented."""
        head = f"{self.where}: {self.read}"
        return f"{head}\n  {self.write}" if self.write else head


class InputError(Exception):
    """Raised once for a file or a job, with every problem found in it."""

    def __init__(self, problems: Iterable[Problem]) -> None:
        self.problems: tuple[Problem, ...] = tuple(problems)
        super().__init__("\n".join(str(problem) for problem in self.problems))
