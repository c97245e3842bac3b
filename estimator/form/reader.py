"""Reads a form into a survey; every problem at once, each with its sheet and cell."""

from __future__ import annotations

from pathlib import Path

from estimator.form.book_in import Grid, notes_of, read_grids, repr_sheet
from estimator.form.layout import table_at, tables
from estimator.form.questions_in import Answered, read_questions
from estimator.form.tables_in import SETTINGS_SHEET, Facts, read_tables
from estimator.form.together import gather
from estimator.guide.defaults import value_of
from estimator.problems import InputError, Problem
from estimator.survey.locales import writes_comma
from estimator.survey.messages import printable
from estimator.survey.names import Found
from estimator.survey.reader import JobFile, checked
from estimator.survey.records import Survey
from estimator.toml_files import fact_place
from estimator.toml_lines import TomlPath
from estimator.toml_writing import toml_text

QUESTIONS, SKETCH, LISTS = "Questions", "Sketch", "Lists"
_ANSWER = "Answer the questions on the sheet Questions; the first part is enough."
_NO_FORM = "Start from the form: estimator survey --form my-job.xlsx"


def read_form(path: Path) -> JobFile:
    """Read a form that was filled in with any spreadsheet program.

    Raises:
        InputError: with every problem of the form, in the order of its sheets.
    """
    return job_from_grids(read_grids(path), path)


def job_from_grids(found: list[Grid], path: Path) -> JobFile:
    """Read the cells of a form; `path` is what problems call it.

    Raises:
        InputError: with every problem.
    """
    grids = {grid.name.strip().lower(): grid for grid in found}
    facts = Facts(str(path))
    facts.notes += [*notes_of(grids), *_strange_sheets(grids)]
    if not known_sheets() & set(grids):
        raise InputError([Problem(str(path), "holds none of the form's sheets.", _NO_FORM)])
    asked = grids.get(QUESTIONS.lower())
    answered = Answered() if asked is None else read_questions(asked, facts)
    facts.comma = _comma(grids, facts.name, answered)
    gather(answered, grids, facts)
    if not facts.raw and not facts.problems:
        raise InputError([Problem(str(path), "is not filled in yet.", _ANSWER)])
    return _job(facts, path)


def known_sheets() -> set[str]:
    """Names of the sheets that a form may have, in small letters."""
    names = [table.sheet for table in tables()]
    return {name.lower() for name in (*names, QUESTIONS, SKETCH, LISTS, SETTINGS_SHEET)}


def _strange_sheets(grids: dict[str, Grid]) -> list[str]:
    strange = [grid.name for name, grid in grids.items() if name not in known_sheets()]
    return [f'the sheet "{name}" is not part of the form; not read.' for name in strange]


def _comma(grids: dict[str, Grid], name: str, answered: Answered) -> bool:
    """Whether decimals are written with a comma, by the locale that the form states."""
    first = Facts(name)
    job = {"job": grids["job"]} if "job" in grids else {}
    read_tables(job, first)
    locale = first.raw.get("job", {}).get("locale") or value_of("locale", answered.answers)
    return writes_comma(str(locale))


def _job(facts: Facts, path: Path) -> JobFile:
    """The job of what was gathered."""
    notes: list[str] = []
    made = checked(facts.raw, notes)
    found = [] if isinstance(made, Survey) else made
    problems = [*facts.problems, *(_problem(each, facts) for each in found)]
    if problems or not isinstance(made, Survey):
        order = {f"{facts.name}: {cell}": at for at, cell in enumerate(facts.cells.values())}
        problems.sort(key=lambda problem: order.get(problem.where, -1))
        raise InputError(dict.fromkeys(problems))
    text = toml_text(facts.raw)
    return JobFile(path, text, made, (*facts.notes, *notes), facts.cells)


def _problem(found: Found, facts: Facts) -> Problem:
    """A problem of the records, at its cell and in words that fit a form."""
    place, read, write = found
    if place in facts.refused:
        return facts.refused[place]
    where = _where(place, facts)
    if read == f'the key "{place[-1]}" is missing':
        return Problem(where, f'"{place[-1]}" is empty', "Fill it in.")
    return Problem(where, printable(read), printable(write))


def _where(place: TomlPath, facts: Facts) -> str:
    """The cell of a place; its sheet where it has none."""
    if any(place[:length] in facts.cells for length in range(1, len(place) + 1)):
        return fact_place(facts.name, None, place, facts.cells)
    table = table_at(place)
    return facts.name if table is None else f"{facts.name}: {repr_sheet(table.sheet)}"
