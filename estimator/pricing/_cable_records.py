"""Cable on offer and at hand, and the plan of what to buy and cut."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction


@dataclass(frozen=True, slots=True)
class Coil:
    """Cable sold by the coil; any number may be bought. Price is for one coil.

    Raises:
        ValueError: a length that is not above zero, or a price below zero.
    """

    offer_id: str
    supplier: str
    length_in: Fraction
    price: Decimal

    def __post_init__(self) -> None:
        """Refuse what would make a free or an endless purchase."""
        _check(self.offer_id, self.length_in, self.price)


@dataclass(frozen=True, slots=True)
class ByLength:
    """Cable cut from a reel in whole steps, such as by the foot. Price is for one step.

    Raises:
        ValueError: a step that is not above zero, or a price below zero.
    """

    offer_id: str
    supplier: str
    step_in: Fraction
    price_per_step: Decimal

    def __post_init__(self) -> None:
        """Refuse what would make a free or an endless purchase."""
        _check(self.offer_id, self.step_in, self.price_per_step)


@dataclass(frozen=True, slots=True)
class Remnant:
    """A piece of cable on the truck: there once, and free.

    Raises:
        ValueError: a length that is not above zero.
    """

    remnant_id: str
    length_in: Fraction

    def __post_init__(self) -> None:
        """Refuse a piece that is not there."""
        _check(self.remnant_id, self.length_in, Decimal(0))


@dataclass(frozen=True, slots=True)
class Piece:
    """One piece of cable and the cuts that come from it.

    Attributes:
        source: the offer or the remnant.
        length_in: inches of the whole piece.
        cuts: places in `cuts_in` of the cuts; empty for a piece that only makes up the order.
        leftover_in: inches that no cut takes.
        price: of the piece, 0 for a remnant.
    """

    source: Coil | ByLength | Remnant
    length_in: Fraction
    cuts: tuple[int, ...]
    leftover_in: Fraction
    price: Decimal


@dataclass(frozen=True, slots=True)
class CablePlan:
    """The cable to use and to buy.

    Attributes:
        pieces: remnants first, then coils, then lengths from a reel.
        cost: of all bought pieces, not rounded.
        bought_in: inches bought, remnants left out.
        exact: True if it is proven that nothing costs less.
        why: the reason in plain words, money without a currency sign.
    """

    pieces: tuple[Piece, ...]
    cost: Decimal
    bought_in: Fraction
    exact: bool
    why: str


class NoPieceLongEnough(ValueError):
    """No coil or reel holds a cut, and no remnant that is not taken by other cuts.

    Attributes:
        cut_in: inches of the cut.
    """

    def __init__(self, cut_in: Fraction) -> None:
        self.cut_in = cut_in
        super().__init__(f"no coil or reel, and no free remnant, holds a cut of {cut_in} in")


def _check(name: str, length_in: Fraction, price: Decimal) -> None:
    if length_in <= 0:
        raise ValueError(f"{name}: a piece of {length_in} in is no piece")
    if not (price.is_finite() and price >= 0):
        raise ValueError(f"{name}: {price} is not a price")
