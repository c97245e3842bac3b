"""Books in levels: those that come along, the user's, those beside the job; the nearest wins."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from estimator.catalog.books import BookFile, read_books
from estimator.catalog.records import Books
from estimator.catalog.shipped import BOOK_FILES, Units, shipped_catalogs
from estimator.catalog.shop import Layer
from estimator.user_folder import shown_folder, user_books_in


@dataclass(frozen=True, slots=True)
class Level:
    """A folder that may hold books.

    Attributes:
        shown: what the folder is called in problems and on sheets; empty for its own name.
        whole: the folder was asked for by name, so a book that is missing in it is an error.
        files: files that take the place of those in the folder, by book.
    """

    folder: Path
    shown: str = ""
    whole: bool = False
    files: Mapping[str, Path] = field(default_factory=dict)

    def book(self, book: str) -> BookFile | None:
        """Find one book of this level; None where it has none."""
        if book in self.files:
            return BookFile(self.files[book])
        path = self.folder / BOOK_FILES[book]
        if not (self.whole or _is_there(path)):
            return None
        return BookFile(path, f"{self.shown}/{path.name}" if self.shown else "")


def own_levels(user: Path | None, units: Units) -> tuple[Level, ...]:
    """The level of the user's own folder; none where it is left aside."""
    if user is None:
        return ()
    folder = user_books_in(units, user)
    return (Level(folder, shown_folder(folder)),)


def read_levels(
    levels: Sequence[Level], units: Units = "us", *, layers: Sequence[Layer] = ()
) -> Books:
    """Read each book from the last level that has it, else the one that comes along.

    The settings of all levels are laid over each other and over those that come along, then
    `layers` over them.

    Raises:
        InputError: everything that is wrong in any of the books.
    """
    shops = tuple(_found(levels, "shop"))
    books = ("materials", "labor", "accounts")
    nearest = {book: each for book in books for each in _found(levels, book)}
    if shops:
        nearest["shop"] = shops[-1]
    return read_books(
        shipped_catalogs(units), layers=layers, files=nearest, below=shops[:-1], units=units
    )


def read_own(chosen: Path | None, user: Path | None, units: Units = "us") -> Books:
    """Read the books that hold for no job in particular: those chosen, else the user's own.

    Raises:
        InputError: everything that is wrong in any of the books.
    """
    levels = own_levels(user, units) if chosen is None else (Level(chosen, whole=True),)
    return read_levels(levels, units)


def _found(levels: Sequence[Level], book: str) -> Iterator[BookFile]:
    """Walk the levels that have a book."""
    for level in levels:
        file = level.book(book)
        if file is not None:
            yield file


def _is_there(path: Path) -> bool:
    """Tell whether anything has this name; what may not be looked at is there, and is told."""
    try:
        path.lstat()
    except (FileNotFoundError, NotADirectoryError):
        return False
    except OSError:
        return True
    return True
