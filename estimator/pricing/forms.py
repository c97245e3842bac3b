"""The price offered, rounded where the shop rounds it, and the form it is offered in."""

from __future__ import annotations

from decimal import ROUND_CEILING, ROUND_HALF_UP, Decimal

from estimator.money import round_money
from estimator.pricing.price_records import PriceForm
from estimator.settings import PriceTerms, Terms


def rounded_offer(amount: Decimal, terms: PriceTerms, currency: str) -> Decimal:
    """Round to a multiple of offer_step: up, or to the nearest (half a step goes up).

    Where the nearest lies below the minimum charge, or is nothing, it goes up too.
    """
    step = round_money(terms.offer_step, currency)
    if step == 0:
        return amount
    least = round_money(terms.minimum_charge, currency)
    up = (amount / step).to_integral_value(ROUND_CEILING) * step
    nearest = (amount / step).to_integral_value(ROUND_HALF_UP) * step
    bad = terms.offer_rounding == "up" or nearest < least or nearest == 0
    return round_money(up if bad else nearest, currency)


def price_form(terms: Terms, total: Decimal, currency: str) -> PriceForm:
    """The sentence that defines the price, and the cap where it has one."""
    sentences = {
        "fixed": terms.fixed_line,
        "time-and-material": terms.time_and_material_line,
        "not-to-exceed": terms.not_to_exceed_line,
    }
    capped = terms.price_form == "not-to-exceed"
    cap = round_money(total * (1 + terms.not_to_exceed_pct / 100), currency) if capped else None
    return PriceForm(terms.price_form, sentences[terms.price_form], terms.not_to_exceed_pct, cap)
