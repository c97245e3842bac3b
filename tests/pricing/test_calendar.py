"""The calendar of a job, counted by hand on the calendar of 2026 (2 March is a Monday)."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest

from estimator.pricing.calendar import next_workday, plan_calendar, workdays_later
from estimator.pricing.calendar_records import Calendar
from estimator.problems import InputError
from tests.worked.job import PERMIT_ASKED, changed

FOUR_VISITS, ONE_VISIT = "printer-corner", "closet-light"


def planned(
    *edits: tuple[str, str], sample: str = FOUR_VISITS, start: str = "2026-03-02", more: str = ""
) -> Calendar:
    """The calendar of a sample that begins on a day, its permit not known, pieces replaced."""
    begin = [("[job]\n", f"[job]\nstart = {start}\n")] if start else []
    added = [("[job]\n", f"{more}\n[job]\n")] if more else []
    return plan_calendar(changed(sample, (PERMIT_ASKED, ""), *begin, *added, *edits))


def days(calendar: Calendar) -> list[tuple[int, int]]:
    """First and last day of each visit, as days of March 2026."""
    return [(visit.first_date.day, visit.last_date.day) for visit in calendar.visits
            if visit.first_date and visit.last_date]  # fmt: skip


SETTING = ('compound = "drying"', 'compound = "setting"')


def room(condition: str) -> tuple[str, str]:
    return ("[finish]\n", f'[finish]\nroom_condition = "{condition}"\n')


def house(inspection: str, more: str = "") -> str:
    return f'[house]\ninspection_before_closing = "{inspection}"\n{more}'


def test_one_coat_a_day_in_an_ordinary_room() -> None:
    """Tape on Monday, coats on Tuesday and Wednesday, paint on Thursday: 3 waits of 24 h."""
    calendar = planned()
    assert days(calendar) == [(2, 2), (3, 3), (4, 4), (5, 5)]
    assert (calendar.working_days, calendar.span_days, calendar.dates_from) == (4, 4, "start")


def test_nobody_works_at_the_weekend_but_compound_dries() -> None:
    """From Thursday 5: Thursday, Friday, then Monday 9 and Tuesday 10."""
    calendar = planned(start="2026-03-05")
    assert days(calendar) == [(5, 5), (6, 6), (9, 9), (10, 10)]
    assert [visit.first_day for visit in calendar.visits] == [1, 2, 5, 6]
    assert (calendar.working_days, calendar.span_days) == (4, 6)


def test_a_start_on_a_sunday_is_taken_as_monday() -> None:
    assert days(planned(start="2026-03-01"))[0] == (2, 2)


def test_a_cool_or_damp_room_takes_three_days_for_each_coat() -> None:
    """Monday 2, Thursday 5, Sunday 8 which is Monday 9, Thursday 12."""
    calendar = planned(room("cool or damp"))
    assert days(calendar) == [(2, 2), (5, 5), (9, 9), (12, 12)]
    assert [visit.wait_h for visit in calendar.visits] == [72, 72, 72, 0]
    assert calendar.notes[0] == (
        "A coat dries in 48 to 120 h where the room is cool or damp; planned with 72 h (seen)."
    )


def test_a_warm_and_dry_room_dries_overnight() -> None:
    calendar = planned(room("warm and dry"))
    assert days(calendar) == [(2, 2), (3, 3), (4, 4), (5, 5)]
    assert [visit.wait_h for visit in calendar.visits] == [10, 10, 10, 0]


def test_a_room_that_nobody_described_is_said() -> None:
    said = "Nobody said whether the room is cool, damp, warm or dry; ordinary is taken."
    assert said in planned().notes
    assert said not in planned(room("ordinary")).notes


def test_days_off_are_skipped() -> None:
    """Tuesday and Wednesday off: Monday 2, Thursday 5, Friday 6, Monday 9."""
    more = "[settings.calendar]\ndays_off = [2026-03-03, 2026-03-04]"
    assert days(planned(more=more)) == [(2, 2), (5, 5), (6, 6), (9, 9)]


def test_a_shop_may_work_on_saturdays() -> None:
    more = '[settings.calendar]\nworkdays = ["Thursday", "friday", "saturday"]'
    assert days(planned(start="2026-03-05", more=more)) == [(5, 5), (6, 6), (7, 7), (12, 12)]


def test_the_inspector_parts_the_first_visit_in_two() -> None:
    """Cable on Monday 2, the inspector two working days on, Wednesday 4; closing from Thursday."""
    calendar = planned(more=house("yes"))
    assert days(calendar) == [(2, 2), (5, 5), (6, 6), (9, 9), (10, 10)]
    assert [visit.inspection_days for visit in calendar.visits] == [2, 0, 0, 0, 0]
    assert calendar.visits[0].what == (
        "run the cable; the inspector looks before the wall is closed"
    )
    assert calendar.visits[1].what == "close the openings, tape and first coat"
    assert (
        "The inspection makes a visit more than the price charges: see permit_visits."
        in calendar.notes
    )


@pytest.mark.parametrize(("wait", "closing"), [("0", 3), ("1", 4), ("4", 9), ('"unknown"', 5)])
def test_a_job_may_know_how_long_the_inspector_takes(wait: str, closing: int) -> None:
    calendar = planned(more=house("yes", f"inspection_wait_days = {wait}\n"))
    assert days(calendar)[1] == (closing, closing)


def test_a_visit_that_is_charged_is_not_missed() -> None:
    more = house("yes") + "[settings.price]\npermit_visits = 1"
    assert not [note for note in planned(more=more).notes if "permit_visits" in note]


def test_an_inspection_that_nobody_asked_about_is_said() -> None:
    said = (
        "If an inspector has to see the cable before the wall is closed, it takes about 2 working "
        "days more."
    )
    assert said in planned().notes
    assert said not in planned(more=house("no")).notes
    assert len(planned(more=house("no")).visits) == 4


def test_with_nothing_to_close_the_inspector_parts_nothing() -> None:
    assert len(planned(sample=ONE_VISIT, more=house("yes")).visits) == 1


def test_a_hidden_opening_is_closed_after_the_inspector() -> None:
    calendar = planned(sample="nightstand", more=house("yes"))
    assert [visit.what for visit in calendar.visits] == [
        "run the cable; the inspector looks before the wall is closed",
        "close the wall and finish",
    ]


def hours(charged: str, settings: str = "") -> str:
    return f"[overrides]\nlabor_hours = {charged}\n[settings.calendar]\n{settings}"


MANUAL = (
    'crew = 12\navailability_pct = 75\nhours_per_day = 10\nlost_hours_per_day = 2.5\n'
    'day_measure = "on-the-tools"\n'
)  # fmt: skip


def test_g2_l5_the_printed_example_through_the_calendar() -> None:
    """560 h are 70 man-days: crew 12, 0.75, 0.9375 are 8.3, so 9 working days; the 12th is last."""
    calendar = planned(sample=ONE_VISIT, more=hours("560", MANUAL))
    assert (calendar.man_days, calendar.working_days) == (70, 9)
    assert calendar.day_equivalent == Decimal("0.9375")
    assert days(calendar) == [(2, 12)]
    assert calendar.span_days == 11


def test_l6_the_delay_factor_turns_66_man_days_into_70() -> None:
    """528 h x 1.06 / 8 = 69.96 man-days."""
    calendar = planned(sample=ONE_VISIT, more=hours("528", MANUAL + "delay_factor = 1.06"))
    assert (calendar.man_days, calendar.working_days) == (Decimal("69.96"), 9)


# 20 h are 2.5 man-days of one person.
@pytest.mark.parametrize(
    ("settings", "want"),
    [("", 3), ("crew = 2", 2), ("crew = 3", 1), ("availability_pct = 50", 5), ("crew = 100", 1),
     ("hours_per_day = 10", 2), ("hours_per_day = 10\nlost_hours_per_day = 2", 2),
     ('hours_per_day = 10\nlost_hours_per_day = 2\nday_measure = "on-the-tools"', 3),
     ("delay_factor = 1.2", 3), ("delay_factor = 1.21", 4), ("delay_factor = 0.8", 2)],
)  # fmt: skip
def test_crew_day_and_delay_make_the_working_days(settings: str, want: int) -> None:
    calendar = planned(sample=ONE_VISIT, more=hours("20", settings))
    assert [visit.days for visit in calendar.visits] == [want]


# Two waits of 79, 158 or 35 minutes; nearly 7 h of work fit a day of 8 h only with the quick bag.
@pytest.mark.parametrize(
    ("bag", "idle", "want"), [("45", "2.633333", 2), ("90", "5.266667", 2), ("20", "1.166667", 1)]
)
def test_time_for_setting_counts_as_time_on_site(bag: str, idle: str, want: int) -> None:
    first = planned(SETTING, more=hours("9.5", f"setting_minutes = {bag}")).visits[0]
    assert Decimal(6) < first.hours < Decimal(7)
    assert (first.idle_h, first.days) == (Decimal(idle), want)


def test_setting_compound_says_its_class() -> None:
    said = (
        "Compound of the 45-minute class is hard enough for the next coat in 56 to 79 minutes "
        "(inferred)."
    )
    assert said in planned(SETTING).notes
    assert said not in planned().notes


# Two visits of setting compound, printed as "1 long day (8 h) or 2 visits".
def test_setting_compound_saves_two_visits() -> None:
    calendar = planned(SETTING, more=hours("8", "setting_minutes = 20"))
    assert days(calendar) == [(2, 2), (3, 3)]


def test_hours_are_shared_out_by_the_work() -> None:
    """By hand: 8 h before closing, 4 h closing over visits 1 to 3, 3 h of coming back over 2 to 4,
    2 h paint and 3 h cleaning up on the last: 28/60, 7/60, 7/60 and 18/60 of 20 h."""
    bid = changed(FOUR_VISITS)
    work = (("set-up", "a", 1), ("rough-in", "b", 4), ("terminate", "c", 2), ("test", "d", 1),
            ("close", "e", 4), ("clean-up", "return-visit", 3), ("paint", "f", 2),
            ("clean-up", "g", 3))  # fmt: skip
    lines = tuple(
        replace(bid.labor[0], phase=phase, task=task, hours_likely=Decimal(hours))
        for phase, task, hours in work
    )
    price = replace(bid.price, hours_charged=Decimal(20))
    visits = plan_calendar(replace(bid, labor=lines, price=price)).visits
    assert [visit.share for visit in visits] == [
        Decimal(share) for share in ("0.4667", "0.1167", "0.1167", "0.2999")
    ]
    assert [visit.hours for visit in visits] == [
        Decimal(each) for each in ("9.334", "2.334", "2.334", "5.998")
    ]
    assert visits[0].man_days == Decimal("1.16675")


def test_after_taping_alone_every_visit_closes() -> None:
    """Three visits, closing on all of them, cleaning up on the third."""
    bid = changed(FOUR_VISITS, ('scope = "painted"', 'scope = "taped"'))
    line = replace(bid.labor[0], phase="close", task="e", hours_likely=Decimal(3))
    visits = plan_calendar(replace(bid, labor=(line,))).visits
    assert [visit.share for visit in visits] == [
        Decimal("0.3333"), Decimal("0.3333"), Decimal("0.3334")
    ]  # fmt: skip


def test_a_job_without_hours_shares_nothing_unevenly() -> None:
    visits = plan_calendar(replace(changed(FOUR_VISITS), labor=())).visits
    assert [visit.share for visit in visits] == [Decimal("0.2500")] * 4


def test_without_a_start_the_days_follow_the_date_of_the_bid() -> None:
    """The sample is dated Tuesday 3 March: from Wednesday 4."""
    calendar = planned(start="")
    assert calendar.dates_from == "bid date"
    assert days(calendar) == [(4, 4), (5, 5), (6, 6), (9, 9)]


def test_without_any_date_the_days_are_numbered_alone() -> None:
    calendar = planned(("date = 2026-03-03\n", ""), start="")
    assert calendar.dates_from == "none"
    assert days(calendar) == []
    assert [visit.first_day for visit in calendar.visits] == [1, 2, 3, 4]


def test_a_day_that_is_all_lost_is_refused() -> None:
    settings = 'hours_per_day = 8\nlost_hours_per_day = 8\nday_measure = "on-the-tools"\n'
    with pytest.raises(InputError) as caught:
        planned(more=hours("20", settings))
    (problem,) = caught.value.problems
    assert problem.where == "calendar.lost_hours_per_day"
    assert problem.read == "8 h of a working day of 8 h are lost"


def test_working_days_are_counted_from_a_working_day() -> None:
    terms = changed(FOUR_VISITS).books.shop.calendar
    assert next_workday(date(2026, 3, 7), terms) == date(2026, 3, 9)
    assert workdays_later(date(2026, 3, 6), 1, terms) == date(2026, 3, 9)
    assert workdays_later(date(2026, 3, 6), 0, terms) == date(2026, 3, 6)
