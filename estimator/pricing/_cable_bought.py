"""Purchases of cable line by line: the one made, and the ones of a single kind beside it."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal
from fractions import Fraction
from typing import NamedTuple

from estimator.pricing._cable_records import ByLength, Coil, Piece, Remnant


class Line(NamedTuple):
    """One line of a purchase.

    Attributes:
        pieces: coils, or 1 for a length from a reel.
        length_in: inches of one piece.
        step_in: inches that the price is for, if from a reel.
        price: of one coil or one step, in the job's currency.
        cost: of the line.
        supplier: who sells it.
        offer_id: which offer it is.
    """

    pieces: int
    length_in: Fraction
    step_in: Fraction | None
    price: Decimal
    cost: Decimal
    supplier: str
    offer_id: str


class Bought(NamedTuple):
    """A whole purchase."""

    lines: tuple[Line, ...]

    @property
    def cost(self) -> Decimal:
        """Add up the lines."""
        return sum((line.cost for line in self.lines), Decimal(0))

    @property
    def piece_count(self) -> int:
        """Count coils and cut lengths."""
        return sum(line.pieces for line in self.lines)

    @property
    def length_in(self) -> Fraction:
        """Add up the pieces."""
        return sum((line.length_in * line.pieces for line in self.lines), Fraction(0))


def lines_of(pieces: Sequence[Piece]) -> Bought:
    """Put the bought pieces of one offer on one line, in the order of the pieces."""
    groups: dict[Coil | ByLength, list[Piece]] = {}
    for piece in pieces:
        if not isinstance(piece.source, Remnant):
            groups.setdefault(piece.source, []).append(piece)
    return Bought(
        tuple(_line(offer, len(same), same[0].length_in) for offer, same in groups.items())
    )


def all_new(
    offer: Coil | ByLength, cuts_in: Sequence[Fraction], order_in: Fraction
) -> Bought | None:
    """Buy everything from one offer, cuts longest first; None if a cut is too long for it."""
    if isinstance(offer, ByLength):
        return Bought((_line(offer, 1, -(-order_in // offer.step_in) * offer.step_in),))
    if order_in <= offer.length_in:
        return Bought((_line(offer, 1, offer.length_in),))
    if cuts_in and cuts_in[0] > offer.length_in:
        return None
    rooms: list[Fraction] = []
    for cut in cuts_in:
        at = next((at for at, room in enumerate(rooms) if room >= cut), len(rooms))
        rooms[at : at + 1] = [(rooms[at] if at < len(rooms) else offer.length_in) - cut]
    coils = max(len(rooms), int(-(-order_in // offer.length_in)))
    return Bought((_line(offer, coils, offer.length_in),))


def _line(offer: Coil | ByLength, pieces: int, length_in: Fraction) -> Line:
    if isinstance(offer, Coil):
        cost = offer.price * pieces
        return Line(pieces, length_in, None, offer.price, cost, offer.supplier, offer.offer_id)
    step_in, price = offer.step_in, offer.price_per_step
    cost = price * int(length_in / step_in)
    return Line(pieces, length_in, step_in, price, cost, offer.supplier, offer.offer_id)


def best_other(bought: Bought, others: Sequence[Bought]) -> Bought | None:
    """Choose the best of the other purchases that cost no less."""
    dearer = [other for other in others if other != bought and other.cost >= bought.cost]
    return min(dearer, key=_preference, default=None)


def _preference(other: Bought) -> tuple[Decimal, int, Fraction, list[tuple[str, str]]]:
    """Least cost, then as ties go."""
    names = [(line.offer_id, line.supplier) for line in other.lines]
    return (other.cost, other.piece_count, other.length_in, names)
