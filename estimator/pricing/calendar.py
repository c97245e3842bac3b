"""From hours to a calendar: visits in working days, with drying, setting and the inspector.

Visits come from the takeoff. Hours charged are shared out over them: setting out, cutting, cable
and devices on the first visit, closing equally over those that put compound on, paint and cleaning
up on the last, setting up again equally over all but the first. That sharing is judgement. Days are
worked out with the man-day arithmetic of `man_days`.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import date, timedelta
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction
from math import ceil
from typing import Literal

from estimator.measures import to_decimal
from estimator.pricing.calendar_records import Calendar, VisitDays
from estimator.pricing.man_days import MAN_DAY_H, day_equivalent, duration, man_days, whole_days
from estimator.pricing.records import Bid, LaborLine
from estimator.problems import InputError, Problem
from estimator.saying import said, word
from estimator.settings_risk import CalendarTerms
from estimator.tables.compound import ORDINARY, UNKNOWN, drying, set_waits_count, setting
from estimator.takeoff.records import Visit

PLACES = 6
_SHARE_PLACES = 4
_DAY_H = 24
_HOUR_MIN = 60
_SOME_MONDAY = date(2026, 1, 5)
_AGAIN = "return-visit"
_AFTER_CABLE = ", "
DatesFrom = Literal["start", "bid date", "none"]


@dataclass(frozen=True, slots=True)
class _Stop:
    """A visit before it has its days."""

    what: str
    wait_h: Decimal
    inspection_days: int
    closes: bool
    set_waits: int


def plan_calendar(bid: Bid) -> Calendar:
    """Lay the visits of a bid out in working days.

    Raises:
        InputError: lunch, travel and breaks leave nothing of the working day.
    """
    terms = bid.books.shop.calendar
    equivalent = day_equivalent(terms.day_h, terms.lost_h, terms.day_measure)
    if equivalent <= 0:
        raise InputError([_no_day(terms)])
    stops = tuple(_stops(bid))
    shares = _shares(bid.labor, stops)
    days_from, start = _start(bid)
    visits = tuple(_laid_out(bid, stops, shares, start))
    if days_from == "none":
        visits = tuple(_undated(visit) for visit in visits)
    return Calendar(
        visits=visits,
        dates_from=days_from,
        crew=terms.crew,
        availability_pct=terms.availability_pct,
        delay_factor=terms.delay_factor,
        day_h=terms.day_h,
        lost_h=terms.lost_h,
        day_equivalent=to_decimal(equivalent, PLACES),
        man_days=sum((visit.man_days for visit in visits), Decimal(0)),
        working_days=sum(visit.days for visit in visits),
        span_days=visits[-1].last_day,
        notes=tuple(_notes(bid, stops)),
    )


def _no_day(terms: CalendarTerms) -> Problem:
    read = f"{terms.lost_h:f} h of a working day of {terms.day_h:f} h are lost"
    return Problem("calendar.lost_hours_per_day", read, "Write fewer hours than the day has.")


def _stops(bid: Bid) -> Iterator[_Stop]:
    """The visits of the takeoff; where an inspector must see the cable, the first is two."""
    finish, visits = bid.survey.finish, bid.takeoff.visits
    seen = bid.takeoff.closing.visible_openings > 0
    for visit in visits:
        last = visit is visits[-1]
        closes = seen and (not last or finish.scope != "painted" or len(visits) == 1)
        waits = set_waits_count(finish.compound, finish.scope, visit.number) if seen else 0
        stop = _Stop(word(visit.what), visit.wait_after_h, 0, closes, waits)
        yield from _with_inspection(bid, visit, stop)


def _with_inspection(bid: Bid, visit: Visit, stop: _Stop) -> Iterator[_Stop]:
    """The first visit in two, with the inspector between, where there is a wall to close."""
    first, parted, rest = visit.what.partition(_AFTER_CABLE)
    asked = bid.survey.house.inspection_before_closing == "yes"
    if visit.number != 1 or not asked or not bid.takeoff.closing.openings:
        yield stop
        return
    stated = bid.survey.house.inspection_wait_days
    days = bid.books.shop.calendar.inspection_wait_days if stated is None else stated
    before = word(first) if parted else said("run the cable")
    what = said("{what}; the inspector looks before the wall is closed", what=before)
    yield _Stop(what, Decimal(0), days, closes=False, set_waits=0)
    yield _Stop(
        word(rest) or said("close the wall and finish"), stop.wait_h, 0, stop.closes, stop.set_waits
    )


def _shares(labor: tuple[LaborLine, ...], stops: tuple[_Stop, ...]) -> tuple[Decimal, ...]:
    """Each visit's share of the hours, to four places; the last takes what is left of 1."""
    hours = [Fraction(0) for _ in stops]
    for line in labor:
        places = _places(line, stops)
        for place in places:
            hours[place] += Fraction(line.hours_likely) / len(places)
    whole = sum(hours, Fraction(0))
    if not whole:
        hours, whole = [Fraction(1) for _ in stops], Fraction(len(stops))
    shares = [to_decimal(each / whole, _SHARE_PLACES) for each in hours[:-1]]
    return (*shares, 1 - sum(shares, Decimal(0)))


