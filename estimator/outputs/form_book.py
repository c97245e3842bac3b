"""Writes the form: a job file as a workbook to fill in."""

from __future__ import annotations

from collections.abc import Mapping
from io import BytesIO
from pathlib import Path
from typing import Any

from estimator.files import replace_file
from estimator.guide.defaults import say_here, value_of
from estimator.problems import InputError, Problem
from estimator.survey.locales import writes_comma

_HOUSE = ("country", "units", "locale")
_LETTER, _A4 = 1, 9
_LETTER_COUNTRIES = ("US", "CA", "MX", "PH")
_TAKEN = "there is already a file of this name, and it may be filled in."
_REPLACE = "Choose another name, or ask to replace it with --replace."


def form_workbook(raw: Mapping[str, Any] | None = None, country: str = "") -> bytes:
    """The form as a workbook.

    Args:
        raw: values of a job file that fill it in; none for an empty form.
        country: of the house of an empty form, where it is known: it decides the paper, the units
            and the words, and is written in.
    """
    from estimator.outputs.form_page import new_book
    from estimator.outputs.form_questions import add_questions
    from estimator.outputs.form_sketch import add_sketch
    from estimator.outputs.form_tables import add_tables

    values = raw or {}
    job = values.get("job", {})
    known = {key: str(job[key]) for key in _HOUSE if key in job}
    house = {"country": country.upper()} if country else known
    paper = _LETTER if value_of("country", house) in _LETTER_COUNTRIES else _A4
    comma = writes_comma(str(job.get("locale", "en_US")))
    book, lists = new_book("Survey form")
    add_questions(book, lists, house, values, paper=paper)
    add_sketch(book, paper, say_here(house))
    add_tables(book, lists, values, comma=comma, paper=paper)
    book.move_sheet(lists.page, offset=len(book.sheetnames))
    book.active = 0
    stream = BytesIO()
    book.save(stream)
    return stream.getvalue()


def write_form(
    path: Path, raw: Mapping[str, Any] | None = None, country: str = "", *, replace: bool = False
) -> None:
    """Write the form of a job, or of a country, in one step.

    A file that is there stays unless asked to be replaced.

    Raises:
        InputError: there is such a file, or it cannot be written.
    """
    if path.exists() and not replace:
        raise InputError([Problem(str(path), _TAKEN, _REPLACE)])
    replace_file(path, form_workbook(raw, country))
