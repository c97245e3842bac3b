"""Kinds of job file besides TOML text, each with the function that reads it."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from estimator.survey.reader import JobFile

_READERS: dict[str, Callable[[Path], JobFile]] = {}


def read_kind(suffix: str, reader: Callable[[Path], JobFile]) -> None:
    """Have job files whose name ends so read by a room above this one."""
    _READERS[suffix] = reader


def reader_of(path: Path) -> Callable[[Path], JobFile] | None:
    """The reader of a file that is no TOML text; None for all others."""
    return _READERS.get(path.suffix.lower())