def _places(line: LaborLine, stops: tuple[_Stop, ...]) -> list[int]:
    """The visits on which a task is done."""
    last = len(stops) - 1
    if line.task == _AGAIN:
        return list(range(1, len(stops))) or [0]
    if line.phase == "close":
        return [at for at, stop in enumerate(stops) if stop.closes] or [min(1, last)]
    return [last] if line.phase in ("paint", "clean-up") else [0]


def visits_of_tasks(bid: Bid) -> dict[str, tuple[int, ...]]:
    """The visits, by number, on which each line of work is done, by the line's id."""
    stops = tuple(_stops(bid))
    return {
        line.task_line_id: tuple(place + 1 for place in _places(line, stops)) for line in bid.labor
    }


def _start(bid: Bid) -> tuple[DatesFrom, date]:
    """The first day, which may turn out not to be a working day."""
    job = bid.survey.job
    if job.start_date is not None:
        return "start", job.start_date
    if job.bid_date is not None:
        return "bid date", job.bid_date + timedelta(days=1)
    return "none", _SOME_MONDAY


def _laid_out(
    bid: Bid, stops: tuple[_Stop, ...], shares: tuple[Decimal, ...], start: date
) -> Iterator[VisitDays]:
    terms = bid.books.shop.calendar
    begins = first = next_workday(start, terms)
    for number, (stop, share) in enumerate(zip(stops, shares, strict=True), start=1):
        hours = _six(bid.price.hours_charged * share)
        needed = _six(man_days(hours, 1, 1, terms.delay_factor))
        idle_h = to_decimal(
            Fraction(stop.set_waits * setting(terms.setting_min).most_min, _HOUR_MIN), PLACES
        )
        days = _days(needed, idle_h, terms)
        ends = workdays_later(begins, days - 1, terms)
        yield VisitDays(
            number=number, what=stop.what, share=share, hours=hours, man_days=needed,
            idle_h=idle_h, days=days, first_day=(begins - first).days + 1,
            last_day=(ends - first).days + 1, first_date=begins, last_date=ends,
            wait_h=stop.wait_h, inspection_days=stop.inspection_days,
        )  # fmt: skip
        begins = _after(ends, stop, terms)


def _days(needed: Decimal, idle_h: Decimal, terms: CalendarTerms) -> int:
    """Working days on site: the crew's, and the time in which compound sets; one at least.

    A millionth of a day is no day.
    """
    equivalent = day_equivalent(terms.day_h, terms.lost_h, terms.day_measure)
    availability = Fraction(terms.availability_pct) / 100
    at_work = duration(needed, terms.crew, availability, equivalent)
    idle = Fraction(idle_h) / (MAN_DAY_H * equivalent)
    return max(1, whole_days(to_decimal(at_work + idle, PLACES)))


def _after(ends: date, stop: _Stop, terms: CalendarTerms) -> date:
    """The day on which the next visit may begin."""
    if stop.inspection_days:
        ends = workdays_later(ends, stop.inspection_days, terms)
    dry_days = max(1, ceil(Fraction(stop.wait_h) / _DAY_H))
    return next_workday(ends + timedelta(days=dry_days), terms)


def next_workday(day: date, terms: CalendarTerms) -> date:
    """The day itself where somebody works on it, else the next on which somebody does."""
    while day.weekday() not in terms.workdays or day in terms.days_off:
        day += timedelta(days=1)
    return day


def workdays_later(day: date, count: int, terms: CalendarTerms) -> date:
    """So many working days on."""
    for _ in range(count):
        day = next_workday(day + timedelta(days=1), terms)
    return day


def _six(amount: Decimal | Fraction) -> Decimal:
    if isinstance(amount, Fraction):
        return to_decimal(amount, PLACES)
    return amount.quantize(Decimal(1).scaleb(-PLACES), ROUND_HALF_UP)


def _undated(visit: VisitDays) -> VisitDays:
    return replace(visit, first_date=None, last_date=None)


def _notes(bid: Bid, stops: tuple[_Stop, ...]) -> Iterator[str]:
    """What the plan takes for granted."""
    house, terms = bid.survey.house, bid.books.shop.calendar
    if any(stop.wait_h for stop in stops):
        yield from _drying_notes(bid.survey.finish.room_condition)
    if any(stop.set_waits for stop in stops):
        bag = setting(terms.setting_min)
        yield (
            f"Compound of the {terms.setting_min}-minute class is hard enough for the next coat "
            f"in {bag.least_min} to {bag.most_min} minutes ({bag.confidence})."
        )
    parted = len(stops) > len(bid.takeoff.visits)
    if parted and not bid.price.permit_visits and bid.survey.overrides.trips is None:
        yield "The inspection makes a visit more than the price charges: see permit_visits."
    if house.inspection_before_closing == "unknown" and bid.takeoff.closing.openings:
        yield (
            "If an inspector has to see the cable before the wall is closed, it takes about "
            f"{terms.inspection_wait_days} working days more."
        )


def _drying_notes(condition: str) -> Iterator[str]:
    known = drying(condition)
    room = ORDINARY if condition == UNKNOWN else condition
    yield (
        f"A coat dries in {known.least_h} to {known.most_h} h where the room is {room}; planned "
        f"with {known.plan_h} h ({known.confidence})."
    )
    if condition == UNKNOWN:
        yield "Nobody said whether the room is cool, damp, warm or dry; ordinary is taken."
