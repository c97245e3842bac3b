"""Mileage rates as announced by the IRS, and 24 miles at each, worked by hand."""

from __future__ import annotations

from decimal import Decimal

import pytest

from estimator.tables.facts import NotOnFile
from estimator.tables.mileage import mileage_rate_usd_per_mi, mileage_years


@pytest.mark.parametrize(
    ("year", "cents", "of_24_miles"),
    [
        (2026, "72.5", "17.40"),
        (2025, "70", "16.80"),
        (2024, "67", "16.08"),
        (2023, "65.5", "15.72"),
    ],
)
def test_the_rate_of_a_year(year: int, cents: str, of_24_miles: str) -> None:
    assert mileage_rate_usd_per_mi(year) * 100 == Decimal(cents)
    assert mileage_rate_usd_per_mi(year) * 24 == Decimal(of_24_miles)


def test_a_year_that_is_not_on_file() -> None:
    assert mileage_years() == (2023, 2024, 2025, 2026)
    with pytest.raises(NotOnFile, match="'2022' is not on file"):
        mileage_rate_usd_per_mi(2022)
