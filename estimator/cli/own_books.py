"""The user's own books, for every command that prices something."""

from __future__ import annotations

from contextvars import ContextVar
from pathlib import Path

from estimator.user_folder import user_books

_LEFT_ASIDE: ContextVar[bool] = ContextVar("left_aside", default=False)


def leave_aside(asked: bool) -> None:
    """Keep in mind whether --no-user-books was typed; set anew by each run of the program."""
    _LEFT_ASIDE.set(asked)


def own_books() -> Path | None:
    """Find the user's folder of books; None where --no-user-books leaves it aside."""
    return None if _LEFT_ASIDE.get() else user_books()
