"""Whole packs at least cost: sums worked by hand, and what must hold of every choice."""

from __future__ import annotations

import random
from decimal import Decimal
from itertools import permutations
from typing import NamedTuple

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from estimator.pricing.packs import PackChoice, PackOffer, choose_packs


def offers(*rows: str) -> list[PackOffer]:
    """Offers from rows "id supplier size price"."""
    made = []
    for row in rows:
        offer_id, supplier, size, price = row.split()
        made.append(PackOffer(offer_id, supplier, Decimal(size), Decimal(price)))
    return made


def counts(choice: PackChoice) -> dict[str, int]:
    return {offer.offer_id: count for offer, count in choice.packs}


WIRE_NUTS = offers("single N 1 0.25", "ten N 10 1.80", "bag N 25 4.10")


class ByHand(NamedTuple):
    """One purchase worked by hand."""

    need: str
    offers: list[PackOffer]
    packs: dict[str, int]
    cost: str
    bought: str


WORKED = {
    # 3 x 0.25 = 0.75 < 1.80
    "three singles": ByHand("3", WIRE_NUTS, {"single": 3}, "0.75", "3"),
    # 7 x 0.25 = 1.75 < 1.80, and 8 x 0.25 = 2.00 > 1.80
    "just under the change": ByHand("7", WIRE_NUTS, {"single": 7}, "1.75", "7"),
    "just over the change": ByHand("8", WIRE_NUTS, {"ten": 1}, "1.80", "10"),
    "exactly full": ByHand("25", WIRE_NUTS, {"bag": 1}, "4.10", "25"),
    # 4.10 + 0.25 = 4.35; ten, ten and 6 singles = 5.10; three tens = 5.40
    "one over full": ByHand("26", WIRE_NUTS, {"bag": 1, "single": 1}, "4.35", "26"),
    # 2 x 4.10 = 8.20; 4.10 + 3 x 1.80 = 9.50
    "two bags": ByHand("50", WIRE_NUTS, {"bag": 2}, "8.20", "50"),
    # 1 gal 15; 4 quarts 24
    "compound of 0.94 gal": ByHand(
        "0.94", offers("qt N 0.25 6", "gal N 1 15"), {"gal": 1}, "15", "1"
    ),
    # 2 quarts 12 cover 0.5 exactly; 3 quarts 18 > 15 for the hair more
    "half a gallon": ByHand("0.5", offers("qt N 0.25 6", "gal N 1 15"), {"qt": 2}, "12", "0.50"),
    "a hair over half": ByHand(
        "0.500001", offers("qt N 0.25 6", "gal N 1 15"), {"gal": 1}, "15", "1"
    ),
    # paint of 1.44 L in tins of 1, 2 and 4 L: 2 x 1 L is 21.00, 1 x 2 L is 19.50
    "one tin of two": ByHand(
        "1.44", offers("t1 N 1 10.50", "t2 N 2 19.50", "t4 N 4 36"), {"t2": 1}, "19.50", "2"
    ),
    # 10 + 15 = 25 units at 5.00; 15 + 15 at 6.00; 10 x 3 at 6.00
    "two sizes together": ByHand(
        "23", offers("a N 10 2.00", "b N 15 3.00"), {"a": 1, "b": 1}, "5.00", "25"
    ),
    # 3 x 26 = 78; 54 + 26 = 80; 31 + 2 x 26 = 83; 54 + 31 = 85; 3 x 31 = 93
    "three of a middle size": ByHand(
        "45",
        offers("a N 37 54", "b N 2 55", "c N 3 35", "d N 22 31", "e N 15 26"),
        {"e": 3},
        "78",
        "45",
    ),
    "free packs": ByHand("7", offers("a N 2 0", "b N 3 0"), {"a": 2, "b": 1}, "0", "7"),
    # 10,000 / 0.001 = 10,000,000 packs at 0.01
    "ten million": ByHand("10000", offers("a N 0.001 0.01"), {"a": 10**7}, "100000.00", "10000"),
}


