"""Cable to buy, so that every cut is physically in one piece: coils, cut lengths, remnants."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from fractions import Fraction
from functools import lru_cache

from estimator.pricing._cable_plan import Planner, Stock
from estimator.pricing._cable_records import (
    ByLength,
    CablePlan,
    Coil,
    NoPieceLongEnough,
    Piece,
    Remnant,
)
from estimator.pricing._cable_words import Story

__all__ = [
    "ByLength",
    "CablePlan",
    "Coil",
    "NoPieceLongEnough",
    "Piece",
    "Remnant",
    "choose_cable",
]

KEPT_PLANS = 1 << 14
"""Plans kept for asking again."""


def choose_cable(
    cuts_in: Sequence[Fraction],
    order_in: Fraction,
    coils: Sequence[Coil],
    by_length: Sequence[ByLength],
    remnants: Sequence[Remnant],
    show: Callable[[Fraction], str],
) -> CablePlan:
    """Choose coils, cut lengths and remnants that hold every cut and make up the order.

    Each cut lies wholly in one piece (a saw takes nothing). Bought pieces, and remnants that are
    cut from, are together at least as long as the order. Least money wins; ties go to fewer
    bought pieces, fewer suppliers, fewer remnants cut from, less left over, then first ids. The
    order of the inputs does not matter.

    The least cost is proven for up to 20 cuts, unless the search has to be stopped; for more
    cuts rules of thumb place them. `exact` says whether the cost is proven.

    Args:
        cuts_in: inches of each cut, above zero.
        order_in: inches to order in all, at least the sum of the cuts.
        coils: coils on offer.
        by_length: reels on offer.
        remnants: pieces on the truck.
        show: writes a length in the reader's unit.

    Raises:
        NoPieceLongEnough: a cut that nothing on file holds, or no room for it.
        ValueError: an order below the cuts, a cut of no length, or not enough remnants
            and no offer.
    """
    prices = [coil.price for coil in coils] + [reel.price_per_step for reel in by_length]
    places = max((-int(price.as_tuple().exponent) for price in prices), default=0)
    stock = ((*coils, *by_length), tuple(remnants))
    plan, story = _planned(tuple(cuts_in), order_in, stock, max(0, places))
    return replace(plan, why=story.tell(show))


@lru_cache(maxsize=KEPT_PLANS)
def _planned(
    cuts_in: tuple[Fraction, ...], order_in: Fraction, stock: Stock, places: int
) -> tuple[CablePlan, Story]:
    """Plan, and keep the answer without its words."""
    if any(cut <= 0 for cut in cuts_in):
        raise ValueError("a cut of no length")
    if order_in < sum(cuts_in):
        raise ValueError(f"an order of {order_in} in is less than the cuts together")
    return Planner(cuts_in, order_in, stock, places).answer()
