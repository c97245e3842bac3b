"""The second total: each unknown with a dear side, alone and together.

The rules are kept still: all that those with a remedy ask for is known here.
"""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest

from estimator.pricing.records import Bid
from tests.pricing.made_books import bid, plain
from tests.route.made_house import WALL, Table

KNOWN_WALL: Table = WALL | {"stud": "2x4", "finish": "gypsum board"}
SCREWS: Table = {"wires_per_screw": 1, "push_in_terminals": "no"}
SOURCE: Table = {"id": "a", "existing": True, "wall": "w", "x": 20, "height": 15,
                 "cables": ["14-2"], "volume": 18, "clamps": "no", "contents": SCREWS}  # fmt: skip
NEW: Table = {"id": "b", "wall": "w", "x": 92, "height": 15}
JOB: Table = {"id": "J", "title": "t", "occupied": "no"}
# Nothing of the circuit is left to find out: every rule that has a remedy can answer.
CIRCUIT: Table = {"breaker": 15, "wire": "14", "material": "copper", "kind": "general",
                  "protection": ["afci", "gfci"], "grounded": "yes", "multiwire": "no"}  # fmt: skip
KNOWN: Table = {
    "job": JOB, "house": {"permit": "not needed"}, "circuit": CIRCUIT, "walls": [KNOWN_WALL],
    "boxes": [SOURCE, NEW], "run": {"height": 60},
    "openings": [{"id": "o", "wall": "w", "left": 20, "right": 30, "bottom": 30, "top": 40}],
}  # fmt: skip


def made(**tables: Any) -> Bid:
    return bid(plain(), **(KNOWN | tables))


def test_where_all_is_known_there_is_one_total() -> None:
    assert made().second_total is None
    assert made().second_total_why == ""


WALLS: list[tuple[Table, Table, str]] = [
    ({"exterior": "yes", "insulated": "unknown"}, {"exterior": "yes", "insulated": "yes"},
     "wall w is insulated"),
    ({"finish": "unknown"}, {"finish": "plaster"}, "wall w is plaster"),
    ({"stud": "unknown"}, {"stud": "2x3"}, "the studs of wall w are slim"),
]  # fmt: skip


@pytest.mark.parametrize(("unknown", "bad", "said"), WALLS)
def test_of_a_wall(unknown: Table, bad: Table, said: str) -> None:
    """The second total is that of the same job with the bad fact surveyed."""
    found = made(walls=[KNOWN_WALL | unknown])
    assert found.second_total == made(walls=[KNOWN_WALL | bad]).price.total
    assert found.second_total > found.price.total
    assert found.second_total_why == said


def test_of_rooms_that_may_be_lived_in() -> None:
    found = made(job={"id": "J", "title": "t", "occupied": "unknown"})
    lived_in = made(job={"id": "J", "title": "t", "occupied": "yes"})
    assert found.second_total == lived_in.price.total > found.price.total
    assert found.second_total_why == "the rooms are lived in"


@pytest.mark.parametrize("unseen", [{"cables": []}, {"unknown_cables": True}])
def test_of_cables_nobody_saw(unseen: Table) -> None:
    """Splices alone: (6 + 1) x 2.00 fits in 16, (8 + 1) x 2.00 takes a larger box."""
    splices = SOURCE | {"device": "none", "volume": 16}
    found = made(boxes=[splices | unseen, NEW])
    three = made(boxes=[splices | {"cables": ["14-2"] * 3}, NEW])
    assert three.takeoff.boxes[0].replaced
    assert found.second_total == three.price.total
    assert found.second_total > found.price.total
    assert found.second_total_why == "box a has 3 cables in it"


def test_of_a_volume_nobody_read() -> None:
    found = made(boxes=[SOURCE | {"volume": "unknown"}, NEW])
    assert found.second_total == made(boxes=[SOURCE | {"volume": 1}, NEW]).price.total
    assert found.second_total_why == "box a is too small and is replaced"


def test_all_at_once_are_all_named() -> None:
    found = made(
        job={"id": "J", "title": "t"},
        walls=[KNOWN_WALL | {"finish": "unknown", "stud": "unknown"}],
        boxes=[SOURCE | {"volume": "unknown", "cables": []}, NEW],
    )
    assert found.second_total_why.split("; ") == [
        "wall w is plaster", "the studs of wall w are slim", "box a has 3 cables in it",
        "box a is too small and is replaced", "the rooms are lived in",
    ]  # fmt: skip


@pytest.mark.parametrize(
    "changes",
    [
        {"boxes": [SOURCE, NEW], "walls": [KNOWN_WALL, WALL | {"id": "v", "finish": "unknown"}]},
        {"boxes": [SOURCE | {"clamps": "unknown"}, NEW]},  # already counted as if there
        {"job": {"id": "J", "title": "t", "occupied": "no", "year_built": "unknown"}},
        {"circuit": CIRCUIT | {"wire": "unknown", "ground_wire": "unknown"}},
    ],
)
def test_an_unknown_that_moves_nothing_makes_no_second_total(changes: Table) -> None:
    assert made(**changes).second_total is None


def test_where_the_minimum_governs_both_there_is_no_second_total() -> None:
    found = bid(plain(minimum_charge=Decimal(9999)), **(KNOWN | {"job": {"id": "J", "title": "t"}}))
    assert found.second_total is None


def test_the_bid_itself_keeps_the_unknowns() -> None:
    found = made(boxes=[SOURCE | {"cables": []}, NEW])
    assert found.survey.boxes[0].cables == ()
    assert any("cables in it" in each.about for each in found.takeoff.assumptions)
