"""`estimator books`: exports of many jobs, byte for byte the same, and what is refused."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

from estimator.outputs.json_out import document_schema
from tests.cli.run import NIGHTSTAND, estimator
from tests.ledger.made_close_out import DOUBLE_ENTRY, S19, changed

FILES = ("a.toml", "b.toml")
COLUMNS = 80


@pytest.fixture
def jobs(tmp_path: Path) -> Path:
    (tmp_path / "a.toml").write_text(S19)
    (tmp_path / "b.toml").write_text(
        changed(DOUBLE_ENTRY, ("date = 2026-04-20", "date = 2027-01-20"))
    )
    return tmp_path


def test_a_summary_is_printed_and_nothing_written(jobs: Path) -> None:
    said = estimator("books", *FILES, folder=jobs).stdout
    assert "A bid posts\nnothing: bids are left out." in said
    assert (
        said.splitlines()[-1] == "Nothing was written. Name a file: -o books.csv, or -o books.xlsx."
    )
    assert max(map(len, said.splitlines())) <= COLUMNS
    assert len([*jobs.iterdir()]) == 2


def test_totals_of_the_summary(jobs: Path) -> None:
    """B1: 550.00 sold, 120.00 spent. S19: 77.20 + 275.50; S20: 44.44."""
    said = estimator("books", *FILES, folder=jobs).stdout
    rows = [line.split() for line in said.splitlines()]
    assert ["B1", "$550.00", "$120.00", "$430.00"] in rows
    assert ["S20", "$0.00", "$44.44", "-$44.44"] in rows
    assert "$352.70" in said


@pytest.mark.parametrize("name", ["books.csv", "books.xlsx"])
def test_an_export_is_the_same_again_in_any_order(name: str, jobs: Path) -> None:
    done = estimator("books", *FILES, "-o", name, folder=jobs)
    assert (done.returncode, done.stdout.splitlines()[-1]) == (0, f"Written: {name}")
    first = (jobs / name).read_bytes()
    assert estimator("books", *FILES[::-1], "-o", name, folder=jobs).returncode == 0
    assert (jobs / name).read_bytes() == first


def test_a_csv_file_that_differs_is_left_alone(jobs: Path) -> None:
    (jobs / "books.csv").write_bytes(b"mine")
    done = estimator("books", *FILES, "-o", "books.csv", folder=jobs)
    assert (done.returncode, (jobs / "books.csv").read_bytes()) == (1, b"mine")
    done = estimator("books", *FILES, "-o", "books.csv", "--replace", folder=jobs)
    assert (done.returncode, (jobs / "books.csv").read_bytes()[:6]) == (0, b"txn_id")


def test_one_year_alone(jobs: Path) -> None:
    estimator("books", *FILES, "--year", "2027", "-o", "books.csv", folder=jobs)
    rows = (jobs / "books.csv").read_text().splitlines()
    assert len(rows) == 3 and all(",2027-01-20," in row for row in rows[1:])


def test_a_year_without_entries(jobs: Path) -> None:
    done = estimator("books", *FILES, "--year", "2025", folder=jobs)
    assert (done.returncode, "there is nothing to book in 2025" in done.stderr) == (1, True)


def test_a_job_file_has_no_place_here(jobs: Path) -> None:
    done = estimator("books", str(NIGHTSTAND), folder=jobs)
    said = " ".join(done.stderr.split())
    assert (done.returncode, "A bid posts nothing" in said) == (1, True)


def test_problems_of_all_files_come_at_once(jobs: Path) -> None:
    for name in FILES:
        (jobs / name).write_text((jobs / name).read_text().replace("amount = ", "amount = -"))
    said = estimator("books", *FILES, folder=jobs).stderr
    assert "a.toml: line" in said and "b.toml: line" in said


def test_unmapped_kinds_are_all_named(jobs: Path) -> None:
    books = jobs / "books"
    estimator("catalog", "copy", "books", folder=jobs)
    accounts = books / "accounts.csv"
    kept = [row for row in accounts.read_text().splitlines(keepends=True)
            if not row.startswith(("tools,", "bank,"))]  # fmt: skip
    accounts.write_text("".join(kept))
    done = estimator("books", *FILES, "--books", "books", folder=jobs)
    assert done.returncode == 1
    for kind in ("tools", "bank"):
        assert f'books/accounts.csv: no account for lines of kind "{kind}"' in done.stderr


def test_a_map_is_shown_with_its_marks_and_its_year(jobs: Path) -> None:
    done = estimator("books", *FILES, "--map", "schedule-c-2024", folder=jobs)
    assert "Materials and supplies, Part III (memory)" in done.stdout
    assert "The map schedule-c-2024 is of 2024; check its names for 2026, 2027." in done.stderr


def test_no_such_map(jobs: Path) -> None:
    done = estimator("books", *FILES, "--map", "schedule-c", folder=jobs)
    assert (done.returncode, "Use schedule-c-2024" in done.stderr) == (1, True)


def test_another_kind_of_file_is_wrong_usage(jobs: Path) -> None:
    done = estimator("books", *FILES, "-o", "books.ods", folder=jobs)
    assert (done.returncode, "must end in .csv or .xlsx" in done.stderr) == (2, True)


def test_json_holds_against_its_schema(jobs: Path) -> None:
    command = ("books", *FILES, "sample:nightstand", "--map", "schedule-c-2024", "--json")
    document = json.loads(estimator(*command, folder=jobs).stdout, parse_float=pytest.fail)
    Draft202012Validator(document_schema("books")).validate(document)
    assert (document["file"], document["year"]) == (None, None)
    assert document["totals"]["debit"] == document["totals"]["credit"]
