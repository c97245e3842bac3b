"""Cells as people fill them in: what is taken, and what is said of the rest, cell by cell."""

from __future__ import annotations

from datetime import date, datetime, time
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from tests.form.made_form import book, cell_of, problems, read

TWELVE_SIX = Fraction(301, 2)  # 12 ft 6-1/2 in, by hand


@pytest.mark.parametrize("typed", ["15", 15, 15.0, "15.0", " 15 ", "15\u00a0"])
def test_a_number_however_it_is_typed(typed: Any, tmp_path: Path) -> None:
    opened = book("nightstand")
    cell_of(opened, "Circuit", "breaker", "Answer").value = typed
    assert read(opened, tmp_path).survey.circuit.breaker_a == 15


@pytest.mark.parametrize("typed", ["12' 6-1/2\"", "12 ft 6.5 in", "150.5", 150.5, "12’ 6½”"])
def test_a_length_however_it_is_typed(typed: Any, tmp_path: Path) -> None:
    opened = book("nightstand")
    cell_of(opened, "Walls", 1, "length").value = typed
    assert read(opened, tmp_path).survey.walls[0].length_in == TWELVE_SIX


@pytest.mark.parametrize("typed", ["YES", "Yes", True, "yes"])
def test_a_word_in_any_letters(typed: Any, tmp_path: Path) -> None:
    opened = book("nightstand")
    cell_of(opened, "Job", "occupied", "Answer").value = typed
    assert read(opened, tmp_path).survey.job.occupied == "yes"


@pytest.mark.parametrize("typed", [date(2026, 3, 9), datetime(2026, 3, 9), "2026-03-09"])
def test_a_date_as_text_or_as_a_date(typed: Any, tmp_path: Path) -> None:
    opened = book("nightstand")
    cell_of(opened, "Job", "date", "Answer").value = typed
    assert read(opened, tmp_path).survey.job.bid_date == date(2026, 3, 9)


def test_a_name_typed_as_a_number_stays_a_name(tmp_path: Path) -> None:
    opened = book("nightstand")
    cell_of(opened, "Job", "id", "Answer").value = 12.0
    assert read(opened, tmp_path).survey.job.id == "12"


def test_a_share_in_a_percent_cell_is_a_percentage(tmp_path: Path) -> None:
    opened = book("nightstand")
    cell = cell_of(opened, "Risks", 1, "chance pct")
    cell.value, cell.number_format = 0.25, "0%"
    cell_of(opened, "Risks", 1, "name").value = "Pipe"
    assert read(opened, tmp_path).survey.risks[0].chance_pct == 25


def test_a_decimal_comma_where_people_write_one(tmp_path: Path) -> None:
    opened = book("nightstand")
    cell_of(opened, "Job", "locale", "Answer").value = "de_DE"
    cell_of(opened, "Overrides", "labor hours", "Answer").value = "3,5"
    cell_of(opened, "Walls", 1, "length").value = "3,81 m"
    survey = read(opened, tmp_path).survey
    assert str(survey.overrides.labor_hours) == "3.5"
    assert survey.walls[0].length_in == 150


@pytest.mark.parametrize(
    ("sheet", "row", "heading", "typed", "where", "read_as", "write"),
    [
        ("Walls", 1, "length", date(2026, 12, 6), "Walls!C5", "the date 2026-12-06", "as text"),
        ("Boxes", 1, "x", datetime(2026, 1, 2), "Boxes!C5", "the date 2026-01-02", "12' 6-1/2"),
        ("Walls", 1, "height", time(12, 6), "Walls!D5", "the time of day 12:06", "as text"),
        ("Walls", 1, "length", "12-6", "Walls!C5", '"12-6"', "12'-6\""),
        ("Walls", 1, "length", None, "Walls!C5", '"length" is empty', "Fill it in."),
        ("Walls", 1, "length", "=3*", "Walls!C5", "formula", "Type the value"),
        ("Walls", 1, "length", "#REF!", "Walls!C5", "error #REF!", "Type the value"),
        ("Walls", 1, "bearing", "perhaps", "Walls!I5", '"perhaps" is not one', '"yes", "no"'),
        ("Circuit", "breaker", "Answer", "15 A", "Circuit!B4", '"15 A" does not', "whole number"),
        ("Circuit", "load", "Answer", "1,5", "Circuit!B21", '"1,5" does not fit', "a point"),
        ("Box contents", 1, "box", "nowhere", "'Box contents'!A5", 'no box "nowhere"', "source"),
        ("Boxes", 1, "wall", "nroth", "Boxes!B5", 'no wall "nroth"', '"north"'),
        ("Job", "title", "Answer", None, "Job!B5", '"title" is empty', "Fill it in."),
    ],
)  # fmt: skip
def test_a_problem_names_sheet_and_cell(  # noqa: PLR0917 - one for each column of the table
    sheet: str, row: Any, heading: str, typed: Any, where: str, read_as: str, write: str,
    tmp_path: Path,
) -> None:  # fmt: skip
    opened = book("nightstand")
    cell_of(opened, sheet, row, heading).value = typed
    found = problems(opened, tmp_path)
    assert [each.where.rpartition("job.xlsx: ")[2] for each in found] == [where]
    assert read_as in found[0].read
    assert write in found[0].write


