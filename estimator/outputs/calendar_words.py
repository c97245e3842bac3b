"""The calendar of a job in words: how its days are counted, and each visit's days."""

from __future__ import annotations

from estimator.language import ENGLISH, Language
from estimator.money import show_date
from estimator.outputs.text_layout import number
from estimator.pricing.calendar_records import Calendar, VisitDays
from estimator.saying import capital, listed, said, several

_COUNTED = {
    "start": said("Days and dates are counted from the first day of the work that the job states."),
    "bid date": said("Dates are as if work began on the working day after the date of the bid."),
    "none": said("Days are as if work began on a Monday; the job states no start."),
}


def dates_line(calendar: Calendar) -> str:
    """What the days and dates are counted from."""
    return _COUNTED[calendar.dates_from]


def visit_words(visit: VisitDays) -> str:
    """What is done on a visit, and the wait after it."""
    what = capital(visit.what)
    parts: list[str] = [what if what.endswith(".") else said("{what}.", what=what)]
    if visit.wait_h:
        parts.append(said("Then about {hours} h to dry.", hours=number(visit.wait_h)))
    if visit.inspection_days:
        parts.append(
            several(
                visit.inspection_days,
                "Then about {count} working day for the inspector.",
                "Then about {count} working days for the inspector.",
            )
        )
    return listed(parts, " ")


def days_line(calendar: Calendar, locale: str, language: Language = ENGLISH) -> str:
    """How long the work takes; dates only where the job states when it begins."""
    span, site = calendar.span_days, calendar.working_days
    days = several(site, "About {count} working day on site", "About {count} working days on site")
    if span > 1:
        days = several(
            span,
            "{days}, {count} day from the first to the last",
            "{days}, {count} days from the first to the last",
            days=days,
        )
    first, last = calendar.visits[0].first_date, calendar.visits[-1].last_date
    if calendar.dates_from != "start" or first is None or last is None:
        return said("{days}.", days=days)
    place = language.dates(locale)
    begun, done = show_date(first, place), show_date(last, place)
    if first == last:
        return said("{days}: {date}.", days=days, date=begun)
    return said("{days}: {first} to {last}.", days=days, first=begun, last=done)
