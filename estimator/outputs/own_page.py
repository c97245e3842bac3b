"""Pages of this tool: marked, so that only a page nobody has changed is replaced unasked."""

from __future__ import annotations

import os
import re
from hashlib import sha256
from pathlib import Path

from estimator.files import replace_file
from estimator.problems import InputError, Problem

_MARK = re.compile(r'<meta name="generator" content="estimator page ([0-9a-f]{16}|-)">')
UNMARKED = '<meta name="generator" content="estimator page -">'
_WRITE = "Choose another name, or replace it with --replace."
_DIGITS = 16
_MOST_BYTES = 20_000_000


def marked(page: str) -> str:
    """Write the page's own sum into its mark."""
    return page.replace(UNMARKED, UNMARKED.replace(" -", f" {_sum(page)}"), 1)


def is_own_page(path: Path) -> bool:
    """Say whether a file is a page as this tool wrote it."""
    try:
        if path.stat().st_size > _MOST_BYTES:
            return False
        text = path.read_bytes().decode("utf-8")
    except (OSError, UnicodeDecodeError):
        return False
    found = _MARK.search(text)
    if found is None:
        return False
    return found.group(1) == _sum(text[: found.start()] + UNMARKED + text[found.end() :])


def _sum(page: str) -> str:
    return sha256(page.encode()).hexdigest()[:_DIGITS]


def write_page(path: Path, page: str, *, replace: bool) -> None:
    """Write a page in one step where nothing of anybody's own is lost.

    Raises:
        InputError: the file is not this tool's to replace, or it cannot be written.
    """
    if not replace and os.path.isfile(path) and not is_own_page(path):  # noqa: PTH113 - never raises
        read = "this file is there already, and is not a page as this tool wrote it."
        raise InputError([Problem(str(path), read, _WRITE)])
    replace_file(path, page.encode())
