"""Plates over holes and notches, sealant, bushings: by hole, depth, edge and way."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest

from estimator.survey.records import Survey
from estimator.takeoff.counts import faces_at_risk
from estimator.takeoff.records import Takeoff
from tests.route.made_house import WALL, Table, house
from tests.takeoff.made_takeoff import part, parts, taken, tasks

LIMIT = Fraction(5, 4)


@pytest.mark.parametrize(
    ("depth", "hole", "edge", "want"),
    [
        ("3.5", "0.75", None, 0),  # building facts, row 19: 1-3/8 left
        ("3.5", "1", None, 0),  # building facts, row 20: exactly 1-1/4 passes
        ("3.5", "1.0625", None, 2),  # 1.21875 left on both faces
        ("3.5", "0.875", None, 0),  # S7: 1.3125
        ("5.5", "3", None, 0),  # CI-09: the largest plate-free hole of a 2x6
        ("5.5", "3.125", None, 2),
        ("2.5", "0.75", None, 2),  # CI-09: a 2x3 always, and both faces
        ("2.5", "0.0625", None, 2),
        ("3.5", "0.75", "0.75", 1),  # S2 corner: 3/4 to one face, 2 to the other
        ("3.5", "0.75", "1.25", 0),
        ("3.5", "0.75", "1.1875", 1),
        ("3.5", "0.75", "2", 1),  # then 3/4 is left on the far side
        ("3.625", "1.125", None, 0),  # building facts, 1.3: 1950s 2x4, largest 1-1/8
    ],
)
def test_faces_at_risk(depth: str, hole: str, edge: str | None, want: int) -> None:
    near = None if edge is None else Fraction(edge)
    assert faces_at_risk(Fraction(depth), Fraction(hole), near, LIMIT) == want


def crossing(studs: int = 4, run: Table | None = None, **leg: Any) -> Survey:
    """A typed level leg past studs of 3-1/2 in."""
    typed = {"go": "along", "length": 71, "studs": studs} | leg
    ends = [{"id": "a", "existing": True, "cables": ["14-2"]}, {"id": "b"}]
    runs = [{"id": "1", "from": "a", "to": "b", "cable": "14-2", "method": "bored",
             "stud_depth": "3-1/2 in", "legs": [typed]} | (run or {})]  # fmt: skip
    return house(boxes=ends, runs=runs)


def plates(made: Takeoff) -> Decimal:
    return parts(made).get("protection-plate", Decimal(0))


@pytest.mark.parametrize(
    ("run", "leg", "want"),
    [
        ({}, {}, 0),
        ({"hole": "1 in"}, {}, 0),
        ({"hole": "1-1/8 in"}, {}, 8),  # two faces of four studs
        ({"stud_depth": "2-1/2 in"}, {}, 8),
        ({"edge": "1 in"}, {}, 4),
        ({"method": "notched"}, {}, 4),  # always one
        ({"method": "notched", "hole": "3 in"}, {"members": {"king": 2}}, 6),
        ({"method": "exposed", "hole": "3 in"}, {}, 0),
        ({"method": "fished", "hole": "1-1/8 in"}, {}, 8),
        ({}, {"corners": 1, "corner_edge": "3/4 in"}, 2),  # the corner's own edge
        ({"edge": "1 in"}, {"corners": 1, "corner_edge": "1-1/4 in"}, 4),
        ({"hole": "1-1/8 in"}, {"studs": 0, "members": {"nog": 1}, "plates": 2}, 4),
        ({"stud_depth": "unknown", "hole": "1 in"}, {}, 0),  # taken as 3-1/2
    ],
)
def test_one_plate_for_each_face_at_risk(run: Table, leg: Table, want: int) -> None:
    assert plates(taken(crossing(run=run, **leg))) == want


@pytest.mark.parametrize(
    ("run", "want"),
    [
        ({"trim_length": "12 ft"}, 4),
        ({"trim_length": "12 ft", "hole": "1-1/8 in"}, 8),  # both faces are more than one
        ({}, 0),
    ],
)
def test_behind_trim_a_shop_may_plate_every_member(run: Table, want: int) -> None:
    made = taken(crossing(run=run), plate_behind_trim_always=True)
    assert plates(made) == want


def test_behind_trim_as_drawn() -> None:
    """S1, worked by hand: four studs, no plate by distance, four by the shop's policy."""
    survey = house(34, 105, run={"way": "trim", "height": 3, "hole": "3/4 in"})
    assert plates(taken(survey)) == 0
    assert plates(taken(survey, plate_behind_trim_always=True)) == 4


def test_the_reason_of_a_plate_names_the_limit() -> None:
    made = taken(crossing(run={"hole": "1-1/8 in"}))
    assert "nearer than 1.25 in" in part(made, "protection-plate").reason
    notched = taken(crossing(run={"method": "notched"}))
    assert part(notched, "protection-plate").reason == "one over every notch"


@pytest.mark.parametrize(
    ("leg", "want"),
    [
        ({}, 0),
        ({"plates": 2}, 1),  # one hole through both
        ({"plates": 1}, 1),
        ({"floor_holes": 2}, 2),
        ({"members": {"block": 2}}, 2),
        ({"members": {"plate": 1}}, 1),
        ({"members": {"nog": 3, "king": 2}}, 0),
        ({"plates": 2, "floor_holes": 1, "members": {"block": 1}}, 3),
    ],
)
def test_sealant_once_a_plate_block_or_floor(leg: Table, want: int) -> None:
    made = taken(crossing(**leg))
    assert parts(made).get("firestop-sealant", 0) == want


@pytest.mark.parametrize(
    ("method", "bored", "notched"),
    [("bored", 6, 0), ("fished", 6, 0), ("notched", 0, 6), ("exposed", 0, 0)],
)
def test_each_member_is_bored_or_notched_once(method: str, bored: int, notched: int) -> None:
    survey = crossing(run={"method": method}, members={"king": 2})
    work = tasks(taken(survey))
    assert work.get("bore-member", 0) == bored
    assert work.get("notch-member", 0) == notched


def test_steel_studs_take_bushings() -> None:
    steel = WALL | {"stud": "2x4", "framing": "steel"}
    assert parts(taken(house(walls=[steel])))["stud-bushing"] == 4
    assert "stud-bushing" not in parts(taken(house()))
