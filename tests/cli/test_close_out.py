"""`estimator close-out`: what is printed, written and never written without consent."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

from estimator.catalog.shipped import shipped_catalogs
from estimator.outputs.json_out import document_schema
from tests.cli.run import NIGHTSTAND, estimator
from tests.ledger.made_close_out import DOUBLE_ENTRY, S19, changed

COLUMNS = 80


@pytest.fixture
def s19(tmp_path: Path) -> Path:
    path = tmp_path / "s19.toml"
    path.write_text(S19)
    return tmp_path


def labor_book(folder: Path) -> Path:
    return Path(shutil.copy(shipped_catalogs() / "labor.csv", folder / "labor.csv"))


def test_the_comparison_is_printed(s19: Path) -> None:
    said = estimator("close-out", "s19.toml", folder=s19).stdout
    rows = {line.split()[0]: line.split()[1:] for line in said.splitlines() if line.strip()}
    assert rows["materials"] == ["$84.00", "$77.20", "-$6.80", "-8.1", "%"]
    assert rows["labor"] == ["$209.00", "$275.50", "$66.50", "+31.8", "%"]
    assert rows["margin"] == ["$347.00", "$287.30", "-$59.70", "54.2", "%", "to", "44.9", "%"]
    assert "FLAG: the\ndeposit is over the cap." in said


@pytest.mark.parametrize("file", ["s19.toml", "sample:nightstand"])
def test_what_is_printed_fits_the_terminal(file: str, s19: Path) -> None:
    labor_book(s19)
    said = estimator("close-out", file, "--update-labor", "labor.csv", folder=s19).stdout
    assert max(map(len, said.splitlines())) <= COLUMNS


def test_the_workbook_is_written_where_asked(s19: Path) -> None:
    done = estimator("close-out", "s19.toml", "-o", "s19.xlsx", folder=s19)
    assert (done.returncode, done.stdout.splitlines()[-1]) == (0, "Workbook: s19.xlsx")
    assert (s19 / "s19.xlsx").stat().st_size > 5000
    assert estimator("close-out", "s19.toml", "-o", "s19.xlsx", folder=s19).returncode == 0


def test_somebody_s_file_is_left_alone(s19: Path) -> None:
    (s19 / "s19.xlsx").write_bytes(b"mine")
    done = estimator("close-out", "s19.toml", "-o", "s19.xlsx", folder=s19)
    assert (done.returncode, (s19 / "s19.xlsx").read_bytes()) == (1, b"mine")


def test_nothing_is_written_unasked(s19: Path) -> None:
    estimator("close-out", "s19.toml", folder=s19)
    assert [path.name for path in s19.iterdir()] == ["s19.toml"]


def test_without_consent_the_labor_book_is_shown_and_not_written(s19: Path) -> None:
    book = labor_book(s19)
    before = book.read_bytes()
    said = estimator(
        "close-out", "sample:nightstand", "--update-labor", "labor.csv", folder=s19
    ).stdout
    row = next(line.split() for line in said.splitlines() if line.startswith("fish-drop"))
    assert row == ["fish-drop", "0.875", "9.1", "%", "0.5", "0.5341", "1"]
    assert "Nothing was written. To write 5 rows, add --yes." in " ".join(said.split())
    assert book.read_bytes() == before


def test_with_consent_the_labor_book_is_written_once(s19: Path) -> None:
    book = labor_book(s19)
    command = ("close-out", "sample:nightstand", "--update-labor", "labor.csv", "--yes")
    assert "5 rows written." in estimator(*command, folder=s19).stdout
    after = book.read_text(encoding="utf-8")
    assert "ea,0.25,0.5341,1.50," in after
    assert "moved by 1 job, last 2026-03-20: S1" in after
    assert "No row changes." in estimator(*command, folder=s19).stdout
    assert book.read_text(encoding="utf-8") == after


def test_the_changed_book_is_a_good_book(s19: Path) -> None:
    shutil.copytree(shipped_catalogs(), s19 / "books")
    book = "books/labor.csv"
    estimator("close-out", "sample:nightstand", "--update-labor", book, "--yes", folder=s19)
    assert estimator("catalog", "check", "books", folder=s19).returncode == 0


def test_consent_without_a_book_changes_nothing(s19: Path) -> None:
    assert estimator("close-out", "s19.toml", "--yes", folder=s19).returncode == 0


def test_a_labor_book_that_is_not_there(s19: Path) -> None:
    done = estimator("close-out", "s19.toml", "--update-labor", "no.csv", folder=s19)
    assert (done.returncode, "no.csv: there is no such file." in done.stderr) == (1, True)


def test_lines_of_another_job_s_receipt(s19: Path) -> None:
    (s19 / "b.toml").write_text(changed(DOUBLE_ENTRY, ('job = "B1"', 'job = "S20"')))
    said = estimator("close-out", "b.toml", "--with", "s19.toml", folder=s19).stdout
    assert "$164.44" in said


@pytest.fixture
def abroad(s19: Path) -> Path:
    """Another job whose books, beside its file, are in euros."""
    (s19 / "abroad").mkdir()
    (s19 / "abroad" / "shop.toml").write_text('[shop]\ncurrency = "EUR"\n')
    (s19 / "abroad" / "b.toml").write_text(DOUBLE_ENTRY)
    return s19


def test_another_file_in_another_currency_is_refused(abroad: Path) -> None:
    done = estimator("close-out", "s19.toml", "--with", "abroad/b.toml", folder=abroad)
    assert (done.returncode, done.stdout) == (1, "")
    said = " ".join(done.stderr.split())
    assert "abroad/b.toml: its books are in EUR, and those of job S19 in USD" in said
    assert "Amounts are not converted" in said


def test_another_file_of_a_job_in_another_currency_is_refused(s19: Path) -> None:
    """There the job file says it."""
    job = NIGHTSTAND.read_text().replace('id = "S1"', 'id = "B1"')
    (s19 / "b-job.toml").write_text(job + '\n[settings.shop]\ncurrency = "CAD"\n')
    head, rest = DOUBLE_ENTRY.split("[estimate]")
    rest = rest[rest.index("[[") :]
    (s19 / "b.toml").write_text(f'{head}estimate = "b-job.toml"\n\n{rest}')
    done = estimator("close-out", "s19.toml", "--with", "b.toml", folder=s19)
    assert "its books are in CAD" in " ".join(done.stderr.split())


def test_books_asked_for_hold_for_all_files(abroad: Path) -> None:
    books = str(shipped_catalogs())
    more = ("--with", "abroad/b.toml", "--books", books)
    assert estimator("close-out", "s19.toml", *more, folder=abroad).returncode == 0


def test_problems_come_with_lines_and_exit_code_1(s19: Path) -> None:
    (s19 / "bad.toml").write_text(changed(S19, ("amount = 62.10", "amount = -1")))
    done = estimator("close-out", "bad.toml", "--json", folder=s19)
    assert done.returncode == 1
    assert "bad.toml: line 25, receipts[0].lines[0].amount: -1 does not fit here" in done.stderr
    assert json.loads(done.stdout)["schema"] == "estimator-problems-1"


def test_a_close_out_sample_that_is_not_there(s19: Path) -> None:
    done = estimator("close-out", "sample:none", folder=s19)
    assert "Close-out samples: nightstand." in done.stderr


def test_json_holds_against_its_schema(s19: Path) -> None:
    labor_book(s19)
    command = ("close-out", "sample:nightstand", "--json", "--update-labor", "labor.csv")
    document = json.loads(estimator(*command, folder=s19).stdout, parse_float=pytest.fail)
    Draft202012Validator(document_schema("close-out")).validate(document)
    assert document["labor_book"]["written"] is False
    assert len(document["labor_book"]["changes"]) == 5


def test_json_of_s19(s19: Path) -> None:
    document = json.loads(estimator("close-out", "s19.toml", "--json", folder=s19).stdout)
    job = document["close_out"]
    assert job["actual_margin"] == {"amount": "287.30", "pct": "44.9"}
    assert [each["tax"] for each in job["elsewhere"]] == ["3.39", "1.86", "0.78"]
    assert (document["workbook"], document["labor_book"]) == (None, None)