@pytest.mark.parametrize("case", WORKED.values(), ids=WORKED)
def test_worked_by_hand(case: ByHand) -> None:
    choice = choose_packs(Decimal(case.need), case.offers)
    assert counts(choice) == case.packs
    assert (choice.cost, choice.bought) == (Decimal(case.cost), Decimal(case.bought))


TIES = {
    "fewer packs": ("20", offers("a N 10 2", "b N 20 4"), {"b": 1}),
    # 6 units for 6.00 from 4 + 2 (two suppliers) or 3 + 3 (one supplier)
    "fewer suppliers": ("6", offers("a N 4 4", "b M 2 2", "c M 3 3"), {"c": 2}),
    # one pack each way: 5 left over or 1
    "less left over": ("5", offers("a N 10 3", "b N 6 3"), {"b": 1}),
    "the first id": ("5", offers("b N 6 3", "a N 6 3"), {"a": 1}),
    "the first id, all packs of it": ("12", offers("b M 6 3", "a N 6 3"), {"a": 2}),
    # 4 + 4 + 2: the 2 comes from the supplier of the 4
    "the supplier already called": (
        "10",
        offers("a M 2 2", "b N 2 2", "c N 4 3"),
        {"b": 1, "c": 2},
    ),
}


@pytest.mark.parametrize(("need", "pool", "want"), TIES.values(), ids=TIES)
def test_ties_go_to(need: str, pool: list[PackOffer], want: dict[str, int]) -> None:
    """Worked by hand: every case has another purchase of the same cost."""
    for order in permutations(pool):
        assert counts(choose_packs(Decimal(need), order)) == want


REASONS = {
    "only": ("3", offers("a N 10 1.80"), "the only pack on file"),
    "one pack": ("8", WIRE_NUTS, "1 pack of 10 at 1.80 costs less than 8 packs of 1 (2.00)"),
    "many packs": (
        "3",
        WIRE_NUTS,
        "3 packs of 1 at 0.25 cost 0.75, less than 1 pack of 10 (1.80)",
    ),
    "two kinds": (
        "26",
        WIRE_NUTS,
        "1 pack of 25 at 4.10 and 1 pack of 1 at 0.25 cost 4.35, less than 3 packs of 10 (5.40)",
    ),
    "three kinds": (
        "36",
        WIRE_NUTS,
        "1 pack of 25 at 4.10, 1 pack of 10 at 1.80 and 1 pack of 1 at 0.25 cost 6.15, "
        "less than 4 packs of 10 (7.20)",
    ),
    "suppliers": (
        "5",
        offers("a North 10 2.00", "b South 10 2.10"),
        "1 pack of 10 from North at 2.00 costs less than 1 pack of 10 from South (2.10)",
    ),
    "tie on packs": (
        "20",
        offers("a N 10 2.00", "b N 20 4.00"),
        "1 pack of 20 at 4.00 costs the same as 2 packs of 10 (4.00), in fewer packs",
    ),
    "tie on leftover": (
        "5",
        offers("a N 10 3", "b N 6 3"),
        "1 pack of 6 at 3 costs the same as 1 pack of 10 (3), with less left over",
    ),
    "tie on id": (
        "5",
        offers("a N 6 3", "b M 6 3"),
        "1 pack of 6 from N at 3 costs the same as 1 pack of 6 from M (3), "
        "and stands first on the list",
    ),
}


@pytest.mark.parametrize(("need", "pool", "want"), REASONS.values(), ids=REASONS)
def test_the_reason_reads(need: str, pool: list[PackOffer], want: str) -> None:
    assert choose_packs(Decimal(need), pool).why == want


def test_nothing_needed_buys_nothing() -> None:
    choice = choose_packs(Decimal(0), [])
    assert (choice.packs, choice.cost, choice.bought) == ((), Decimal(0), Decimal(0))


