"""Where the user's own books are kept: one folder a person, found without asking."""

from __future__ import annotations

import os
from pathlib import Path

HOME_VARIABLE = "ESTIMATOR_HOME"
"""Names another folder than the usual one; tests and reproducible runs use it."""
_NAME = "estimator"
_BOOKS = "books"
_METRIC = "metric"


def user_books() -> Path:
    """Find the user's folder of books, there or not: estimator/books among their settings."""
    home = os.environ.get(HOME_VARIABLE)
    if home:
        return Path(home).expanduser() / _BOOKS
    from platformdirs import user_config_path

    return user_config_path(_NAME, appauthor=False) / _BOOKS


def user_books_in(units: str, books: Path) -> Path:
    """Find the part of the user's books that a job in these units takes: metric ones lie inside."""
    return books / _METRIC if units == "metric" else books


def shown_folder(folder: Path) -> str:
    """Show a folder in full, with ~ for the user's home, so that no name of a person is in it."""
    try:
        return f"~/{folder.relative_to(Path.home()).as_posix()}"
    except (ValueError, RuntimeError):
        return folder.as_posix()
