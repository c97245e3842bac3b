"""`estimator batch`: all jobs below a folder, failures told and not fatal."""

from __future__ import annotations

import json
import os
import pty
import signal
import subprocess
import sys
import time
import tomllib
from decimal import Decimal
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator
from openpyxl import Workbook, load_workbook

from estimator.outputs.batch import NO_JOB, BatchRow
from estimator.outputs.batch_totals import BatchTotals
from estimator.outputs.form_book import write_form
from estimator.outputs.json_out import document_schema
from estimator.outputs.text_batch import MOST_SHOWN, bar, failures_text
from tests.cli.run import ENVIRONMENT, NIGHTSTAND, SAMPLES, estimator

JOB = NIGHTSTAND.read_text(encoding="utf-8")
PRICED, STOPPED, FAILED = "priced", "stopped by a finding", "not priced"


@pytest.fixture
def jobs(tmp_path: Path) -> Path:
    """A folder with three jobs, one of them wrong, one stopped, and files that are no jobs."""
    folder = tmp_path / "jobs"
    (folder / "deep" / "er").mkdir(parents=True)
    (folder / ".hidden").mkdir()
    (folder / "deep" / "er" / "good.toml").write_text(JOB)
    (folder / "deep" / "bad.toml").write_text(JOB.replace("breaker = 15", 'breaker = "many"'))
    (folder / "stopped.toml").write_text(JOB.replace("breaker = 15", "breaker = 20"))
    (folder / "deep" / "shop.toml").write_text("[price]\nlabor_rate_per_hour = 91\n")
    (folder / ".hidden" / "job.toml").write_text(JOB)
    return folder


def rows(path: Path) -> list[tuple[object, ...]]:
    page = load_workbook(path, data_only=True)["Jobs"]
    return [(row[0], row[3], row[5]) for row in page.iter_rows(min_row=5, values_only=True)]


def bid_total(job: Path, folder: Path) -> float:
    done = estimator("bid", str(job), "--json", "-o", "one.xlsx", folder=folder)
    return float(json.loads(done.stdout)["price"]["total"])


@pytest.mark.parametrize("at_a_time", ["1", "2"])
def test_all_jobs_below_a_folder(at_a_time: str, jobs: Path) -> None:
    done = estimator("batch", "jobs", "--jobs", at_a_time, folder=jobs.parent)
    assert done.returncode == 0
    assert "3 jobs: 1 priced, 1 stopped by a finding, 1 not priced." in done.stdout
    assert "deep/bad.toml, not priced: deep/bad.toml: line" in done.stderr
    assert "stopped.toml, stopped by a finding: Breaker against wire" in done.stderr
    assert "\r" not in done.stderr  # no bar where nobody looks
    found = rows(jobs.parent / "summary.xlsx")
    assert [each[:2] for each in found] == [
        ("deep/bad.toml", FAILED), ("deep/er/good.toml", PRICED), ("stopped.toml", STOPPED),
    ]  # fmt: skip
    assert found[1][2] == bid_total(jobs / "deep" / "er" / "good.toml", jobs.parent)


def test_settings_beside_a_job_hold_for_it_alone(jobs: Path) -> None:
    """The same job, once beside a shop.toml and once not, once with a setting of its own."""
    (jobs / "deep" / "bad.toml").write_text(JOB)
    (jobs / "stopped.toml").write_text(JOB + "\n[settings.price]\nlabor_rate_per_hour = 92\n")
    estimator("batch", "jobs", "--jobs", "1", folder=jobs.parent)
    totals = [each[2] for each in rows(jobs.parent / "summary.xlsx")]
    names = ("deep/bad.toml", "deep/er/good.toml", "stopped.toml")
    assert totals == [bid_total(jobs / name, jobs.parent) for name in names]
    assert len(set(totals)) == len(names)


def test_bids_are_written_where_asked_and_only_there(jobs: Path) -> None:
    estimator("batch", "jobs", "-o", "all.xlsx", "--workbooks", "bids", folder=jobs.parent)
    made = sorted(path.relative_to(jobs.parent).as_posix() for path in jobs.parent.rglob("*.xlsx"))
    assert made == ["all.xlsx", "bids/deep/er/good.bid.xlsx"]


def test_json_holds_against_its_schema(jobs: Path) -> None:
    document = json.loads(estimator("batch", "jobs", "--json", folder=jobs.parent).stdout)
    Draft202012Validator(document_schema("batch")).validate(document)
    assert document["counts"] == {PRICED: 1, STOPPED: 1, FAILED: 1, "no job": 1}
    assert [each["file"] for each in document["failures"]] == ["deep/bad.toml", "stopped.toml"]


def test_a_folder_where_nothing_can_be_priced_ends_with_1(tmp_path: Path) -> None:
    (tmp_path / "a.toml").write_text("[job\n")
    assert estimator("batch", ".", folder=tmp_path).returncode == 1
    assert rows(tmp_path / "summary.xlsx") == [("a.toml", FAILED, None)]


