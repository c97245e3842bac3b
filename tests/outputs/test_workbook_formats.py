"""Format codes of money and dates, against the patterns that CLDR publishes for each locale."""

from __future__ import annotations

import pytest

from estimator.outputs.formats import A4, LETTER, formats
from estimator.problems import InputError

# CLDR's currency pattern of the locale, with the sign in its place; decimals by ISO 4217.
MONEY = {
    ("USD", "en_US"): '[$-409]"$"#,##0.00',
    ("USD", "en_CA"): '[$-1009]"US$"#,##0.00',
    ("CAD", "fr_CA"): '[$-C0C]#,##0.00\\ "$"',
    ("EUR", "de_DE"): '[$-407]#,##0.00\\ "€"',
    ("GBP", "en_GB"): '[$-809]"£"#,##0.00',
    ("MXN", "es_MX"): '[$-80A]"$"#,##0.00',
    ("JPY", "en_US"): '[$-409]"¥"#,##0',
    ("KWD", "en_US"): '[$-409]"KWD"\\ #,##0.000',
    ("CHF", "de_CH"): '[$-807]"CHF"\\ #,##0.00',
    # A locale without a number of its own here shows money all the same.
    ("EUR", "fi_FI"): '#,##0.00\\ "€"',
    ("EUR", "ar_EG"): '#,##0.00\\ "€"',
}
DATES = {
    "en_US": "[$-409]mmmm d, yyyy",
    "en_GB": "[$-809]d mmmm yyyy",
    "de_DE": "[$-407]d. mmmm yyyy",
    "es_MX": '[$-80A]d "de" mmmm "de" yyyy',
    "ja_JP": '[$-411]yyyy"年"m"月"d"日"',
    "th_TH": "yyyy-mm-dd",  # its pattern names an era, which a workbook cannot
}


@pytest.mark.parametrize(("currency", "locale"), MONEY)
def test_money(currency: str, locale: str) -> None:
    assert formats(currency, locale, "US").money == MONEY[currency, locale]


@pytest.mark.parametrize(("currency", "places"), [("USD", 2), ("JPY", 0), ("KWD", 3), ("CLF", 4)])
def test_places_are_those_of_iso_4217(currency: str, places: int) -> None:
    assert formats(currency, "en_US", "US").places == places


@pytest.mark.parametrize("locale", DATES)
def test_dates(locale: str) -> None:
    assert formats("USD", locale, "US").date == DATES[locale]


@pytest.mark.parametrize("locale", ["en-US", "en_US"])
def test_a_locale_may_be_written_with_a_hyphen(locale: str) -> None:
    assert formats("USD", locale, "US").money == MONEY["USD", "en_US"]


@pytest.mark.parametrize(("country", "paper"), [("US", LETTER), ("CA", LETTER), ("DE", A4)])
def test_paper(country: str, paper: int) -> None:
    assert formats("USD", "en_US", country).paper == paper


def test_a_currency_that_is_not_on_file_is_refused() -> None:
    with pytest.raises(InputError, match='"XXX" is not a currency on file'):
        formats("XXX", "en_US", "US")
