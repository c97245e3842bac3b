"""Hours that a job states, and tasks without a row, in full; worked by hand."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from estimator.pricing.hours import labor_lines, total_hours
from estimator.pricing.records import Hours
from estimator.problems import InputError
from tests.pricing.made_books import bid, plain
from tests.route.made_house import house


def test_stated_hours_stand_beside_those_of_the_list() -> None:
    """Two lines of 1, 2, 6 h: 2, 4 and 12; (2 + 16 + 12) / 6 = 5."""
    made = bid()
    one, two, six = Decimal(1), Decimal(2), Decimal(6)
    line = replace(made.labor[0], hours_low=one, hours_likely=two, hours_high=six)
    survey = house(overrides={"labor_hours": 7})
    low, likely, high = Decimal(2), Decimal(4), Decimal(12)
    assert total_hours(survey, (line, line), made.books) == Hours(
        low, likely, high, Decimal(5), Decimal(7), "override"
    )
    assert total_hours(made.survey, (line, line), plain(hours_basis="expected")) == Hours(
        low, likely, high, Decimal(5), Decimal(5), "expected"
    )


def test_a_task_without_a_row_is_told_what_to_write() -> None:
    made = bid()
    bare = replace(made.books, labor={}, files={})
    with pytest.raises(InputError) as told:
        labor_lines(made.survey, made.takeoff, bare)
    first = told.value.problems[0]
    assert (first.where, first.write) == (
        "labor.csv", "Add a row with its hours, or write [overrides.hours] in the job.",
    )  # fmt: skip
