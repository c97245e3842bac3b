"""`estimator survey --form`: the workbook to fill in, and every command that reads it."""

from __future__ import annotations

import json
import tomllib
from pathlib import Path

import pytest

from tests.cli.run import NIGHTSTAND, estimator


def form(folder: Path, *arguments: str) -> Path:
    done = estimator("survey", "--form", "job.xlsx", *arguments, folder=folder)
    assert done.returncode == 0, done.stderr
    assert "estimator bid job.xlsx" in done.stdout
    return folder / "job.xlsx"


def test_a_bid_from_a_form_is_the_bid_of_its_job_file(tmp_path: Path) -> None:
    form(tmp_path, str(NIGHTSTAND))
    ours = estimator("bid", "job.xlsx", "--json", folder=tmp_path)
    theirs = estimator("bid", str(NIGHTSTAND), "--json", folder=tmp_path)
    assert ours.returncode == 0, ours.stderr
    left, right = json.loads(ours.stdout), json.loads(theirs.stdout)
    assert left["price"] == right["price"]
    assert left["takeoff"] == right["takeoff"]
    assert (tmp_path / "job.bid.xlsx").exists()


@pytest.mark.parametrize(
    "command", [["check"], ["takeoff"], ["shopping-list"], ["range"], ["compare"]]
)
def test_other_commands_read_the_form(command: list[str], tmp_path: Path) -> None:
    form(tmp_path, "sample:nightstand")
    done = estimator(*command, "job.xlsx", folder=tmp_path)
    assert done.returncode == 0, done.stderr
    assert "S1" in done.stdout


def test_a_filled_form_prints_as_a_job_file(tmp_path: Path) -> None:
    form(tmp_path, "sample:nightstand")
    done = estimator("survey", "--text", "job.xlsx", folder=tmp_path)
    said = tomllib.loads(done.stdout)
    assert said["walls"] == tomllib.loads(NIGHTSTAND.read_text(encoding="utf-8"))["walls"]


def test_a_form_is_never_written_over_unless_asked(tmp_path: Path) -> None:
    path = form(tmp_path, "sample:nightstand")
    before = path.read_bytes()
    done = estimator("survey", "--form", "job.xlsx", folder=tmp_path)
    assert (done.returncode, path.read_bytes()) == (1, before)
    assert "--replace" in done.stderr
    form(tmp_path, "--replace")
    assert path.read_bytes() != before


@pytest.mark.parametrize(
    ("arguments", "code", "words"),
    [
        (["survey", "--form", "job.txt"], 1, ".xlsx"),
        (["survey", "--form", "a.xlsx", "--template"], 2, "one thing"),
        (["survey", "--replace"], 2, "one thing"),
        (["survey", "--form", "no/such/folder.xlsx"], 1, "folder"),
        (["survey", "--form", "a.xlsx", "nothing.toml"], 1, "no such file"),
        (["bid", "nothing.xlsx"], 1, "no such file"),
    ],
)
def test_wrong_usage(arguments: list[str], code: int, words: str, tmp_path: Path) -> None:
    done = estimator(*arguments, folder=tmp_path)
    assert done.returncode == code
    assert words in done.stderr


def test_an_empty_form_says_what_to_answer(tmp_path: Path) -> None:
    form(tmp_path)
    done = estimator("bid", "job.xlsx", folder=tmp_path)
    assert done.returncode == 1
    assert "Questions" in done.stderr
    assert not (tmp_path / "job.bid.xlsx").exists()
