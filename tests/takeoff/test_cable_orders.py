"""Cuts and orders: one cut a run, one order a kind, one round-up at the end; sums that redo."""

from __future__ import annotations

import re
from decimal import Decimal
from fractions import Fraction
from math import ceil
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from estimator.survey.records import Survey
from estimator.takeoff.records import CableOrder, Takeoff
from tests.route.made_house import Table, house
from tests.takeoff.made_takeoff import part, taken

ENDS: list[Table] = [{"id": name, "existing": name == "0", "cables": []} for name in "0123456"]


def legs(*lengths: object, **leg: Any) -> list[Table]:
    return [{"go": "along", "length": length} | leg for length in lengths]


def runs(*lengths: object, cable: str = "14-2", **run: Any) -> Survey:
    """A chain of typed runs, each of one leg."""
    chain = [
        {"id": str(number), "from": str(number), "to": str(number + 1), "cable": cable,
         "legs": legs(length)} | run
        for number, length in enumerate(lengths)
    ]  # fmt: skip
    return house(boxes=ENDS, runs=chain)


def order(made: Takeoff) -> CableOrder:
    """The one order of a takeoff."""
    (only,) = made.cable
    return only


@pytest.mark.parametrize(
    ("lengths", "tail", "allowance", "order_ft"),
    [
        ([95], 12, 10, 11),  # S1: 119 x 1.10 = 130.9 in
        ([71, 78], 10, 15, 19),  # S2 with one round-up: (91 + 98) x 1.15 = 217.35 in
        ([5], 12, 0, 3),  # S3: 29 in
        ([39, 126], 12, 10, 20),  # S7: 213 x 1.10 = 234.3 in
        ([118], 12, 10, 14),  # S14 C: 142 x 1.10 = 156.2 in
        ([306], 12, 20, 33),  # 27.5 ft x 1.2 is 33 ft, not 34
        ([96], 12, 20, 12),  # 120 x 1.2 = 144 in: already whole
        (["96-1/16"], 12, 20, 13),  # just over
        ([1] * 6, 12, 0, 13),  # 6 x 25 = 150 in; each rounded up would be 18
    ],
)
def test_one_round_up_at_the_end(
    lengths: list[object], tail: int, allowance: int, order_ft: int
) -> None:
    """Worked by hand: sum of (path + 2 tails) x (1 + allowance), up to the whole foot once."""
    made = taken(runs(*lengths), tail_in=Fraction(tail), allowance_pct=Decimal(allowance))
    assert order(made).order == order_ft
    assert part(made, "cable-14-2").quantity == order_ft


def test_the_metric_step_of_the_worked_lounge() -> None:
    """S10, worked by hand: (2200 + 2100) x 1.15 = 4945 mm, up to 5.0 m."""
    metric = {"id": "J", "title": "t", "units": "metric", "country": "GB"}
    cable, ends = "2.5 mm2 2-core and earth", [{"id": name} for name in "abc"]
    chain = [
        {"id": one + two, "from": one, "to": two, "cable": cable, "legs": legs(length)}
        for one, two, length in (("a", "b", 1800), ("b", "c", 1700))
    ]
    survey = house(job=metric, walls=[], boxes=ends, runs=chain)
    mm = Fraction(10, 254)
    made = taken(survey, tail_in=200 * mm, allowance_pct=Decimal(15), order_step_in=500 * mm)
    assert order(made).cuts_in == 4300 * mm
    assert (order(made).order, order(made).unit) == (5, "m")
    assert "(2200 + 2100) x 1.15 = 4945 mm, up to 5 m" in part(made, "cable-2.5-2e").reason


LEG: Table = {"go": "along", "length": 100, "corners": 2, "obstacles": 3}
CUTS: list[tuple[Table, Table, int]] = [
    ({}, {}, 124),
    ({}, {"corner_extra_in": 4, "obstacle_extra_in": 5}, 147),  # 2 x 4 + 3 x 5 more
    ({"corner_extra": 6, "obstacle_extra": 1}, {"corner_extra_in": 4}, 139),  # the run's own
    ({"corner_extra": 0}, {"corner_extra_in": 4}, 124),
    ({"corner_extra": "unknown"}, {"corner_extra_in": 4}, 132),
    ({"tail": 10}, {}, 120),
    ({"tail": 3}, {}, 112),  # never below the floor of 6 in a box
    ({"tail": 3}, {"tail_floor_in": 2}, 106),
    ({}, {"tail_in": 8}, 116),
]


@pytest.mark.parametrize(("run", "practice", "want"), CUTS)
def test_a_cut_is_path_extras_and_tails(run: Table, practice: dict[str, int], want: int) -> None:
    """Worked by hand from a path of 100, two corners and three obstacles."""
    survey = runs(100, **(run | {"legs": [LEG]}))
    changes: Table = {name: Fraction(value) for name, value in practice.items()}
    assert order(taken(survey, **changes)).cuts[0].cut_in == want


def test_each_kind_of_cable_is_ordered_alone() -> None:
    chain = [
        {"id": str(number), "from": str(number), "to": str(number + 1), "cable": cable,
         "legs": legs(96)}
        for number, cable in enumerate(["14-2", "12-2", "14-2"])
    ]  # fmt: skip
    made = taken(house(boxes=ENDS, runs=chain), allowance_pct=Decimal(0))
    assert [(each.kind, each.order) for each in made.cable] == [("14-2", 20), ("12-2", 10)]
    assert [cut.run_id for cut in made.cable[0].cuts] == ["0", "2"]


NUMBER = re.compile(r"\d+(?:\.\d+)?")
sixteenths = st.integers(1, 3000).map(lambda each: f"{each}/16 in")


def numbers(text: str) -> list[Fraction]:
    return [Fraction(each) for each in NUMBER.findall(text)]


@settings(max_examples=150, deadline=None)
@given(
    lengths=st.lists(sixteenths, min_size=1, max_size=5),
    allowance=st.sampled_from(["0", "7.5", "10", "12.25", "15"]),
    extra=st.integers(0, 6),
)
def test_a_reader_can_redo_the_sum_of_the_order(
    lengths: list[str], allowance: str, extra: int
) -> None:
    """Every figure of the reason recomputes from those before it, and the last is the order."""
    leg = {"corners": 1, "obstacles": 2}
    survey = runs(*lengths, corner_extra=extra, obstacle_extra=1)
    chain = [
        run.model_dump(by_alias=True, exclude_unset=True) | {"legs": legs(length, **leg)}
        for run, length in zip(survey.runs, lengths, strict=True)
    ]
    made = taken(house(boxes=ENDS, runs=chain), allowance_pct=Decimal(allowance))
    *cuts, last = part(made, "cable-14-2").reason.split("; ")
    sums = [numbers(cut.split(": ")[1]) for cut in cuts]
    assert all(sum(terms) == total for *terms, total in sums)
    total, factor, summed, ordered = (
        sum(numbers(last.split(" x ")[0])), *numbers(last.split(" x ")[1])
    )  # fmt: skip
    assert total == sum(terms[-1] for terms in sums)
    assert factor == 1 + Fraction(allowance) / 100
    assert abs(total * factor - summed) <= Fraction(1, 10**4)
    assert ordered == ceil(total * factor / 12) == order(made).order
