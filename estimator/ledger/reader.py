"""Reads a close-out file into its record; every problem at once, each with its line."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Any, TypeVar

from pydantic import ValidationError

from estimator.ledger.fields import Record
from estimator.ledger.records import CloseOutRecord
from estimator.problems import InputError, Problem
from estimator.survey.locales import is_locale
from estimator.survey.messages import printable, problem_words
from estimator.tables.mileage import mileage_years
from estimator.text_files import read_text
from estimator.toml_files import read_toml, toml_place
from estimator.toml_lines import TomlPath, line_of

Found = tuple[TomlPath, str, str]
AnyRecord = TypeVar("AnyRecord", bound=Record)
# Papers by what makes each single: a number that stands twice would be booked twice.
_NUMBERED = {
    "receipts": ("supplier", "doc_no"),
    "returns": ("supplier", "doc_no"),
    "invoices": ("doc_no",),
    "payments": ("doc_no",),
    "paid_out": ("to", "doc_no"),
}
_JOB_FILE = "this is a job file. A bid posts nothing, so it has no place in the books."
_CLOSE_OUT = "Name the close-out file of the job: one that begins with [close_out]."


@dataclass(frozen=True, slots=True)
class CloseOutFile:
    """A close-out file as read.

    Attributes:
        text: the file as it stands, so that later problems can name its lines.
    """

    path: Path
    text: str
    record: CloseOutRecord

    @property
    def job(self) -> str:
        """Number of the job that is closed."""
        return self.record.close_out.job

    def where(self, *place: str | int) -> str:
        """Name a place in this file: file, line and key."""
        return toml_place(str(self.path), self.text, place)


def read_close_out(path: Path) -> CloseOutFile:
    """Read one close-out file.

    Raises:
        InputError: with every problem of the file, in line order.
    """
    return close_out_from_text(read_text(path, str(path)), path)


def close_out_from_text(text: str, path: Path, *, compared: bool = True) -> CloseOutFile:
    """Read the text of a close-out file; `path` is what problems call it.

    Where only its papers count (`compared` is false), it needs no estimate.

    Raises:
        InputError: with every problem of the text.
    """
    raw = read_toml(text, str(path))
    if "close_out" not in raw and "runs" in raw:
        raise InputError([Problem(str(path), _JOB_FILE, _CLOSE_OUT)])
    found = list(_disagreements(raw, compared=compared))
    return CloseOutFile(path, text, checked_record(CloseOutRecord, raw, (text, path), found))


def checked_record(
    model: type[AnyRecord], raw: Mapping[str, Any], source: tuple[str, Path], found: list[Found]
) -> AnyRecord:
    """Make a record of what a file holds, or refuse it with what was found and what it refuses.

    Args:
        model: the record.
        raw: the file's values.
        source: its text and what to call it.
        found: problems that no single record can see.

    Raises:
        InputError: with every problem, in line order.
    """
    text, path = source
    try:
        record = model.model_validate(raw)
    except ValidationError as error:
        found = [*found, *(problem_words(each, model) for each in error.errors(include_url=False))]
    else:
        if not found:
            return record
    found.sort(key=lambda each: line_of(text, each[0]) or 0)
    raise InputError(_problem(text, path, each) for each in found)


def _problem(text: str, path: Path, found: Found) -> Problem:
    """A problem with its line, in words that print whatever the file holds."""
    place, read, write = found
    return Problem(toml_place(str(path), text, place), printable(read), printable(write))


def _disagreements(raw: Mapping[str, Any], *, compared: bool) -> Iterator[Found]:
    """What no single record can see; values of any kind are met without a fault."""
    if compared:
        yield from _estimate_named_once(raw)
    yield from _unknown_locale(raw)
    yield from _years_without_rate(raw)
    yield from papers_repeated(raw)


def _estimate_named_once(raw: Mapping[str, Any]) -> Iterator[Found]:
    """The estimate is typed or named, never both and never neither."""
    head = raw.get("close_out")
    named = isinstance(head, Mapping) and "estimate" in head
    typed = "estimate" in raw
    if named and typed:
        read = "the estimate is named in [close_out] and typed in [estimate]"
        yield ("estimate",), read, "Keep one of them."
    if isinstance(head, Mapping) and not named and not typed:
        write = 'Write estimate = "my-job.toml" here, or a table [estimate] with its figures.'
        yield ("close_out",), "there is no estimate to compare with", write


def _unknown_locale(raw: Mapping[str, Any]) -> Iterator[Found]:
    """A locale that nothing can be shown in."""
    head = raw.get("close_out")
    locale = head.get("locale") if isinstance(head, Mapping) else None
    if isinstance(locale, str) and not is_locale(locale):
        read = f'"{locale}" is not a locale'
        yield ("close_out", "locale"), read, "Write one such as en_US, fr_CA or de_DE."


def _years_without_rate(raw: Mapping[str, Any]) -> Iterator[Found]:
    """Miles of a year that has no rate on file."""
    years = mileage_years()
    for at, row in enumerate(_tables(raw, "mileage")):
        day = row.get("date")
        if "rate" in row or row.get("unit", "mi") != "mi" or not isinstance(day, date):
            continue
        if day.year not in years:
            on_file = ", ".join(map(str, years))
            read = f"no rate per mile is on file for {day.year}"
            yield ("mileage", at, "date"), read, f"Write rate = 0.70 or so. On file: {on_file}."


def _tables(raw: Mapping[str, Any], name: str) -> Iterator[Mapping[str, Any]]:
    """The tables of one name; what is no table is passed over as an empty one."""
    rows = raw.get(name)
    for row in rows if isinstance(rows, list) else ():
        yield row if isinstance(row, Mapping) else {}


def papers_repeated(raw: Mapping[str, Any]) -> Iterator[Found]:
    """Papers of every kind that stand twice."""
    for table, keys in _NUMBERED.items():
        yield from _repeats(raw, table, keys)


def _repeats(raw: Mapping[str, Any], table: str, keys: tuple[str, ...]) -> Iterator[Found]:
    """Papers that stand twice."""
    first: dict[tuple[str, ...], int] = {}
    for at, row in enumerate(_tables(raw, table)):
        if not all(isinstance(row.get(key), str) for key in keys):
            continue
        name = tuple(row[key].strip().casefold() for key in keys)
        if first.setdefault(name, at) != at:
            shown = " ".join(row[key] for key in keys)
            read = f'"{shown}" stands already in {table}[{first[name]}]'
            yield (table, at, "doc_no"), read, "Keep one of them, or correct the number."
