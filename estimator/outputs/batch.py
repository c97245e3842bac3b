"""Prices all jobs below a folder, text files and forms, on all cores, one small row a job."""

from __future__ import annotations

import gc
import os
import re
import signal
from collections.abc import Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from dataclasses import dataclass, replace
from decimal import Decimal
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Literal

from estimator.files import cannot_write
from estimator.problems import InputError, Problem

if TYPE_CHECKING:
    from estimator.pricing.records import Bid
    from estimator.survey.reader import JobFile

Status = Literal["priced", "stopped by a finding", "not priced", "no job"]
PRICED: Status = "priced"
STOPPED: Status = "stopped by a finding"
FAILED: Status = "not priced"
NO_JOB: Status = "no job"
JOB_SUFFIX, FORM_SUFFIX = ".toml", ".xlsx"
_PASSED_OVER = (".", "~$")
"""How names begin that are no jobs: hidden ones, and locks of a spreadsheet program."""
_IS_JOB = re.compile(r"^[ \t]*(?:\[[ \t]*job\b|job[ \t]*(?:\.|=[ \t]*\{))", re.MULTILINE)
_WORKBOOK_END = ".bid.xlsx"
_CHUNK_MOST, _CHUNKS_A_PROCESS = 32, 8


@dataclass(frozen=True, slots=True)
class BatchRow:
    """What a summary says of one job file.

    Attributes:
        file: as seen from the folder that was asked for.
        total, second_total, hours: None where it could not be priced, or there is none.
        findings: how many checks did not pass. stops: how many of them stop the bid.
        problem: the first thing wrong with it. problems: how many there are.
    """

    file: str
    status: Status
    id: str = ""
    title: str = ""
    currency: str = ""
    total: Decimal | None = None
    second_total: Decimal | None = None
    hours: Decimal | None = None
    visits: int | None = None
    findings: int | None = None
    stops: int = 0
    problem: str = ""
    problems: int = 0


@dataclass(frozen=True, slots=True)
class BatchPlan:
    """How every job of a batch is priced.

    Attributes:
        books, user: as for `books_for`.
        workbooks: folder for one bid workbook a job; None where none is wanted.
    """

    folder: Path
    books: Path | None = None
    user: Path | None = None
    workbooks: Path | None = None
    replace: bool = False


def job_files(folder: Path) -> list[Path]:
    """Find the files below a folder that may be jobs, TOML text or forms, in order of their names.

    Whether each is one is looked at when it is its turn. Hidden folders are passed over, and links
    to folders are not followed.

    Raises:
        InputError: no such folder, or no such file in it.
    """
    if not folder.is_dir():
        raise InputError([Problem(str(folder), "is no folder.", "Name the folder with the jobs.")])
    found = sorted(_candidates(folder))
    if not found:
        write = "Job files are text files that end in .toml, or filled survey forms (.xlsx)."
        raise InputError([Problem(str(folder), "holds no job file.", write)])
    return found


def _candidates(folder: Path) -> Iterator[Path]:
    for here, folders, files in os.walk(folder):
        folders[:] = [name for name in folders if not name.startswith(".")]
        for name in files:
            suffix = Path(name).suffix.lower()
            if suffix in (JOB_SUFFIX, FORM_SUFFIX) and not name.startswith(_PASSED_OVER):
                yield Path(here) / name


def price_all(files: Sequence[Path], plan: BatchPlan, processes: int) -> Iterator[BatchRow]:
    """Price every file, in order; each row is given as soon as it is its turn.

    Raises:
        InputError: a process was ended from outside.
    """
    work = partial(price_file, plan=plan)
    if min(processes, len(files)) <= 1:
        yield from map(work, files)
        return
    chunk = max(1, min(_CHUNK_MOST, len(files) // (processes * _CHUNKS_A_PROCESS)))
    pool = ProcessPoolExecutor(min(processes, len(files)), initializer=_begin)
    try:
        yield from pool.map(work, files, chunksize=chunk)
    except BrokenProcessPool:
        read = "one of the processes was ended from outside, perhaps for want of memory."
        raise InputError([Problem(str(plan.folder), read, "Try again with --jobs 1.")]) from None
    finally:
        pool.shutdown(cancel_futures=True)


def _begin() -> None:
    """Make a process ready.

    It lives long, so it looks for dead rings of objects, and its memory stays flat. Ctrl-C is left
    to the process that people see, which ends this one.
    """
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    gc.enable()
    gc.freeze()


def price_file(path: Path, plan: BatchPlan) -> BatchRow:
    """Price one file; what is wrong with it is a row too."""
    shown = path.relative_to(plan.folder).as_posix()
    try:
        return _priced(path, shown, plan)
    except InputError as error:
        first = error.problems[0]
        said = f"{first.where}: {first.read}".replace(str(path), shown)
        return BatchRow(shown, FAILED, problem=said, problems=len(error.problems))


def _priced(path: Path, shown: str, plan: BatchPlan) -> BatchRow:
    from estimator.pricing.calendar import plan_calendar
    from estimator.pricing.engine import estimate
    from estimator.pricing.shelf import books_at_hand

    file = _job_file(path)
    if file is None:
        return BatchRow(shown, NO_JOB)
    books = books_at_hand(file, plan.books, plan.user)
    bid = estimate(file.survey, books)
    stops = sum(each.stops_the_bid for each in bid.findings)
    row = BatchRow(
        file=shown,
        status=STOPPED if stops else PRICED,
        id=file.survey.job.id,
        title=file.survey.job.title,
        currency=books.shop.currency,
        total=bid.price.total,
        second_total=bid.second_total,
        hours=bid.hours.charged,
        visits=len(plan_calendar(bid).visits),
        findings=sum(each.verdict != "pass" for each in bid.findings),
        stops=stops,
        problem=next((each.title for each in bid.findings if each.stops_the_bid), ""),
    )
    if plan.workbooks is not None and not stops:
        _write(shown, file, bid, plan)
    return row


def _job_file(path: Path) -> JobFile | None:
    """Read a job from its text or from its form; None where the file is neither.

    Raises:
        InputError: with every problem.
    """
    from estimator.form.reader import read_form
    from estimator.form.recognize import is_form
    from estimator.survey.reader import job_from_text
    from estimator.text_files import read_text

    if path.suffix.lower() == FORM_SUFFIX:
        return read_form(path) if is_form(path) else None
    text = read_text(path, str(path))
    return job_from_text(text, path) if _IS_JOB.search(text) else None


def _workbook_end(path: Path) -> str:
    """How the bid of a job is called; a form beside a text file of its name keeps its own end."""
    if path.suffix.lower() == FORM_SUFFIX and path.with_suffix(JOB_SUFFIX).exists():
        return FORM_SUFFIX + _WORKBOOK_END
    return _WORKBOOK_END


def _write(shown: str, file: JobFile, bid: Bid, plan: BatchPlan) -> None:
    """Write the bid workbook as `estimator bid` would, in the same folders as the jobs lie in.

    Raises:
        InputError: the file is not this tool's to replace, or it cannot be written.
    """
    from estimator.outputs.workbook import write_bid
    from estimator.pricing.one_more import one_more_outlet
    from estimator.pricing.versions import with_versions

    end = _workbook_end(file.path)
    path = (plan.workbooks or plan.folder) / Path(shown).with_suffix(end)
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise cannot_write(path.parent, error) from None
    more = one_more_outlet(file.survey, bid.books, bid)
    whole = replace(with_versions(bid, file, plan.books, plan.user), one_more=more)
    write_bid(whole, path, replace=plan.replace)
