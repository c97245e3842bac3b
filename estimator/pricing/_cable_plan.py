"""The plan of what cable to buy and cut, from the question as it is asked to plain words."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal
from fractions import Fraction
from math import lcm

from estimator.pricing._cable_bought import all_new, best_other, lines_of
from estimator.pricing._cable_kinds import Offer, kinds_on_offer, length_of
from estimator.pricing._cable_records import (
    ByLength,
    CablePlan,
    Coil,
    NoPieceLongEnough,
    Piece,
    Remnant,
)
from estimator.pricing._cable_rules import by_rules
from estimator.pricing._cable_search import cheapest
from estimator.pricing._cable_task import Task
from estimator.pricing._cable_ties import Offered, Settled, Ties
from estimator.pricing._cable_words import Story
from estimator.pricing._fit import EXACT_CUTS, Fitter
from estimator.pricing._fit_search import Bin

Stock = tuple[tuple[Offer, ...], tuple[Remnant, ...]]
"""What is on offer, and what is on the truck."""


class Planner:
    """One question in whole numbers, and its answer in pieces."""

    def __init__(
        self, cuts_in: Sequence[Fraction], order_in: Fraction, stock: Stock, places: int
    ) -> None:
        self.cuts_in = cuts_in
        self.order_in = order_in
        self.offers, remnants = stock
        self.places = places
        measures = [*cuts_in, order_in, *(piece.length_in for piece in remnants)]
        measures += [length_of(offer) for offer in self.offers]
        self.parts = lcm(*(measure.denominator for measure in measures))
        cuts = [self._whole(cut) for cut in cuts_in]
        self.by_length_first = sorted(range(len(cuts)), key=lambda at: (-cuts[at], at))
        usable = [piece for piece in remnants if cuts and self._whole(piece.length_in) >= min(cuts)]
        self.remnants = sorted(usable, key=lambda piece: (piece.length_in, piece.remnant_id))
        listed = kinds_on_offer(self.offers, self.parts, places)
        self.kinds = [kind for kind, _ in listed]
        self.offers_of = [offers for _, offers in listed]
        self.task = Task(
            tuple(cuts[at] for at in self.by_length_first),
            self._whole(order_in),
            tuple(self._whole(piece.length_in) for piece in self.remnants),
        )
        self.proven = True

    def answer(self) -> tuple[CablePlan, Story]:
        """Give the plan, with what its reason is written from."""
        pieces = self._pieces()
        bought = [piece for piece in pieces if not isinstance(piece.source, Remnant)]
        plan = CablePlan(
            tuple(pieces),
            Decimal(f"{sum((piece.price for piece in bought), Decimal(0)):.{self.places}f}"),
            sum((piece.length_in for piece in bought), Fraction(0)),
            self.proven,
            why="",
        )
        return plan, self._story(pieces)

    def _whole(self, length_in: Fraction) -> int:
        """Measure a length in the parts of an inch that make every length whole."""
        return length_in.numerator * (self.parts // length_in.denominator)

    def _pieces(self) -> list[Piece]:
        """Find the cheapest purchase and lay the cuts into its pieces."""
        self._check_long_cuts()
        fitter = Fitter(self.task.cuts)
        found = cheapest(self.task, self.kinds, fitter)
        self.proven = found.proven
        if not found.proven:
            for cost, purchase in by_rules(self.task, self.kinds):
                found.take(cost, purchase)
        if not found.purchases:
            raise ValueError(self._not_enough())
        ids = [piece.remnant_id for piece in self.remnants]
        offered = [
            [Offered(offer.supplier, offer.offer_id) for offer in offers]
            for offers in self.offers_of
        ]
        ties = Ties(self.task, self.kinds, offered, ids)
        return self._laid_out(ties.settle(found.purchases, fitter))

    def _check_long_cuts(self) -> None:
        """Refuse cuts that no offer holds and that do not fit in the remnants."""
        if any(kind.is_reel for kind in self.kinds):
            return
        longest_coil = max((kind.length for kind in self.kinds), default=0)
        long = [cut for cut in self.task.cuts if cut > longest_coil]
        if not long:
            return
        bins = [Bin(length) for length in self.task.remnants]
        if long[0] > max(self.task.remnants, default=0):
            raise NoPieceLongEnough(Fraction(long[0], self.parts))
        if self.kinds and Fitter(long).fit(bins, 0) is None:
            raise NoPieceLongEnough(Fraction(long[-1], self.parts))

    def _not_enough(self) -> str:
        return (
            f"the remnants do not hold every cut and make up the order of {self.order_in} in, "
            "and no cable is on offer"
        )

    def _laid_out(self, settled: Settled) -> list[Piece]:
        """List the pieces that are used, remnants first, then coils, the longest first."""
        masks = iter(settled.purchase.masks)
        pieces = [
            self._piece(remnant, remnant.length_in, mask)
            for remnant, mask in zip(self.remnants, masks, strict=False)
            if mask
        ]
        lines = zip(self.offers_of, settled.offers, settled.purchase.counts, strict=True)
        for offers, pick, count in lines:
            offer = offers[pick]
            if isinstance(offer, Coil):
                pieces += [self._piece(offer, offer.length_in, next(masks)) for _ in range(count)]
            elif count:
                pieces.append(self._piece(offer, count * offer.step_in, next(masks)))
        return sorted(pieces, key=self._listing)

    def _piece(self, source: Offer | Remnant, length_in: Fraction, mask: int) -> Piece:
        cuts = sorted(at for place, at in enumerate(self.by_length_first) if mask >> place & 1)
        leftover_in = length_in - sum(self.cuts_in[at] for at in cuts)
        return Piece(source, length_in, tuple(cuts), leftover_in, _price(source, length_in))

    def _listing(self, piece: Piece) -> tuple[int, Fraction, str, Fraction, list[Fraction]]:
        """Remnants by name, coils the longest first, lengths from a reel; the fullest first."""
        source = piece.source
        longest_first = sorted(-self.cuts_in[at] for at in piece.cuts)
        if isinstance(source, Remnant):
            return (0, Fraction(0), source.remnant_id, piece.leftover_in, longest_first)
        rank = 2 if isinstance(source, ByLength) else 1
        return (rank, -piece.length_in, source.offer_id, piece.leftover_in, longest_first)

    def _story(self, pieces: Sequence[Piece]) -> Story:
        """Gather what the reason is written from."""
        held = [
            (piece.source.remnant_id, len(piece.cuts))
            for piece in pieces
            if isinstance(piece.source, Remnant)
        ]
        cuts_in = [self.cuts_in[at] for at in self.by_length_first]
        others = [all_new(offer, cuts_in, self.order_in) for offer in self.offers]
        bought = lines_of(pieces)
        return Story(
            bought=bought,
            other=best_other(bought, [other for other in others if other]),
            remnant_ids=tuple(name for name, _ in held),
            cuts_held=sum(count for _, count in held),
            cuts=len(cuts_in),
            offer_count=len(self.offers),
            supplier_count=len({offer.supplier for offer in self.offers}),
            places=self.places,
            proven=self.proven,
            by_rules=len(cuts_in) > EXACT_CUTS,
        )


def _price(source: Offer | Remnant, length_in: Fraction) -> Decimal:
    if isinstance(source, ByLength):
        return source.price_per_step * int(length_in / source.step_in)
    return source.price if isinstance(source, Coil) else Decimal(0)
