"""Tax taken out of a price in a currency without cents; worked by hand."""

from __future__ import annotations

from decimal import Decimal

from estimator.pricing.tax import tax_inside, without_tax


def test_tax_is_taken_out_in_whole_units_of_the_currency() -> None:
    """1,235 / 1.10 = 1,122.73 -> 1,123 yen, and 112 of tax."""
    gross, rate_pct = Decimal(1235), Decimal(10)
    assert str(without_tax(gross, rate_pct, "JPY")) == "1123"
    assert str(tax_inside(gross, rate_pct, "JPY")) == "112"
