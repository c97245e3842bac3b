"""Forms for tests: made from a job, changed cell by cell as a person would, and read again."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from decimal import Decimal
from functools import cache
from io import BytesIO
from pathlib import Path
from typing import Any

import pytest
from openpyxl import Workbook, load_workbook

from estimator.form.book_in import Found, Grid, read_grids
from estimator.form.layout import tables
from estimator.form.reader import read_form
from estimator.form.tables_out import rows_for, setting_rows
from estimator.outputs.form_book import form_workbook
from estimator.problems import InputError, Problem
from estimator.survey.locales import writes_comma
from estimator.survey.reader import JobFile

SAMPLES = Path(__file__).parents[2] / "samples"
NAMES = sorted(path.stem for path in SAMPLES.glob("*.toml"))

S1 = {
    "year_built": 1996,
    "source_box": "plastic",
    "source_volume": "18",
    "source_cables": 2,
    "breaker": 15,
    "wire": 14,
    "way": "behind the baseboard",
    "wall_length": "12 ft",
    "source_x": "2' 10\"",
    "source_height": "15",
    "new_x": "8' 9\"",
    "first_stud": "16 in",
}
"""S1 as it is typed into the questions: numbers as numbers, the rest as text."""


def raw_of(text: str) -> dict[str, Any]:
    return tomllib.loads(text, parse_float=Decimal)


def sample(name: str) -> dict[str, Any]:
    return raw_of((SAMPLES / f"{name}.toml").read_text(encoding="utf-8"))


@cache
def _bytes(name: str) -> bytes:
    return form_workbook(sample(name) if name else None)


def book(name: str = "") -> Workbook:
    """The form of a sample, or the empty one, as openpyxl opens it."""
    return load_workbook(BytesIO(_bytes(name)))


def saved(opened: Workbook, folder: Path) -> Path:
    path = folder / "job.xlsx"
    opened.save(path)
    return path


def read(opened: Workbook, folder: Path) -> JobFile:
    return read_form(saved(opened, folder))


def problems(opened: Workbook, folder: Path) -> tuple[Problem, ...]:
    with pytest.raises(InputError) as caught:
        read(opened, folder)
    return caught.value.problems


def cell_of(opened: Workbook, sheet: str, row: int | str, heading: str) -> Any:
    """A cell under a heading: of a row below the headings (from 1), or of a fact by its name."""
    page = opened[sheet]
    rows = {str(each[0].value): each[0].row for each in page.iter_rows(max_col=1)}
    number = rows[row] if isinstance(row, str) else 4 + row
    wanted = heading if isinstance(row, int) else "Answer"
    head = page[4] if isinstance(row, int) else page[3]
    column = next(each.column for each in head if str(each.value).rstrip("*") == wanted.rstrip("*"))
    return page.cell(number, column)


def answer_cell(opened: Workbook, key: str) -> Any:
    """The answer cell of a question."""
    from estimator.form.question_words import NUMBERS

    page = opened["Questions"]
    row = next(
        each[0].row for each in page.iter_rows(max_col=1) if each[0].value == str(NUMBERS[key])
    )
    return page.cell(row, 3)


def answered(opened: Workbook, answers: Mapping[str, object]) -> Workbook:
    for key, value in answers.items():
        answer_cell(opened, key).value = value
    return opened


def grids(raw: Mapping[str, Any]) -> list[Grid]:
    """The cells of a job's form, without a workbook round them."""
    comma = writes_comma(str(raw["job"].get("locale", "en_US")))
    made = []
    for table in tables():
        rows = rows_for(table, raw, comma=comma)
        names = [*([table.owner] if table.owner else []), *(each.heading for each in table.columns)]
        made.append(_across(table.sheet, names, rows) if table.is_list else
                    _down(table.sheet, names, rows))  # fmt: skip
    settings = [{"Setting": name, "Value": text} for name, text in setting_rows(raw)]
    return [*made, _across("Settings", ["Setting", "Value"], settings)]


def _across(sheet: str, names: list[str], rows: list[dict[str, str]]) -> Grid:
    filled = {
        (at, names.index(name) + 1): Found(text)
        for at, row in enumerate(rows, start=2)
        for name, text in row.items()
    }
    return Grid(sheet, {(1, at): Found(name) for at, name in enumerate(names, start=1)} | filled)


def _down(sheet: str, names: list[str], rows: list[dict[str, str]]) -> Grid:
    given = rows[0] if rows else {}
    cells = {(1, 1): Found("Fact"), (1, 2): Found("Answer")}
    for at, name in enumerate(names, start=2):
        cells[at, 1] = Found(name)
        if name in given:
            cells[at, 2] = Found(given[name])
    return Grid(sheet, cells)


def texts(path: Path) -> dict[str, dict[tuple[int, int], Any]]:
    """Every cell of every sheet of a form."""
    return {
        grid.name: {place: found.value for place, found in grid.cells.items()}
        for grid in read_grids(path)
    }
