"""`estimator rate`: the labor rate step by step, held against the worked vector."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

from estimator.outputs.json_out import document_schema
from tests.cli.run import estimator

# The rate builder's worked vector: wage 30.38, burden 43.34 %, 2,080 paid hours, 70 % of them
# billable, overhead 25,000 a year, profit 10 % of the rate.
STEPS = {
    "burdened": "43.55", "labor_per_hour": "62.21",
    "overhead_per_hour": "17.17", "cost_per_hour": "79.38", "rate": "88.20",
}  # fmt: skip


def own_books(folder: Path, rate: str) -> str:
    """Books of one's own that say how the labor rate is found."""
    assert estimator("catalog", "copy", "mine", folder=folder).returncode == 0
    shop = folder / "mine" / "shop.toml"
    text = shop.read_text(encoding="utf-8")
    assert text.count("labor_rate_per_hour = 85.00") == 1
    changed = text.replace("labor_rate_per_hour = 85.00", f"labor_rate_per_hour = {rate}")
    shop.write_text(changed, encoding="utf-8")
    return "mine"


def test_the_worked_rate_step_by_step(tmp_path: Path) -> None:
    done = estimator("rate", "--json", folder=tmp_path)
    document = json.loads(done.stdout, parse_float=pytest.fail)
    Draft202012Validator(document_schema("rate")).validate(document)
    built = document["built"]
    assert {step: built[step] for step in STEPS} == STEPS
    assert float(built["billable_hours"]) == 1456


def test_the_step_from_cost_to_rate_as_markup_and_as_margin(tmp_path: Path) -> None:
    """8.82 on 79.38 is 11.11 %, and 10.00 % of 88.20."""
    document = json.loads(estimator("rate", "--json", folder=tmp_path).stdout)
    assert (document["markup_pct"], document["margin_pct"]) == ("11.11", "10.00")
    said = " ".join(estimator("rate", folder=tmp_path).stdout.split())
    assert "a markup of 11.11 %, which is a margin of 10.00 %." in said


@pytest.mark.parametrize(
    "want",
    [
        "Wage with burden $43.55 wage x (1 + burden)",
        "Pay $62.21 wage with burden x paid / billable hours",
        "Cost $79.38 of a billable hour: pay + overhead",
        "Rate $88.20 cost / (1 - profit)",
        "Your books state $85.00 for an hour; built up it is $88.20.",
    ],
)
def test_the_terminal_says(want: str, tmp_path: Path) -> None:
    done = estimator("rate", folder=tmp_path)
    assert want in " ".join(done.stdout.split())
    assert max(map(len, done.stdout.splitlines())) < 80


def test_books_that_build_the_rate_charge_it(tmp_path: Path) -> None:
    name = own_books(tmp_path, '"built"')
    done = estimator("rate", "--books", name, folder=tmp_path)
    assert "Your books charge this rate." in done.stdout
    document = json.loads(estimator("rate", "--books", name, "--json", folder=tmp_path).stdout)
    assert document["stated"] is None


def test_books_that_cannot_be_read_are_told_of(tmp_path: Path) -> None:
    name = own_books(tmp_path, '"often"')
    done = estimator("rate", "--books", name, folder=tmp_path)
    assert (done.returncode, done.stdout) == (1, "")
    assert '"often" is not a number.' in done.stderr
    assert 'or "built"' in done.stderr
