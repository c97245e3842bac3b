"""The README says what is so: commands, fields, exit codes and examples are tried."""

from __future__ import annotations

import csv
import os
import re
import shutil
import subprocess
import sys
from pathlib import Path
from typing import get_args

import pytest

from estimator.cli import terminal
from estimator.pricing.books_for import books_for
from estimator.pricing.compare import compare
from estimator.pricing.engine import estimate
from estimator.settings import PriceFormKind, TaxMode
from estimator.survey.reader import job_from_text
from estimator.takeoff.records import Takeoff
from tests.cli.test_start import COMMANDS
from tests.project import readme_rules
from tests.project.readme_fields import FILES, current, tables

ROOT = Path(__file__).parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")
CI = (ROOT / ".ci" / "run").read_text(encoding="utf-8")
BLOCK = re.compile(r"(?:<!-- ([\w-]+) -->\n)?```(\w+)\n(.*?)```", re.DOTALL)
BLOCKS = [(marker, kind, text) for marker, kind, text in BLOCK.findall(README)]
MARKED = {marker: text for marker, _, text in BLOCKS if marker}
SHELL = [text for marker, kind, text in BLOCKS if kind == "sh" and not marker]
JOBS = [text for _, kind, text in BLOCKS if kind == "toml"]


@pytest.mark.parametrize("file", FILES)
def test_the_tables_of_fields_are_current(file: str) -> None:
    """Where this fails: python -m tests.project.readme_fields"""
    assert current(README, file) == tables(file)


def test_the_table_of_rules_is_current() -> None:
    """Where this fails: python -m tests.project.readme_rules"""
    assert readme_rules.current(README) == readme_rules.table()


def test_every_rule_on_file_stands_in_the_table_once() -> None:
    with (ROOT / "estimator/tables/data/rules.csv").open(encoding="utf-8", newline="") as file:
        on_file = [(row["rule"], row["title"]) for row in csv.DictReader(file)]
    section = README[README.index("## What is checked") : README.index("## The price")]
    assert sorted(re.findall(r"^\| `([\w-]+)` \| (.+?) \|", section, re.MULTILINE)) == on_file


def test_every_tax_mode_and_price_form_is_explained_once() -> None:
    section = README[README.index("## The price") : README.index("## The books")]
    listed = re.findall(r'^\| `"([\w-]+)"` \|', section, re.MULTILINE)
    assert sorted(listed) == sorted((*get_args(TaxMode), *get_args(PriceFormKind)))


def test_the_decisions_shown_are_read_and_seen() -> None:
    """The example job fails neither rule, so the amendment alone changes a finding."""
    section = README[README.index("## What is checked") : README.index("## The price")]
    shown = "\n".join(text for _, kind, text in BLOCK.findall(section) if kind == "text")
    job = job_from_text(JOBS[0] + shown, Path("README.md"))
    survey = job.survey
    assert [each.decision for each in survey.acceptances] == ["accept", "decline remedy"]
    assert [each.change for each in survey.amendments] == ["off", "figure"]
    findings = {each.finding_id: each for each in estimate(survey, books_for(job)).findings}
    assert not [name for name in findings if name.startswith("afci-extension:")]
    assert "at most 3/16 in" in findings["box-gap:source"].figures


def test_the_comparison_shown_comes_out_as_the_table_below_it_says() -> None:
    """S21, worked by hand."""
    text = (ROOT / "samples" / "nightstand.toml").read_text(encoding="utf-8") + MARKED["compare"]
    job = job_from_text(text, ROOT / "samples" / "nightstand.toml")
    made = compare(estimate(job.survey, books_for(job)))
    assert made.own_column is not None
    sums = [(each.cash, each.all_in) for each in (made.own_column, *made.hires)]
    rows = re.findall(r"^\| (?:do it yourself|hire): .*\| ([\d.]+) \| ([\d.]+) \|$", README, re.M)
    assert [tuple(map(str, row)) for row in sums] == rows
    assert rows == [("202.90", "382.90"), ("545.00", "572.00")]
    assert f"costs {made.against[0].by} less" in README
    assert f"= {made.against[0].break_even}." in README


def test_every_field_has_a_meaning() -> None:
    lines = [line for file in FILES for line in tables(file).splitlines()]
    rows = [line.split("|") for line in lines if line.startswith("| `")]
    assert [row[1].strip() for row in rows if not row[4].strip()] == []


def test_every_command_stands_in_the_table_and_no_other() -> None:
    listed = re.findall(r"^\| `estimator ([a-z -]+?)(?: JOB)?` \|", README, re.MULTILINE)
    assert sorted(listed) == sorted(COMMANDS)


def test_every_exit_code_is_explained() -> None:
    listed = {int(code) for code in re.findall(r"^\| (\d+) \|", README, re.MULTILINE)}
    named = {terminal.BAD_INPUT, terminal.WRONG_USAGE, terminal.STOPPED, terminal.READER_LEFT}
    assert listed == {0, *named}


@pytest.mark.parametrize("name", ["first-bid", "tests"])
def test_ci_runs_the_readme_commands_as_they_stand(name: str) -> None:
    assert README.count(f"<!-- {name} -->") == 1
    assert f"$(readme_block {name})" in CI
    assert MARKED[name].startswith("python3 -m venv .venv && .venv/bin/pip install ")


def test_ci_looks_for_the_workbook_that_the_readme_promises() -> None:
    (job,) = re.findall(r"samples/(\w+)\.toml", MARKED["first-bid"])
    assert f"`{job}.bid.xlsx`" in README
    assert f'-s "$first/{job}.bid.xlsx"' in CI


@pytest.mark.parametrize("script", SHELL, ids=lambda script: script.split("\n", maxsplit=1)[0])
def test_the_examples_run(script: str, tmp_path: Path) -> None:
    shutil.copytree(ROOT / "samples", tmp_path / "samples")
    python = f'estimator() {{ "{sys.executable}" -m estimator "$@"; }}\n'
    done = subprocess.run(
        ["bash", "-euo", "pipefail", "-c", python + script], cwd=tmp_path,
        env={**os.environ, "PYTHONPATH": str(ROOT), "ESTIMATOR_HOME": str(tmp_path / "home")},
        capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr


def taken(text: str) -> Takeoff:
    job = job_from_text(text, Path("README.md"))
    return estimate(job.survey, books_for(job)).takeoff


def test_both_forms_of_the_example_give_the_same_takeoff() -> None:
    quick, drawn = (taken(text) for text in JOBS)
    assert quick.cable == drawn.cable
    assert quick.runs[0].studs == drawn.runs[0].studs == 4
    assert [box.fill_after for box in quick.boxes] == [box.fill_after for box in drawn.boxes]


@pytest.mark.parametrize(
    "hazard",
    ["shock", "fire", "structure", "lead", "asbestos", "ladders", "local code", "the inspector",
     "licensed practice"],
)  # fmt: skip
def test_the_cautions_name_each_hazard(hazard: str) -> None:
    cautions = README[README.index("## Cautions and limits") : README.index("## If you are")]
    assert hazard in cautions.lower()
