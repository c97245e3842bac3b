"""The least-cost coils and cut lengths that hold every cut, in whole numbers: an exact search.

A purchase is a count for each kind of coil and a number of steps for each reel; one piece from
a reel is never worse than two. Purchases are taken up in order of a sure lower bound on their
cost: what a purchase lacks in length, and in room for the longest 1, 2, 3 ... cuts, has yet to
be bought (see _cable_bounds.py). The first purchases in which the cuts fit are the cheapest.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from heapq import heappop, heappush
from typing import NamedTuple

from estimator.pricing._cable_bounds import NEVER, demands_on
from estimator.pricing._cable_task import Counts, Kind, Task, piece_lengths
from estimator.pricing._fit import EXACT_CUTS, Fitter
from estimator.pricing._fit_search import Bin

MOST_NODES = 60_000
MOST_FAILED = 3000
MOST_FAILED_BY_RULES = 300
"""Purchases in which the cuts did not fit; a search that meets more is given up."""
LOOSE_NODES = 64
"""Purchases looked at before bounds are made sharper, which takes a while."""


class Purchase(NamedTuple):
    """What to buy, and for each remnant and then each piece the mask of its cuts."""

    counts: Counts
    masks: tuple[int, ...]


@dataclass(slots=True)
class Found:
    """All cheapest purchases, their cost (pieces counted in) and whether that is proven."""

    cost: int | None = None
    purchases: list[Purchase] = field(default_factory=list)
    proven: bool = True

    def take(self, cost: int, purchase: Purchase) -> None:
        """Keep the purchase if none is cheaper."""
        if self.cost is None or cost < self.cost:
            self.cost, self.purchases = cost, []
        if cost == self.cost:
            self.purchases.append(purchase)


def cheapest(task: Task, kinds: Sequence[Kind], fitter: Fitter) -> Found:
    """Find the cheapest purchases that, with the remnants, hold every cut and make up the order.

    Coils stand shortest first, then reels, the finest step at the end.
    Nothing is found if no purchase does; that must be ruled out when there are coils only.
    """
    return _Search(task, kinds, fitter).run()


class _Node(NamedTuple):
    """A purchase in the making: counts are settled up to `settled`; ordered as taken up."""

    at_least: int
    minus_settled: int
    counts: Counts
    cost: int
    lacking: tuple[int, ...]


class _Search:
    """One run of the search described at the head of this file."""

    def __init__(self, task: Task, kinds: Sequence[Kind], fitter: Fitter) -> None:
        self.task = task
        self.kinds = kinds
        self.fitter = fitter
        self.demands = demands_on(task, kinds)
        self.remnants = [Bin(length, length) for length in task.remnants]
        self.found = Found()
        self.heap: list[_Node] = []
        self.failed: list[list[int]] = []
        by_rules = len(task.cuts) > EXACT_CUTS
        self.most_failed = MOST_FAILED_BY_RULES if by_rules else MOST_FAILED

    def run(self) -> Found:
        """Take up purchases in order of their lower bound until none can be cheaper."""
        lacking = tuple(demand.lacking for demand in self.demands)
        self._push(0, (0,) * len(self.kinds), 0, lacking)
        nodes = 0
        while self.heap and not self._too_dear(self.heap[0].at_least):
            nodes += 1
            if nodes > MOST_NODES or len(self.failed) > self.most_failed:
                self.found.proven = False
                break
            if nodes == LOOSE_NODES:
                self._sharpen()
            else:
                self._take_up(heappop(self.heap))
        self.found.proven = self.found.proven and self.fitter.sure
        return self.found

    def _too_dear(self, cost: int) -> bool:
        return self.found.cost is not None and cost > self.found.cost

    def _sharpen(self) -> None:
        """Make bounds sharper, and put the purchases in the making in their new order."""
        for demand in self.demands:
            demand.sharpen()
        waiting, self.heap = self.heap, []
        for node in waiting:
            if -node.minus_settled < len(self.kinds):
                self._push(-node.minus_settled, node.counts, node.cost, node.lacking)
            else:
                heappush(self.heap, node)

    def _push(self, settled: int, counts: Counts, cost: int, lacking: tuple[int, ...]) -> None:
        """Keep a purchase in the making, unless what it lacks cannot be had or costs too much."""
        more = 0
        for demand, short in zip(self.demands, lacking, strict=True):
            if short > 0:
                more = max(more, demand.least_cost(short, settled))
        if more < NEVER and not self._too_dear(cost + more):
            heappush(self.heap, _Node(cost + more, -settled, counts, cost, lacking))

    def _take_up(self, node: _Node) -> None:
        """Settle the next kind, or try the purchase if all are settled."""
        at = -node.minus_settled
        if at == len(self.kinds):
            self._try(node)
        elif at == len(self.kinds) - 1 and self.kinds[at].is_reel:
            self._finish(node)
        else:
            self._push(at + 1, node.counts, node.cost, node.lacking)
            self._add_one(node, at)

    def _add_one(self, node: _Node, at: int) -> None:
        """Take one more coil or step of the kind; never more of a reel than does everything."""
        kind, count = self.kinds[at], node.counts[at]
        if kind.is_reel and count * kind.length >= self.task.order:
            return
        lacking = tuple(
            short - demand.brings[at]
            for demand, short in zip(self.demands, node.lacking, strict=True)
        )
        counts = (*node.counts[:at], count + 1, *node.counts[at + 1 :])
        self._push(at, counts, node.cost - kind.cost(count) + kind.cost(count + 1), lacking)

    def _finish(self, node: _Node) -> None:
        """Take from the last reel the fewest steps that may do."""
        reel = self.kinds[-1]
        steps = [
            demand.steps(short, reel.length)
            for demand, short in zip(self.demands, node.lacking, strict=True)
            if short > 0
        ]
        count = max(steps, default=0)
        cost = node.cost + reel.cost(count)
        if not self._too_dear(cost):
            counts = (*node.counts[:-1], count)
            settled = _Node(cost, -len(self.kinds), counts, cost, ())
            heappush(self.heap, settled)

    def _try(self, node: _Node) -> None:
        """Keep the purchase if the cuts fit; else look for the fewest steps that make them fit."""
        if self._keep(node.counts, node.cost) or not (self.kinds and self.kinds[-1].is_reel):
            return
        reel = self.kinds[-1]
        before = node.cost - reel.cost(node.counts[-1])
        low, high = node.counts[-1], -(-self.task.order // reel.length)
        if self.found.cost is not None and reel.price:
            high = min(high, (self.found.cost - before - 1) // reel.price)
        trial = high
        while low < high:
            fits = self._keep((*node.counts[:-1], trial), before + reel.cost(trial))
            low, high = (low, trial) if fits else (trial, high)
            if high - low <= 1:
                return
            trial = (low + high) // 2

    def _keep(self, counts: Counts, cost: int) -> bool:
        """Tell whether the cuts fit, and keep the purchase if they do."""
        lengths = piece_lengths(self.kinds, counts)
        longest_first = sorted(lengths, reverse=True)
        if any(_within(longest_first, failed) for failed in self.failed):
            return False
        bins = [*self.remnants, *map(Bin, lengths)]
        masks = self.fitter.fit(bins, sum(piece.room for piece in bins) - self.task.order)
        if masks is not None:
            self.found.take(cost, Purchase(counts, masks))
        else:
            self.failed.append(longest_first)
        return masks is not None


def _within(lengths: Sequence[int], others: Sequence[int]) -> bool:
    """Tell whether each piece could be cut from another one; both longest first."""
    return len(lengths) <= len(others) and all(map(int.__le__, lengths, others))
