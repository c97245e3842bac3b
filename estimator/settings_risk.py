"""Settings for what may come out otherwise: the spread of hours and prices, and the calendar."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from typing import Literal

LEAST_DRAWS, MOST_DRAWS, MOST_SEED = 1000, 500_000, 2**31
Shape = Literal["triangular", "pert"]
DayMeasure = Literal["whole-day", "on-the-tools"]


@dataclass(frozen=True, slots=True)
class NamedRisk:
    """Something that may be found behind the finish, and what it would take.

    Attributes:
        chance_pct: how often in a hundred such jobs. hours_*: more hours where it happens.
        parts_*: more cost of parts where it happens, in the currency of the books.
        source: where chance and figures come from, such as "judgement".
    """

    name: str
    chance_pct: Decimal
    hours_low: Decimal
    hours_likely: Decimal
    hours_high: Decimal
    parts_low: Decimal
    parts_likely: Decimal
    parts_high: Decimal
    source: str


@dataclass(frozen=True, slots=True)
class RiskTerms:
    """How the spread of a price is found.

    Attributes:
        draws: how often the job is drawn by chance. seed: the same seed gives the same figures.
        shape: of each range of hours and money between its low and its high.
        correlation_pct: how far the hours of the tasks run long or short together, 0 to 95.
        price_low_pct, price_high_pct: how far below and above the books materials may cost.
        waste_low_pct, waste_high_pct: how much less or more of them may be used.
        usual: risks of every job of this shop.
    """

    draws: int
    seed: int
    shape: Shape
    correlation_pct: Decimal
    price_low_pct: Decimal
    price_high_pct: Decimal
    waste_low_pct: Decimal
    waste_high_pct: Decimal
    usual: tuple[NamedRisk, ...]


@dataclass(frozen=True, slots=True)
class CalendarTerms:
    """From hours to working days.

    Attributes:
        crew: people at work at one time. day_h: length of the working day, lost_h: of it lunch,
            travel and breaks. day_measure: which of two manuals' measures of a day holds.
        availability_pct: share of the crew's time that this job gets.
        delay_factor: multiplies the hours; above 1 where the job goes slower than the book.
        setting_min: class of setting compound by its bag, in minutes.
        inspection_wait_days: working days from the call to the inspector's visit.
        workdays: Monday is 0. days_off: dates on which nobody works.
    """

    crew: int
    day_h: Decimal
    lost_h: Decimal
    day_measure: DayMeasure
    availability_pct: Decimal
    delay_factor: Decimal
    setting_min: int
    inspection_wait_days: int
    workdays: tuple[int, ...]
    days_off: tuple[date, ...]
