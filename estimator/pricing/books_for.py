"""Finds and reads the books that price a job."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from estimator.catalog.records import Books
from estimator.survey.reader import JobFile

if TYPE_CHECKING:
    from estimator.catalog.levels import Level
    from estimator.catalog.shop import Layer

_BOOKS = ("materials", "labor", "shop", "accounts")


def books_for(job: JobFile, chosen: Path | None = None, user: Path | None = None) -> Books:
    """Read a job's books, each from the nearest place: beside the job, the user's, the shipped.

    Settings of all places are laid over each other, and the job's [settings] over them. Paths
    in a job are relative to the job file.

    Args:
        job: its files named one by one go before those of a folder that it names, which stands
            in the place of the folder that the job is in.
        chosen: a folder that stands in the place of the user's and the job's.
        user: the user's own books; None leaves them aside.

    Raises:
        InputError: with every problem of the books.
    """
    from estimator.catalog.levels import read_levels

    return read_levels(levels_for(job, chosen, user), job.survey.job.units, layers=layers_of(job))


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
