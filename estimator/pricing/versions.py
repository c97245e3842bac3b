"""Versions of a bid: why each was made, what it changed, and what it came to."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any, NamedTuple

from estimator.pricing.books_for import books_for
from estimator.pricing.engine import estimate
from estimator.pricing.records import Bid, VersionNote
from estimator.problems import InputError, Problem
from estimator.survey.differences import changed_facts
from estimator.survey.reader import JobFile, read_job
from estimator.survey.versions import Version
from estimator.toml_files import read_toml


class _Known(NamedTuple):
    """One version with the file it stands in, as far as there is one."""

    version: Version
    raw: dict[str, Any] | None
    bid: Bid | None


def with_versions(
    bid: Bid, job: JobFile, books_folder: Path | None = None, user: Path | None = None
) -> Bid:
    """The bid with a note for each version its job file lists, by number.

    A version with a file is bid again with the books of today; the last version is the job at
    hand. What changed is told between a version and the one before it, where both are known.
    Folders are as for `books_for`.

    Raises:
        InputError: two versions of one number, a file that is this job itself or in another
            currency, or the problems of an earlier file.
    """
    versions = sorted(job.survey.versions, key=lambda each: each.number)
    if not versions:
        return bid
    _refuse(job, versions)
    known = [_known(each, job, (books_folder, user)) for each in versions]
    _refuse_other_currency(job, bid, known)
    if known[-1].bid is None:
        known[-1] = _Known(versions[-1], _raw(job), bid)
    return replace(bid, versions=tuple(_notes(known)))


def _refuse(job: JobFile, versions: list[Version]) -> None:
    """Refuse numbers given twice and a file that names itself."""
    numbers = [each.number for each in versions]
    problems = []
    for at, each in enumerate(job.survey.versions):
        where = job.where(("versions", at))
        if numbers.count(each.number) > 1:
            read = f"version {each.number} is listed more than once"
            problems.append(Problem(where, read, "Give each version a number of its own."))
        if each.file is not None and (job.path.parent / each.file).resolve() == job.path.resolve():
            read = f'file = "{each.file}" is this job itself'
            write = "Leave file out for the version at hand, or name the file of an earlier one."
            problems.append(Problem(where, read, write))
    if problems:
        raise InputError(problems)


def _refuse_other_currency(job: JobFile, bid: Bid, known: list[_Known]) -> None:
    """Refuse versions whose totals would stand beside this bid's in another currency."""
    ours = bid.books.shop.currency
    problems = []
    for version, _, earlier in known:
        if earlier is None or earlier.books.shop.currency == ours:
            continue
        where = job.where(("versions", job.survey.versions.index(version), "file"))
        theirs = earlier.books.shop.currency
        read = f"version {version.number} is in {theirs}, and this bid is in {ours}"
        write = "Price both in one currency, or leave file out: its total is then not shown."
        problems.append(Problem(where, read, write))
    if problems:
        raise InputError(problems)


def _known(version: Version, job: JobFile, folders: tuple[Path | None, Path | None]) -> _Known:
    if version.file is None:
        return _Known(version, None, None)
    earlier = read_job(job.path.parent / version.file)
    bid = estimate(earlier.survey, books_for(earlier, *folders))
    return _Known(version, _raw(earlier), bid)


def _raw(job: JobFile) -> dict[str, Any]:
    return dict(read_toml(job.text, str(job.path)))


def _notes(known: list[_Known]) -> Iterator[VersionNote]:
    before: dict[str, Any] | None = None
    for version, raw, bid in known:
        both = before is not None and raw is not None
        yield VersionNote(
            number=version.number,
            dated=version.dated,
            why=version.why,
            total=None if bid is None else bid.price.total,
            changes=changed_facts(before or {}, raw or {}) if both else (),
        )
        before = raw
