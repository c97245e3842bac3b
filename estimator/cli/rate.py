"""`estimator rate`: what an hour costs, and what it must be sold for."""

from __future__ import annotations

from estimator.cli.catalog import MetricOption
from estimator.cli.options import BooksOption, JsonOption
from estimator.cli.own_books import own_books
from estimator.cli.terminal import say, told

EXAMPLE = "Example: estimator rate --books my-books"


def rate(
    books: BooksOption = None, metric: MetricOption = False, as_json: JsonOption = False
) -> None:
    """Build the labor rate, from wage to price of an hour."""
    with told(as_json=as_json):
        from estimator.catalog.levels import read_own
        from estimator.outputs.json_rate import rate_json
        from estimator.outputs.text_rate import rate_text

        shop = read_own(books, own_books(), "metric" if metric else "us").shop
        say([rate_json(shop)] if as_json else rate_text(shop))
