"""What is put by for what may be found: a percentage, or what a chosen confidence takes."""

from __future__ import annotations

from decimal import ROUND_HALF_UP, Decimal

from estimator.money import round_money
from estimator.pricing.price_records import ZERO, Contingency
from estimator.settings import PriceTerms

_PCT_STEP = Decimal("0.01")
WITHOUT_RANGE = "no range was worked out, so nothing is put by"


def contingency(
    terms: PriceTerms,
    labor: Decimal,
    before: Decimal,
    from_range: Decimal | None,
    currency: str,
) -> Contingency:
    """Work out the contingency.

    Args:
        terms: which percentage, of what, or which confidence.
        labor: charged, in-labor hours of a supply run in it.
        before: base, overhead and profit together.
        from_range: the amount that reaches the confidence asked for; None where no range was
            worked out. Less than nothing counts as nothing. Not used with a percentage.
        currency: of the amounts.
    """
    on_labor = terms.contingency_on == "labor"
    basis = labor if on_labor else before
    if terms.contingency_from == "percent":
        pct, amount = terms.contingency_pct, basis * terms.contingency_pct / 100
        why = f"{pct:f} % of {'labor' if on_labor else 'the built-up price'}" if pct else ""
    else:
        amount = max(from_range or ZERO, ZERO)
        pct = (100 * amount / basis).quantize(_PCT_STEP, ROUND_HALF_UP) if basis else ZERO
        sure = f"enough in {terms.contingency_confidence_pct:f} of 100 such jobs"
        why = WITHOUT_RANGE if from_range is None else sure
    return Contingency(
        pct=pct,
        on=terms.contingency_on,
        source=terms.contingency_from,
        confidence_pct=terms.contingency_confidence_pct,
        basis_amount=basis,
        amount=round_money(amount, currency),
        shown=terms.contingency_shown,
        why=why,
    )
