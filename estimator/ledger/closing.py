"""Opens a close-out file with all that it goes by: its books, and the bid it names."""

from __future__ import annotations

from pathlib import Path

from estimator.catalog.levels import Level, own_levels, read_levels
from estimator.ledger.estimated import Closed
from estimator.ledger.reader import CloseOutFile, read_close_out
from estimator.pricing.books_for import books_for
from estimator.pricing.engine import estimate
from estimator.problems import InputError, Problem
from estimator.survey.reader import read_job

RATE_CURRENCY = "USD"
"""Currency of the rates per mile on file."""


def open_job(path: Path, books_folder: Path | None = None, user: Path | None = None) -> Closed:
    """Read a close-out file, the job file it names, and the books.

    Paths in the file are relative to it. Books are those asked for, else those it names, else
    those of its job file, or beside it; then the user's own, and those that come along.

    Raises:
        InputError: with every problem of the first of these files that has any.
    """
    file = read_close_out(path)
    named = file.record.close_out.books
    folder = books_folder or (None if named is None else path.parent / named)
    if file.record.close_out.estimate is None:
        near = Level(folder, whole=True) if folder else Level(path.parent)
        levels = (near,) if folder else (*own_levels(user, "us"), near)
        return _checked(Closed(file, read_levels(levels), None))
    job = read_job(_job_path(file))
    if job.survey.job.id != file.job:
        read = f'this is job "{file.job}", and the job file is for job "{job.survey.job.id}"'
        write = "Write the same number in both, or name the other job file."
        raise InputError([Problem(file.where("close_out", "job"), read, write)])
    books = books_for(job, folder, user)
    return _checked(Closed(file, books, estimate(job.survey, books)))


def _checked(closed: Closed) -> Closed:
    """See that no rate in dollars is taken for another currency."""
    if closed.currency == RATE_CURRENCY:
        return closed
    read = f"the rates on file are in {RATE_CURRENCY}, and the books are in {closed.currency}"
    problems = [
        Problem(closed.file.where("mileage", at), read, "Write rate = 0.45 or so.")
        for at, drive in enumerate(closed.file.record.mileage)
        if drive.rate is None
    ]
    if problems:
        raise InputError(problems)
    return closed


def _job_path(file: CloseOutFile) -> Path:
    """The job file that is named; InputError where it is not there."""
    name = file.record.close_out.estimate or ""
    path = file.path.parent / name
    if not path.exists():
        read = f'there is no job file "{name}" beside this file'
        write = "Write the name of the job file as seen from this folder."
        raise InputError([Problem(file.where("close_out", "estimate"), read, write)])
    return path
