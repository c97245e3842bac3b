"""Cable on offer in whole numbers, without the offers that can never be the cheapest."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from estimator.pricing._cable_records import ByLength, Coil
from estimator.pricing._cable_task import STEP_OF_PRICE, Kind

Offer = Coil | ByLength


def kinds_on_offer(
    offers: Sequence[Offer], parts: int, places: int
) -> list[tuple[Kind, tuple[Offer, ...]]]:
    """Group offers of one length and price, and put them in the order the search wants.

    Args:
        offers: coils and reels.
        parts: whole-number units of length in an inch.
        places: decimal places of the prices.

    Returns:
        Each kind with one offer for each supplier, first id first.
    """
    groups: dict[Kind, dict[str, Offer]] = {}
    for offer in sorted(offers, key=lambda offer: (offer.offer_id, offer.supplier)):
        groups.setdefault(_kind(offer, parts, places), {}).setdefault(offer.supplier, offer)
    kept = [kind for kind in groups if not any(_outdoes(other, kind) for other in groups)]
    return [(kind, tuple(groups[kind].values())) for kind in sorted(kept, key=_order)]


def length_of(offer: Offer) -> Fraction:
    """Take the length that the price is for: the coil, or the step of a reel."""
    return offer.step_in if isinstance(offer, ByLength) else offer.length_in


def _kind(offer: Offer, parts: int, places: int) -> Kind:
    price = offer.price_per_step if isinstance(offer, ByLength) else offer.price
    above, below = price.as_integer_ratio()
    coins = above * 10**places // below
    length = length_of(offer).numerator * (parts // length_of(offer).denominator)
    return Kind(length, coins * STEP_OF_PRICE, isinstance(offer, ByLength))


def _outdoes(other: Kind, kind: Kind) -> bool:
    """Tell whether a purchase of this kind always costs more than one of the other instead."""
    if not other.is_reel:
        return not kind.is_reel and other.length >= kind.length and other.price < kind.price
    steps = -(-kind.length // other.length)
    if kind.is_reel and kind.length % other.length:
        return False
    return other.price * steps < kind.price


def _order(kind: Kind) -> tuple[bool, int, int]:
    """Coils shortest first, then reels longest step first."""
    return (kind.is_reel, -kind.length if kind.is_reel else kind.length, kind.price)
