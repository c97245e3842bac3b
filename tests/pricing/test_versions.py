"""Versions of a bid: listed with why, what changed and what each came to. Worked by hand."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest

from estimator.outputs.text_bid import bid_summary
from estimator.outputs.workbook import bid_workbook
from estimator.pricing.books_for import books_for
from estimator.pricing.engine import estimate
from estimator.pricing.records import Bid
from estimator.pricing.versions import with_versions
from estimator.problems import InputError
from estimator.survey.differences import ChangedFact
from estimator.survey.reader import read_job
from tests.outputs.spreadsheet import cells

SAMPLE = Path(__file__).parents[2] / "samples" / "nightstand.toml"
STATED = "\n[overrides]\nlabor_hours = {}\nmaterials_cost = 0\ntrips = 0\n"
FLAT = "\n[settings.price]\nminimum_charge = 0\nlabor_rate_per_hour = 80\n"
VERSIONS = """
[[versions]]
number = 2
date = 2026-03-05
why = "The wall is plaster"

[[versions]]
number = 1
why = "First bid"
file = "{}"
"""


def bid_of(folder: Path, added: str, first: str = "first.toml") -> Bid:
    """The bid of a job file in a folder, with its versions."""
    text = SAMPLE.read_text(encoding="utf-8")
    (folder / first).write_text(text + STATED.format("5") + FLAT, encoding="utf-8")
    now = folder / "now.toml"
    changed = text.replace('finish = "gypsum board"', 'finish = "plaster"')
    now.write_text(changed + STATED.format("6") + FLAT + added, encoding="utf-8")
    job = read_job(now)
    return with_versions(estimate(job.survey, books_for(job)), job)


def test_versions_by_number_with_totals_and_changes(tmp_path: Path) -> None:
    """5 h x 80 = 400.00 before; 6 h x 80 = 480.00 now; the finish and the hours differ."""
    first, second = bid_of(tmp_path, VERSIONS.format("first.toml")).versions
    assert (first.number, first.total, first.changes) == (1, Decimal("400.00"), ())
    assert (second.number, second.total) == (2, Decimal("480.00"))
    assert (second.dated, second.why) == (date(2026, 3, 5), "The wall is plaster")
    assert second.changes == (
        ChangedFact("walls north: finish", "gypsum board", "plaster"),
        ChangedFact("overrides: labor hours", "5", "6"),
    )


def test_a_version_without_its_file_has_no_total(tmp_path: Path) -> None:
    """Nothing is known of it but its number and why."""
    added = VERSIONS.replace('file = "{}"\n', "")
    first, second = bid_of(tmp_path, added).versions
    assert (first.total, second.changes, second.total) == (None, (), Decimal("480.00"))


def test_a_job_without_versions_has_none(tmp_path: Path) -> None:
    """Nothing is added to the bid."""
    assert bid_of(tmp_path, "").versions == ()


@pytest.mark.parametrize(
    ("file", "added", "said"),
    [
        ("now.toml", VERSIONS, r'versions\[1\].*file = "now.toml" is this job itself'),
        ("first.toml", VERSIONS.replace("number = 2", "number = 1"), "version 1 is listed more"),
        ("gone.toml", VERSIONS, "gone.toml"),
    ],
)
def test_versions_that_cannot_be_read(tmp_path: Path, file: str, added: str, said: str) -> None:
    """The file itself, a number twice, a file that is not there."""
    with pytest.raises(InputError, match=said):
        bid_of(tmp_path, added.format(file))


def test_versions_stand_on_the_bid_and_its_last_sheet(tmp_path: Path) -> None:
    """Which version this is, for the customer; what changed, on the assumptions sheet."""
    bid = bid_of(tmp_path, VERSIONS.format("first.toml"))
    texts = {cell.value for cell in cells(bid_workbook(bid)).values()}
    assert {"2: The wall is plaster", "Version 1: First bid"} <= texts
    assert "walls north: finish: gypsum board -> plaster\noverrides: labor hours: 5 -> 6" in texts
    said = [line for line in bid_summary(bid) if line.startswith("Version ")]
    assert [line.removeprefix("Version").strip() for line in said] == ["2: The wall is plaster"]


def test_a_version_in_another_currency_is_refused(tmp_path: Path) -> None:
    bid_of(tmp_path, VERSIONS.format("first.toml"))
    first = tmp_path / "first.toml"
    first.write_text(first.read_text() + '\n[settings.shop]\ncurrency = "CAD"\n')
    job = read_job(tmp_path / "now.toml")
    said = r"versions\[1\]\.file: version 1 is in CAD, and this bid is in USD\n  Price both"
    with pytest.raises(InputError, match=said):
        with_versions(estimate(job.survey, books_for(job)), job)


def test_one_version_alone_is_the_job_at_hand(tmp_path: Path) -> None:
    (only,) = bid_of(tmp_path, '\n[[versions]]\nnumber = 4\nwhy = "Asked for"\n').versions
    assert (only.number, only.why, only.total) == (4, "Asked for", Decimal("480.00"))


def test_earlier_versions_are_bid_with_the_books_asked_for(tmp_path: Path) -> None:
    """There are none in that folder, and it is looked there."""
    bid_of(tmp_path, VERSIONS.format("first.toml"))
    job = read_job(tmp_path / "now.toml")
    with pytest.raises(InputError, match="no-books"):
        with_versions(estimate(job.survey, books_for(job)), job, tmp_path / "no-books")


def test_a_version_that_names_this_file_is_told_what_to_do(tmp_path: Path) -> None:
    with pytest.raises(InputError) as told:
        bid_of(tmp_path, VERSIONS.format("now.toml"))
    (problem,) = told.value.problems
    assert (problem.read, problem.write) == (
        'file = "now.toml" is this job itself',
        "Leave file out for the version at hand, or name the file of an earlier one.",
    )
