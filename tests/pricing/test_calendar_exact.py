"""What a calendar holds beside its days, and how it refuses a day without hours; by hand."""

from __future__ import annotations

from decimal import Decimal

import pytest

from estimator.pricing.calendar import plan_calendar
from estimator.problems import InputError, Problem
from tests.worked.job import changed

LOST = (
    '[settings.calendar]\nhours_per_day = {}\nlost_hours_per_day = {}\n'
    'day_measure = "on-the-tools"\ncrew = 2\navailability_pct = 80\ndelay_factor = 1.1\n\n[job]\n'
)  # fmt: skip


def test_the_figures_that_the_days_come_from() -> None:
    """(9 - 1.5) / 8 = 0.9375."""
    got = plan_calendar(changed("printer-corner", ("[job]\n", LOST.format("9", "1.5"))))
    assert (got.day_h, got.lost_h) == (Decimal(9), Decimal("1.5"))
    assert (got.crew, got.availability_pct, got.delay_factor) == (2, Decimal(80), Decimal("1.1"))
    assert got.day_equivalent == Decimal("0.9375")


def test_a_day_without_hours_is_told_and_what_to_write() -> None:
    with pytest.raises(InputError) as told:
        plan_calendar(changed("printer-corner", ("[job]\n", LOST.format("8", "8"))))
    assert told.value.problems == (
        Problem(
            "calendar.lost_hours_per_day", "8 h of a working day of 8 h are lost",
            "Write fewer hours than the day has.",
        ),
    )  # fmt: skip


def test_without_any_date_no_visit_has_one() -> None:
    visits = plan_calendar(changed("printer-corner", ("date = 2026-03-03\n", ""))).visits
    assert {(visit.first_date, visit.last_date) for visit in visits} == {(None, None)}
