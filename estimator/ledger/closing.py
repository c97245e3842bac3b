"""Opens a close-out file with all that it goes by: its books, and the bid it names."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from estimator.catalog.levels import Level, own_levels, read_levels
from estimator.catalog.records import Books
from estimator.ledger.estimated import Closed
from estimator.ledger.hours_known import unknown_hours
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
    folder = books_folder or _named_books(file)
    if file.record.close_out.estimate is None:
        return _checked(Closed(file, _near_books(path, folder, user), None))
    job = read_job(_job_path(file))
    if job.survey.job.id != file.job:
        read = f'this is job "{file.job}", and the job file is for job "{job.survey.job.id}"'
        write = "Write the same number in both, or name the other job file."
        raise InputError([Problem(file.where("close_out", "job"), read, write)])
    books = books_for(job, folder, user)
    return _checked(Closed(file, books, estimate(job.survey, books)))


def other_files(
    closed: Closed, paths: Iterable[Path], books_folder: Path | None, user: Path | None
) -> tuple[CloseOutFile, ...]:
    """Read the close-out files of other jobs whose receipts may hold lines for this one.

    Amounts are never converted, so their books must be in the currency of this job's.

    Raises:
        InputError: with every problem of the first file that has any, or a file in another
            currency.
    """
    files = tuple(map(read_close_out, paths))
    found = [(file, _currency(file, books_folder, user)) for file in files]
    problems = [
        Problem(
            str(file.path),
            f"its books are in {currency}, and those of job {closed.file.job} in {closed.currency}",
            "Amounts are not converted: leave it out, and write those lines into this job's file.",
        )
        for file, currency in found
        if currency != closed.currency
    ]
    if problems:
        raise InputError(problems)
    return files


def _currency(file: CloseOutFile, books_folder: Path | None, user: Path | None) -> str:
    """The currency of a file by the books it goes by."""
    folder = books_folder or _named_books(file)
    if file.record.close_out.estimate is None:
        return _near_books(file.path, folder, user).shop.currency
    return books_for(read_job(_job_path(file)), folder, user).shop.currency


def _named_books(file: CloseOutFile) -> Path | None:
    named = file.record.close_out.books
    return None if named is None else file.path.parent / named


def _near_books(path: Path, folder: Path | None, user: Path | None) -> Books:
    """Books of a file that names no job file: those asked for or named, else those beside it."""
    near = Level(folder, whole=True) if folder else Level(path.parent)
    return read_levels((near,) if folder else (*own_levels(user, "us"), near))


def _checked(closed: Closed) -> Closed:
    """See that hours are of a known phase, and no rate in dollars taken for another currency."""
    if problems := list(unknown_hours(closed)):
        raise InputError(problems)
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