@pytest.fixture
def forms(tmp_path: Path) -> Path:
    """A folder with a filled form, one that is wrong, a bid, and other workbooks."""
    folder = tmp_path / "forms"
    folder.mkdir()
    raw = tomllib.loads(JOB, parse_float=Decimal)
    write_form(folder / "filled.xlsx", raw)
    write_form(folder / "wrong.xlsx", {**raw, "circuit": {**raw["circuit"], "breaker": "many"}})
    estimator("bid", "filled.xlsx", folder=folder)
    own = Workbook()
    own.active.title = "Questions"  # type: ignore[union-attr]
    own.save(folder / "own.XLSX")
    (folder / "broken.xlsx").write_bytes(b"PK\x03\x04 no workbook")
    (folder / "~$filled.xlsx").write_text("a lock")
    return folder


def test_filled_forms_are_priced_and_other_workbooks_are_passed_over(forms: Path) -> None:
    done = estimator("batch", "forms", "--jobs", "2", folder=forms.parent)
    assert "2 jobs: 1 priced, 0 stopped by a finding, 1 not priced." in done.stdout
    assert "wrong.xlsx, not priced: wrong.xlsx: Circuit!" in done.stderr
    passed = "3 files: broken.xlsx, filled.bid.xlsx, own.XLSX."
    assert passed in " ".join(done.stderr.split())
    found = rows(forms.parent / "summary.xlsx")
    assert found == [
        ("filled.xlsx", PRICED, bid_total(NIGHTSTAND, forms.parent)), ("wrong.xlsx", FAILED, None),
    ]  # fmt: skip


def test_a_form_beside_its_text_has_a_bid_of_its_own(forms: Path) -> None:
    (forms / "filled.toml").write_text(JOB)
    estimator("batch", "forms", "--workbooks", "bids", folder=forms.parent)
    made = sorted(path.name for path in (forms.parent / "bids").iterdir())
    assert made == ["filled.bid.xlsx", "filled.xlsx.bid.xlsx"]


def test_names_passed_over_are_not_endless() -> None:
    totals = BatchTotals()
    for at in range(MOST_SHOWN + 2):
        totals.add(BatchRow(f"{at}.xlsx", NO_JOB))
    assert " ".join(failures_text(totals)).endswith("18.xlsx, 19.xlsx and 2 more.")


@pytest.mark.parametrize("name", ["none", "."])
def test_a_folder_without_jobs_is_told(name: str, tmp_path: Path) -> None:
    done = estimator("batch", name, folder=tmp_path)
    assert (done.returncode, "1 problem." in done.stderr) == (1, True)
    assert not (tmp_path / "summary.xlsx").exists()


def test_somebodys_own_file_is_not_replaced(jobs: Path) -> None:
    (jobs.parent / "summary.xlsx").write_text("mine")
    assert estimator("batch", "jobs", folder=jobs.parent).returncode == 1
    assert (jobs.parent / "summary.xlsx").read_text() == "mine"


def test_every_sample_is_found_and_close_outs_are_passed_over(tmp_path: Path) -> None:
    done = estimator("batch", str(NIGHTSTAND.parent), folder=tmp_path)
    assert f"{len(SAMPLES)} jobs: {len(SAMPLES)} priced, 0 stopped" in done.stdout


def test_a_bar_is_drawn_on_a_terminal(jobs: Path) -> None:
    ours, theirs = pty.openpty()
    command = [sys.executable, "-m", "estimator", "batch", "jobs", "--jobs", "1"]
    subprocess.run(
        command, cwd=jobs.parent, env=ENVIRONMENT, stderr=theirs, stdout=subprocess.DEVNULL,
        check=True,
    )  # fmt: skip
    os.close(theirs)
    assert f"\r{bar(4, 4)}".encode() in os.read(ours, 10_000)
    os.close(ours)


def test_stopped_by_hand_it_says_so_and_writes_nothing(jobs: Path) -> None:
    """Ctrl-C reaches every process of a terminal; only one of them says anything."""
    for at in range(400):
        (jobs / f"more-{at}.toml").write_text(JOB)
    command = [sys.executable, "-m", "estimator", "batch", "jobs", "--jobs", "2"]
    process = subprocess.Popen(
        command, cwd=jobs.parent, env=ENVIRONMENT, stderr=subprocess.PIPE, text=True,
        start_new_session=True,
    )  # fmt: skip
    while len([*Path(f"/proc/{process.pid}/task").iterdir()]) < 2:  # the pool has begun
        time.sleep(0.05)
    time.sleep(1)
    os.killpg(process.pid, signal.SIGINT)
    _, told = process.communicate()
    assert (process.returncode, told) == (130, "Stopped.\n")
    assert not (jobs.parent / "summary.xlsx").exists()


def test_a_bar_is_as_long_as_the_work_is_done() -> None:
    """40 signs: a quarter of them is ten."""
    assert bar(2_500, 10_000) == f"[{'#' * 10}{'.' * 30}] 2,500 of 10,000"
