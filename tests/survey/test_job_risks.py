"""Risks of a job, its first day, its room and its inspector, as the job file states them."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from typing import Any

import pytest

from estimator.problems import InputError
from estimator.survey.reader import survey_from
from estimator.survey.records import Survey
from estimator.survey.risks import Risk

LEGS = [{"go": "along", "length": 9}]
RUN = {"id": "1", "from": "a", "to": "b", "cable": "14-2", "legs": LEGS}


def job(**more: Any) -> Survey:
    return survey_from(
        {
            "job": {"id": "1", "title": "Sample", **more.pop("job", {})},
            "boxes": [{"id": "a", "existing": True}, {"id": "b"}],
            "runs": [RUN],
            **more,
        }
    )


def test_a_risk_is_read_as_it_is_written() -> None:
    (risk,) = job(
        risks=[{"name": "old pipe", "chance_pct": 25, "hours_low": 1, "hours_likely": 2,
                "hours_high": 6, "parts_high": Decimal("60.50")}]
    ).risks  # fmt: skip
    assert (risk.hours_low, risk.hours_likely, risk.hours_high) == (1, 2, 6)
    assert (risk.parts_low, risk.parts_likely, risk.parts_high) == (0, 0, Decimal("60.50"))
    assert (risk.name, risk.chance_pct, risk.source) == ("old pipe", 25, "the job")


@pytest.mark.parametrize("chance", [0, 100])
def test_a_chance_is_between_never_and_always(chance: int) -> None:
    assert job(risks=[{"name": "x", "chance_pct": chance}]).risks[0].chance_pct == chance


@pytest.mark.parametrize(
    ("risk", "said"),
    [
        ({"name": "x", "chance_pct": 101}, "101"),
        ({"name": "x", "chance_pct": -1}, "-1"),
        ({"name": "", "chance_pct": 5}, "name"),
        ({"name": "x"}, "chance_pct"),
        ({"name": "x", "chance_pct": 5, "hours_low": 2, "hours_likely": 1, "hours_high": 3},
         'low, likely and high of "x" are not in order'),
        ({"name": "x", "chance_pct": 5, "parts_likely": 4, "parts_high": 3},
         'low, likely and high of "x" are not in order'),
        ({"name": "x", "chance_pct": 5, "hours": 2}, "hours"),
    ],
)  # fmt: skip
def test_a_risk_that_does_not_fit_is_named(risk: dict[str, Any], said: str) -> None:
    with pytest.raises(InputError) as caught:
        job(risks=[risk])
    (problem,) = caught.value.problems
    assert said in f"{problem.where} {problem.read}"


def test_the_calendars_facts_of_a_job() -> None:
    survey = job(
        job={"start": date(2026, 3, 16)},
        finish={"room_condition": "cool or damp"},
        house={"inspection_before_closing": "yes", "inspection_wait_days": 3},
    )
    assert survey.job.start_date == date(2026, 3, 16)
    assert survey.finish.room_condition == "cool or damp"
    assert survey.house.inspection_wait_days == 3


def test_what_nobody_knows_of_them_is_unknown() -> None:
    survey = job(house={"inspection_wait_days": "unknown"})
    assert (survey.job.start_date, survey.house.inspection_wait_days) == (None, None)
    assert survey.finish.room_condition == "unknown"
    assert survey.risks == ()


@pytest.mark.parametrize("condition", ["steamy", 3])
def test_a_room_condition_that_is_not_on_file_is_refused(condition: object) -> None:
    with pytest.raises(InputError):
        job(finish={"room_condition": condition})


def test_nobody_changes_a_risk() -> None:
    risk = Risk(name="x", chance_pct=Decimal(5))
    with pytest.raises(ValueError, match="frozen"):
        risk.name = "y"  # type: ignore[misc]
