"""Cable at least cost: the same question as an integer program, solved by HiGHS.

Small cases are solved in five rounds, each keeping what the round before found: least cost,
fewest bought pieces, fewest suppliers, fewest remnants, least left over. Cases of up to 20 cuts
are solved for the least cost. Set CABLE_CASES for more random cases than by default.
"""

from __future__ import annotations

import os
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from decimal import Decimal
from fractions import Fraction
from itertools import pairwise
from random import Random
from typing import Any

import pytest

from estimator.pricing.coils import ByLength, CablePlan, Coil, Remnant, choose_cable

CASES = int(os.environ.get("CABLE_CASES", "200"))
MOST_NODES = 200
Solver = Callable[[], Any]


@dataclass(frozen=True)
class Job:
    """Cuts and what there is, lengths in inches."""

    cuts: Sequence[Fraction]
    order: Fraction
    coils: Sequence[Coil]
    reels: Sequence[ByLength]
    remnants: Sequence[Remnant]

    def plan(self) -> CablePlan:
        return choose_cable(self.cuts, self.order, self.coils, self.reels, self.remnants, str)


@dataclass
class Program:
    """The integer program: every piece that might be used, and which cuts it holds.

    Lengths are in sixteenths of an inch and prices in cents, so all are whole numbers.
    """

    model: Any
    job: Job
    cost: list[Any] = field(default_factory=list)
    length: list[Any] = field(default_factory=list)
    bought: list[Any] = field(default_factory=list)
    remnants: list[Any] = field(default_factory=list)
    holds: list[list[Any]] = field(default_factory=list)
    suppliers: dict[str, Any] = field(default_factory=dict)

    def piece(self, length: Any, used: Any, supplier: str | None = None) -> None:
        """Add a piece that holds any cuts up to its length."""
        holds = [self.model.addBinary() for _ in self.job.cuts]
        cuts = (whole(cut) * held for cut, held in zip(self.job.cuts, holds, strict=True))
        self.model.addConstr(sum(cuts) <= length)
        for held in holds:
            self.model.addConstr(held <= used)
        self.holds.append(holds)
        self.length.append(length)
        if supplier is None:
            self.remnants.append(used)
            self.model.addConstr(used <= sum(holds))
        else:
            self.bought.append(used)
            self.model.addConstr(used <= self.supplier(supplier))

    def supplier(self, name: str) -> Any:
        """One unknown for each supplier: 1 if anything comes from there."""
        if name not in self.suppliers:
            self.suppliers[name] = self.model.addBinary()
        return self.suppliers[name]

    def build(self, most_cents: int, reel_pieces: int) -> None:
        """Add all pieces of plans that cost no more than `most_cents`, and the rules."""
        for remnant in self.job.remnants:
            used = self.model.addBinary()
            self.piece(whole(remnant.length_in) * used, used)
        for coil in self.job.coils:
            self.coil(coil, most_cents // cents(coil.price))
        for reel in self.job.reels:
            for _ in range(reel_pieces):
                self.cut_length(reel, most_cents // cents(reel.price_per_step))
        for held in zip(*self.holds, strict=True):
            self.model.addConstr(sum(held) == 1)
        self.model.addConstr(sum(self.length) >= whole(self.job.order))
        self.model.addConstr(sum(self.cost) <= most_cents + 0.5)

    def coil(self, coil: Coil, most: int) -> None:
        """Add coils with cuts one by one, and a number of coils without cuts."""
        copies = [self.model.addBinary() for _ in range(min(most, len(self.job.cuts)))]
        for copy in copies:
            self.piece(whole(coil.length_in) * copy, copy, coil.supplier)
        for one, two in pairwise(copies):
            self.model.addConstr(one >= two)
        empty = self.model.addIntegral(lb=0, ub=most)
        self.model.addConstr(empty <= most * self.supplier(coil.supplier))
        self.bought.append(empty)
        self.length.append(whole(coil.length_in) * empty)
        self.cost.append(cents(coil.price) * sum(copies, empty))

    def cut_length(self, reel: ByLength, most: int) -> None:
        """Add one piece from a reel, of any number of steps."""
        steps, used = self.model.addIntegral(lb=0, ub=most), self.model.addBinary()
        self.model.addConstr(steps <= most * used)
        self.piece(whole(reel.step_in) * steps, used, reel.supplier)
        self.cost.append(cents(reel.price_per_step) * steps)

    def least(self, goal: Sequence[Any]) -> int:
        """Minimise a sum, whole-numbered by construction, and keep it for the next round."""
        if not goal:
            return 0
        self.model.minimize(sum(goal))
        assert self.model.modelStatusToString(self.model.getModelStatus()) == "Optimal"
        least: int = round(self.model.getObjectiveValue())
        self.model.addConstr(sum(goal) <= least + 0.01)
        return least


def whole(length_in: Fraction) -> int:
    sixteenths = length_in * 16
    assert sixteenths.denominator == 1
    return sixteenths.numerator


def cents(price: Decimal) -> int:
    return int(price * 100)


def sixteenths(pick: Random, low: int, high: int, step: Fraction) -> Fraction:
    return step * pick.randint(int(low / step), int(high / step))


def random_job(pick: Random, cuts: int) -> Job:
    """A job with up to five coil sizes, up to two reels and up to eight remnants."""
    low, high = pick.choice([(24, 120), (24, 400), (90, 160), (60, 299), (60, 900)])
    step = pick.choice([Fraction(1), Fraction(1, 2), Fraction(1, 16)])
    lengths = [sixteenths(pick, low, high, step) for _ in range(cuts)]
    total = sum(lengths, Fraction(0))
    order = pick.choice(
        [total, Fraction(-(-total // 12) * 12), Fraction(-(-total * 11 // 120) * 12)]
    )
    feet = pick.choice([(25, 50, 100, 250), (15, 25, 50, 100, 250), (10, 15, 20, 30, 50), (25, 40)])
    rate = pick.choice([Decimal("0.80"), Decimal("0.62")])
    coils = [
        Coil(f"c{size}", pick.choice("MN"), Fraction(size * 12), price(pick, size * rate, at))
        for at, size in enumerate(pick.sample(feet, pick.randint(1, len(feet))))
    ]
    reels = [ByLength("r", "N", Fraction(12), Decimal(pick.choice(["0.85", "0.70"])))]
    if pick.random() < 0.3:
        reels.append(ByLength("r5", "M", Fraction(60), Decimal("3.45")))
    kept = pick.randint(0, pick.choice([0, 3, 8]))
    remnants = [Remnant(f"q{at}", sixteenths(pick, low, high * 3, step)) for at in range(kept)]
    return Job(lengths, order, coils, reels, remnants)


def price(pick: Random, full: Decimal, at: int) -> Decimal:
    """At one rate, at a discount, or anything near."""
    share = pick.choice([Decimal(1), 1 - Decimal("0.1") * at, Decimal(pick.randint(80, 120)) / 100])
    return (full * share).quantize(Decimal("0.01"))


def by_highs(job: Job, plan: CablePlan, new_model: Solver, reel_pieces: int = 1) -> Program:
    """The program for all plans that cost no more than this one."""
    program = Program(new_model(), job)
    program.build(cents(plan.cost), reel_pieces)
    return program


@pytest.mark.parametrize("loose_nodes", [1, 64])
def test_least_cost_and_ties_agree_with_highs(
    new_model: Solver, monkeypatch: pytest.MonkeyPatch, loose_nodes: int
) -> None:
    """Up to six cuts, and up to two pieces from each reel; sharp bounds at once, and later."""
    monkeypatch.setattr("estimator.pricing._cable_search.LOOSE_NODES", loose_nodes)
    pick = Random(loose_nodes)
    for _ in range(CASES):
        job = random_job(pick, pick.randint(1, 6))
        plan = job.plan()
        program = by_highs(job, plan, new_model, reel_pieces=2)
        goals = [program.cost, program.bought, list(program.suppliers.values())]
        goals += [program.remnants, program.length]
        assert keys(plan) == [program.least(goal) for goal in goals], job


def keys(plan: CablePlan) -> list[int]:
    """Cost, bought pieces, suppliers, remnants, length used, as the program counts them."""
    bought = [piece for piece in plan.pieces if not isinstance(piece.source, Remnant)]
    suppliers = {p.source.supplier for p in bought if not isinstance(p.source, Remnant)}
    length = sum((piece.length_in for piece in plan.pieces), Fraction(0))
    remnants = len(plan.pieces) - len(bought)
    return [cents(plan.cost), len(bought), len(suppliers), remnants, whole(length)]


def test_least_cost_of_up_to_20_cuts_agrees_with_highs(new_model: Solver) -> None:
    """HiGHS gives up a case after MOST_NODES nodes; it must prove nearly all of them."""
    pick = Random(2)
    proven, cases = 0, CASES // 2
    for _ in range(cases):
        job = random_job(pick, pick.randint(7, 20))
        plan = job.plan()
        assert plan.exact
        program = by_highs(job, plan, new_model)
        program.model.setOptionValue("mip_max_nodes", MOST_NODES)
        program.model.minimize(sum(program.cost))
        status = program.model.modelStatusToString(program.model.getModelStatus())
        proven += status == "Optimal"
        cost = program.model.getObjectiveValue()
        assert cost > cents(plan.cost) - 0.5, job
    assert proven >= cases * 9 // 10
