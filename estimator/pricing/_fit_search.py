"""An exact search for a way to lay cuts into pieces of cable, each cut wholly in one piece.

It fills one piece at a time: the smallest, or the one that is to hold the longest cut, whichever
leaves fewer ways to look at. Of the ways to fill a piece only those are tried in which no cut
could give way to a longer one, or make room for one more; what the others can do these can, as
cuts may change places. What may be left over in all is known from the start, which bounds it in
each piece. Questions that failed once are remembered.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import accumulate, islice
from typing import NamedTuple

FEW = 40
"""Ways to fill that are listed and counted; more are looked at one by one."""
NONE = 1 << 100
"""Longer than any cable: stands for no cut passed over."""


class Bin(NamedTuple):
    """A piece of cable: its length, and what the order loses if nothing is cut from it.

    A bought piece counts toward the order in any case and loses 0; a remnant loses its length.
    """

    room: int
    idle: int = 0


class OutOfStepsError(Exception):
    """The search may not look at more ways."""


class _Fill(NamedTuple):
    """One way to fill a piece: what is left over, which piece, the mask of its cuts."""

    leftover: int
    at: int
    mask: int


class _Open(NamedTuple):
    """The cuts still to place, longest first, and the pieces still to fill, smallest first."""

    bins: list[int]
    places: list[int]
    lengths: list[int]
    tails: list[int]
    """Length of all cuts from each place on."""
    waste: int
    """How much may be left over in all."""
    spare_idle: int
    """How much may still lie idle if all remnants here do; below zero if not all may."""


class FitSearch:
    """One question: cuts longest first, and pieces.

    Attributes:
        steps: ways to fill that may still be looked at.
        masks: for each piece the mask of its cuts, right once `run` said yes.
    """

    def __init__(self, cuts: Sequence[int], bins: Sequence[Bin], steps: int) -> None:
        self.cuts = cuts
        self.bins = bins
        self.steps = steps
        self.masks = [0] * len(bins)
        self.smallest_first = sorted(range(len(bins)), key=lambda at: bins[at].room)
        self.failed: set[tuple[int, int, int]] = set()

    def run(self, idle_room: int) -> bool:
        """Tell whether every cut has a place, with at most `idle_room` lost to idle pieces.

        Raises:
            OutOfStepsError: the answer would take too long.
        """
        return self._place((1 << len(self.bins)) - 1, (1 << len(self.cuts)) - 1, idle_room)

    def _place(self, bins: int, cuts: int, idle_room: int) -> bool:
        """Place the cuts in the pieces, both given as masks."""
        question = (bins, cuts, idle_room)
        if question in self.failed:
            return False
        here = self._open(bins, cuts, idle_room)
        if not cuts:
            self._set(here.bins, 0)
            return here.spare_idle >= 0
        if here.waste < 0 or here.lengths[0] > self.bins[here.bins[-1]].room:
            return False
        if len(here.bins) == 1:
            self._set(here.bins, cuts)
            return True
        for way in self._ways(here):
            rest = idle_room - (0 if way.mask else self.bins[way.at].idle)
            self.masks[way.at] = way.mask
            if rest >= 0 and self._place(bins & ~(1 << way.at), cuts & ~way.mask, rest):
                return True
        self.failed.add(question)
        return False

    def _set(self, bins: Sequence[int], mask: int) -> None:
        for at in bins:
            self.masks[at] = mask

    def _open(self, bins: int, cuts: int, idle_room: int) -> _Open:
        at = [at for at in self.smallest_first if bins >> at & 1]
        places = [place for place in range(len(self.cuts)) if cuts >> place & 1]
        lengths = [self.cuts[place] for place in places]
        tails = [*accumulate(reversed(lengths), initial=0)]
        room = sum(self.bins[i].room for i in at)
        spare_idle = idle_room - sum(self.bins[i].idle for i in at)
        return _Open(at, places, lengths, tails[::-1], room - tails[-1], spare_idle)

    def _ways(self, here: _Open) -> Iterator[_Fill]:
        """List ways to fill one piece that are enough to look at."""
        smallest = list(islice(self._fills(here, here.bins[0]), FEW + 1))
        if len(smallest) > 1:
            most = min(len(smallest) - 1, FEW)
            longest_cut = list(islice(self._fills_with_longest(here), most + 1))
            if len(longest_cut) <= most:
                return iter(sorted(longest_cut))
        if len(smallest) <= FEW:
            return iter(sorted(smallest))
        return self._fills(here, here.bins[0])

    def _fills_with_longest(self, here: _Open) -> Iterator[_Fill]:
        """List ways to fill a piece that is to hold the longest cut, for every kind of piece."""
        seen: set[Bin] = set()
        longest = here.lengths[0]
        for at in here.bins:
            piece = self.bins[at]
            if piece.room >= longest and piece not in seen:
                seen.add(piece)
                part = _Part(self, here, at)
                yield from part.fills(1, piece.room - longest, 1 << here.places[0])

    def _fills(self, here: _Open, at: int) -> Iterator[_Fill]:
        """List ways to fill one piece."""
        return _Part(self, here, at).fills(0, self.bins[at].room, 0)


class _Part:
    """One piece being filled."""

    def __init__(self, search: FitSearch, here: _Open, at: int) -> None:
        self.search = search
        self.here = here
        self.at = at
        # No room may stay for one more cut, if the piece it comes from may then lie idle.
        self.full = here.spare_idle + search.bins[at].idle >= 0

    def fills(self, start: int, room: int, mask: int) -> Iterator[_Fill]:
        """List ways to fill the piece: cuts in `mask` taken, those from `start` on open."""
        return self._fills(start, room, mask, NONE, self.here.waste + 1)

    def _fills(self, start: int, room: int, mask: int, skipped: int, limit: int) -> Iterator[_Fill]:
        """List ways to go on.

        Args:
            start: the first cut not yet decided on.
            room: what is left of the piece.
            mask: the cuts taken.
            skipped: length of the last cut passed over.
            limit: what is left over in the end must be less: it is more than may be left over
                in all, or a cut taken could give way to a longer one that was passed over.
        """
        self.search.steps -= 1
        if self.search.steps < 0:
            raise OutOfStepsError
        lengths, tails = self.here.lengths, self.here.tails
        for at in range(start, len(lengths)):
            length = lengths[at]
            if length <= room and length != skipped:
                if room - tails[at] >= limit:
                    return
                rest, tighter = room - length, min(limit, skipped - length)
                taken = mask | 1 << self.here.places[at]
                if rest >= lengths[-1]:
                    yield from self._fills(at + 1, rest, taken, skipped, tighter)
                elif rest < tighter:
                    yield _Fill(rest, self.at, taken)
            skipped = length
        if room < limit and not (self.full and skipped <= room):
            yield _Fill(room, self.at, mask)
