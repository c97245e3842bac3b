"""Writes the document of `estimator rate --json`."""

from __future__ import annotations

from estimator.measures import to_decimal
from estimator.money import margin_from_markup
from estimator.outputs.json_documents import RateDocument
from estimator.outputs.json_out import written
from estimator.outputs.text_rate import PERCENT_PLACES, added_pct
from estimator.pricing.rate_builder import build_rate
from estimator.settings import Shop


def rate_json(shop: Shop) -> str:
    """Write the labor rate, step by step."""
    built = build_rate(shop.rate, shop.currency)
    markup_pct = added_pct(built)
    document = RateDocument(
        schema="estimator-rate-1",
        currency=shop.currency,
        stated=shop.price.labor_rate_per_hour,
        built=built,
        markup_pct=to_decimal(markup_pct, PERCENT_PLACES),
        margin_pct=to_decimal(margin_from_markup(markup_pct), PERCENT_PLACES),
    )
    return written(document)
