"""What the calendar of a job hands to the outputs: visits with hours, days, waits and dates."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from typing import Literal


@dataclass(frozen=True, slots=True)
class VisitDays:
    """One visit in working days.

    Attributes:
        number: in the order of the work. what: is done.
        share: of the hours charged, to four places; all visits together make 1.
        hours: charged hours x share, to six places. man_days: hours / 8 x delay factor, to six.
        idle_h: hours of the visit in which compound sets and nothing else is done to it.
        days: working days on site, rounded up, one at least.
        first_day, last_day: days from the start, weekends counted, the first is 1.
        first_date, last_date: None where the job has neither a start nor a date.
        wait_h: hours to wait after the visit for compound to dry.
        inspection_days: working days to wait after it for the inspector.
    """

    number: int
    what: str
    share: Decimal
    hours: Decimal
    man_days: Decimal
    idle_h: Decimal
    days: int
    first_day: int
    last_day: int
    first_date: date | None
    last_date: date | None
    wait_h: Decimal
    inspection_days: int


@dataclass(frozen=True, slots=True)
class Calendar:
    """The job in working days.

    Attributes:
        dates_from: "start" is the job's own first day; "bid date" the first working day after
            the date of the bid; "none": the days are counted as if work began on a Monday.
        crew, availability_pct, delay_factor, day_h, lost_h: as the shop has set them.
        day_equivalent: one working day of one person in man-days, by the shop's measure.
        working_days: on site. span_days: from the first day to the last, all days counted.
        notes: what the plan takes for granted.
    """

    visits: tuple[VisitDays, ...]
    dates_from: Literal["start", "bid date", "none"]
    crew: int
    availability_pct: Decimal
    delay_factor: Decimal
    day_h: Decimal
    lost_h: Decimal
    day_equivalent: Decimal
    man_days: Decimal
    working_days: int
    span_days: int
    notes: tuple[str, ...]
