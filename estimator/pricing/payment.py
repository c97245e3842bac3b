"""How the total is paid: deposit, its cap, and the steps."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import ROUND_HALF_UP, Decimal

from estimator.money import round_money, split_money
from estimator.pricing.price_records import Payment, PaymentStep
from estimator.settings import PlannedPayment, Terms

ON_ACCEPTANCE, ON_COMPLETION = "on acceptance", "on completion"
_PCT_STEP = Decimal("0.01")


def payment(terms: Terms, total: Decimal, materials_sell: Decimal, currency: str) -> Payment:
    """Work out deposit and steps; a deposit over the cap is flagged and stays as it is."""
    if terms.payment_steps:
        steps = planned_steps(terms.payment_steps, total, currency)
        deposit = steps[0].amount
    else:
        of_what = total if terms.deposit_of == "total" else materials_sell
        deposit = min(round_money(of_what * terms.deposit_pct / 100, currency), total)
        steps = _two_steps(deposit, total)
    cap = deposit_cap(terms, total, currency)
    return Payment(
        deposit_of="plan" if terms.payment_steps else terms.deposit_of,
        deposit=deposit,
        cap_pct=terms.deposit_cap_pct,
        cap_amount=terms.deposit_cap_amount,
        cap=cap,
        over_cap=cap is not None and deposit > cap,
        steps=steps,
    )


def deposit_cap(terms: Terms, total: Decimal, currency: str) -> Decimal | None:
    """The most that a deposit may be: the lesser of a share of the total and an amount."""
    caps = []
    if terms.deposit_cap_pct is not None:
        caps.append(round_money(total * terms.deposit_cap_pct / 100, currency))
    if terms.deposit_cap_amount is not None:
        caps.append(round_money(terms.deposit_cap_amount, currency))
    return min(caps, default=None)


def planned_steps(
    plan: Sequence[PlannedPayment], total: Decimal, currency: str
) -> tuple[PaymentStep, ...]:
    """Shares of the total by largest remainder, so that they add up to it."""
    amounts = split_money(total, [each.pct for each in plan], currency)
    return tuple(
        PaymentStep(each.when, each.pct, amount) for each, amount in zip(plan, amounts, strict=True)
    )


def _two_steps(deposit: Decimal, total: Decimal) -> tuple[PaymentStep, ...]:
    """Deposit and balance, each only where there is something to pay."""
    parts = ((ON_ACCEPTANCE, deposit), (ON_COMPLETION, total - deposit))
    return tuple(PaymentStep(when, _pct(part, total), part) for when, part in parts if part)


def _pct(part: Decimal, total: Decimal) -> Decimal:
    """A part in percent of the total, to two places."""
    return (100 * part / total).quantize(_PCT_STEP, ROUND_HALF_UP)
