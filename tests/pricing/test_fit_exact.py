"""Cuts placed by rules of thumb where a search may look at nothing; worked by hand."""

from __future__ import annotations

import pytest

from estimator.pricing._fit import ALL_STEPS, Fitter
from estimator.pricing._fit_search import Bin


@pytest.mark.parametrize(
    ("cuts", "bins", "idle_room", "masks"),
    [
        ([5], [Bin(7, 7), Bin(5, 5)], 7, (0, 1)),  # in the tightest; the other, 7 long, is idle
        ([5], [Bin(7, 7), Bin(5, 5)], 6, None),
        ([5], [Bin(7), Bin(5, 5)], 0, (0, 1)),  # bought pieces lose nothing
        ([4, 3, 2], [Bin(5), Bin(4)], 0, (6, 1)),  # 4 in 4, then 3 and 2 in 5
    ],
)
def test_rules_of_thumb_where_there_are_no_steps(
    cuts: list[int], bins: list[Bin], idle_room: int, masks: tuple[int, ...] | None
) -> None:
    """A way that is found is sure; that there is none is not."""
    fitter = Fitter(cuts, steps=0)
    assert fitter.fit(bins, idle_room) == masks
    assert fitter.sure == (masks is not None)
    assert fitter.steps == 0


def test_steps_are_used_up_and_never_given_back() -> None:
    """Two questions of a few ways each."""
    fitter, bins = Fitter([6, 5, 4, 3, 2]), [Bin(9), Bin(7), Bin(6)]
    seen = [ALL_STEPS]
    for _ in range(2):
        assert fitter.fit(bins, 0) is not None
        seen.append(fitter.steps)
    assert seen[0] > seen[1] > seen[2] > ALL_STEPS - 100
    assert fitter.sure