@pytest.mark.parametrize(
    ("need", "pool", "said"),
    [
        ("3", [], "3 needed, and no pack is on file"),
        ("-1", WIRE_NUTS, "-1 is not a number of units to buy"),
        ("NaN", WIRE_NUTS, "NaN is not a number of units to buy"),
    ],
)
def test_a_question_without_an_answer_is_refused(
    need: str, pool: list[PackOffer], said: str
) -> None:
    with pytest.raises(ValueError, match=said):
        choose_packs(Decimal(need), pool)


@pytest.mark.parametrize(
    ("size", "price", "said"),
    [
        ("0", "1", "a pack of 0 holds nothing"),
        ("-2", "1", "a pack of -2 holds nothing"),
        ("Infinity", "1", "a pack of Infinity holds nothing"),
        ("1", "-0.01", "-0.01 is not a price"),
        ("1", "NaN", "NaN is not a price"),
    ],
)
def test_an_offer_that_cannot_be_is_refused(size: str, price: str, said: str) -> None:
    with pytest.raises(ValueError, match=f"offer a: {said}"):
        PackOffer("a", "N", Decimal(size), Decimal(price))


def test_prices_read_as_they_were_written() -> None:
    """4.1 and 4.10 are one number; an answer kept for the first is not shown for the second."""
    short, full = offers("a N 1 4.1", "b N 5 20.0"), offers("a N 1 4.10", "b N 5 20.00")
    assert choose_packs(Decimal(2), short).why.startswith("2 packs of 1 at 4.1 cost 8.2,")
    assert choose_packs(Decimal(2), full).why.startswith("2 packs of 1 at 4.10 cost 8.20,")


# What must hold of every choice.

POOLS = st.lists(
    st.builds(
        PackOffer,
        offer_id=st.sampled_from("abcdef"),
        supplier=st.sampled_from("LMN"),
        pack_size=st.decimals("0.25", 60, places=2),
        price=st.decimals(0, 20, places=2),
    ),
    min_size=1,
    max_size=6,
)
NEEDS = st.decimals("0.01", 400, places=2)


@settings(deadline=None)
@given(NEEDS, POOLS, st.randoms())
def test_the_order_of_offers_does_not_matter(
    need: Decimal, pool: list[PackOffer], shuffler: random.Random
) -> None:
    mixed = shuffler.sample(pool, len(pool))
    assert choose_packs(need, mixed) == choose_packs(need, pool)


@settings(deadline=None)
@given(NEEDS, NEEDS, POOLS)
def test_more_need_never_costs_less(one: Decimal, two: Decimal, pool: list[PackOffer]) -> None:
    less, more = sorted((one, two))
    assert choose_packs(less, pool).cost <= choose_packs(more, pool).cost


@settings(deadline=None)
@given(NEEDS, POOLS)
def test_sums_are_those_of_the_packs(need: Decimal, pool: list[PackOffer]) -> None:
    choice = choose_packs(need, pool)
    assert choice.bought == sum(offer.pack_size * count for offer, count in choice.packs) >= need
    assert choice.cost == sum(offer.price * count for offer, count in choice.packs)


ONE_RATE = [
    PackOffer(f"id{n}", "LMN"[n % 3], Decimal(n), Decimal(n) / 10)
    for n in (7, 11, 13, 17, 19, 23, 29, 31, 37, 41)
]
ODD_SIZES = offers("a N 0.001 0.01", "b N 1 9.99", "c M 2.537 22", "d M 1000 9990")


@pytest.mark.parametrize(
    ("need", "pool"), [("5000", ONE_RATE), ("9999.9995", ODD_SIZES)], ids=["one rate", "odd sizes"]
)
def test_hard_needs_are_met(need: str, pool: list[PackOffer]) -> None:
    """Many sizes at one rate, and sizes that never come out even: the search ends all the same."""
    choice = choose_packs(Decimal(need), pool)
    assert sum(offer.pack_size * count for offer, count in choice.packs) >= Decimal(need)
