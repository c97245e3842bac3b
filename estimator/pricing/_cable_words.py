"""Why this cable: the purchase in plain words, beside the best one that is a single kind."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from estimator.pricing._cable_bought import Bought, Line
from estimator.saying import listed, said, several

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
        parts = (self._remnants(), self._purchase(show), self._doubt())
        return listed((part for part in parts if part), "; ")

    def _remnants(self) -> str:
        if not self.remnant_ids:
            return ""
        many, names = len(self.remnant_ids), _together(self.remnant_ids)
        if not self._all_held:
            return several(
                many,
                "remnant {names} holds {held} of {cuts} cuts",
                "remnants {names} hold {held} of {cuts} cuts",
                names=names, held=self.cuts_held, cuts=self.cuts,
            )  # fmt: skip
        if self.bought.lines:
            return several(
                many,
                "remnant {names} holds every cut",
                "remnants {names} hold every cut",
                names=names,
            )
        return several(
            many,
            "remnant {names} holds every cut, so nothing is bought",
            "remnants {names} hold every cut, so nothing is bought",
            names=names,
        )

    @property
    def _all_held(self) -> bool:
        return self.cuts_held == self.cuts

    def _purchase(self, show: Show) -> str:
        if not self.bought.lines:
            return "" if self.remnant_ids else said("nothing needed")
        lines = [self._priced(line, show) for line in self.bought.lines]
        reason = self._reason(_together(lines), show)
        return said("to make up the order, {reason}", reason=reason) if self._all_held else reason

    def _reason(self, cable: str, show: Show) -> str:
        """Say why it is this cable."""
        if self.other is not None:
            return self._compared(cable, self.other, show)
        if self.offer_count == 1:
            return said("{cable}: the only cable on file", cable=cable)
        return said("{cable}: no other offer does alone", cable=cable)

    def _compared(self, cable: str, other: Bought, show: Show) -> str:
        """Say what it costs, and what the other purchase costs."""
        instead, price = self._line(other.lines[0], show), self._money(other.cost)
        if self.remnant_ids:
            instead = said("all new cable: {cable}", cable=instead)
        pieces, line = self.bought.piece_count, self.bought.lines[0]
        if self.bought.cost == other.cost:
            return several(
                pieces,
                "{cable} costs the same as {instead} ({price}), {reason}",
                "{cable} cost the same as {instead} ({price}), {reason}",
                cable=cable, instead=instead, price=price, reason=self._tie_reason(other),
            )  # fmt: skip
        if self.bought.cost == line.price and len(self.bought.lines) == 1:
            return several(
                pieces,
                "{cable} costs less than {instead} ({price})",
                "{cable} cost less than {instead} ({price})",
                cable=cable, instead=instead, price=price,
            )  # fmt: skip
        return several(
            pieces,
            "{cable} costs {cost}, less than {instead} ({price})",
            "{cable} cost {cost}, less than {instead} ({price})",
            cable=cable, cost=self._money(self.bought.cost), instead=instead, price=price,
        )  # fmt: skip

    def _tie_reason(self, other: Bought) -> str:
        """Say what decided between two purchases of one cost."""
        if self.bought.piece_count != other.piece_count:
            return said("in fewer pieces")
        if self.bought.length_in < other.length_in:
            return said("with less left over")
        return said("and stands first on the list")

    def _line(self, line: Line, show: Show) -> str:
        """What is bought, and where there are several suppliers, from whom."""
        cable = _called(line, show(line.length_in))
        if self.supplier_count == 1:
            return cable
        return said("{cable} from {supplier}", cable=cable, supplier=line.supplier)

    def _priced(self, line: Line, show: Show) -> str:
        cable, price = self._line(line, show), self._money(line.price)
        if line.step_in is None:
            return said("{cable} at {price}", cable=cable, price=price)
        step = show(line.step_in)
        return said("{cable} at {price} per {step}", cable=cable, price=price, step=step)

    def _money(self, price: Decimal) -> str:
        return f"{price:.{self.places}f}"

    def _doubt(self) -> str:
        if self.proven:
            return ""
        if self.by_rules:
            return said("so many cuts are placed by rules of thumb: a cheaper way may exist")
        return said("the search was stopped early: a cheaper way may exist")


def _called(line: Line, length: str) -> str:
    if line.step_in is not None:
        return said("{length} by length", length=length)
    return several(
        line.pieces, "{count} coil of {length}", "{count} coils of {length}", length=length
    )


def _together(names: Sequence[str]) -> str:
    """Join with commas, and with "and" before the last."""
    *first, last = names
    return said("{first} and {last}", first=listed(first), last=last) if first else last
