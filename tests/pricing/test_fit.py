"""Whether cuts fit in pieces: every way is tried one by one, and compared."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations, product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from estimator.pricing._cable_bounds import _most_carried, _most_held
from estimator.pricing._cable_task import Task
from estimator.pricing._fit import Fitter
from estimator.pricing._fit_search import Bin

CUTS = st.lists(st.integers(1, 12), min_size=1, max_size=5).map(lambda cuts: sorted(cuts)[::-1])
BINS = st.lists(
    st.builds(
        lambda room, remnant: Bin(room, room if remnant else 0), st.integers(1, 25), st.booleans()
    ),
    min_size=1,
    max_size=4,
)


def ways(cuts: Sequence[int], bins: Sequence[Bin]) -> list[int]:
    """What lies idle in each way to put every cut in a piece that has room."""
    idle = []
    for places in product(range(len(bins)), repeat=len(cuts)):
        loads = [
            [cut for cut, place in zip(cuts, places, strict=True) if place == at]
            for at in range(len(bins))
        ]
        if all(sum(load) <= piece.room for load, piece in zip(loads, bins, strict=True)):
            idle.append(
                sum(piece.idle for load, piece in zip(loads, bins, strict=True) if not load)
            )
    return idle


@settings(deadline=None)
@given(CUTS, BINS, st.integers(0, 40))
def test_a_way_is_found_if_there_is_one(cuts: list[int], bins: list[Bin], idle_room: int) -> None:
    masks = Fitter(cuts).fit(bins, idle_room)
    assert (masks is not None) == any(idle <= idle_room for idle in ways(cuts, bins))


@settings(deadline=None)
@given(CUTS, BINS, st.integers(0, 40))
def test_the_way_found_is_one(cuts: list[int], bins: list[Bin], idle_room: int) -> None:
    masks = Fitter(cuts).fit(bins, idle_room)
    if masks is not None:
        assert sum(masks) == (1 << len(cuts)) - 1
        for mask, piece in zip(masks, bins, strict=True):
            assert sum(cut for at, cut in enumerate(cuts) if mask >> at & 1) <= piece.room
        idle = sum(piece.idle for mask, piece in zip(masks, bins, strict=True) if not mask)
        assert idle <= idle_room


# cuts, rooms; worked by hand: longest first leaves 3 + 3 with no room, 4 + 3 + 3 fills both
TIGHT = ([4, 4, 3, 3, 3, 3], [Bin(10), Bin(10)])


def test_a_search_that_may_not_look_says_it_is_not_sure() -> None:
    fitter = Fitter(TIGHT[0], steps=0)
    assert fitter.fit(TIGHT[1], 0) is None
    assert not fitter.sure


def test_a_search_that_may_look_finds_the_one_way() -> None:
    fitter = Fitter(TIGHT[0])
    assert fitter.fit(TIGHT[1], 0) is not None
    assert fitter.sure


@pytest.mark.parametrize("idle_room", [0, 7])
def test_a_remnant_lies_idle_only_if_the_order_allows(idle_room: int) -> None:
    """Worked by hand: one cut and two remnants of 7, so one of them lies idle."""
    found = Fitter([5]).fit([Bin(7, 7), Bin(7, 7)], idle_room)
    assert (found is not None) == (idle_room >= 7)


@settings(deadline=None)
@given(CUTS, st.integers(1, 40))
def test_no_piece_holds_more_than_the_bound(cuts: list[int], length: int) -> None:
    sums = [sum(some) for n in range(len(cuts) + 1) for some in combinations(cuts, n)]
    assert _most_held(cuts, length) >= max(held for held in sums if held <= length)


@settings(deadline=None)
@given(CUTS, st.lists(st.integers(1, 14), max_size=4))
def test_remnants_carry_as_much_as_trying_all_says(cuts: list[int], remnants: list[int]) -> None:
    bins = [Bin(length) for length in remnants]
    carried = [
        sum(piece.room for piece in some)
        for number in range(min(len(cuts), len(bins)) + 1)
        for some in combinations(bins, number)
        if any(
            all(cut <= piece.room for cut, piece in zip(own, some, strict=True))
            for own in combinations_in_any_order(cuts, number)
        )
    ]
    assert _most_carried(Task(tuple(cuts), 0, tuple(remnants))) == max(carried)


def combinations_in_any_order(cuts: Sequence[int], number: int) -> list[tuple[int, ...]]:
    """Each choice of cuts, one for each remnant."""
    places = product(range(len(cuts)), repeat=number)
    return [tuple(cuts[at] for at in own) for own in places if len(set(own)) == number]
