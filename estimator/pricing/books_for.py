"""Finds and reads the books that price a job."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from estimator.catalog.records import Books
from estimator.survey.reader import JobFile

if TYPE_CHECKING:
    from estimator.catalog.levels import Level
    from estimator.catalog.shop import Layer
    from estimator.language import Language, LanguageCode

ASKED = "the command line"
_BOOKS = ("materials", "labor", "shop", "accounts")


def books_for(
    job: JobFile,
    chosen: Path | None = None,
    user: Path | None = None,
    *,
    language: str = "",
) -> Books:
    """Read a job's books, each from the nearest place: beside the job, the user's, the shipped.

    Settings of all places are laid over each other, and the job's [settings] over them. Paths
    in a job are relative to the job file.

    Args:
        job: its files named one by one go before those of a folder that it names, which stands
            in the place of the folder that the job is in.
        chosen: a folder that stands in the place of the user's and the job's.
        user: the user's own books; None leaves them aside.
        language: what the customer reads, whatever the settings say; empty leaves it to them.

    Raises:
        InputError: with every problem of the books.
    """
    from estimator.catalog.levels import read_levels
    from estimator.catalog.shop import Layer

    asked = (Layer(ASKED, {"terms": {"language": language}}),) if language else ()
    layers = (*layers_of(job), *asked)
    return read_levels(levels_for(job, chosen, user), job.survey.job.units, layers=layers)


def language_for(
    job: JobFile, code: LanguageCode, chosen: Path | None, user: Path | None
) -> Language:
    """Give a language with the words that a job takes: the user's over those that come along.

    Raises:
        InputError: everything that is wrong in the lists of words.
    """
    from estimator.catalog.levels import find_books
    from estimator.catalog.words import read_language

    return read_language(code, find_books(levels_for(job, chosen, user)).words)


def levels_for(job: JobFile, chosen: Path | None, user: Path | None) -> tuple[Level, ...]:
    """Where the books of a job may be, the nearest last."""
    from estimator.catalog.levels import Level, own_levels

    named, here = job.survey.books, job.path.parent
    files = {
        book: here / getattr(named, book) for book in _BOOKS if getattr(named, book) is not None
    }
    if chosen is not None:
        return (Level(chosen, whole=True, files=files),)
    folder = here if named.folder is None else here / named.folder
    nearest = Level(folder, whole=named.folder is not None, files=files)
    return (*own_levels(user, job.survey.job.units), nearest)


def layers_of(job: JobFile) -> tuple[Layer, ...]:
    """The settings of the job alone."""
    from estimator.catalog.shop import Layer

    if not job.survey.settings:
        return ()
    return (Layer(str(job.path), job.survey.settings, job.text, ("settings",), job.cells),)
