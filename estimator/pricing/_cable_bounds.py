"""What has to be bought at least: lengths that remnants leave open, and the least cost of each.

One is the length to order. Others are the cuts of some length or more, once by their number and
once by their length: a coil or a remnant holds only so many of them, and only so much of them.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from itertools import accumulate
from math import gcd

from estimator.pricing._cable_task import Kind, Task

MOST_LENGTHS = 24
"""Different lengths of cut that are looked at; more would not make bounds much better."""
MOST_UNITS = 1500
"""Rows of a table of least costs; lengths are made coarser to keep to it."""
NEVER = 1 << 200
"""Cost of what cannot be had."""


class Demand:
    """A length that has to be bought, and what each kind brings toward it.

    Args:
        kinds: what can be bought.
        lacking: the length.
        brings: what a coil, or a step of a reel, brings at most.
        after: for each kind the length that the kinds after it have to make up in any case.
    """

    def __init__(
        self, kinds: Sequence[Kind], lacking: int, brings: Sequence[int], after: Sequence[int] = ()
    ) -> None:
        self.kinds = kinds
        self.lacking = lacking
        self.brings = brings
        self.after = after
        self.rates = self._rates()
        self.unit = 1
        self.tables: list[list[int]] = []

    def steps(self, lacking: int, step: int) -> int:
        """Find the fewest steps of a single reel that make up what is lacking."""
        return -(-lacking // step)

    def least_cost(self, lacking: int, settled: int) -> int:
        """Bound from below what the kinds from `settled` on cost that make up what is lacking."""
        if self.tables:
            return self.tables[settled][-(-lacking // self.unit)]
        return self._by_rate(lacking, settled)

    def _by_rate(self, lacking: int, settled: int) -> int:
        """Bound from below as if a part of a coil cost a part of its price."""
        price, gain = self.rates[settled]
        return -(-lacking * price // gain) if gain else NEVER

    def sharpen(self) -> None:
        """Make bounds for whole coils, where before a part of a coil cost a part of its price."""
        self.unit = self._sharp_unit()
        row = [0] + [NEVER] * -(-self.lacking // self.unit)
        tables = [row]
        for at in reversed(range(len(self.kinds))):
            if self.after:
                units = min(len(row) - 1, -(-self.after[at] // self.unit))
                row = [row[units]] * units + row[units:]
            row = self._row(at, row)
            tables.append(row)
        self.tables = tables[::-1]

    def _sharp_unit(self) -> int:
        """Measure in the common divisor of what kinds bring, unless that is too fine."""
        unit = gcd(*self.brings) or 1
        return unit * (self.lacking // (unit * MOST_UNITS) + 1)

    def _rates(self) -> list[tuple[int, int]]:
        """Give price and gain at the best rate of the kinds from each place on; gain 0 if none."""
        rates = [(0, 0)]
        for kind, gain in zip(reversed(self.kinds), reversed(self.brings), strict=True):
            price, last = _price(kind), rates[-1]
            better = gain and (not last[1] or price * last[1] < last[0] * gain)
            rates.append((price, gain) if better else last)
        return rates[::-1]

    def _row(self, at: int, later: Sequence[int]) -> list[int]:
        """Least cost of 0, 1, 2 ... units from the kinds from `at` on, given the later kinds."""
        row = list(later)
        takes, price = -(-self.brings[at] // self.unit), _price(self.kinds[at])
        if takes:
            for units in range(1, len(row)):
                row[units] = min(row[units], row[max(0, units - takes)] + price)
        return row


class NumberDemand(Demand):
    """The cuts of some length or more, by their number times that length.

    Args:
        kinds: what can be bought.
        number: how many of them there are to buy for.
        cuts: lengths of all of them, longest first.
    """

    def __init__(self, kinds: Sequence[Kind], number: int, cuts: Sequence[int]) -> None:
        self.least = tuple(accumulate(reversed(cuts)))
        self.each = cuts[-1]
        brings = [
            kind.length if kind.is_reel else bisect_right(self.least, kind.length) * self.each
            for kind in kinds
        ]
        super().__init__(kinds, number * self.each, brings)

    def steps(self, lacking: int, step: int) -> int:
        """Find the fewest steps of a single reel that hold so many of the cuts."""
        return -(-self.least[-(-lacking // self.each) - 1] // step)

    def least_cost(self, lacking: int, settled: int) -> int:
        """Bound from below, by the rate alone once a reel has made up part of a cut."""
        if any(kind.is_reel for kind in self.kinds[settled : settled + 1]):
            return self._by_rate(lacking, settled)
        return super().least_cost(lacking, settled)

    def _sharp_unit(self) -> int:
        return self.each

    def _row(self, at: int, later: Sequence[int]) -> list[int]:
        if not self.kinds[at].is_reel:
            return super()._row(at, later)
        price, gain = self.rates[at]
        return [-(-units * self.each * price // gain) for units in range(len(later))]


def demands_on(task: Task, kinds: Sequence[Kind]) -> list[Demand]:
    """List the order, and the cuts of each length or more, unless remnants may do alone.

    Coils stand shortest first, before reels.
    """
    made = _by_number(task, kinds)
    after = [0] * len(kinds)
    for at, kind in enumerate(kinds):
        longer = [] if kind.is_reel else [cut for cut in task.cuts if cut > kind.length]
        if longer:
            demand = _by_length(task, kinds, longer)
            after[at] = demand.lacking
            made.append(demand)
    made.append(_by_length(task, kinds, task.cuts))
    order = task.order - _most_carried(task)
    made.append(Demand(kinds, order, [kind.length for kind in kinds], after))
    return [demand for demand in made if demand.lacking > 0]


def _by_number(task: Task, kinds: Sequence[Kind]) -> list[Demand]:
    """List the longest cuts down to each length by their number."""
    ends = [at for at, cut in enumerate(task.cuts, 1) if task.cuts[at : at + 1] != (cut,)]
    made: list[Demand] = []
    for end in ends[:: len(ends) // MOST_LENGTHS + 1]:
        least = tuple(accumulate(reversed(task.cuts[:end])))
        held = sum(bisect_right(least, remnant) for remnant in task.remnants)
        if end > held:
            made.append(NumberDemand(kinds, end - held, task.cuts[:end]))
    return made


def _by_length(task: Task, kinds: Sequence[Kind], cuts: Sequence[int]) -> Demand:
    """Take the length of some of the longest cuts together."""
    lacking = sum(cuts) - sum(_most_held(cuts, length) for length in task.remnants)
    brings = [kind.length if kind.is_reel else _most_held(cuts, kind.length) for kind in kinds]
    return Demand(kinds, max(0, lacking), brings)


def _price(kind: Kind) -> int:
    """Price of one coil, its piece counted in, or of one step of a piece already counted."""
    return kind.price + (not kind.is_reel)


def _most_held(cuts: Sequence[int], length: int) -> int:
    """Bound from above how much of the cuts, longest first, a piece holds; exact up to two."""
    able = [cut for cut in cuts if cut <= length]
    if sum(able[-2:]) > length:
        return able[0] if able else 0
    if sum(able[-3:]) > length:
        pairs = (one + two for at, one in enumerate(able) for two in able[at + 1 :])
        return max(able[0], *(both for both in pairs if both <= length))
    return min(length, sum(able))


def _most_carried(task: Task) -> int:
    """Length of remnants that can be cut from together, each with a cut of its own."""
    carrying: list[int] = []
    shortest_first = task.cuts[::-1]
    for remnant in sorted(task.remnants, reverse=True):
        trial = [remnant, *carrying]
        if len(trial) <= len(shortest_first) and all(map(int.__ge__, trial, shortest_first)):
            carrying = trial
    return sum(carrying)
