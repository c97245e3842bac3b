"""Finds and reads the books that price a job."""

from __future__ import annotations

from pathlib import Path

from estimator.catalog.records import Books
from estimator.survey.reader import JobFile
from estimator.survey.records import BookFiles, Survey

_BOOKS = ("materials", "labor", "shop", "accounts")


def books_for(job: JobFile, chosen: Path | None = None) -> Books:
    """Read a job's books: the folder asked for, else the one the job names, else the shipped.

    Files that the job names one by one go before those of the folder; its [settings] are laid
    over the shop's. Paths in a job are relative to the job file.

    Raises:
        InputError: with every problem of the books.
    """
    from estimator.catalog.books import read_books
    from estimator.catalog.shipped import shipped_catalogs
    from estimator.catalog.shop import Layer

    survey, named, here = job.survey, job.survey.books, job.path.parent
    folder = chosen or _folder(named, here) or _shipped(survey, shipped_catalogs())
    files = {
        book: here / getattr(named, book) for book in _BOOKS if getattr(named, book) is not None
    }
    layers: tuple[Layer, ...] = ()
    if survey.settings:
        layers = (Layer(str(job.path), survey.settings, job.text, ("settings",)),)
    return read_books(folder, layers=layers, files=files)


def _folder(named: BookFiles, here: Path) -> Path | None:
    return None if named.folder is None else here / named.folder


def _shipped(survey: Survey, shipped: Path) -> Path:
    return shipped / "metric" if survey.job.units == "metric" else shipped
