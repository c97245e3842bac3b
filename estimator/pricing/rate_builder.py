"""What an hour of labor costs a shop and has to be sold for, from wage to rate.

Burden is a percentage of the straight wage for an hour worked: payroll taxes, insurance, paid
time off and benefits. On pay that has paid leave in it the same money is a smaller percentage,
so a burden read elsewhere has to say its base. Overhead and profit are not in it.
"""

from __future__ import annotations

from decimal import Decimal

from estimator.money import round_money
from estimator.pricing.price_records import RateBuild
from estimator.settings import RateTerms, Shop

BURDEN_BASE = "the straight wage for an hour worked"


def labor_rate(shop: Shop) -> Decimal:
    """The rate billed for one hour: the stated number, or built from [rate]."""
    stated = shop.price.labor_rate_per_hour
    return build_rate(shop.rate, shop.currency).rate if stated is None else stated


def built_rate(shop: Shop) -> RateBuild | None:
    """How the labor rate was built; None where the shop states a number."""
    if shop.price.labor_rate_per_hour is not None:
        return None
    return build_rate(shop.rate, shop.currency)


def build_rate(terms: RateTerms, currency: str) -> RateBuild:
    """Build a labor rate; each step is rounded to the cent before the next uses it."""
    billable_hours = terms.paid_hours * terms.billable_pct / 100
    burdened = round_money(terms.wage_per_hour * (1 + terms.burden_pct / 100), currency)
    labor = round_money(burdened * terms.paid_hours / billable_hours, currency)
    overhead = round_money(terms.overhead_per_year / billable_hours, currency)
    cost = labor + overhead
    return RateBuild(
        wage_per_hour=terms.wage_per_hour,
        burden_pct=terms.burden_pct,
        burden_base=BURDEN_BASE,
        burdened=burdened,
        paid_hours=terms.paid_hours,
        billable_pct=terms.billable_pct,
        billable_hours=billable_hours,
        labor_per_hour=labor,
        overhead_per_year=terms.overhead_per_year,
        overhead_per_hour=overhead,
        cost_per_hour=cost,
        profit_margin_pct=terms.profit_margin_pct,
        rate=round_money(cost / (1 - terms.profit_margin_pct / 100), currency),
    )


def yearly_wages(
    wage_per_hour: Decimal,
    hours: Decimal,
    overtime_rate_per_hour: Decimal,
    overtime_hours: Decimal,
    extras: Decimal,
) -> Decimal:
    """Taxable wages of a year: straight hours, overtime, and bonuses and allowances."""
    return wage_per_hour * hours + overtime_rate_per_hour * overtime_hours + extras


def burden_pct_of(cost_per_hour: Decimal, base_per_hour: Decimal) -> Decimal:
    """Burden in percent of a base (the straight wage, or pay with leave), not rounded.

    Raises:
        ValueError: a base of nothing.
    """
    if base_per_hour <= 0:
        raise ValueError("the base of a burden is above zero")
    return 100 * (cost_per_hour / base_per_hour - 1)


def required_markup_pct(indirect_per_year: Decimal, direct_per_year: Decimal) -> Decimal:
    """Markup on direct cost that earns a year's overhead and net profit, not rounded.

    Raises:
        ValueError: no direct cost to earn it on.
    """
    if direct_per_year <= 0:
        raise ValueError("a markup needs direct cost above zero")
    return 100 * indirect_per_year / direct_per_year
