"""What the US tax office allows for a business mile, by year."""

from __future__ import annotations

from decimal import Decimal
from functools import cache

from estimator.tables.facts import NotOnFile, rows


@cache
def mileage_rate_usd_per_mi(year: int) -> Decimal:
    """Rate of one business mile: fuel, wear, insurance and loss of value, not the driver's time.

    Raises:
        NotOnFile: no row for the year; the message lists those on file.

    Source: irs-mileage.

    >>> mileage_rate_usd_per_mi(2026)
    Decimal('0.725')
    """
    for row in rows("mileage_rates"):
        if row["year"] == str(year):
            return Decimal(row["rate_usd_per_mi"])
    on_file = tuple(row["year"] for row in rows("mileage_rates"))
    raise NotOnFile("mileage_rates", str(year), on_file)


def mileage_years() -> tuple[int, ...]:
    """The years that have a rate on file."""
    return tuple(int(row["year"]) for row in rows("mileage_rates"))
