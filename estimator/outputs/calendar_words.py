"""The calendar of a job in words: how its days are counted, and each visit's days."""

from __future__ import annotations

from estimator.money import show_date
from estimator.outputs.text_layout import counted, number
from estimator.pricing.calendar_records import Calendar, VisitDays

_COUNTED = {
    "start": "Days and dates are counted from the first day of the work that the job states.",
    "bid date": "Dates are as if work began on the working day after the date of the bid.",
    "none": "Days are as if work began on a Monday; the job states no start.",
}


def dates_line(calendar: Calendar) -> str:
    """What the days and dates are counted from."""
    return _COUNTED[calendar.dates_from]


def visit_words(visit: VisitDays) -> str:
    """What is done on a visit, and the wait after it."""
    what = visit.what.strip().rstrip(".")
    return f"{what[:1].upper()}{what[1:]}.{_waits(visit)}"


def _waits(visit: VisitDays) -> str:
    dry = f" Then about {number(visit.wait_h)} h to dry." if visit.wait_h else ""
    asked = visit.inspection_days
    return f"{dry} Then about {counted(asked, 'working day')} for the inspector." if asked else dry


def days_line(calendar: Calendar, locale: str) -> str:
    """How long the work takes; dates only where the job states when it begins."""
    span = counted(calendar.span_days, "day")
    on_site = f"About {counted(calendar.working_days, 'working day')} on site"
    over = f", {span} from the first to the last" if calendar.span_days > 1 else ""
    first, last = calendar.visits[0].first_date, calendar.visits[-1].last_date
    if calendar.dates_from != "start" or first is None or last is None:
        return f"{on_site}{over}."
    if first == last:
        return f"{on_site}: {show_date(first, locale)}."
    return f"{on_site}{over}: {show_date(first, locale)} to {show_date(last, locale)}."
