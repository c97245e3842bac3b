"""Any job that can be read is priced, or refused in plain words; the same job, the same bid."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings

from estimator.pricing.books_for import books_for
from estimator.pricing.engine import estimate
from estimator.pricing.records import Bid
from estimator.problems import InputError
from estimator.survey.reader import read_job, survey_from
from estimator.survey.records import Survey
from tests.pricing.made_books import shipped
from tests.survey.odd_jobs import plausible_jobs

SAMPLES = sorted((Path(__file__).parents[2] / "samples").glob("*.toml"))


def assert_units_of_the_books(made: Bid) -> None:
    """The takeoff counts each item and task in the unit that the books price it by."""
    for part in made.takeoff.parts:
        rows = made.books.materials.get(part.item, ())
        assert {row.unit for row in rows} <= {part.unit}, part
    for task in made.takeoff.tasks:
        assert made.books.labor[task.task].unit == task.unit, task


@settings(max_examples=600, deadline=None)
@given(raw=plausible_jobs())
def test_what_can_be_read_is_priced_or_refused(raw: dict[str, Any]) -> None:
    try:
        survey = survey_from(raw)
        made = estimate(survey, shipped(survey.job.units))
    except InputError as error:
        assert all(each.read and each.write for each in error.problems)
    else:
        assert made.price.total >= 0
        assert_units_of_the_books(made)
        assert made.price.total == sum(each.price for each in made.book_lines)


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_the_same_job_gives_the_same_bid(path: Path) -> None:
    job = read_job(path)
    books = books_for(job)
    assert estimate(job.survey, books) == estimate(job.survey, books)


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_a_bid_ties_to_the_cent(path: Path) -> None:
    """Every figure that stands twice says the same."""
    job = read_job(path)
    made = estimate(job.survey, books_for(job))
    assert sum(each.price for each in made.book_lines) == made.price.total
    assert [each.task_line_id for each in made.labor] == [
        each.line_id for each in made.takeoff.tasks
    ]
    (chosen,) = (each for each in made.routes if each.chosen)
    assert (chosen.total, chosen.hours) == (made.price.total, made.hours.charged)
    assert {each.item for each in made.shopping} == {each.item for each in made.takeoff.parts}


def without(survey: Survey, **changes: Any) -> Survey:
    return survey.model_copy(update=changes)


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_more_hours_and_dearer_parts_never_cost_less(path: Path) -> None:
    job = read_job(path)
    books, plain = books_for(job), without(job.survey, overrides=type(job.survey.overrides)())
    base = estimate(plain, books)
    tasks = {each.task: each.unit_high * 2 + 1 for each in base.labor}
    prices = {each.item: Decimal(1000) for each in base.shopping}
    dear = plain.overrides.model_copy(update={"hours": tasks, "prices": prices})
    assert estimate(without(plain, overrides=dear), books).price.total >= base.price.total


def test_a_survey_is_left_as_it_was() -> None:
    job = read_job(SAMPLES[0])
    before = job.survey.model_dump()
    estimate(job.survey, books_for(job))
    assert job.survey.model_dump() == before
