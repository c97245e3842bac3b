"""Sums in the price for what is not chosen yet."""

from __future__ import annotations

from decimal import Decimal

from estimator.money import round_money
from estimator.pricing.price_records import ZERO, AllowanceLine
from estimator.survey.records import Survey


def allowance_lines(survey: Survey, currency: str) -> tuple[AllowanceLine, ...]:
    """The allowances of a job, each rounded to the cent."""
    return tuple(
        AllowanceLine(each.name, each.kind, round_money(each.amount, currency))
        for each in survey.allowances
    )


def together(lines: tuple[AllowanceLine, ...], currency: str, kind: str | None = None) -> Decimal:
    """Allowances added up, of one kind where it is named."""
    amounts = (line.amount for line in lines if kind in (None, line.kind))
    return sum(amounts, round_money(ZERO, currency))
