"""Amounts and dates that no price or calendar can be made of are refused by name."""

from __future__ import annotations

from pathlib import Path

import pytest

from estimator.problems import InputError
from estimator.survey.reader import job_from_text

SAMPLE = Path(__file__).parents[2] / "samples" / "nightstand.toml"
DATE = "date = 2026-03-02"
TOO_LARGE = "Write a value of at most 1000000000."


@pytest.mark.parametrize(
    ("new", "write"),
    [
        ("date = 9999-12-31", "Write a value of at most 2999-12-31."),
        ("start = 9999-12-31", "Write a value of at most 2999-12-31."),
        ("date = 1899-12-31", "Write a value of at least 1900-01-01."),
    ],
)
def test_days_that_leave_no_room_are_refused(new: str, write: str) -> None:
    text = SAMPLE.read_text(encoding="utf-8").replace(DATE, new)
    with pytest.raises(InputError) as raised:
        job_from_text(text, SAMPLE)
    assert [each.write for each in raised.value.problems] == [write]


@pytest.mark.parametrize(
    "line", ["materials_cost = 1e30", "labor_hours = 1000000001", "trips = 10000000000"]
)
def test_amounts_too_large_to_show_are_refused(line: str) -> None:
    text = SAMPLE.read_text(encoding="utf-8") + f"\n[overrides]\n{line}\n"
    with pytest.raises(InputError) as raised:
        job_from_text(text, SAMPLE)
    assert [each.write for each in raised.value.problems] == [TOO_LARGE]


RISK = '[[risks]]\nname = "Pipe"\nchance_pct = 10\n'
STOCK = '[[truck_stock]]\nitem = "cable-14-2"\n'


@pytest.mark.parametrize(
    "table",
    [
        f"{RISK}hours_high = 1000000001",
        f"{RISK}parts_high = 1e30",
        f"{STOCK}quantity = 1000000001",
        f"{STOCK}length = '20 ft'\nunit_cost = 1e30",
    ],
    ids=["hours of a risk", "parts of a risk", "pieces on the truck", "cost of a piece"],
)
def test_risks_and_truck_stock_have_the_same_limit(table: str) -> None:
    text = SAMPLE.read_text(encoding="utf-8")
    with pytest.raises(InputError) as raised:
        job_from_text(f"{text}\n{table}\n", SAMPLE)
    assert [each.write for each in raised.value.problems] == [TOO_LARGE]


@pytest.mark.parametrize("line", ["hours_high = 1000000000", "parts_high = 1000000000"])
def test_the_limit_itself_is_taken(line: str) -> None:
    text = SAMPLE.read_text(encoding="utf-8")
    job = job_from_text(f"{text}\n{RISK}{line}\n", SAMPLE)
    assert 1_000_000_000 in (job.survey.risks[-1].hours_high, job.survey.risks[-1].parts_high)
