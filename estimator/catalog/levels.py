"""Books in levels: those that come along, the user's, those beside the job; the nearest wins."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import NamedTuple

from estimator.catalog.books import BookFile, read_books, read_settings
from estimator.catalog.records import Books
from estimator.catalog.shipped import BOOK_FILES, WORDS_FILE, Units, shipped_catalogs
from estimator.catalog.shop import Layer
from estimator.catalog.words import read_language
from estimator.settings import Shop
from estimator.user_folder import shown_folder, user_books_in

_NEAREST = ("materials", "labor", "accounts")
"""Books of which the nearest alone is read; settings are read from all levels."""


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

    def words(self) -> BookFile | None:
        """Find the list of words of this level; None where it has none, which is never wrong."""
        path = self.folder / WORDS_FILE
        if not _is_there(path):
            return None
        return BookFile(path, f"{self.shown}/{path.name}" if self.shown else "")

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
    return read_found(find_books(levels), units, layers)


class FoundBooks(NamedTuple):
    """Which file each book is read from; equal where the same files are read.

    Attributes:
        shops: files of settings, the nearest last. nearest: the other books that were found.
        words: lists of words, the nearest last.
    """

    shops: tuple[BookFile, ...]
    nearest: tuple[tuple[str, BookFile], ...]
    words: tuple[BookFile, ...] = ()


def find_books(levels: Sequence[Level]) -> FoundBooks:
    """Look for the books in all levels; nothing is read."""
    nearest = {book: each for book in _NEAREST for each in _found(levels, book)}
    words = tuple(file for level in levels if (file := level.words()) is not None)
    return FoundBooks(tuple(_found(levels, "shop")), tuple(nearest.items()), words)


def read_found(found: FoundBooks, units: Units = "us", layers: Sequence[Layer] = ()) -> Books:
    """Read books that were found; as `read_levels`."""
    files = dict(found.nearest)
    if found.shops:
        files["shop"] = found.shops[-1]
    books = read_books(
        shipped_catalogs(units), layers=layers, files=files, below=found.shops[:-1], units=units
    )
    return replace(books, language=read_language(books.shop.terms.language, found.words))


def settings_over(found: FoundBooks, units: Units, layers: Sequence[Layer]) -> Shop:
    """Read the settings of books that were found, with `layers` over them.

    Raises:
        InputError: everything that is wrong in them.
    """
    shops = found.shops or (BookFile(shipped_catalogs(units) / BOOK_FILES["shop"]),)
    return read_settings(shops, layers, units)


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
