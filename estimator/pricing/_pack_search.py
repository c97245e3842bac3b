"""The least-cost count of each pack size, in whole numbers: an exact search.

How it works. Call the pack with the least price per unit the best pack. A set of other packs
is finished by as many best packs as the rest needs, so a plan is named by its other packs.
Every other pack has an extra price: what it costs above the same units at the best rate.
The search grows sets of other packs in order of extra price (plus a sure lower bound on
what is still to come) and stops when no set left can beat the best plan found.

It stays bounded however large the need: a set is dropped when a smaller set, the same apart
from whole best packs, had less extra price. So there are about as many sets to look at as the
best pack has units (in units of the common divisor of all sizes), and never more than the need.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from heapq import heappop, heappush
from typing import NamedTuple


class Pack(NamedTuple):
    """One way to buy: whole units in a pack, price in the smallest step, supplier's number."""

    size: int
    price: int
    supplier: int


Score = tuple[int, int, int, tuple[int, ...]]
"""Extra price and packs, suppliers, units bought, less the counts: the smallest is taken."""


class _Set(NamedTuple):
    """Some packs other than the best one; ordered as the search takes them up."""

    at_least: int
    minus_counts: tuple[int, ...]
    units: int
    extra: int
    suppliers: int


def cheapest_counts(need: int, packs: Sequence[Pack]) -> tuple[int, ...]:
    """How many of each pack cover `need` units at least cost.

    Ties go to fewer packs, then fewer suppliers, then fewer units bought, then more of the
    packs that stand first. `need` is at least 1 and `packs` has at least one pack.

    >>> cheapest_counts(27, [Pack(10, 180, 0), Pack(25, 410, 0)])
    (3, 0)
    """
    rates = _Rates(need, packs)
    if not rates.others and len(rates.best) == 1:
        return _plus((0,) * len(packs), rates.best[0], -(-need // rates.best_size))
    return _Search(need, packs, rates).run()


class _Rates:
    """The best packs, and the others worth a look with their extra price."""

    def __init__(self, need: int, packs: Sequence[Pack]) -> None:
        # One number for price and count: a count never outweighs the smallest step of price.
        step = need + max(pack.size for pack in packs) + 1
        prices = [pack.price * step + 1 for pack in packs]
        sizes = [min(pack.size, need) for pack in packs]
        keep = _not_outdone(sizes, prices)
        best = _least_rate(keep, sizes, prices)
        size, price = sizes[best], prices[best]
        extras = [
            price_ * size - price * size_ for size_, price_ in zip(sizes, prices, strict=True)
        ]
        others = [at for at in keep if (sizes[at], prices[at]) != (size, price)]
        second = _least_rate(others or keep, sizes, extras)
        # Every figure is multiplied by the size of the second-best pack to stay whole.
        scale = sizes[second]
        self.best = [at for at in keep if at not in others]
        self.best_size = size
        self.others = [(at, sizes[at], extras[at] * scale) for at in others]
        self.over_price = price * scale
        self.least_extra = extras[second]


def _not_outdone(sizes: Sequence[int], prices: Sequence[int]) -> list[int]:
    """Keep the packs for which no pack of the same size or more costs less."""
    rows = list(zip(sizes, prices, strict=True))
    return [
        at
        for at, (size, price) in enumerate(rows)
        if not any(more >= size and less < price for more, less in rows)
    ]


def _least_rate(places: Iterable[int], sizes: Sequence[int], prices: Sequence[int]) -> int:
    """Find the place with the least price for its size; the first of equals."""
    first, *rest = places
    for at in rest:
        if prices[at] * sizes[first] < prices[first] * sizes[at]:
            first = at
    return first


def _plus(counts: tuple[int, ...], at: int, more: int) -> tuple[int, ...]:
    """Add `more` to the count at one place."""
    return (*counts[:at], counts[at] + more, *counts[at + 1 :])


class _Search:
    """One run of the search described at the head of this file."""

    def __init__(self, need: int, packs: Sequence[Pack], rates: _Rates) -> None:
        self.need = need
        self.packs = packs
        self.rates = rates
        # Dearer than best packs alone, whose last pack is never all left over.
        self.best: Score = (rates.over_price * rates.best_size + 1, 0, 0, ())
        self.heap: list[_Set] = []
        self.smallest: dict[int, tuple[int, int]] = {}
        self.seen: dict[tuple[int, int], tuple[int, tuple[int, ...]]] = {}

    def run(self) -> tuple[int, ...]:
        """Grow sets in order until none left can be better."""
        self._push((0,) * len(self.packs), 0, 0, 0)
        while self.heap:
            here = heappop(self.heap)
            if self._too_dear(here.at_least):
                break
            if self._is_new(here):
                self._grow(here)
        return tuple(-count for count in self.best[-1])

    def _push(self, minus: tuple[int, ...], units: int, extra: int, suppliers: int) -> None:
        """Finish the set with best packs, and keep it for growing if that may pay."""
        short = self.need - units
        if short <= 0:
            self._offer(extra - short * self.rates.over_price, minus, suppliers)
            return
        count = -(-short // self.rates.best_size)
        over = count * self.rates.best_size - short
        total = extra + over * self.rates.over_price
        if not self._too_dear(total):
            for at in self.rates.best:
                mask = suppliers | 1 << self.packs[at].supplier
                self._offer(total, _plus(minus, at, -count), mask)
        at_least = extra + short % self.rates.best_size * self.rates.least_extra
        if over and not self._too_dear(at_least):
            heappush(self.heap, _Set(at_least, minus, units, extra, suppliers))

    def _too_dear(self, extra: int) -> bool:
        return extra > self.best[0]

    def _offer(self, extra: int, minus: tuple[int, ...], suppliers: int) -> None:
        """Keep this plan if it is better than the best one so far."""
        if self._too_dear(extra):
            return
        bought = -sum(count * pack.size for count, pack in zip(minus, self.packs, strict=True))
        score = (extra, suppliers.bit_count(), bought, minus)
        self.best = min(self.best, score)

    def _is_new(self, here: _Set) -> bool:
        """Tell whether no set grown so far leads to plans as good or better."""
        rest = here.units % self.rates.best_size
        extra, units = self.smallest.get(rest, (here.extra, here.units + 1))
        if here.units >= units and here.extra > extra:
            return False
        if here.units < units:
            self.smallest[rest] = (here.extra, here.units)
        place, value = (here.units, here.suppliers), (here.extra, here.minus_counts)
        if self.seen.get(place, (here.extra + 1, ())) <= value:
            return False
        self.seen[place] = value
        return True

    def _grow(self, here: _Set) -> None:
        """Every set with one more pack."""
        for at, size, extra in self.rates.others:
            mask = here.suppliers | 1 << self.packs[at].supplier
            self._push(
                _plus(here.minus_counts, at, -1), here.units + size, here.extra + extra, mask
            )
