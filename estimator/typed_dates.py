"""Dates as people write them, 11/24/2026 or 24.11.2026, and how a file has them: 2026-11-24."""

from __future__ import annotations

import re
from datetime import date

TYPED = re.compile(r"(?<!\d)(\d{1,2})([/.-])(\d{1,2})\2(\d{4})(?!\d)")


def iso_dates(text: str) -> tuple[str, ...]:
    """Every day that a typed date may mean, month first; none where there is no such date.

    >>> iso_dates("11/24/2026"), iso_dates("3/4/2026"), iso_dates("north")
    (('2026-11-24',), ('2026-03-04', '2026-04-03'), ())
    """
    found = TYPED.search(text)
    if found is None:
        return ()
    one, two, year = int(found[1]), int(found[3]), int(found[4])
    days = (_day(year, one, two), _day(year, two, one))
    return tuple(dict.fromkeys(day for day in days if day))


def date_advice(text: str) -> str:
    """What to write in place of a typed date; empty where there is none.

    >>> date_advice("date = 11/24/2026")
    'Write 2026-11-24, without quotes.'
    """
    days = iso_dates(text)
    return f"Write {' or '.join(days)}, without quotes." if days else ""


def _day(year: int, month: int, day: int) -> str:
    try:
        return date(year, month, day).isoformat()
    except ValueError:
        return ""
