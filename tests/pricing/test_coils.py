"""Cable in one piece for every cut: plans worked by hand, and what must hold of every plan."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal
from fractions import Fraction
from itertools import permutations
from typing import NamedTuple

import pytest

from estimator.pricing.coils import (
    ByLength,
    CablePlan,
    Coil,
    NoPieceLongEnough,
    Remnant,
    choose_cable,
)

INCHES_PER_FT = 12


def ft(feet: float | str | Fraction) -> Fraction:
    return Fraction(feet) * INCHES_PER_FT


def in_ft(length_in: Fraction) -> str:
    return f"{float(length_in / INCHES_PER_FT):g} ft"


def coils(*rows: str) -> list[Coil]:
    """Coils from rows "id supplier feet price"."""
    parts = [row.split() for row in rows]
    return [Coil(name, supplier, ft(feet), Decimal(price)) for name, supplier, feet, price in parts]


def reels(*rows: str) -> list[ByLength]:
    """Reels from rows "id supplier feet price", feet being one step."""
    parts = [row.split() for row in rows]
    return [ByLength(name, by, ft(feet), Decimal(price)) for name, by, feet, price in parts]


def truck(*feet: float) -> list[Remnant]:
    """Remnants a, b, c ... of these lengths."""
    return [Remnant("abcdefgh"[at], ft(length)) for at, length in enumerate(feet)]


FOUR = coils("c25 N 25 19.75", "c50 N 50 31.00", "c100 N 100 55.00", "c250 N 250 110.00")
REEL = reels("reel N 1 0.85")


class Job(NamedTuple):
    """Cuts and order in feet, and what there is."""

    cuts: Sequence[float | str]
    order: float
    coils: list[Coil]
    reels: list[ByLength]
    remnants: list[Remnant]

    def plan(self) -> CablePlan:
        cuts_in = [ft(cut) for cut in self.cuts]
        return choose_cable(cuts_in, ft(self.order), self.coils, self.reels, self.remnants, in_ft)


def used(plan: CablePlan) -> list[str]:
    """Pieces as "name", for a reel "name length", in plan order."""
    names = []
    for piece in plan.pieces:
        if isinstance(piece.source, Remnant):
            names.append(piece.source.remnant_id)
        elif isinstance(piece.source, Coil):
            names.append(piece.source.offer_id)
        else:
            names.append(f"{piece.source.offer_id} {in_ft(piece.length_in)}")
    return names


WORKED = {
    # 11 x 0.85 = 9.35 < 19.75
    "by length": (Job([10], 11, FOUR, REEL, []), ["reel 11 ft"], "9.35"),
    # 23 x 0.85 = 19.55 < 19.75; 24 x 0.85 = 20.40 > 19.75
    "just by length": (Job([20], 23, FOUR, REEL, []), ["reel 23 ft"], "19.55"),
    "just a coil": (Job([20], 24, FOUR, REEL, []), ["c25"], "19.75"),
    # the cut is the whole coil; a sixteenth more and 26 x 0.85 = 22.10 < 31.00
    "exactly a coil": (Job([25], 25, FOUR, REEL, []), ["c25"], "19.75"),
    "a hair over a coil": (Job(["4801/192"], 26, FOUR, REEL, []), ["reel 26 ft"], "22.10"),
    # 26 ft in all, but 13 + 13 do not go into one coil of 25: 50 at 31.00 or 2 x 19.75 = 39.50
    "two in one coil": (Job([13, 13], 26, FOUR, [], []), ["c50"], "31.00"),
    # a coil of 24 would do for the length (2 x 12), not for the cuts: 13 + 11 fit, 13 + 12 do not
    "each its own coil": (
        Job([13, 12, 12], 37, coils("c24 N 24 10", "c40 N 40 25"), [], []), ["c24", "c24"], "20",
    ),
    # 20 and 15 fit no remnant: 35 x 0.85 = 29.75; 31.00; 19.75 + 15 x 0.85 = 32.50
    "short remnants": (
        Job([20, 15, 7, 6], 55, FOUR, REEL, truck(12, 9)), ["a", "b", "reel 35 ft"], "29.75",
    ),
    # 20 in 22 and 7 in 9, or the like; 55 - 31 = 24 to buy: 24 x 0.85 = 20.40 > 19.75
    "long remnants": (
        Job([20, 15, 7, 6], 55, FOUR, REEL, truck(22, 9)), ["a", "b", "c25"], "19.75",
    ),
    # 60 in 62, 26 in 27; 70 and 45 left, 222 - 89 = 133 to buy: 100 + 50 at 86.00;
    # 133 x 0.85 = 113.05; 100 and 45 x 0.85 = 93.25; 250 at 110.00
    "two remnants, four coils": (
        Job([60, 45, 70, 26], 222, FOUR, REEL, truck(62, 27)), ["a", "b", "c100", "c50"], "86.00",
    ),
    # no remnant takes 13; 14 x 0.85 = 11.90
    "a cut no remnant holds": (
        Job([13], 14, FOUR, REEL, truck(12, 9)), ["reel 14 ft"], "11.90",
    ),
    "remnants alone": (Job([2, 3], 5, FOUR, REEL, truck(6)), ["a"], "0"),
    "remnants and no offer": (Job([2, 3, 4], 10, [], [], truck(4, 6)), ["a", "b"], "0"),
    # the remnant counts 6 toward 7, so one foot more
    "order made up": (Job([5], 7, FOUR, REEL, truck(6)), ["a", "reel 1 ft"], "0.85"),
    # 7.00 a step of 10 ft is dearer for 3 ft (2.55), cheaper for 40: 28.00 + 7 x 0.85 = 33.95;
    # 5 steps 35.00; 47 x 0.85 = 39.95
    "two reels": (
        Job([40, 6], 47, [], reels("r1 N 1 0.85", "r10 N 10 7.00"), []),
        ["r10 40 ft", "r1 7 ft"],
        "33.95",
    ),
    # 80.5 ft from the reel: 81 x 0.85 = 68.85, or 17 steps of 5 ft at 4.00 = 68.00
    "the coarse reel": (
        Job(["80.5"], 80.5, FOUR[:2], reels("r1 N 1 0.85", "r5 N 5 4.00"), []),
        ["r5 85 ft"],
        "68.00",
    ),
    "nothing": (Job([], 0, FOUR, REEL, truck(5)), [], "0"),
}  # fmt: skip


@pytest.mark.parametrize(("job", "pieces", "cost"), WORKED.values(), ids=WORKED)
def test_worked_by_hand(job: Job, pieces: list[str], cost: str) -> None:
    plan = job.plan()
    assert (used(plan), plan.cost, plan.exact) == (pieces, Decimal(cost), True)


TIES = {
    "fewer pieces": (Job([20, 20], 40, coils("a N 25 20", "b N 50 40"), [], []), ["b"]),
    "fewer suppliers": (
        Job([40, 20], 60, coils("a N 25 20", "b M 25 20", "c M 50 39"), [], []), ["c", "b"],
    ),
    "fewer remnants": (Job([5, 5], 10, [], REEL, truck(5, 5, 10)), ["c"]),
    "fewer remnants although more is left": (Job([5, 5], 10, [], REEL, truck(5, 5, 20)), ["c"]),
    "a new coil anyway, so no remnant": (Job([20, 3], 23, FOUR[:1], [], truck(4)), ["c25"]),
    "less left of a remnant": (Job([5], 5, [], REEL, truck(9, 6)), ["b"]),
    "less left of a coil": (Job([24], 24, coils("a N 30 20", "b N 25 20"), [], []), ["b"]),
    "the first remnant": (Job([5], 5, [], REEL, truck(6, 6)), ["a"]),
    "the first coil": (Job([24], 24, coils("b N 25 20", "a M 25 20"), [], []), ["a"]),
    "the first reel": (Job([4], 4, [], reels("b N 1 0.85", "a M 1 0.85"), []), ["a 4 ft"]),
}  # fmt: skip


@pytest.mark.parametrize(("job", "pieces"), TIES.values(), ids=TIES)
def test_ties_go_to(job: Job, pieces: list[str]) -> None:
    """Worked by hand: every case has another plan of the same cost."""
    for mixed in permutations(job.coils):
        for remnants in permutations(job.remnants):
            again = job._replace(coils=list(mixed), remnants=list(remnants))
            assert used(again.plan()) == pieces


# 20 fits only the remnant of 20, 15 then only the coil, which has room for 6 but not for 8;
# 50 - 28 = 22 to buy: 22 x 0.85 = 18.70 > 17.50
FORCED = Job([20, 15, 8, 6], 50, coils("c22 N 22 17.50"), REEL, truck(20, 8))


def test_pieces_say_what_is_cut_from_them() -> None:
    """Worked by hand: only one way to lay the cuts; they are counted from 0."""
    cut = [(piece.cuts, piece.leftover_in, piece.price) for piece in FORCED.plan().pieces]
    free = Decimal(0)
    assert cut == [((0,), 0, free), ((2,), 0, free), ((1, 3), ft(1), Decimal("17.50"))]
    assert FORCED.plan().bought_in == ft(22)


REASONS = {
    "by length": (
        Job([10], 11, FOUR, REEL, []),
        "11 ft by length at 0.85 per 1 ft costs 9.35, less than 1 coil of 25 ft (19.75)",
    ),
    "a coil": (
        Job([20], 24, FOUR, REEL, []),
        "1 coil of 25 ft at 19.75 costs less than 24 ft by length (20.40)",
    ),
    "coils": (
        Job([100, 100, 30, 20], 250, FOUR[2:3] + coils("x N 40 26.00"), REEL, []),
        "2 coils of 100 ft at 55.00 and 50 ft by length at 0.85 per 1 ft cost 152.50, "
        "less than 3 coils of 100 ft (165.00)",
    ),
    "remnants and a coil": (
        FORCED,
        "remnants a and b hold 2 of 4 cuts; 1 coil of 22 ft at 17.50 costs less than "
        "all new cable: 50 ft by length (42.50)",
    ),
    "remnants alone": (
        Job([2, 3], 5, FOUR, REEL, truck(6)),
        "remnant a holds every cut, so nothing is bought",
    ),
    "order made up": (
        Job([5], 7, FOUR, REEL, truck(6)),
        "remnant a holds every cut; to make up the order, 1 ft by length at 0.85 per 1 ft "
        "costs less than all new cable: 7 ft by length (5.95)",
    ),
    "one offer": (
        Job([13, 13], 26, FOUR[:1], [], []),
        "2 coils of 25 ft at 19.75: the only cable on file",
    ),
    "no other offer long enough": (
        Job([30], 30, FOUR[:2], [], []),
        "1 coil of 50 ft at 31.00: no other offer does alone",
    ),
    "suppliers": (
        Job([10], 11, coils("c N 25 19.75"), reels("r M 1 0.85"), []),
        "11 ft by length from M at 0.85 per 1 ft costs 9.35, less than 1 coil of 25 ft from N "
        "(19.75)",
    ),
    "a tie": (
        Job([20, 20], 40, coils("a N 25 20", "b N 50 40"), [], []),
        "1 coil of 50 ft at 40 costs the same as 2 coils of 25 ft (40), in fewer pieces",
    ),
    "nothing": (Job([], 0, FOUR, REEL, []), "nothing needed"),
}


@pytest.mark.parametrize(("job", "why"), REASONS.values(), ids=REASONS)
def test_the_reason_reads(job: Job, why: str) -> None:
    assert job.plan().why == why


def test_lengths_read_in_the_unit_asked_for() -> None:
    plan = choose_cable([ft(10)], ft(11), FOUR, REEL, [], lambda length: f"{length} inches")
    assert plan.why.startswith("132 inches by length at 0.85 per 12 inches costs 9.35")


TOO_LONG = {
    "coils too short": (Job([30, 26, 10], 70, FOUR[:1], [], []), 30),
    "nothing at all": (Job([3], 3, [], [], []), 3),
    "one remnant for two long cuts": (Job([30, 28], 58, FOUR[:1], [], truck(40)), 28),
}


@pytest.mark.parametrize(("job", "feet"), TOO_LONG.values(), ids=TOO_LONG)
def test_a_cut_longer_than_every_piece_is_named(job: Job, feet: int) -> None:
    with pytest.raises(NoPieceLongEnough, match=f"a cut of {feet * INCHES_PER_FT} in") as caught:
        job.plan()
    assert caught.value.cut_in == ft(feet)


@pytest.mark.parametrize(
    ("job", "said"),
    [
        (Job([3, 3], 6, [], [], truck(4)), "the remnants do not hold every cut"),
        (Job([3], 6, [], [], truck(4)), "make up the order of 72 in, and no cable is on offer"),
        (Job([3], 2, FOUR, REEL, []), "an order of 24 in is less than the cuts together"),
        (Job([3, 0], 3, FOUR, REEL, []), "a cut of no length"),
    ],
    ids=["two cuts, one remnant", "short of the order", "order below cuts", "cut of 0"],
)
def test_a_question_without_an_answer_is_refused(job: Job, said: str) -> None:
    with pytest.raises(ValueError, match=said):
        job.plan()


@pytest.mark.parametrize(
    ("row", "said"),
    [("a N 0 1", "a piece of 0 in is no piece"), ("a N 1 -1", "-1 is not a price")],
)
def test_an_offer_that_cannot_be_is_refused(row: str, said: str) -> None:
    with pytest.raises(ValueError, match=f"a: {said}"):
        coils(row)
    with pytest.raises(ValueError, match=f"a: {said}"):
        reels(row)


def test_a_remnant_of_no_length_is_refused() -> None:
    with pytest.raises(ValueError, match="a: a piece of 0 in is no piece"):
        truck(0)
