"""Says when the books are in another currency than that of the country the house is in."""

from __future__ import annotations

from estimator.pricing.records import Bid

# The usual ones, so that most jobs load no data of territories.
_USUAL = {("US", "USD"), ("CA", "CAD"), ("GB", "GBP")}


def currency_note(bid: Bid) -> tuple[str, ...]:
    """One line where the currencies differ; none where they agree, or nobody knows the country's.

    Source: territories and their currencies of today, CLDR (through Babel).
    """
    country, currency = bid.survey.job.country, bid.books.shop.currency
    if (country, currency) in _USUAL:
        return ()
    from babel.numbers import get_territory_currencies

    local = get_territory_currencies(country)
    if not local or currency in local:
        return ()
    return (
        f"The house is in {country} and the books are in {currency}, not {local[0]}: put your own "
        f'prices in, and write currency = "{local[0]}" under [shop] in shop.toml.',
    )
