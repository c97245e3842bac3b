"""Writes the form: a job file as a workbook to fill in."""

from __future__ import annotations

from collections.abc import Mapping
from io import BytesIO
from pathlib import Path
from typing import Any

from estimator.files import replace_file
from estimator.problems import InputError, Problem
from estimator.survey.locales import writes_comma

_LETTER, _A4 = 1, 9
_LETTER_COUNTRIES = ("US", "CA", "MX", "PH")
_TAKEN = "there is already a file of this name, and it may be filled in."
_REPLACE = "Choose another name, or ask to replace it with --replace."


def form_workbook(raw: Mapping[str, Any] | None = None, country: str = "US") -> bytes:
    """The form as a workbook.

    Args:
        raw: values of a job file that fill it in; none for an empty form.
        country: it says which paper an empty form is printed on.
    """
    from estimator.outputs.form_page import new_book
    from estimator.outputs.form_questions import add_questions
    from estimator.outputs.form_sketch import add_sketch
    from estimator.outputs.form_tables import add_tables

    values = raw or {}
    job = values.get("job", {})
    country = str(job.get("country", country)).upper()
    paper = _LETTER if country in _LETTER_COUNTRIES else _A4
    comma = writes_comma(str(job.get("locale", "en_US")))
    book, lists = new_book("Survey form")
    add_questions(book, lists, values, paper=paper)
    add_sketch(book, paper)
    add_tables(book, lists, values, comma=comma, paper=paper)
    book.move_sheet(lists.page, offset=len(book.sheetnames))
    book.active = 0
    stream = BytesIO()
    book.save(stream)
    return stream.getvalue()


def write_form(path: Path, raw: Mapping[str, Any] | None = None, *, replace: bool = False) -> None:
    """Write the form in one step; a file that is there stays unless asked to be replaced.

    Raises:
        InputError: there is such a file, or it cannot be written.
    """
    if path.exists() and not replace:
        raise InputError([Problem(str(path), _TAKEN, _REPLACE)])
    replace_file(path, form_workbook(raw))
