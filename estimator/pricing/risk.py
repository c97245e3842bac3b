"""The range of a job: percentiles of hours and total, chances, drivers; and what to put by.

numpy is loaded by the functions in here that draw, and not before.
"""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction
from typing import TYPE_CHECKING

from estimator.catalog.records import Books
from estimator.measures import to_decimal
from estimator.pricing.records import Bid, Hours, LaborLine, PriceBuild
from estimator.pricing.risk_inputs import (
    PLACES,
    Case,
    built_up_moments,
    case_of,
    hours_moments,
)
from estimator.pricing.risk_records import Driver, Level, PriceRange, Spread
from estimator.survey.records import Survey

if TYPE_CHECKING:
    from estimator.pricing.risk_draws import Draws
    from estimator.pricing.risk_sim import Outcome

ENOUGH_DRAWS = 100_000
LEVELS_PCT = (5, 10, 20, 30, 40, 50, 60, 70, 80, 90, 95)
MOST_DRIVERS = 8


def price_range(bid: Bid, draws: int | None = None, seed: int | None = None) -> PriceRange:
    """Find how far hours and total of a bid may come out otherwise.

    Args:
        bid: as the engine gives it.
        draws: in place of the setting.
        seed: in place of the setting.
    """
    case = case_of(bid.survey, bid.labor, bid.hours, bid.price, bid.books)
    terms = case.terms
    terms = replace(
        terms,
        draws=terms.draws if draws is None else draws,
        seed=terms.seed if seed is None else seed,
    )
    return _range(bid, replace(case, terms=terms))


def put_by(
    survey: Survey,
    labor: tuple[LaborLine, ...],
    hours: Hours,
    build: PriceBuild,
    books: Books,
) -> Decimal:
    """What a price needs on top to be enough at the confidence that the shop chose.

    The built-up price that is not exceeded at that confidence, less the built-up price of the
    bid without any contingency; never below zero.

    Contingency that `build` holds already is left out of the sum.
    """
    from estimator.pricing.risk_sim import not_exceeded, play

    case = case_of(survey, labor, hours, build, books)
    confidence = books.shop.price.contingency_confidence_pct
    reached = not_exceeded(play(case).priced.built_up, confidence, case.places)
    return max(reached - (build.base + build.overhead + build.profit), Decimal(0))


def _range(bid: Bid, case: Case) -> PriceRange:
    from estimator.pricing.risk_sim import not_exceeded, play, share_at_most

    outcome, terms, build = play(case), case.terms, bid.price
    hours, total = outcome.hours, outcome.priced.total
    known, priced = hours_moments(case), built_up_moments(case)
    likely_total = _likely_total(case)
    confidence = bid.books.shop.price.contingency_confidence_pct
    return PriceRange(
        draws=terms.draws,
        seed=terms.seed,
        shape=terms.shape,
        correlation_pct=terms.correlation_pct,
        hours=_spread(hours, PLACES),
        total=_spread(total, case.places),
        hours_mean=to_decimal(known.mean, PLACES),
        hours_sd=to_decimal(Fraction(known.sd), PLACES),
        built_up_mean=to_decimal(priced.mean, case.places),
        built_up_sd=to_decimal(Fraction(priced.sd), case.places),
        likely_hours=case.likely_hours,
        likely_hours_at_pct=share_at_most(hours, case.likely_hours),
        likely_total=likely_total,
        likely_total_at_pct=share_at_most(total, likely_total),
        bid_total=build.total,
        bid_holds_pct=share_at_most(total, build.total),
        confidence_pct=confidence,
        at_confidence=not_exceeded(total, confidence, case.places),
        levels=_levels(outcome, case.places),
        drivers=_drivers(case, outcome),
        inputs=case.inputs,
        notes=_notes(bid, case, outcome),
    )


def _spread(draws: Draws, places: int) -> Spread:
    from estimator.pricing.risk_sim import figure, not_exceeded

    mean, sd = figure(float(draws.mean()), places), figure(float(draws.std()), places)
    return Spread(mean, sd, *(not_exceeded(draws, pct, places) for pct in (10, 50, 80, 90)))


def _likely_total(case: Case) -> Decimal:
    """Every input at its likely value, priced; no risk and no contingency."""
    import numpy as np

    from estimator.pricing.risk_price import price_draws
    from estimator.pricing.risk_sim import figure

    hours = np.full(1, float(case.likely_hours))
    listed = np.full(1, float(case.build.materials_listed))
    return figure(float(price_draws(case.build, hours, listed, case.places).total[0]), case.places)


def _levels(outcome: Outcome, places: int) -> tuple[Level, ...]:
    from estimator.pricing.risk_sim import not_exceeded

    return tuple(
        Level(
            pct,
            not_exceeded(outcome.hours, pct, PLACES),
            not_exceeded(outcome.priced.total, pct, places),
        )
        for pct in LEVELS_PCT
    )


def _drivers(case: Case, outcome: Outcome) -> tuple[Driver, ...]:
    """The inputs with a part in the spread, largest part first."""
    from estimator.pricing.risk_sim import shares_pct

    found = [
        Driver(line, each.name, each.kind, share, each.swing)
        for line, (each, share) in enumerate(
            zip(case.inputs, shares_pct(outcome), strict=True), start=1
        )
    ]
    moving = [each for each in found if each.share_pct]
    return tuple(sorted(moving, key=lambda each: -each.share_pct)[:MOST_DRIVERS])


def _notes(bid: Bid, case: Case, outcome: Outcome) -> tuple[str, ...]:
    """What a reader of the figures must know."""
    from estimator.pricing.risk_sim import share_at_most

    notes: list[str] = []
    if case.terms.draws < ENOUGH_DRAWS:
        few = f"Only {case.terms.draws} draws: the percentiles are rough."
        notes.append(f"{few} Use {ENOUGH_DRAWS} or more to rely on them.")
    if case.scale != 1:
        notes.append("The job states its hours; the ranges of its tasks were scaled to them.")
    at_minimum = share_at_most(outcome.priced.built_up, bid.price.minimum_charge)
    if at_minimum:
        notes.append(f"The minimum charge stands in for the price in {at_minimum} % of the draws.")
    if bid.price.unpriced_items:
        notes.append("Items without a price are left out here too.")
    if not case.of_kind("risk"):
        notes.append("No risks are named, in the job or in the shop's settings.")
    return tuple(notes)
