"""Reads what was bought for a job: what the shopping list page saved, or a close-out file."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from typing import Any, NamedTuple

from pydantic import Field

from estimator.ledger.bought import job_of
from estimator.ledger.fields import Record
from estimator.ledger.paid_table import no_quantity, paid_table, unknown_item
from estimator.ledger.reader import checked_record, close_out_from_text, papers_repeated
from estimator.ledger.records import Receipt, ReceiptLine
from estimator.measures import to_decimal
from estimator.pricing.change_bought import PaidFile, PaidLine, unit_of
from estimator.pricing.records import Bid
from estimator.problems import InputError, Problem
from estimator.survey.messages import printable
from estimator.text_files import read_text
from estimator.toml_files import read_toml, toml_place
from estimator.toml_lines import TomlPath

_PLACES = 6
_TABLE, _SEPARATOR, _COMMENT = ".csv", "sep=", "#"
_JOB_FILE = "this is a job file: it says what is there, not what was bought."
_PAGE = "Name what the shopping list page saved, or the close-out file of the job."


class PaidLines(Record):
    """The lines that the shopping list page gives for a close-out file, without the rest of it."""

    format: int = Field(default=1, ge=1, le=1, description="version of this file's form")
    receipts: tuple[Receipt, ...] = Field(default=(), description="what was bought")
    returns: tuple[Receipt, ...] = Field(default=(), description="what went back")


class _At(NamedTuple):
    """One line of a paper with its place in the file."""

    place: TomlPath
    line: ReceiptLine
    supplier: str


@dataclass(frozen=True, slots=True)
class _Papers:
    """The papers of one file, for one job."""

    name: str
    text: str
    before: Bid

    def problem(self, place: TomlPath, read: str, write: str) -> Problem:
        return Problem(toml_place(self.name, self.text, place), read, write)


def read_paid(path: Path, before: Bid) -> PaidFile:
    """Read what was bought for a job that was bid.

    The file is the lines for a close-out file that the shopping list page gives, a close-out
    file with such lines in it, or the page's table.

    Raises:
        InputError: with every problem of the file: a thing that nothing knows, one without a
            quantity, more returned than bought, a paper that stands twice.
    """
    text = read_text(path, str(path))
    if _is_table(path, text):
        return paid_table(text, str(path), before)
    return _paid_papers(text, path, before)


def _is_table(path: Path, text: str) -> bool:
    """Tell the table from TOML: by its name, or by a first line that cannot begin a TOML file."""
    first = next((line.strip() for line in text.splitlines() if line.strip()), _COMMENT)
    named = path.suffix.lower() == _TABLE or first.lower().startswith(_SEPARATOR)
    return named or ("=" not in first and not first.startswith((_COMMENT, "[")))


def _paid_papers(text: str, path: Path, before: Bid) -> PaidFile:
    raw = read_toml(text, str(path))
    job = before.survey.job.id
    if "close_out" in raw:
        file = close_out_from_text(text, path, compared=False)
        receipts, returns, own = file.record.receipts, file.record.returns, file.job
    else:
        lines = _bare(raw, text, path)
        receipts, returns, own = lines.receipts, lines.returns, job
    papers = _Papers(str(path), text, before)
    bought = _counted(papers, _for_job("receipts", receipts, own, job))
    back = _counted(papers, _for_job("returns", returns, own, job))
    if own != job and not bought.lines:
        read = f'this is the close-out file of job "{own}"; nothing in it is for job "{job}"'
        raise InputError([papers.problem(("close_out", "job"), read, _PAGE)])
    problems = [*bought.problems, *back.problems]
    left = _less_returns(papers, bought, back, problems)
    if problems:
        raise InputError(problems)
    return PaidFile(str(path), left, (*bought.notes, *back.notes))


def _bare(raw: dict[str, Any], text: str, path: Path) -> PaidLines:
    if "runs" in raw or "job" in raw:
        raise InputError([Problem(str(path), _JOB_FILE, _PAGE)])
    return checked_record(PaidLines, raw, (text, path), list(papers_repeated(raw)))


def _for_job(name: str, papers: tuple[Receipt, ...], own: str, job: str) -> Iterator[_At]:
    """Lines of materials that are for the job; not those for the truck, tools or other jobs."""
    for at, paper in enumerate(papers):
        for row, line in enumerate(paper.lines):
            if line.kind == "materials" and job_of(line.purpose, own) == job:
                yield _At((name, at, "lines", row), line, paper.supplier)


@dataclass(frozen=True, slots=True)
class _Counted:
    """Lines that count, each with its place; what is wrong; and what does not count."""

    lines: tuple[tuple[TomlPath, PaidLine], ...]
    problems: tuple[Problem, ...]
    notes: tuple[str, ...]


def _counted(papers: _Papers, found: Iterator[_At]) -> _Counted:
    lines: list[tuple[TomlPath, PaidLine]] = []
    problems: list[Problem] = []
    notes: list[str] = []
    for place, line, supplier in found:
        if not line.item:
            where = toml_place(papers.name, papers.text, place)
            what = printable(line.description)
            notes.append(f'{where}: "{what}" names no item, so it is not counted.')
        elif not unit_of(papers.before, line.item):
            problems.append(papers.problem((*place, "item"), *unknown_item(line.item)))
        elif line.quantity is None:
            problems.append(papers.problem(place, *no_quantity(papers.before, line.item)))
        else:
            what = printable(line.description)
            paid = PaidLine(line.item, what, line.quantity, line.amount, printable(supplier))
            lines.append((place, paid))
    return _Counted(tuple(lines), tuple(problems), tuple(notes))


def _less_returns(
    papers: _Papers, bought: _Counted, back: _Counted, problems: list[Problem]
) -> tuple[PaidLine, ...]:
    """What is left of each line after what went back of its item, the last bought first."""
    left = [line for _, line in bought.lines]
    for place, gone in back.lines:
        missing = gone.quantity
        for at in reversed(range(len(left))):
            line = left[at]
            taken = min(missing, line.quantity) if line.item == gone.item else Decimal(0)
            if taken:
                left[at] = _less(line, taken)
                missing -= taken
        if missing:
            read = f'more "{gone.item}" went back than the receipts of this file have'
            problems.append(papers.problem(place, read, "Write the receipt of it too."))
    return tuple(line for line in left if line.quantity)


def _less(line: PaidLine, taken: Decimal) -> PaidLine:
    """A line without a part of it, at the same price for each."""
    kept = line.quantity - taken
    paid = Fraction(line.paid or 0) * Fraction(kept) / Fraction(line.quantity)
    return replace(line, quantity=kept, paid=to_decimal(paid, _PLACES))
