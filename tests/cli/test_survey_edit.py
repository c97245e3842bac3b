"""`estimator survey --edit`: one answer changed, the rest of the file as it was."""

from __future__ import annotations

import shutil
import sys
from pathlib import Path

import pexpect
import pytest

from tests.cli.run import ENVIRONMENT, NIGHTSTAND, estimator

WAIT_S = 30


@pytest.fixture
def job(tmp_path: Path) -> Path:
    return Path(shutil.copy(NIGHTSTAND, tmp_path / "job.toml"))


def test_by_key_without_a_terminal(job: Path) -> None:
    done = estimator("survey", "--edit", "job.toml", "breaker=20", folder=job.parent)
    assert done.returncode == 0, done.stderr
    assert "before: 15 A" in done.stdout and "after:  20 A" in done.stdout
    assert "estimator bid job.toml" in done.stdout
    old = NIGHTSTAND.read_text(encoding="utf-8")
    assert job.read_text(encoding="utf-8") == old.replace("breaker = 15", "breaker = 20")


def test_the_answers_are_shown_by_number_within_80_columns(job: Path) -> None:
    shown = estimator("survey", "--edit", "job.toml", folder=job.parent).stdout
    assert " source_x          2 ft 10 in" in shown
    assert max(map(len, shown.splitlines())) <= 80
    assert job.read_bytes() == NIGHTSTAND.read_bytes()


def test_by_number_at_a_terminal(job: Path) -> None:
    child = pexpect.spawn(
        sys.executable, ["-m", "estimator", "survey", "--edit", "job.toml"],
        cwd=str(job.parent), env={**ENVIRONMENT, "TERM": "dumb"}, dimensions=(24, 80),
        encoding="utf-8", timeout=WAIT_S,
    )  # fmt: skip
    child.expect(r"(\d+)  source_volume")
    number = child.match[1]
    child.expect("> $")
    child.sendline(number)
    child.expect(r"\[18.0 in3\] > $")
    child.sendline("20")
    child.expect(pexpect.EOF)
    assert "after:  20.0 in3" in child.before
    assert 'volume = "20 in3"' in job.read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ("breaker=lots", "whole number"),
        ("brekker=15", "Did you mean breaker?"),
        ("source_x=40 ft", "beyond the end"),
        ("breaker=", "was given no value"),
    ],
)
def test_a_change_that_does_not_fit_leaves_the_file_alone(
    job: Path, change: str, said: str
) -> None:
    done = estimator("survey", "--edit", "job.toml", change, folder=job.parent)
    assert done.returncode == 1 and said in done.stderr
    assert job.read_bytes() == NIGHTSTAND.read_bytes()


def test_there_must_be_a_file_to_edit(tmp_path: Path) -> None:
    done = estimator("survey", "--edit", "none.toml", "breaker=15", folder=tmp_path)
    assert done.returncode == 1 and "estimator survey none.toml" in done.stderr


@pytest.mark.parametrize("both", [("--edit", "--template"), ("job.toml", "breaker=15")])
def test_two_wishes_at_once_are_refused(job: Path, both: tuple[str, str]) -> None:
    assert estimator("survey", *both, folder=job.parent).returncode == 2
