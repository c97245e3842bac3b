"""Where the books and samples that come with the tool are, and how to copy the books."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Literal

from estimator.files import replace_file
from estimator.problems import InputError, Problem
from estimator.text_files import read_bytes

BOOK_FILES = {
    "materials": "materials.csv",
    "labor": "labor.csv",
    "shop": "shop.toml",
    "accounts": "accounts.csv",
}
WORDS_FILE = "words.csv"
"""The list of words in other languages; one for all units, and every level may add to it."""
Units = Literal["us", "metric"]
_PACKAGE = Path(__file__).resolve().parent.parent


def shipped_catalogs(units: Units = "us") -> Path:
    """Find the folder of the shipped books: in the installed package, or in a checkout."""
    folder = _shipped("catalogs")
    return folder / "metric" if units == "metric" else folder


def shipped_samples() -> Path:
    """Find the folder of the sample jobs: in the installed package, or in a checkout."""
    return _shipped("samples")


@cache
def _shipped(name: str) -> Path:
    """Find a shipped folder."""
    installed = _PACKAGE / "shipped" / name
    return installed if installed.is_dir() else _PACKAGE.parent / name


def copy_books(target: Path, units: Units = "us") -> tuple[Path, ...]:
    """Copy the shipped books into a folder, for the user to edit.

    The folder is made where it is missing. Nothing is written if one of the files is there.

    Returns:
        The new files.

    Raises:
        InputError: a file is there already, or the folder cannot be written.
    """
    problems = list(_in_the_way(target))
    if problems:
        raise InputError(problems)
    source = shipped_catalogs(units)
    books = {name: read_bytes(source / name, name) for name in BOOK_FILES.values()}
    books[WORDS_FILE] = read_bytes(shipped_catalogs() / WORDS_FILE, WORDS_FILE)
    try:
        target.mkdir(parents=True, exist_ok=True)
    except OSError:
        read = "this folder cannot be made."
        raise InputError([Problem(str(target), read, "Choose another folder.")]) from None
    for name, book in books.items():
        replace_file(target / name, book)
    return tuple(target / name for name in books)


def _in_the_way(target: Path) -> Iterator[Problem]:
    """Find files that a copy would overwrite."""
    for name in (*BOOK_FILES.values(), WORDS_FILE):
        if (target / name).exists() or (target / name).is_symlink():
            write = "Choose another folder, or move this file away first."
            yield Problem(str(target / name), "is there already and was left as it is.", write)
