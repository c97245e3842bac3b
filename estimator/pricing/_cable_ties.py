"""Which of several equally cheap cable purchases: suppliers, remnants, leftover, then ids."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations, product
from math import comb
from typing import NamedTuple

from estimator.pricing._cable_search import Purchase
from estimator.pricing._cable_task import Counts, Kind, Task, piece_lengths
from estimator.pricing._fit import Fitter
from estimator.pricing._fit_search import Bin

MOST_SUBSETS = 20_000
"""Ways to pick remnants that are compared; more than any truck has with sixteen remnants."""


class Offered(NamedTuple):
    """Who offers a kind: supplier and offer, by name."""

    supplier: str
    offer_id: str


class Settled(NamedTuple):
    """The purchase taken, and for each kind the place of its offer among those for the kind."""

    purchase: Purchase
    offers: tuple[int, ...]


class _Option(NamedTuple):
    """One purchase with the remnants to cut from; ordered as the ties go."""

    leftover: int
    offer_ids: tuple[tuple[str, int], ...]
    remnant_ids: tuple[str, ...]
    settled: Settled
    remnants: tuple[int, ...]


class Ties:
    """Settles ties among purchases of the same cost and the same number of pieces.

    Args:
        task: what is needed and at hand.
        kinds: what can be bought.
        offered: for each kind the offers at its price.
        remnant_ids: names of the remnants in the task.
    """

    def __init__(
        self,
        task: Task,
        kinds: Sequence[Kind],
        offered: Sequence[Sequence[Offered]],
        remnant_ids: Sequence[str],
    ) -> None:
        self.task = task
        self.kinds = kinds
        self.offered = offered
        self.remnant_ids = remnant_ids

    def settle(self, purchases: Sequence[Purchase], fitter: Fitter) -> Settled:
        """Take the purchase with fewest suppliers, fewest remnants cut, least left over."""
        picked = [self._pick_offers(purchase) for purchase in purchases]
        fewest = min(suppliers for suppliers, _ in picked)
        left = [settled for suppliers, settled in picked if suppliers == fewest]
        failed: set[tuple[Counts, tuple[int, ...]]] = set()
        for option in self._options(left):
            purchase = option.settled.purchase
            question = (purchase.counts, tuple(self.task.remnants[at] for at in option.remnants))
            if question not in failed:
                masks = self._fit(option, fitter)
                if masks is not None:
                    return Settled(Purchase(purchase.counts, masks), option.settled.offers)
                failed.add(question)
        return left[0]

    def _pick_offers(self, purchase: Purchase) -> tuple[int, Settled]:
        """Pick one offer for each kind, so that there are fewest suppliers, then first names."""
        places = [
            range(len(offers)) if count else range(1)
            for offers, count in zip(self.offered, purchase.counts, strict=True)
        ]
        best = min(product(*places), key=lambda picks: self._suppliers_and_ids(purchase, picks))
        return self._suppliers_and_ids(purchase, best)[0], Settled(purchase, best)

    def _suppliers_and_ids(
        self, purchase: Purchase, picks: Sequence[int]
    ) -> tuple[int, tuple[tuple[str, int], ...]]:
        used = [
            (offers[pick], count)
            for offers, pick, count in zip(self.offered, picks, purchase.counts, strict=True)
            if count
        ]
        ids = sorted((offer.offer_id, -count) for offer, count in used)
        return len({offer.supplier for offer, _ in used}), tuple(ids)

    def _options(self, left: Sequence[Settled]) -> Iterator[_Option]:
        """List purchases with every choice of remnants that makes up the order, best first."""
        places = range(len(self.task.remnants))
        for number in range(len(places) + 1):
            if comb(len(places), number) > MOST_SUBSETS:
                return
            made = [
                self._option(settled, remnants)
                for settled in left
                for remnants in combinations(places, number)
            ]
            yield from sorted(option for option in made if option.leftover >= 0)

    def _option(self, settled: Settled, remnants: tuple[int, ...]) -> _Option:
        purchase = settled.purchase
        bought = sum(piece_lengths(self.kinds, purchase.counts))
        at_hand = sum(self.task.remnants[at] for at in remnants)
        return _Option(
            bought + at_hand - self.task.order,
            self._suppliers_and_ids(purchase, settled.offers)[1],
            tuple(sorted(self.remnant_ids[at] for at in remnants)),
            settled,
            remnants,
        )

    def _fit(self, option: _Option, fitter: Fitter) -> tuple[int, ...] | None:
        """Place the cuts so that each of these remnants is cut from, and no other."""
        lengths = [self.task.remnants[at] for at in option.remnants]
        pieces = piece_lengths(self.kinds, option.settled.purchase.counts)
        masks = fitter.fit([*(Bin(length, length) for length in lengths), *map(Bin, pieces)], 0)
        if masks is None:
            return None
        of_remnant = dict(zip(option.remnants, masks, strict=False))
        at_hand = [of_remnant.get(at, 0) for at in range(len(self.task.remnants))]
        return (*at_hand, *masks[len(lengths) :])
