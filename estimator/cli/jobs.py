"""From the job named on the command line to its priced bid."""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from estimator.cli.own_books import own_books
from estimator.problems import InputError, Problem

if TYPE_CHECKING:
    from estimator.catalog.records import Books
    from estimator.pricing.records import Bid
    from estimator.survey.reader import JobFile

SAMPLE = "sample:"
JOB_SUFFIX = ".toml"
CLOSE_OUTS = "close-out"


@dataclass(frozen=True, slots=True)
class Priced:
    """A job as priced.

    Attributes:
        path: the job file it came from. file: what stands in it.
        notes: how measures and books were read, where there is something to say.
    """

    path: Path
    file: JobFile
    bid: Bid
    notes: tuple[str, ...]


def price_job(
    job: str, books_folder: Path | None, *, one_more: bool = False, language: str = ""
) -> Priced:
    """Read a job and its books, and price it.

    Args:
        job: path of a job file, or "sample:" and the name of a shipped sample.
        books_folder: books to use in place of those the job names.
        one_more: work out what one more outlet would cost, too.
        language: what the customer reads; empty leaves it to the settings.

    Raises:
        InputError: with every problem of the job file or the books.
    """
    from estimator.pricing.books_for import books_for
    from estimator.pricing.currency_note import currency_note
    from estimator.pricing.engine import estimate
    from estimator.pricing.one_more import one_more_outlet
    from estimator.pricing.strays import stray_names
    from estimator.pricing.versions import with_versions
    from estimator.survey.reader import read_job

    path = job_path(job)
    file, user = read_job(path), own_books()
    books = books_for(file, books_folder, user, language=language)
    bid = with_versions(estimate(file.survey, books), file, books_folder, user)
    if one_more:
        bid = replace(bid, one_more=one_more_outlet(file.survey, books, bid))
    return Priced(
        path, file, bid, (*file.notes, *left_out(books), *stray_names(bid), *currency_note(bid))
    )


def books_of(job: str, books_folder: Path | None) -> Books:
    """Read the books that a job takes, without pricing it.

    Raises:
        InputError: with every problem of the job file or the books.
    """
    from estimator.pricing.books_for import books_for
    from estimator.survey.reader import read_job

    return books_for(read_job(job_path(job)), books_folder, own_books())


def left_out(books: Books) -> tuple[str, ...]:
    """Say that rows of a large supplier file could not be used."""
    count = len(books.left_out)
    name = books.files["materials"]
    said = f"{name}: {count:,} rows could not be used; see estimator catalog check."
    return (said,) if count else ()


def job_path(job: str) -> Path:
    """Find the file of a job; "sample:nightstand" is one of the shipped samples."""
    if not job.startswith(SAMPLE):
        return Path(job)
    return sample_path(job.removeprefix(SAMPLE))


def sample_path(name: str) -> Path:
    """Find a shipped sample by its name.

    Raises:
        InputError: no such sample; the problem lists those there are.
    """
    found = sample_files()
    if name not in found:
        names = ", ".join(found) or "none"
        problem = Problem(f"{SAMPLE}{name}", "there is no such sample.", f"Samples: {names}.")
        raise InputError([problem])
    return found[name]


def close_out_path(file: str) -> Path:
    """Find a close-out file; "sample:nightstand" is the one that comes with that sample.

    Raises:
        InputError: no such sample; the problem lists those there are.
    """
    from estimator.catalog.shipped import shipped_samples

    if not file.startswith(SAMPLE):
        return Path(file)
    folder = shipped_samples() / CLOSE_OUTS
    found = {path.stem: path for path in sorted(folder.glob(f"*{JOB_SUFFIX}"))}
    name = file.removeprefix(SAMPLE)
    if name not in found:
        write = f"Close-out samples: {', '.join(found) or 'none'}."
        raise InputError([Problem(file, "there is no such close-out sample.", write)])
    return found[name]


def sample_files() -> dict[str, Path]:
    """Find the shipped samples, by name."""
    from estimator.catalog.shipped import shipped_samples

    return {path.stem: path for path in sorted(shipped_samples().glob(f"*{JOB_SUFFIX}"))}
