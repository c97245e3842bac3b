"""Cable by rules of thumb: a purchase that does, when looking for the cheapest takes too long."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from estimator.pricing._cable_search import Purchase
from estimator.pricing._cable_task import Kind, Task, piece_lengths
from estimator.pricing._fit import Fitter
from estimator.pricing._fit_search import Bin


def by_rules(task: Task, kinds: Sequence[Kind]) -> Iterator[tuple[int, Purchase]]:
    """Fill remnants first, then pieces of mainly one kind: one purchase for each kind that can.

    Yields:
        The cost, pieces counted in, and the purchase.
    """
    for main in range(len(kinds)):
        layout = _Layout(task, kinds, main)
        if layout.works:
            counts = layout.counts()
            cost = sum(kind.cost(count) for kind, count in zip(kinds, counts, strict=True))
            yield cost, Purchase(counts, layout.masks(counts))


class _Layout:
    """Cuts laid into remnants and into pieces of mainly one kind, longest cut first."""

    def __init__(self, task: Task, kinds: Sequence[Kind], main: int) -> None:
        self.task = task
        self.kinds = kinds
        self.main = main
        self.rooms = list(task.remnants)
        self.remnant_masks = [0] * len(task.remnants)
        self.pieces: list[list[tuple[int, int]]] = [[] for _ in kinds]
        """For each kind its pieces: length used and mask of the cuts; a reel has one at most."""
        self.works = self._lay_long_cuts() and all(
            self._lay(place, cut) for place, cut in enumerate(task.cuts)
        )

    def _lay_long_cuts(self) -> bool:
        """Lay into remnants the cuts that nothing on offer can hold."""
        cuts = self.task.cuts
        long = [cut for cut in cuts if self._kind_for(cut) is None]
        masks = Fitter(long).fit([Bin(room) for room in self.rooms], 0)
        if masks is None:
            return False
        for at, mask in enumerate(masks):
            self.remnant_masks[at] = mask
            self.rooms[at] -= sum(cut for place, cut in enumerate(long) if mask >> place & 1)
        return True

    def _kind_for(self, cut: int) -> int | None:
        """Choose the main kind if it can hold the cut, else the cheapest that can."""
        able = [at for at, kind in enumerate(self.kinds) if kind.is_reel or kind.length >= cut]
        if self.main in able:
            return self.main
        return min(
            able, key=lambda at: (self.kinds[at].is_reel, self.kinds[at].price), default=None
        )

    def _lay(self, place: int, cut: int) -> bool:
        """Lay one cut into the tightest remnant, a piece already open, or a new piece."""
        at = self._kind_for(cut)
        if at is None:
            return True
        open_rooms = [room for room in self.rooms if room >= cut]
        if open_rooms:
            remnant = self.rooms.index(min(open_rooms))
            self.rooms[remnant] -= cut
            self.remnant_masks[remnant] |= 1 << place
            return True
        kind, pieces = self.kinds[at], self.pieces[at]
        for index, (used, mask) in enumerate(pieces):
            if kind.is_reel or used + cut <= kind.length:
                pieces[index] = (used + cut, mask | 1 << place)
                return True
        pieces.append((cut, 1 << place))
        return True

    def counts(self) -> tuple[int, ...]:
        """Coils and steps for what is laid out, and more of the main kind to make up the order."""
        found = [
            -(-sum(used for used, _ in pieces) // kind.length) if kind.is_reel else len(pieces)
            for kind, pieces in zip(self.kinds, self.pieces, strict=True)
        ]
        at_hand = zip(self.task.remnants, self.remnant_masks, strict=True)
        carrying = sum(length for length, mask in at_hand if mask)
        short = self.task.order - carrying - sum(piece_lengths(self.kinds, tuple(found)))
        found[self.main] += max(0, -(-short // self.kinds[self.main].length))
        return tuple(found)

    def masks(self, counts: Sequence[int]) -> tuple[int, ...]:
        """For each remnant, then each piece of the purchase, the mask of its cuts."""
        masks = list(self.remnant_masks)
        for kind, pieces, count in zip(self.kinds, self.pieces, counts, strict=True):
            laid = [mask for _, mask in pieces]
            bought = min(count, 1) if kind.is_reel else count
            masks += laid + [0] * (bought - len(laid))
        return tuple(masks)
