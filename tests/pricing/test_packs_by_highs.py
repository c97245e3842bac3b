"""Whole packs at least cost: the same question as an integer program, solved by HiGHS.

Four rounds, each keeping what the round before found: least cost, fewest packs, fewest
suppliers, least left over. Set PACK_CASES for more random cases than by default.
"""

from __future__ import annotations

import os
import random
from collections.abc import Callable, Sequence
from decimal import Decimal
from typing import Any

from estimator.pricing.packs import PackOffer, choose_packs

CASES = int(os.environ.get("PACK_CASES", "250"))
Solver = Callable[[], Any]
RATE = Decimal("0.02")


def random_offers(pick: random.Random) -> list[PackOffer]:
    """Up to ten offers; sometimes all at one rate, so that there are many ties."""
    step = pick.choice([Decimal(1), Decimal("0.25"), Decimal("0.1"), Decimal("2.5")])
    one_rate = pick.random() < 0.3
    made = []
    for at in range(pick.randint(1, 10)):
        size = step * pick.randint(1, pick.choice([4, 30, 200]))
        price = size * RATE * (1 if one_rate else Decimal(pick.randint(70, 130)) / 100)
        made.append(PackOffer(f"id{at}", pick.choice("LMN"), size, price.quantize(Decimal("0.01"))))
    return made


def least_by_highs(
    new_model: Solver, need: Decimal, pool: Sequence[PackOffer]
) -> tuple[Decimal, int, int, Decimal]:
    """Least cost, then packs, then suppliers, then units bought: one solve after the other."""
    model = new_model()
    most = [int(need / offer.pack_size) + 1 for offer in pool]
    counts = [model.addIntegral(lb=0, ub=top) for top in most]
    names = sorted({offer.supplier for offer in pool})
    called = {name: model.addBinary() for name in names}
    for offer, count, top in zip(pool, counts, most, strict=True):
        model.addConstr(count <= top * called[offer.supplier])
    covered = [float(offer.pack_size * 100) for offer in pool]
    model.addConstr(dot(covered, counts) >= float(need * 100))
    goals = [
        dot([float(offer.price * 100) for offer in pool], counts),
        dot([1.0] * len(pool), counts),
        dot([1.0] * len(names), list(called.values())),
        dot(covered, counts),
    ]
    found = [solve_and_hold(model, goal) for goal in goals]
    return Decimal(found[0]) / 100, found[1], found[2], Decimal(found[3]) / 100


def dot(factors: Sequence[float], unknowns: Sequence[Any]) -> Any:
    return sum(factor * unknown for factor, unknown in zip(factors, unknowns, strict=True))


def solve_and_hold(model: Any, goal: Any) -> int:
    """Minimise one goal, whole-numbered by construction, and keep it for the next round."""
    model.minimize(goal)
    assert model.modelStatusToString(model.getModelStatus()) == "Optimal"
    least: int = round(model.getObjectiveValue())
    model.addConstr(goal <= least + 0.01)
    return least


def test_least_cost_and_ties_agree_with_highs(new_model: Solver) -> None:
    pick = random.Random(20240611)
    for _ in range(CASES):
        pool = random_offers(pick)
        need = Decimal(pick.randint(1, pick.choice([300, 3000, 50000]))) / 100
        choice = choose_packs(need, pool)
        packs = sum(count for _, count in choice.packs)
        suppliers = len({offer.supplier for offer, _ in choice.packs})
        ours = (choice.cost, packs, suppliers, choice.bought)
        assert ours == least_by_highs(new_model, need, pool), (need, pool)
