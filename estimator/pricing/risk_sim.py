"""The job drawn by chance, and what is read off the draws; numpy is loaded with this file."""

from __future__ import annotations

from decimal import Decimal
from typing import NamedTuple

import numpy as np

from estimator.measures import to_decimal
from estimator.pricing.risk_draws import Draws, dealer, rising, together
from estimator.pricing.risk_inputs import Case, hours_range, parts_range
from estimator.pricing.risk_price import Priced, price_draws
from estimator.pricing.risk_records import RangeInput

_NEARLY = 1e-6


class Outcome(NamedTuple):
    """All draws of a job.

    Attributes:
        moved: labor and materials as sold that come with each input, one row an input.
        cost: labor and materials as sold, all together, not rounded; but for what never moves
            the rows of `moved` added up.
    """

    hours: Draws
    priced: Priced
    moved: tuple[Draws, ...]
    cost: Draws


def play(case: Case) -> Outcome:
    """Draw hours, risks, prices and waste, and price every draw."""
    terms = case.terms
    deal, count = dealer(terms.seed), terms.draws
    lines = [hours_range(each) for each in case.of_kind("hours")]
    tasks = together(deal, lines, terms.shape, terms.correlation_pct, count).figures
    risks = [_met(deal, case, each) for each in case.of_kind("risk")]
    prices, waste = together(
        deal,
        [hours_range(each) for each in case.of_kind("material prices", "waste")],
        terms.shape,
        Decimal(0),
        count,
    ).figures
    hours = sum((met[0] for met in risks), tasks.sum(axis=0))
    parts = sum((met[1] for met in risks), np.zeros(count))
    listed = float(case.build.materials_listed)
    more_paid, more_used = listed * prices / 100, listed * (1 + prices / 100) * waste / 100
    bought = listed + more_paid + more_used + parts
    rate, sold = float(case.build.labor_rate_per_hour), float(case.sell_factor)
    return Outcome(
        hours,
        price_draws(case.build, hours, bought, case.places),
        (
            *tasks * rate,
            *(hours_met * rate + parts_met * sold for hours_met, parts_met in risks),
            more_paid * sold,
            more_used * sold,
        ),
        hours * rate + bought * sold,
    )


def _met(deal: np.random.Generator, case: Case, each: RangeInput) -> tuple[Draws, Draws]:
    """Hours and parts of a risk in every draw: nothing where it is not met."""
    count = case.terms.draws
    met = deal.random(count) * 100 < float(each.chance_pct)
    hours, parts = (
        deal.permutation(rising(deal, figures, case.terms.shape, count)) * met
        for figures in (hours_range(each), parts_range(each))
    )
    return hours, parts


def not_exceeded(draws: Draws, pct: Decimal | int, places: int) -> Decimal:
    """The figure not exceeded in so many of 100 draws, between two draws in proportion."""
    return figure(float(np.quantile(draws, float(pct) / 100)), places)


def share_at_most(draws: Draws, limit: Decimal) -> Decimal:
    """Draws that are at most so much, in percent to one place."""
    near = float(limit) + _NEARLY
    return figure(float(np.mean(draws <= near)) * 100, 1)


def figure(amount: float, places: int) -> Decimal:
    """A figure read off the draws, rounded half up."""
    return to_decimal(Decimal(amount), places)


def shares_pct(outcome: Outcome) -> tuple[Decimal, ...]:
    """Each input's part in the variance of the cost: its covariance with it, in percent.

    The parts add up to 100: what two inputs do together is divided between them.
    """
    cost = outcome.cost - outcome.cost.mean()
    whole = float(cost @ cost)
    if not whole:
        return tuple(Decimal(0) for _ in outcome.moved)
    return tuple(figure(100 * float(each @ cost) / whole, 1) for each in outcome.moved)
