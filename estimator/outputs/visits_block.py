"""The visits on the Labor sheet: hours, man-days and working days live, days and dates stored."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from decimal import Decimal
from math import ceil

from estimator.outputs import looks
from estimator.outputs.calendar_words import dates_line
from estimator.outputs.cells import (
    Cell,
    Row,
    Sheet,
    day,
    figure_only,
    formula,
    line_number,
    number,
    words,
)
from estimator.outputs.draft import Draft, percent
from estimator.pricing.calendar import plan_calendar
from estimator.pricing.calendar_records import Calendar, VisitDays
from estimator.pricing.man_days import MAN_DAY_H

RULE_HEADERS = ("Line", "Value", "What the days go by")
VISIT_HEADERS = (
    "Visit", "Wait after, hours", "What is done", "Share of hours", "Days", "Hours", "Man-days",
    "Setting, hours", "First day", "Last day", "Inspector, days", "Drying, days", "From", "To",
)  # fmt: skip
MEASURES = ("whole-day", "on-the-tools")
_SIX, _DAY_H = 6, 24


def write_visits(draft: Draft, sheet: Sheet) -> None:
    """Write what the days go by, the visits, and what the plan takes for granted."""
    calendar = plan_calendar(draft.bid)
    sheet.section("What the working days go by")
    rules = _rules(draft, calendar)
    sheet.table("Calendar_rules", RULE_HEADERS, _rule_rows(draft, sheet, rules))
    sheet.section("Visits")
    made = sheet.table("Visits", VISIT_HEADERS, _visits(sheet, calendar))
    first, last = made.first_row + 1, max(made.last_row, made.first_row + 1)
    _sums(sheet, calendar, (first, last))
    for text in (dates_line(calendar), *calendar.notes):
        sheet.put([None, None, words(text, looks.PLAIN)])


def _rules(draft: Draft, calendar: Calendar) -> tuple[tuple[str, str, Cell], ...]:
    measure = draft.bid.books.shop.calendar.day_measure
    lost = f'IF(cal_measure="{MEASURES[1]}",cal_lost,0)'
    worth = f"ROUND((cal_hours-{lost})/{MAN_DAY_H},{_SIX})"
    return (
        ("cal_crew", "people at work at one time", number(calendar.crew)),
        ("cal_hours", "hours of a working day", number(calendar.day_h)),
        ("cal_lost", "hours of it lost: lunch, travel, breaks", number(calendar.lost_h)),
        (
            "cal_measure",
            "whole-day: its length counts; on-the-tools: what is lost comes off first. "
            "Two manuals differ on this",
            words(measure, looks.ENTRY_WORD),
        ),
        (
            "cal_day",
            f"man-days of {MAN_DAY_H} h in a working day of one person",
            formula(worth, calendar.day_equivalent),
        ),
        (
            "cal_available",
            "share of the crew's time that this job gets",
            percent(calendar.availability_pct),
        ),
        (
            "cal_delay",
            "delay factor: above 1 where work goes slower than the book",
            number(calendar.delay_factor),
        ),
    )


def _rule_rows(
    draft: Draft, sheet: Sheet, rules: tuple[tuple[str, str, Cell], ...]
) -> Iterator[Row]:
    for at, (name, what, cell) in enumerate(rules, start=1):
        draft.names[name] = sheet.ref("B", sheet.next_row)
        if name == "cal_measure":
            sheet.choices.append((f"B{sheet.next_row}", ",".join(MEASURES)))
        yield [line_number(at), cell, words(what)]


def _visits(sheet: Sheet, calendar: Calendar) -> Iterator[Row]:
    for visit in calendar.visits:
        yield _visit(sheet.next_row, visit)


def _visit(row: int, visit: VisitDays) -> Row:
    hours = f"ROUND(hours_charged*D{row},{_SIX})"
    man_days = f"ROUND(F{row}/{MAN_DAY_H}*cal_delay,{_SIX})"
    on_site = f"G{row}/(cal_crew*cal_available*cal_day)+H{row}/({MAN_DAY_H}*cal_day)"
    dries = ceil(visit.wait_h / _DAY_H)
    return [
        line_number(visit.number), number(visit.wait_h), words(visit.what),
        number(visit.share, looks.entry(looks.PERCENT)),
        formula(f"MAX(1,ROUNDUP(ROUND({on_site},{_SIX}),0))", visit.days),
        formula(hours, visit.hours, looks.figure(looks.HOURS)),
        formula(man_days, visit.man_days, looks.figure(looks.HOURS)),
        number(visit.idle_h, looks.entry(looks.HOURS)),
        figure_only(visit.first_day), figure_only(visit.last_day),
        number(visit.inspection_days),
        formula(f"ROUNDUP(ROUND(B{row}/{_DAY_H},{_SIX}),0)", dries),
        _date(visit.first_date), _date(visit.last_date),
    ]  # fmt: skip


def _date(value: date | None) -> Cell:
    return words("") if value is None else day(value, looks.TEXT_DATE)


def _sums(sheet: Sheet, calendar: Calendar, rows: tuple[int, int]) -> None:
    """All visits together."""
    first, last = rows
    hours = sum((visit.hours for visit in calendar.visits), Decimal(0))
    sums: tuple[tuple[str, Decimal | int, str], ...] = (
        ("E", calendar.working_days, looks.GENERAL),
        ("F", hours, looks.HOURS),
        ("G", calendar.man_days, looks.HOURS),
    )
    cells = [
        formula(f"SUM({column}{first}:{column}{last})", value, looks.total(form))
        for column, value, form in sums
    ]
    sheet.put([None, None, words("All visits", looks.LABEL), None, *cells])
