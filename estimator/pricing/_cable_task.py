"""The question of what cable to buy in whole numbers: what is on offer, needed and at hand."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

STEP_OF_PRICE = 1 << 40
"""Price and pieces in one number: no purchase has so many pieces that they outweigh a price."""


class Kind(NamedTuple):
    """One kind of coil, or one reel.

    For a coil: its length and price. For a reel: length and price of one step. Prices are whole
    multiples of STEP_OF_PRICE.
    """

    length: int
    price: int
    is_reel: bool

    def cost(self, count: int) -> int:
        """Price of so many coils or steps, plus 1 for each piece."""
        pieces = min(count, 1) if self.is_reel else count
        return count * self.price + pieces


class Task(NamedTuple):
    """What is needed and at hand: cuts longest first, length to order, remnants."""

    cuts: tuple[int, ...]
    order: int
    remnants: tuple[int, ...]


Counts = tuple[int, ...]
"""Coils or steps of each kind, in the order the kinds were given."""


def piece_lengths(kinds: Sequence[Kind], counts: Counts) -> list[int]:
    """Lengths of the pieces of a purchase, kind by kind."""
    lengths: list[int] = []
    for kind, count in zip(kinds, counts, strict=True):
        if kind.is_reel:
            lengths += [kind.length * count] * min(count, 1)
        else:
            lengths += [kind.length] * count
    return lengths
