"""`estimator change` as a person runs it."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

from estimator.outputs.json_out import document_schema
from tests.cli.run import NIGHTSTAND, changed, estimator

PLASTER = ('finish = "gypsum board"', 'finish = "plaster"')
NO_GROUND = ('grounded = "yes"', 'grounded = "no"')


def test_a_change_is_told_and_written(tmp_path: Path) -> None:
    job = changed(tmp_path, *PLASTER)
    ran = estimator("change", str(NIGHTSTAND), str(job), "--why", "Old wall", folder=tmp_path)
    assert (ran.returncode, ran.stderr) == (0, "")
    assert "- walls north: finish: gypsum board -> plaster" in ran.stdout
    assert "Why: Old wall" in ran.stdout
    assert (tmp_path / "job.change.xlsx").read_bytes().startswith(b"PK")
    assert max(map(len, ran.stdout.splitlines())) < 80


def test_equal_jobs_have_no_change(tmp_path: Path) -> None:
    ran = estimator("change", "sample:nightstand", str(NIGHTSTAND), folder=tmp_path)
    assert "Nothing differs between the two job files." in ran.stdout
    assert not list(tmp_path.glob("*.xlsx"))


def test_a_change_that_is_stopped_writes_no_order(tmp_path: Path) -> None:
    job = changed(tmp_path, *NO_GROUND)
    ran = estimator("change", str(NIGHTSTAND), str(job), folder=tmp_path)
    assert ran.returncode == 1
    assert "No change order was written" in ran.stderr
    assert "stops the bid" in ran.stdout
    assert not list(tmp_path.glob("*.xlsx"))


@pytest.mark.parametrize("change", [PLASTER, NO_GROUND])
def test_json_holds_against_its_schema(tmp_path: Path, change: tuple[str, str]) -> None:
    job = changed(tmp_path, *change)
    ran = estimator("change", str(NIGHTSTAND), str(job), "--json", folder=tmp_path)
    document = json.loads(ran.stdout, parse_float=pytest.fail)
    Draft202012Validator(document_schema("change")).validate(document)
    assert (document["workbook"] is None) == (change == NO_GROUND) == bool(document["stopped_by"])


def test_a_file_that_is_not_ours_stays(tmp_path: Path) -> None:
    job = changed(tmp_path, *PLASTER)
    own = tmp_path / "job.change.xlsx"
    own.write_bytes(b"my own")
    ran = estimator("change", str(NIGHTSTAND), str(job), folder=tmp_path)
    assert (ran.returncode, own.read_bytes()) == (1, b"my own")


def test_help_shows_an_example(tmp_path: Path) -> None:
    ran = estimator("change", "--help", folder=tmp_path)
    assert "Example: estimator change job.toml job-plaster.toml" in ran.stdout
