"""What must hold of every cable plan, whatever the cuts and the stock."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from decimal import Decimal
from fractions import Fraction
from random import Random
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from estimator.pricing._cable_plan import Planner
from estimator.pricing._cable_rules import by_rules
from estimator.pricing._cable_search import Purchase
from estimator.pricing._cable_task import STEP_OF_PRICE, Kind, Task
from estimator.pricing.coils import ByLength, CablePlan, Coil, Remnant, choose_cable

LENGTHS = st.integers(1, 80).map(lambda eighths: Fraction(eighths, 8))
PRICES = st.decimals("0.10", 30, places=2)
CUTS = st.lists(LENGTHS, min_size=1, max_size=7)
MORE = st.integers(0, 40).map(lambda eighths: Fraction(eighths, 8))
COILS = st.lists(
    st.builds(Coil, st.sampled_from("abc"), st.sampled_from("MN"), LENGTHS, PRICES), max_size=3
)
REELS = st.lists(
    st.builds(
        ByLength,
        st.sampled_from("rst"),
        st.sampled_from("MN"),
        st.sampled_from([Fraction(1), Fraction(5, 2), Fraction(4)]),
        PRICES,
    ),
    min_size=1,
    max_size=2,
)
REMNANTS = st.lists(LENGTHS, max_size=3).map(
    lambda lengths: [Remnant(f"q{at}", length) for at, length in enumerate(lengths)]
)


def check(plan: CablePlan, cuts_in: Sequence[Fraction], order_in: Fraction) -> None:
    """Check a plan against the rules alone: nothing here is taken from the chooser."""
    assert Counter(at for piece in plan.pieces for at in piece.cuts) == Counter(range(len(cuts_in)))
    for piece in plan.pieces:
        load_in = sum(cuts_in[at] for at in piece.cuts)
        assert load_in + piece.leftover_in == piece.length_in
        assert piece.leftover_in >= 0
        assert piece.price == right_price(piece.source, piece.length_in)
        assert piece.cuts or not isinstance(piece.source, Remnant)
    remnants = Counter(p.source for p in plan.pieces if isinstance(p.source, Remnant))
    assert all(times == 1 for times in remnants.values())
    assert sum(piece.length_in for piece in plan.pieces) >= order_in
    assert plan.cost == sum(piece.price for piece in plan.pieces)


def right_price(source: Coil | ByLength | Remnant, length_in: Fraction) -> Decimal:
    """Price of a piece; fails if the source cannot give that length."""
    if isinstance(source, ByLength):
        steps = length_in / source.step_in
        assert steps.denominator == 1
        return source.price_per_step * steps.numerator
    assert length_in == source.length_in
    return source.price if isinstance(source, Coil) else Decimal(0)


@settings(deadline=None)
@given(CUTS, MORE, COILS, REELS, REMNANTS)
def test_every_cut_lies_once_in_a_piece_that_holds_it(
    cuts: list[Fraction],
    more: Fraction,
    coils: list[Coil],
    reels: list[ByLength],
    remnants: list[Remnant],
) -> None:
    order_in = sum(cuts, more)
    plan = choose_cable(cuts, order_in, coils, reels, remnants, str)
    check(plan, cuts, order_in)
    assert plan.exact


@settings(deadline=None)
@given(CUTS, MORE, COILS, REELS, REMNANTS, st.randoms())
def test_the_order_of_inputs_does_not_matter(
    cuts: list[Fraction],
    more: Fraction,
    coils: list[Coil],
    reels: list[ByLength],
    remnants: list[Remnant],
    shuffler: Random,
) -> None:
    def shuffled(things: list[Any]) -> list[Any]:
        return shuffler.sample(things, len(things))

    order_in, mixed = sum(cuts, more), shuffled(cuts)
    one = choose_cable(cuts, order_in, coils, reels, remnants, str)
    two = choose_cable(mixed, order_in, shuffled(coils), shuffled(reels), shuffled(remnants), str)
    assert laid(two, mixed) == laid(one, cuts)
    assert two.why == one.why


def laid(
    plan: CablePlan, cuts: Sequence[Fraction]
) -> list[tuple[object, Fraction, list[Fraction]]]:
    """Pieces with the lengths cut from them."""
    return [
        (piece.source, piece.length_in, sorted(cuts[at] for at in piece.cuts))
        for piece in plan.pieces
    ]


@settings(deadline=None)
@given(CUTS, MORE, MORE, COILS, REELS, REMNANTS)
def test_a_longer_order_never_costs_less(
    cuts: list[Fraction],
    one: Fraction,
    two: Fraction,
    coils: list[Coil],
    reels: list[ByLength],
    remnants: list[Remnant],
) -> None:
    less, more = sorted((sum(cuts, one), sum(cuts, two)))
    small = choose_cable(cuts, less, coils, reels, remnants, str)
    assert small.cost <= choose_cable(cuts, more, coils, reels, remnants, str).cost


def ft(*feet: int) -> list[Fraction]:
    return [Fraction(length * 12) for length in feet]


TENS = [Coil("c10", "N", Fraction(120), Decimal(7))]


def test_20_cuts_that_fit_in_one_way_only() -> None:
    """Worked by hand: 4 + 3 + 3 fill a coil of 10; 4 + 4 or 3 + 3 + 3 would need an eighth."""
    plan = choose_cable(ft(*[4] * 6, *[3] * 14), Fraction(66 * 12), TENS, [], [], str)
    check(plan, ft(*[4] * 6, *[3] * 14), Fraction(66 * 12))
    assert (plan.cost, plan.exact) == (Decimal(49), True)


def test_very_many_cuts_are_placed_by_rules_and_the_plan_says_so() -> None:
    """Worked by hand: 34 coils do with 4 + 3 + 3; longest first takes 4 + 4 in 17, 3s in 23."""
    cuts = ft(*[4] * 34, *[3] * 68)
    plan = choose_cable(cuts, sum(cuts, Fraction(0)), TENS, [], [], str)
    check(plan, cuts, sum(cuts, Fraction(0)))
    assert 34 * 7 <= plan.cost <= 40 * 7
    assert not plan.exact
    assert plan.why.endswith("rules of thumb: a cheaper way may exist")


def test_many_cuts_that_fit_easily_are_still_proven() -> None:
    """Worked by hand: 40 cuts of 10 in 250 + 100 + 50 use all 400 feet.

    At the best rate 0.44 the coil of 250 leaves 150 feet: 55 + 31 = 86.00, 6 x 19.75 = 118.50.
    """
    coils = [
        Coil(f"c{feet}", "N", Fraction(feet * 12), Decimal(price))
        for feet, price in ((25, "19.75"), (50, "31"), (100, "55"), (250, "110"))
    ]
    plan = choose_cable(ft(*[10] * 40), Fraction(4800), coils, [], [], str)
    check(plan, ft(*[10] * 40), Fraction(4800))
    assert (plan.cost, plan.exact) == (Decimal(196), True)


@pytest.mark.parametrize("count", [20, 60, 200])
def test_many_cuts_from_tight_stock(count: int) -> None:
    """Tight stock: cuts of 2 to 25 feet, an order without allowance, six remnants."""
    pick = Random(count)
    cuts = [Fraction(pick.randint(24 * 16, 300 * 16), 16) for _ in range(count)]
    coils = [
        Coil(f"c{feet}", "N", Fraction(feet * 12), Decimal(feet)) for feet in (25, 26, 50, 100)
    ]
    reel = ByLength("r", "N", Fraction(12), Decimal("1.05"))
    remnants = [Remnant(f"q{at}", Fraction(pick.randint(60, 600))) for at in range(6)]
    order_in = sum(cuts, Fraction(0))
    check(choose_cable(cuts, order_in, coils, [reel], remnants, str), cuts, order_in)


def test_a_search_that_is_stopped_still_gives_a_plan(monkeypatch: pytest.MonkeyPatch) -> None:
    """Worked by hand: 13 and 9 into the remnants; 24 and 12 are 36 by length, 30.60."""
    monkeypatch.setattr("estimator.pricing._cable_search.MOST_NODES", 0)
    cuts, order_in = ft(24, 13, 12, 9), Fraction(58 * 12)
    coils = [Coil("c25", "N", Fraction(300), Decimal(20))]
    reel = ByLength("r", "N", Fraction(12), Decimal("0.85"))
    remnants = [Remnant("a", Fraction(13 * 12)), Remnant("b", Fraction(10 * 12))]
    plan = choose_cable(cuts, order_in, coils, [reel], remnants, str)
    check(plan, cuts, order_in)
    assert (plan.cost, plan.exact) == (Decimal("30.60"), False)
    assert plan.why.endswith("the search was stopped early: a cheaper way may exist")


@settings(deadline=None)
@given(CUTS, MORE, COILS, REELS, REMNANTS)
def test_a_plan_by_rules_alone_is_a_plan(
    cuts: list[Fraction],
    more: Fraction,
    coils: list[Coil],
    reels: list[ByLength],
    remnants: list[Remnant],
) -> None:
    order_in = sum(cuts, more)
    best = choose_cable(cuts, order_in, coils, reels, remnants, str)
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("estimator.pricing._cable_search.MOST_NODES", 0)
        choose_again = Planner(cuts, order_in, ((*coils, *reels), tuple(remnants)), 2)
        plan, _ = choose_again.answer()
    check(plan, cuts, order_in)
    assert plan.cost >= best.cost


def test_remnants_take_the_long_cuts_first_when_coils_are_short() -> None:
    """Worked by hand, by rules: 30 can only lie in the remnant of 31, so 24 gets a coil."""
    task = Task((30, 24, 24), 78, (31,))
    coil = Kind(25, 20 * STEP_OF_PRICE, is_reel=False)
    assert [purchase for _, purchase in by_rules(task, [coil])] == [
        Purchase((2,), (0b001, 0b010, 0b100))
    ]
