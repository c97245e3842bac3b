"""A bid in another currency than its country's says so."""

from __future__ import annotations

import pytest

from estimator.pricing.currency_note import currency_note
from tests.worked.job import changed, worked

COUNTRY = 'country = "US"'


# Currencies of today: ISO 4217 by country, as printed in the standard's list one.
@pytest.mark.parametrize(
    ("country", "local"), [("CA", "CAD"), ("GB", "GBP"), ("DE", "EUR"), ("AU", "AUD")]
)
def test_dollars_abroad_are_told(country: str, local: str) -> None:
    (line,) = currency_note(changed("nightstand", (COUNTRY, f'country = "{country}"')))
    assert line.startswith(f"The house is in {country} and the books are in USD, not {local}:")
    assert line.endswith(f'write currency = "{local}" under [shop] in shop.toml.')


@pytest.mark.parametrize("sample", ["nightstand", "terrace-bedroom", "rec-room"])
def test_nothing_is_said_where_they_agree(sample: str) -> None:
    assert currency_note(worked(sample)) == ()


@pytest.mark.parametrize("country", ["EC", "XX"])
def test_nothing_is_said_where_it_is_theirs_or_nobody_knows(country: str) -> None:
    """Ecuador pays in US dollars; no country is XX."""
    job = changed("nightstand", (COUNTRY, f'country = "{country}"'))
    assert currency_note(job) == ()
