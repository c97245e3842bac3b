"""Whether cuts fit in given pieces of cable, each cut wholly in one piece.

Up to EXACT_CUTS cuts a search proves the answer (see _fit_search.py), unless all its steps are
used up. More cuts are placed by rules of thumb, or by a short search if those miss a way.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from estimator.pricing._fit_search import Bin, FitSearch, OutOfStepsError

EXACT_CUTS = 20
SEARCHED_CUTS = 100
ALL_STEPS = 2_500_000
"""Ways to fill a piece that are looked at for one plan: a few seconds of work."""
SHORT_STEPS = 5000
"""Ways to fill a piece that a short search looks at."""


class Fitter:
    """Places one set of cuts, longest first, in whatever pieces are asked about.

    Attributes:
        sure: False once a "no" was given without proof.
    """

    def __init__(self, cuts: Sequence[int], steps: int = ALL_STEPS) -> None:
        self.cuts = tuple(cuts)
        self.steps = steps
        self.sure = True

    def fit(self, bins: Sequence[Bin], idle_room: int) -> tuple[int, ...] | None:
        """Place every cut, or find that it cannot be done.

        Args:
            bins: the pieces, in any order.
            idle_room: how much the pieces left without a cut may lose together.

        Returns:
            For each piece a bit mask of the places of its cuts, or None.
        """
        if idle_room < 0 or sum(self.cuts) > sum(piece.room for piece in bins):
            return None
        if len(self.cuts) <= EXACT_CUTS:
            masks, sure = self._by_search(bins, idle_room, self.steps)
            if not sure:
                masks = self._by_rules(bins, idle_room)
        else:
            masks, sure = self._by_rules(bins, idle_room), False
            if masks is None and len(self.cuts) <= SEARCHED_CUTS:
                masks, sure = self._by_search(bins, idle_room, min(self.steps, SHORT_STEPS))
        self.sure = self.sure and (sure or masks is not None)
        return masks

    def _by_search(
        self, bins: Sequence[Bin], idle_room: int, steps: int
    ) -> tuple[tuple[int, ...] | None, bool]:
        """Search for a way, and tell whether the answer is sure."""
        search = FitSearch(self.cuts, bins, steps)
        try:
            return (tuple(search.masks) if search.run(idle_room) else None), True
        except OutOfStepsError:
            return None, False
        finally:
            self.steps -= steps - max(0, search.steps)

    def _by_rules(self, bins: Sequence[Bin], idle_room: int) -> tuple[int, ...] | None:
        """Try the tightest piece for each cut, then the smallest piece that has room."""
        for rule in (_tightest, _smallest):
            masks = _placed(self.cuts, bins, rule)
            if masks is not None:
                idle = (piece.idle for piece, mask in zip(bins, masks, strict=True) if not mask)
                if sum(idle) <= idle_room:
                    return tuple(masks)
        return None


Rule = Callable[[int, int], int]
"""From the room left in a piece and its length: the piece with the least is taken."""


def _tightest(room: int, _length: int) -> int:
    return room


def _smallest(_room: int, length: int) -> int:
    return length


def _placed(cuts: Sequence[int], bins: Sequence[Bin], rule: Rule) -> list[int] | None:
    """Place the cuts one by one, longest first, never moving one again."""
    masks = [0] * len(bins)
    rooms = [piece.room for piece in bins]
    for place, cut in enumerate(cuts):
        open_places = [at for at, room in enumerate(rooms) if room >= cut]
        if not open_places:
            return None
        at = min(open_places, key=lambda at: rule(rooms[at], bins[at].room))
        rooms[at] -= cut
        masks[at] |= 1 << place
    return masks
