"""Reads a job file into a survey; every problem at once, each with its line."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from pydantic import ValidationError
from pydantic_core import ErrorDetails

from estimator.problems import InputError, Problem
from estimator.survey.cross_checks import cross_problems
from estimator.survey.kinds import reader_of
from estimator.survey.locales import writes_comma
from estimator.survey.messages import printable, problem_words
from estimator.survey.names import Found
from estimator.survey.records import Survey
from estimator.survey.stand_ins import MARK, with_stand_ins
from estimator.survey.unfinished import go_on
from estimator.text_files import read_text
from estimator.toml_files import fact_place, read_toml, toml_place
from estimator.toml_lines import TomlPath, line_of
from estimator.units import LengthReading

_BARE = {"us": "in", "metric": "mm"}
_BARE_UNITS = ("in", "ft", "mm", "cm", "m")


@dataclass(frozen=True, slots=True)
class JobFile:
    """A job file as read.

    Attributes:
        text: the file as it stands, so that later problems can name its lines.
        notes: one line for each length that was accepted with a remark, as it was understood.
        cells: where each fact stands, of a job that was read from a form; `text` is then what
            a job file with the same facts says.
    """

    path: Path
    text: str
    survey: Survey
    notes: tuple[str, ...]
    cells: Mapping[TomlPath, str] | None = None

    def where(self, path: TomlPath) -> str:
        """Say where a fact stands: file and line, or file, sheet and cell."""
        return fact_place(str(self.path), self.text, path, self.cells)


def read_job(path: Path) -> JobFile:
    """Read one job file: TOML text, or another kind that has a reader.

    Raises:
        InputError: with every problem of the file, in line order.
    """
    other = reader_of(path)
    if other is not None:
        return other(path)
    text = read_text(path, str(path))
    return job_from_text(text, path)


def job_from_text(text: str, path: Path) -> JobFile:
    """Read the text of a job file; `path` is what problems call it.

    Raises:
        InputError: with every problem of the text.
    """
    raw = read_toml(text, str(path))
    notes: list[str] = []
    found = checked(raw, notes)
    if isinstance(found, Survey):
        return JobFile(path, text, found, tuple(notes))
    found.sort(key=lambda each: line_of(text, each[0]) or 0)
    told = go_on(raw, found, path)
    raise InputError(_problem(toml_place(str(path), text, each[0]), each) for each in told)


def _problem(where: str, found: Found) -> Problem:
    """A problem whose words print, whatever the names in the file hold."""
    _, read, write = found
    return Problem(where, printable(read), printable(write))


def checked(raw: Mapping[str, Any], notes: list[str]) -> Survey | list[Found]:
    """Make a survey of plain values, or say everything that is wrong with them.

    `notes` takes a line for each length that was accepted with a remark.
    """
    try:
        survey = Survey.model_validate(raw, context=_context(raw, notes))
    except ValidationError as error:
        refused = error.errors(include_url=False)
        found = [problem_words(each) for each in refused if not _is_echo(each, raw)]
        return found + _more_problems(raw, [place for place, _, _ in found])
    return cross_problems(survey) or survey


def _is_echo(error: ErrorDetails, raw: Mapping[str, Any]) -> bool:
    """True for "this list is empty" said only because all that is in it was refused."""
    return error["type"] == "too_short" and bool(error["input"] or raw.get(str(error["loc"][0])))


def _more_problems(raw: Mapping[str, Any], places: list[TomlPath]) -> list[Found]:
    """Disagreements between the parts, found with stand-ins for what was refused.

    What is said of a stand-in, or of a place that was refused, is not said.
    """
    stood_in = with_stand_ins(raw, places)
    try:
        survey = Survey.model_validate(stood_in, context=_context(raw, []))
    except ValidationError:
        return []
    return [
        (place, read, write)
        for place, read, write in cross_problems(survey)
        if MARK not in read + write and not any(_overlap(place, other) for other in places)
    ]


def _overlap(one: TomlPath, other: TomlPath) -> bool:
    """True where one place is the other, or holds it."""
    return all(here == there for here, there in zip(one, other, strict=False))


def survey_from(raw: Mapping[str, Any]) -> Survey:
    """Make a survey from plain values, as a program would hand them over.

    Raises:
        InputError: with every problem; places are named by key, there being no lines.
    """
    found = checked(raw, [])
    if isinstance(found, Survey):
        return found
    raise InputError(_problem(toml_place("survey", None, each[0]), each) for each in found)


def job_schema() -> dict[str, Any]:
    """The JSON Schema of a job file, from the same records that read it."""
    return Survey.model_json_schema(by_alias=True)


def _context(raw: Mapping[str, Any], notes: list[str]) -> dict[str, Any]:
    job = raw.get("job")
    job = job if isinstance(job, dict) else {}
    bare = job.get("bare_unit") or _BARE.get(str(job.get("units", "us")), "in")

    def echo(field: str, typed: str, reading: LengthReading) -> None:
        notes.extend(
            f'{field.removesuffix("_in")} "{typed}" was read as {reading.echo}: {note}'
            for note in reading.notes
        )

    return {
        "bare_unit": bare if bare in _BARE_UNITS else "in",
        "decimal_comma": writes_comma(str(job.get("locale", "en_US"))),
        "echo": echo,
    }