def test_every_problem_comes_at_once(tmp_path: Path) -> None:
    opened = book("nightstand")
    cell_of(opened, "Circuit", "breaker", "Answer").value = "big"
    cell_of(opened, "Walls", 1, "length").value = date(2026, 12, 6)
    cell_of(opened, "Boxes", 2, "wall").value = "nroth"
    cell_of(opened, "Box contents", 3, "box").value = "other"
    found = [each.where.rpartition("job.xlsx: ")[2] for each in problems(opened, tmp_path)]
    assert sorted(found) == ["'Box contents'!A7", "Boxes!B6", "Circuit!B4", "Walls!C5"]


def test_a_formula_counts_as_what_it_came_to(tmp_path: Path) -> None:
    """A workbook saved by another program stores the value beside the formula."""
    opened = book("nightstand")
    cell_of(opened, "Walls", 1, "length").value = "=100+50.5"
    cell_of(opened, "Walls", 1, "length").number_format = "General"
    from tests.outputs.spreadsheet import reckoned

    (tmp_path / "job.xlsx").write_bytes(reckoned({"job": _bytes(opened)})["job"])
    from estimator.form.reader import read_form

    assert read_form(tmp_path / "job.xlsx").survey.walls[0].length_in == TWELVE_SIX


def _bytes(opened: Any) -> bytes:
    from io import BytesIO

    stream = BytesIO()
    opened.save(stream)
    return stream.getvalue()


def test_strange_columns_rows_and_sheets_are_left_out_with_a_note(tmp_path: Path) -> None:
    opened = book("nightstand")
    opened["Walls"].cell(4, 60).value = "colour"
    opened["Walls"].cell(5, 60).value = "blue"
    opened["Circuit"].cell(60, 2).value = "stray"
    opened.create_sheet("My notes").cell(1, 1).value = "call her"
    notes = read(opened, tmp_path).notes
    assert any(note.startswith("Walls!BH4") and '"colour"' in note for note in notes)
    assert any(note.startswith("Circuit!B60") for note in notes)
    assert any('"My notes"' in note for note in notes)


def test_moved_columns_and_rows_are_found_by_their_headings(tmp_path: Path) -> None:
    opened = book("nightstand")
    before = read(opened, tmp_path).survey
    opened["Walls"].insert_cols(1, 2)
    opened["Walls"].insert_rows(1, 3)
    opened["Circuit"].move_range("A4:F9", rows=60)
    opened["Boxes"].insert_rows(5, 2)
    assert read(opened, tmp_path).survey == before


def test_a_second_row_for_one_box_is_a_problem(tmp_path: Path) -> None:
    opened = book("nightstand")
    for heading, value in (("box", "source"), ("setback", "1 in")):
        cell_of(opened, "Box contents", 2, heading).value = value
    (found,) = problems(opened, tmp_path)
    assert found.where.endswith("'Box contents'!A6")
    assert "second row" in found.read


def test_settings_come_with_their_cell(tmp_path: Path) -> None:
    from estimator.pricing.books_for import books_for
    from estimator.problems import InputError

    opened = book("closet-charger")
    page = opened["Settings"]
    row = next(each[0].row for each in page.iter_rows(max_col=1)
               if each[0].value == "price.minimum_charge")  # fmt: skip
    page.cell(row, 2).value = "lots"
    with pytest.raises(InputError) as caught:
        books_for(read(opened, tmp_path))
    assert caught.value.problems[0].where.endswith(f"job.xlsx: Settings!B{row}")
