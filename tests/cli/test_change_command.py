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
    assert "--replace" in ran.stderr


PAID = """[[receipts]]
date = 2026-03-09
supplier = "Sample supply house"
doc_no = "R-1"
lines = [
  { description = "Box", amount = 3.05, item = "box-old-work-1g-20", quantity = 1 },
  { description = "Blade", amount = 6.80, item = "blade-saw", quantity = 1 },
  { description = "Nails", amount = 3.60, item = "nail-finish", quantity = 50 },
  { description = "Sandpaper", amount = 2.00 },
]
"""


def test_half_the_list_bought_then_plaster(tmp_path: Path) -> None:
    """S1 by hand: plaster takes a blade at 11.90 that no list had; all else is as in the bid."""
    job = changed(tmp_path, *PLASTER)
    (tmp_path / "paid.toml").write_text(PAID, encoding="utf-8")
    words = ("change", str(NIGHTSTAND), str(job), "--bought", "paid.toml")
    ran = estimator(*words, folder=tmp_path)
    assert (ran.returncode, ran.stderr) == (0, "")
    assert "Counted as bought: 3\n--------------------\nFrom paid.toml.\n" in ran.stdout
    assert "- 1 x Old-work box, plastic, single gang, 20 in3: $3.05 each, as paid" in (
        ran.stdout.replace("\n  ", " ")
    )
    assert '"Sandpaper" names no item' in ran.stdout
    document = json.loads(estimator(*words, "--json", folder=tmp_path).stdout)
    Draft202012Validator(document_schema("change")).validate(document)
    assert document["price"]["added"]["listed"] == "11.90"
    assert (document["bought"]["file"], len(document["bought"]["parts"])) == ("paid.toml", 3)


def test_a_file_that_cannot_be_counted_is_refused_in_words(tmp_path: Path) -> None:
    job = changed(tmp_path, *PLASTER)
    bad = PAID.replace("nail-finish", "nails").replace('-20", quantity = 1', '-20"')
    (tmp_path / "paid.toml").write_text(bad, encoding="utf-8")
    ran = estimator("change", str(NIGHTSTAND), str(job), "--bought", "paid.toml", folder=tmp_path)
    assert ran.returncode == 1
    assert " ".join(ran.stderr.split()).startswith(
        'paid.toml: line 6, receipts[0].lines[0]: "box-old-work-1g-20" has no quantity'
        " Write how much was bought, in its unit (ea)."
        ' paid.toml: line 8, receipts[0].lines[2].item: "nails" is neither on the shopping list nor'
        " in the materials book"
        " Write an item key of materials.csv, such as the page has it."
    )
    assert not list(tmp_path.glob("*.xlsx"))


def test_help_shows_an_example(tmp_path: Path) -> None:
    ran = estimator("change", "--help", folder=tmp_path)
    assert "Example: estimator change job.toml job-plaster.toml" in ran.stdout
    assert "--bought paid-S1.toml" in ran.stdout
