"""Why this cable: the purchase in plain words, beside the best one that is a single kind."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from estimator.pricing._cable_bought import Bought, Line

Show = Callable[[Fraction], str]


@dataclass(frozen=True, slots=True)
class Story:
    """What the words are made from.

    Attributes:
        bought: the purchase.
        other: the best purchase of a single kind without remnants, if there is another.
        remnant_ids: the remnants that are cut from.
        cuts_held: cuts that come from remnants.
        cuts: all cuts.
        offer_count: offers on file.
        supplier_count: suppliers on file.
        places: decimal places to show money with.
        proven: whether nothing can cost less.
        by_rules: whether there were too many cuts for a proof.
    """

    bought: Bought
    other: Bought | None
    remnant_ids: tuple[str, ...]
    cuts_held: int
    cuts: int
    offer_count: int
    supplier_count: int
    places: int
    proven: bool
    by_rules: bool

    def tell(self, show: Show) -> str:
        """Write the reason; `show` writes lengths in the reader's unit."""
        parts = [self._remnants(), self._purchase(show), self._doubt()]
        return "; ".join(part for part in parts if part)

    def _remnants(self) -> str:
        if not self.remnant_ids:
            return ""
        one = len(self.remnant_ids) == 1
        names = f"remnant{'' if one else 's'} {_listed(self.remnant_ids)}"
        held = "every cut" if self._all_held else f"{self.cuts_held} of {self.cuts} cuts"
        nothing = "" if self.bought.lines else ", so nothing is bought"
        return f"{names} {'holds' if one else 'hold'} {held}{nothing}"

    @property
    def _all_held(self) -> bool:
        return self.cuts_held == self.cuts

    def _purchase(self, show: Show) -> str:
        if not self.bought.lines:
            return "" if self.remnant_ids else "nothing needed"
        goal = "to make up the order, " if self._all_held else ""
        lines = [self._line(line, show, price=True) for line in self.bought.lines]
        if self.other is None:
            only = self.offer_count == 1
            reason = "the only cable on file" if only else "no other offer does alone"
            return f"{goal}{_listed(lines)}: {reason}"
        return f"{goal}{_listed(lines)} {self._compared(self.other, show)}"

    def _compared(self, other: Bought, show: Show) -> str:
        """Say what it costs, and what the other purchase costs."""
        new = "all new cable: " if self.remnant_ids else ""
        beside = f"{new}{self._line(other.lines[0], show)} ({self._money(other.cost)})"
        costs = "costs" if self.bought.piece_count == 1 else "cost"
        if self.bought.cost == other.cost:
            return f"{costs} the same as {beside}, {self._tie_reason(other)}"
        line = self.bought.lines[0]
        if self.bought.cost == line.price and len(self.bought.lines) == 1:
            return f"{costs} less than {beside}"
        return f"{costs} {self._money(self.bought.cost)}, less than {beside}"

    def _tie_reason(self, other: Bought) -> str:
        """Say what decided between two purchases of one cost."""
        if self.bought.piece_count != other.piece_count:
            return "in fewer pieces"
        if self.bought.length_in < other.length_in:
            return "with less left over"
        return "and stands first on the list"

    def _line(self, line: Line, show: Show, *, price: bool = False) -> str:
        supplier = f" from {line.supplier}" if self.supplier_count > 1 else ""
        at = f" at {self._money(line.price)}" if price else ""
        if line.step_in is not None:
            per = f" per {show(line.step_in)}" if price else ""
            return f"{show(line.length_in)} by length{supplier}{at}{per}"
        coils = "coil" if line.pieces == 1 else "coils"
        return f"{line.pieces} {coils} of {show(line.length_in)}{supplier}{at}"

    def _money(self, price: Decimal) -> str:
        return f"{price:.{self.places}f}"

    def _doubt(self) -> str:
        if self.proven:
            return ""
        if self.by_rules:
            return "so many cuts are placed by rules of thumb: a cheaper way may exist"
        return "the search was stopped early: a cheaper way may exist"


def _listed(words: Sequence[str]) -> str:
    """Join with commas, and with "and" before the last."""
    *first, last = words
    return f"{', '.join(first)} and {last}" if first else last
