"""Money and dates as shown, compared with ICU, another reader of the same locale data.

The two carry different releases of CLDR, which move between no-break and narrow no-break
spaces, so all spaces are made equal before comparing; nothing else is.
"""

from __future__ import annotations

import datetime
import importlib
import os
from decimal import Decimal
from types import ModuleType

import pytest

from estimator.money import show_date, show_money

LOCALES = ("en_US", "en_CA", "fr_CA", "es_US", "es_MX", "en_GB", "de_DE")
CURRENCIES = ("USD", "CAD", "MXN", "GBP", "EUR")
AMOUNTS = ("0.00", "0.05", "640.00", "1234.50", "-1234.56", "1234567.89")
DATES = (datetime.date(2026, 3, 9), datetime.date(2026, 11, 25), datetime.date(2027, 1, 1))
NOON = datetime.time(12, tzinfo=datetime.UTC)


@pytest.fixture(scope="module")
def icu() -> ModuleType:
    """PyICU; where it is not installed the comparison is skipped, but never on CI."""
    try:
        return importlib.import_module("icu")
    except ImportError:
        if os.environ.get("CI") == "true":
            raise
        pytest.skip("PyICU is not installed: pip install '.[icu]' (needs libicu-dev, pkg-config)")


def plain(text: str) -> str:
    """Make no-break (U+00A0) and narrow no-break (U+202F) spaces plain ones."""
    return text.replace("\u00a0", " ").replace("\u202f", " ")


@pytest.mark.parametrize("amount", AMOUNTS)
@pytest.mark.parametrize("currency", CURRENCIES)
@pytest.mark.parametrize("locale", LOCALES)
def test_money_is_shown_as_icu_shows_it(
    icu: ModuleType, locale: str, currency: str, amount: str
) -> None:
    form = icu.NumberFormat.createCurrencyInstance(icu.Locale(locale))
    form.setCurrency(currency)
    assert plain(show_money(Decimal(amount), currency, locale)) == plain(form.format(float(amount)))


@pytest.mark.parametrize("date", DATES, ids=str)
@pytest.mark.parametrize("locale", LOCALES)
def test_dates_are_shown_as_icu_shows_them(
    icu: ModuleType, locale: str, date: datetime.date
) -> None:
    form = icu.DateFormat.createDateInstance(icu.DateFormat.kLong, icu.Locale(locale))
    form.setTimeZone(icu.TimeZone.createTimeZone("UTC"))
    shown = form.format(datetime.datetime.combine(date, NOON))
    assert plain(show_date(date, locale)) == plain(shown)
