"""Settings of the range and the calendar: as shipped, as written, and every kind of fault."""

from __future__ import annotations

from datetime import date
from decimal import Decimal

import pytest

from estimator.settings_risk import NamedRisk
from tests.catalog.test_shop_settings import METRIC, US, faults, shop

BOTH = pytest.mark.parametrize("base", [US, METRIC])
RISK = '[[risk.usual]]\nname = "a pipe"\nchance_pct = 10\n'


@BOTH
def test_the_range_as_shipped(base: str) -> None:
    """Triangular, as GAO advises; at least the 100,000 draws of the published figures."""
    terms = shop(base=base).risk
    assert (terms.draws, terms.seed, terms.shape) == (100_000, 1, "triangular")
    assert terms.correlation_pct == 25
    assert (terms.price_low_pct, terms.price_high_pct) == (5, 15)
    assert (terms.waste_low_pct, terms.waste_high_pct) == (0, 10)


@BOTH
def test_the_usual_risks_as_shipped_are_judgement_and_in_order(base: str) -> None:
    risks = shop(base=base).risk.usual
    assert len(risks) == 4
    for risk in risks:
        assert risk.source == "judgement"
        assert 0 < risk.chance_pct <= 20
        assert 0 < risk.hours_low <= risk.hours_likely <= risk.hours_high
        assert risk.parts_low <= risk.parts_likely <= risk.parts_high


@BOTH
def test_the_calendar_as_shipped_is_one_person_on_weekdays_of_8_h(base: str) -> None:
    terms = shop(base=base).calendar
    assert (terms.crew, terms.day_h, terms.lost_h, terms.day_measure) == (1, 8, 0, "whole-day")
    assert (terms.availability_pct, terms.delay_factor) == (100, 1)
    assert (terms.setting_min, terms.inspection_wait_days) == (45, 2)
    assert (terms.workdays, terms.days_off) == ((0, 1, 2, 3, 4), ())


def test_a_list_of_risks_replaces_the_shipped_one() -> None:
    full = RISK + "hours_low = 0.5\nhours_likely = 1\nhours_high = 3\nparts_high = 12.50\n"
    (risk,) = shop(full + 'source = "our log of 2025"').risk.usual
    assert risk == NamedRisk(
        "a pipe", Decimal(10), Decimal("0.5"), Decimal(1), Decimal(3), Decimal(0), Decimal(0),
        Decimal("12.50"), "our log of 2025",
    )  # fmt: skip


def test_a_risk_may_be_without_hours_parts_and_source() -> None:
    (risk,) = shop(RISK).risk.usual
    assert (risk.hours_high, risk.parts_high, risk.source) == (0, 0, "not stated")
    assert shop("[risk]\nusual = []").risk.usual == ()


def test_weekdays_and_days_off_are_put_in_order_and_named_once() -> None:
    terms = shop(
        '[calendar]\nworkdays = ["Friday", "monday", "friday"]\n'
        'days_off = [2026-12-25, "2026-12-24", 2026-12-25]'
    ).calendar
    assert terms.workdays == (0, 4)
    assert terms.days_off == (date(2026, 12, 24), date(2026, 12, 25))


@pytest.mark.parametrize(
    ("text", "where", "read", "write"),
    [
        ("[risk]\ndraws = 999", "draws", "999", "Write a whole number from 1000 to 500000."),
        ("[risk]\ndraws = 500001", "draws", "500001", "from 1000 to 500000."),
        ("[risk]\nseed = -1", "seed", "-1", "zero or more"),
        ('[risk]\nshape = "bell"', "shape", "bell", 'Write "triangular" or "pert".'),
        ("[risk]\ncorrelation_pct = 96", "correlation_pct", "96", "at most 95"),
        ("[risk]\nprice_low_pct = 101", "price_low_pct", "101", "at most 100"),
        ("[risk]\nusual = 3", "usual", "3", "[[risk.usual]]"),
        ('[[risk.usual]]\nname = "x"', "usual", "does not hold the fields", 'Write name = "a pipe'),
        (RISK + "hour = 1", "usual", "does not hold the fields", 'Write name = "a pipe'),
        (RISK.replace("a pipe", " "), "usual", "has no name", 'Write name = "a pipe'),
        (RISK.replace("= 10", "= 101"), "usual", "101", "at most 100"),
        (RISK + "hours_low = 2", "usual", "has hours of 2, 0 and 0", "Low is the least"),
        (RISK + "parts_likely = 5", "usual", "has parts of 0, 5 and 0", "Low is the least"),
        ("[calendar]\ncrew = 0", "crew", "0", "from 1 to 1000"),
        ("[calendar]\nhours_per_day = 0", "hours_per_day", "0", "Write hours, up to 24."),
        ("[calendar]\nhours_per_day = 25", "hours_per_day", "25", "Write hours, up to 24."),
        ("[calendar]\nlost_hours_per_day = 24", "lost", "24", "Write the hours lost"),
        ("[calendar]\navailability_pct = 0", "availability_pct", "0", "above 0, at most 100"),
        ("[calendar]\navailability_pct = 101", "availability_pct", "101", "at most 100"),
        ("[calendar]\ndelay_factor = 0", "delay_factor", "0", "Write 1 for no change"),
        ("[calendar]\nsetting_minutes = 30", "setting_minutes", "30", "Write 20 or 45 or 90."),
        ("[calendar]\nsetting_minutes = true", "setting_minutes", "true", "20 or 45 or 90"),
        ("[calendar]\nworkdays = []", "workdays", "names no working day", '["monday", "tuesday"]'),
        ('[calendar]\nworkdays = "monday"', "workdays", "is not a list", "in [brackets]"),
        ('[calendar]\nworkdays = ["mon"]', "workdays", "mon", "one of monday, tuesday"),
        ('[calendar]\ndays_off = ["Christmas"]', "days_off", "Christmas", "Write it as 2026-12-24"),
        ('[calendar]\nday_measure = "half"', "day_measure", "half", '"whole-day" or'),
    ],
)
def test_what_does_not_fit_is_named_with_what_to_write(
    text: str, where: str, read: str, write: str
) -> None:
    ((place, said, hint),) = faults(text)
    assert where in place
    assert read in said
    assert write in hint


@pytest.mark.parametrize(
    "text",
    ["[risk]\ndraws = 1000\nseed = 0\ncorrelation_pct = 95", "[risk]\ndraws = 500000",
     "[calendar]\nhours_per_day = 24\nlost_hours_per_day = 23.9\navailability_pct = 100",
     "[calendar]\nsetting_minutes = 90\ninspection_wait_days = 0"],
)  # fmt: skip
def test_the_ends_of_what_fits_fit(text: str) -> None:
    assert shop(text)
