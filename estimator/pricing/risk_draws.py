"""Draws by chance with numpy: ranges that run long or short together, and named risks.

Binary floats are used in here and nowhere else in pricing: a draw is no price. What is read off
the draws is rounded to the cent, or to six places, at the end.
"""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal
from typing import NamedTuple

import numpy as np
import numpy.typing as npt

from estimator.pricing.risk_moments import Range, moments
from estimator.settings_risk import Shape

Draws = npt.NDArray[np.float64]
Ranks = npt.NDArray[np.int64]


class Drawn(NamedTuple):
    """Figures drawn, one row for each range, and their ranks from 0 up in the same places."""

    figures: Draws
    ranks: Ranks


def dealer(seed: int) -> np.random.Generator:
    """The generator of all draws of one job (PCG64); the same seed deals the same."""
    return np.random.Generator(np.random.PCG64(seed))


def together(
    deal: np.random.Generator,
    ranges: Sequence[Range],
    shape: Shape,
    correlation_pct: Decimal,
    draws: int,
) -> Drawn:
    """Draw ranges with a common rank correlation between any two of them.

    Each range is drawn by itself, one draw in each of `draws` equal slices of its chance (Latin
    hypercube), and the draws are put in the order of normal scores that have the correlation
    (Iman and Conover, 1982).
    """
    ranks = _ranks_together(deal, len(ranges), correlation_pct, draws)
    figures = np.empty((len(ranges), draws))
    for at, each in enumerate(ranges):
        figures[at] = rising(deal, each, shape, draws)[ranks[at]]
    return Drawn(figures, ranks)


def _ranks_together(
    deal: np.random.Generator, count: int, correlation_pct: Decimal, draws: int
) -> Ranks:
    """Ranks of normal scores whose correlation is as asked: what they have by chance is undone."""
    ranks = np.empty((count, draws), dtype=np.int64)
    if not count:
        return ranks
    scores = deal.standard_normal((count, draws))
    wanted = np.full((count, count), float(correlation_pct) / 100)
    np.fill_diagonal(wanted, 1.0)
    by_chance = np.atleast_2d(np.corrcoef(scores))
    mixed = np.linalg.cholesky(wanted) @ np.linalg.inv(np.linalg.cholesky(by_chance)) @ scores
    places = np.arange(draws)
    for at in range(count):
        ranks[at, np.argsort(mixed[at])] = places
    return ranks


def rising(deal: np.random.Generator, each: Range, shape: Shape, draws: int) -> Draws:
    """Draw one range, sorted from low to high."""
    low, likely, high = map(float, each)
    if low == high:
        return np.full(draws, low)
    slices = (np.arange(draws) + deal.random(draws)) / draws
    if shape == "pert":
        return _beta(deal, each, draws)
    return triangle(slices, (low, likely, high))


def triangle(chances: Draws, ends: tuple[float, float, float]) -> Draws:
    """The triangular figure that is not exceeded with each of the chances."""
    low, likely, high = ends
    wide = high - low
    left = low + np.sqrt(chances * wide * (likely - low))
    right = high - np.sqrt((1 - chances) * wide * (high - likely))
    return np.where(chances * wide < likely - low, left, right)


def _beta(deal: np.random.Generator, each: Range, draws: int) -> Draws:
    """A beta figure with the mean and the standard deviation of the PERT formulas, sorted."""
    low, high = float(each.low), float(each.high)
    known = moments(each, "pert")
    middle = (float(known.mean) - low) / (high - low)
    spread = float(known.variance) / (high - low) ** 2
    both = middle * (1 - middle) / spread - 1
    return low + (high - low) * np.sort(deal.beta(middle * both, (1 - middle) * both, draws))
