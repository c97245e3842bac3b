"""The form in a real spreadsheet program: filled by its scripting, saved, read; and printed."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
from pathlib import Path

import pytest

from estimator.form.reader import read_form
from estimator.outputs.form_book import form_workbook
from estimator.pricing.books_for import books_for
from estimator.pricing.engine import estimate
from tests.form.made_form import S1, answer_cell, book, sample
from tests.outputs.spreadsheet import printed
from tests.outside import need_program

FILL = Path(__file__).parent / "fill_by_office.py"
SYSTEM_PYTHON = "/usr/bin/python3"
SECONDS = 200
A4, LETTER = "595", "612"  # points across


def need_scripting() -> str:
    """Path of LibreOffice, where the system's Python can talk to it."""
    soffice = need_program("soffice")
    has_uno = (
        shutil.which(SYSTEM_PYTHON)
        and not subprocess.run(
            [SYSTEM_PYTHON, "-c", "import uno"], capture_output=True, check=False
        ).returncode
    )
    if not has_uno:
        reason = "LibreOffice's scripting is not installed (Debian package python3-uno)"
        (pytest.fail if os.environ.get("CI") == "true" else pytest.skip)(reason)
    return soffice


def filled(source: bytes, cells: list[tuple[str, str, str]], folder: Path) -> Path:
    """A workbook with cells typed into it and saved by LibreOffice."""
    soffice = need_scripting()
    (folder / "in.xlsx").write_bytes(source)
    (folder / "cells.json").write_text(json.dumps(cells), encoding="utf-8")
    names = [str(folder / name) for name in ("in.xlsx", "job.xlsx", "cells.json", "profile")]
    environment = {key: value for key, value in os.environ.items() if "PYTHON" not in key}
    subprocess.run(
        [SYSTEM_PYTHON, str(FILL), soffice, *names],
        check=True, timeout=SECONDS, env=environment,
    )  # fmt: skip
    return folder / "job.xlsx"


def test_the_questions_filled_by_a_spreadsheet_program_give_s1(tmp_path: Path) -> None:
    """S1, worked by hand: 12 in down, 71 in along, 12 in up; four studs; 11 ft to order."""
    empty = book()
    cells = [("Questions", answer_cell(empty, key).coordinate, str(typed))
             for key, typed in S1.items()]  # fmt: skip
    job = read_form(filled(form_workbook(), cells, tmp_path))
    bid = estimate(job.survey, books_for(job))
    counted = {line.item: line.quantity for line in bid.takeoff.parts}
    work = {line.task: line.quantity for line in bid.takeoff.tasks}
    assert bid.takeoff.cable[0].with_allowance_in * 10 == 1309
    assert (counted["cable-14-2"], counted["pigtail-14"], counted["connector-medium"]) == (11, 3, 3)
    assert (work["bore-member"], work["trim-off-on"]) == (4, 12)


def test_a_filled_form_saved_by_a_spreadsheet_program_is_the_same_job(tmp_path: Path) -> None:
    path = filled(form_workbook(sample("door-in-the-way")), [], tmp_path)
    (tmp_path / "before.xlsx").write_bytes(form_workbook(sample("door-in-the-way")))
    assert read_form(path).survey == read_form(tmp_path / "before.xlsx").survey


def test_what_is_typed_into_the_form_stays_text(tmp_path: Path) -> None:
    """12-6 and 1/2 would become dates in cells that are not formatted as text."""
    cells = [("Walls", "C5", "1/2"), ("Boxes", "C6", "12-6")]
    path = filled(form_workbook(sample("nightstand")), cells, tmp_path)
    from openpyxl import load_workbook

    opened = load_workbook(path)
    assert opened["Walls"]["C5"].value == "1/2"
    assert opened["Boxes"]["C6"].value == "12-6"


@pytest.mark.parametrize(("country", "across"), [("US", LETTER), ("GB", A4)])
def test_the_empty_form_prints_on_two_pages(country: str, across: str, tmp_path: Path) -> None:
    need_program("pdftoppm")
    data = form_workbook(country=country)
    (tmp_path / "form.pdf").write_bytes(printed({"form": data})["form"])
    said = subprocess.run(["pdfinfo", str(tmp_path / "form.pdf")], capture_output=True, check=True,
                          text=True).stdout  # fmt: skip
    facts = dict(line.split(":", 1) for line in said.splitlines() if ":" in line)
    assert facts["Pages"].strip() == "2"
    assert facts["Page size"].split()[0].startswith(across)
