"""Visits in working days: on the Labor sheet, on the Bid and in the terminal."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from decimal import Decimal
from functools import cache
from io import BytesIO
from math import ceil

import pytest

from estimator.outputs.bid_words import visit_lines
from estimator.outputs.calendar_words import dates_line, days_line, visit_words
from estimator.outputs.text_bid import bid_summary
from estimator.outputs.workbook import bid_workbook
from estimator.pricing.calendar import plan_calendar
from estimator.pricing.calendar_records import Calendar
from estimator.pricing.records import Bid
from tests.outputs.bid_factory import bid_of
from tests.outputs.spreadsheet import cells, opened, reckoned

MORE = """
[settings.calendar]
crew = 2
availability_pct = 75
hours_per_day = 9
lost_hours_per_day = 1.5
day_measure = "on-the-tools"
delay_factor = 1.25

[settings.risk]
draws = 1000
"""
START = {"[job]\n": "[job]\nstart = 2026-03-02\n"}
SETTING = {
    'compound = "drying"': 'compound = "setting"',
    "[house]\n": '[house]\ninspection_before_closing = "yes"\n',
}


@cache
def parted() -> Bid:
    """Five visits with an inspector, two people, a day of 9 h and setting compound."""
    return bid_of("printer-corner", START | SETTING, MORE)


@cache
def drying() -> Bid:
    return bid_of("printer-corner", START, "\n[settings.risk]\ndraws = 1000\n")


def planned(bid: Bid) -> Calendar:
    return plan_calendar(bid)


def rows(bid: Bid) -> list[list[object]]:
    sheet = opened(bid_workbook(bid), values=True)["Labor"]
    return [[cell.value for cell in row] for row in sheet[sheet.tables["Visits"].ref][1:]]


def test_every_visit_has_its_days_and_dates() -> None:
    """S2 from Monday 2 March: four days in a row."""
    found = rows(drying())
    assert [row[0] for row in found] == [1, 2, 3, 4]
    assert [row[1] for row in found] == [24, 24, 24, 0]
    assert [row[4] for row in found] == [1, 1, 1, 1]
    assert [row[8:10] for row in found] == [[1, 1], [2, 2], [3, 3], [4, 4]]
    assert [row[11] for row in found] == [1, 1, 1, 0]
    assert [getattr(row[12], "day", None) for row in found] == [2, 3, 4, 5]


def test_the_inspector_and_setting_stand_in_their_columns() -> None:
    found = rows(parted())
    assert [row[10] for row in found] == [2, 0, 0]
    assert [row[7] for row in found] == [0, pytest.approx(2.633333), 0]


def test_hours_of_the_visits_are_those_charged() -> None:
    calendar = planned(parted())
    total = sum(visit.hours for visit in calendar.visits)
    assert abs(total - parted().price.hours_charged) <= Decimal("0.000002")
    assert sum(visit.share for visit in calendar.visits) == 1


def typed_anew(data: bytes) -> bytes:
    """The workbook with one person, a whole day of 8 h, all of it, and no delay."""
    book = opened(data)
    sheet = book["Labor"]
    rules = [row[1] for row in sheet[sheet.tables["Calendar_rules"].ref][1:]]
    for cell, value in zip(rules, (1, 8, 0, "whole-day", None, 1, 1), strict=True):
        if value is not None:
            cell.value = value
    made = BytesIO()
    book.save(made)
    return made.getvalue()


@cache
def again() -> dict[str, dict[tuple[str, str], object]]:
    data = bid_workbook(parted())
    found = reckoned({"as it is": data, "anew": typed_anew(data)})
    return {name: {place: cell.value for place, cell in cells(each).items()}
            for name, each in found.items()}  # fmt: skip


def test_days_are_live_and_as_the_calendar_has_them() -> None:
    stored = {place: cell for place, cell in cells(bid_workbook(parted())).items()
              if place[0] == "Labor" and cell.formula}  # fmt: skip
    wrong = [
        place for place, cell in stored.items()
        if abs(float(str(cell.value)) - float(str(again()["as it is"][place]))) > 5e-7
    ]  # fmt: skip
    assert len(stored) > 100
    assert not wrong


def test_the_calendars_rules_typed_anew_give_other_days() -> None:
    """One person at 8 h a day: hours / 8 and the time for setting, rounded up, worked out here."""
    sheet = opened(bid_workbook(parted()), values=True)["Labor"]
    table = sheet[sheet.tables["Visits"].ref][1:]
    days = [again()["anew"]["Labor", row[4].coordinate] for row in table]
    work = [visit.hours + visit.idle_h for visit in planned(parted()).visits]
    assert days == [ceil(each / 8) for each in work]


def test_the_bid_says_each_visit_and_the_days() -> None:
    lines = dict(visit_lines(drying()))
    assert lines["Visit 2"] == "Second coat. Then about 24 h to dry."
    assert lines["Visit 4"] == "Sand, prime and paint."
    assert lines["Time"] == (
        "About 4 working days on site, 4 days from the first to the last: March 2, 2026 to "
        "March 5, 2026."
    )


def test_the_bid_says_that_the_inspector_comes() -> None:
    lines = dict(visit_lines(parted()))
    assert lines["Visit 1"] == (
        "Run the cable; the inspector looks before the wall is closed. Then about 2 working days "
        "for the inspector."
    )


def test_no_date_is_promised_where_no_start_is_stated() -> None:
    calendar = replace(planned(drying()), dates_from="bid date")
    assert days_line(calendar, "en_US") == (
        "About 4 working days on site, 4 days from the first to the last."
    )


def test_a_job_of_one_day() -> None:
    calendar = planned(drying())
    one = replace(calendar, visits=calendar.visits[:1], working_days=1, span_days=1)
    assert days_line(one, "en_US") == "About 1 working day on site: March 2, 2026."
    assert days_line(replace(one, dates_from="none"), "en_US") == "About 1 working day on site."


def test_a_visit_may_wait_for_both() -> None:
    visit = replace(planned(drying()).visits[0], what="tape.", inspection_days=1)
    assert visit_words(visit) == (
        "Tape. Then about 24 h to dry. Then about 1 working day for the inspector."
    )


@pytest.mark.parametrize(
    ("dates_from", "want"),
    [
        ("start", "the first day of the work that the job states"),
        ("bid date", "the working day after the date of the bid"),
        ("none", "as if work began on a Monday"),
    ],
)
def test_it_is_said_what_the_days_are_counted_from(dates_from: str, want: str) -> None:
    assert want in dates_line(replace(planned(drying()), dates_from=dates_from))


def test_without_dates_the_columns_are_empty() -> None:
    bid = drying()
    job = bid.survey.job.model_copy(update={"start_date": None, "bid_date": None})
    bid = replace(bid, survey=bid.survey.model_copy(update={"job": job}))
    assert {cell for row in rows(bid) for cell in row[12:]} <= {None, ""}


def test_the_terminal_says_on_which_days_the_visits_are() -> None:
    said = " ".join(" ".join(bid_summary(drying())).split())
    assert "Visits on day 1, day 2, day 3, day 4." in said
    assert "March 2, 2026 to March 5, 2026." in said


def test_a_visit_of_several_days_says_from_and_to() -> None:
    bid = bid_of("closet-light", START, "\n[overrides]\nlabor_hours = 20\n")
    said = " ".join(" ".join(bid_summary(bid)).split())
    assert "Visits on day 1 to 3." in said
    assert planned(bid).visits[0].last_date == date(2026, 3, 4)
