"""Materials from what the book or the job says they cost to what they are sold for."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from estimator.money import round_money
from estimator.pricing.price_records import ZERO
from estimator.pricing.records import ShoppingLine
from estimator.pricing.tax import PAID_AT_COUNTER, counter_rate_pct, tax_inside
from estimator.settings import PriceTerms, Shop, TaxTerms
from estimator.survey.records import Survey


@dataclass(frozen=True, slots=True)
class Materials:
    """The fields of a price that are about materials, named as they are there."""

    listed: Decimal
    overridden: bool
    small_items_pct: Decimal
    small_items: Decimal
    input_tax: Decimal
    cost: Decimal
    purchase_rate_pct: Decimal
    purchase_tax: Decimal
    sell: Decimal


def materials_sold(survey: Survey, shopping: tuple[ShoppingLine, ...], shop: Shop) -> Materials:
    """What the list costs, with small items, and what it is sold for; or what the job states.

    A stated cost is treated as a price of the book: where those hold tax, it does too.
    """
    terms, tax, currency = shop.price, shop.tax, shop.currency
    stated = survey.overrides.materials_cost
    listed = sum((line.cost for line in shopping if line.cost is not None), ZERO)
    listed = round_money(listed if stated is None else stated, currency)
    small_pct = terms.small_items_pct if stated is None else ZERO
    small_items = round_money(listed * small_pct / 100, currency)
    spent, rate_pct = listed + small_items, counter_rate_pct(tax)
    taken_out = rate_pct if tax.prices_include_tax else ZERO
    input_tax = tax_inside(spent, taken_out, currency)
    cost = spent - input_tax
    purchase_tax = tax_at_counter(cost, input_tax, rate_pct, tax, currency)
    return Materials(
        listed=listed,
        overridden=stated is not None,
        small_items_pct=small_pct,
        small_items=small_items,
        input_tax=input_tax,
        cost=cost,
        purchase_rate_pct=rate_pct,
        purchase_tax=purchase_tax,
        sell=_sell(cost, purchase_tax, terms, tax, currency),
    )


def tax_at_counter(
    cost: Decimal, input_tax: Decimal, rate_pct: Decimal, tax: TaxTerms, currency: str
) -> Decimal:
    """What is paid at the counter and does not come back: in the prices, or on top of them."""
    if tax.mode not in PAID_AT_COUNTER:
        return round_money(ZERO, currency)
    return input_tax if tax.prices_include_tax else round_money(cost * rate_pct / 100, currency)


def _sell(
    cost: Decimal, purchase_tax: Decimal, terms: PriceTerms, tax: TaxTerms, currency: str
) -> Decimal:
    """Cost marked up, with the tax of the counter before the markup, after it, or not at all."""
    before = purchase_tax if tax.purchase_tax == "before-markup" else ZERO
    after = purchase_tax if tax.purchase_tax == "after-markup" else ZERO
    times = 1 + terms.materials_markup_pct / 100
    return round_money((cost + before) * times, currency) + after
