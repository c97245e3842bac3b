"""Drying and setting times, as gathered; the plan for an ordinary room is the 24 h of the trade."""

from __future__ import annotations

from decimal import Decimal

import pytest

from estimator.tables.compound import drying, in_room_h, set_waits_count, setting
from estimator.tables.facts import NotOnFile


# Drying chart for a coat of 1/16 in: 2, 6, 10, 17 to 19, 48 h, 3 to 5 days from warm and dry to
# cold and damp; about 24 h a coat in good conditions; cold or damp 3 to 5 days.
@pytest.mark.parametrize(
    ("condition", "least", "plan", "most"),
    [("warm and dry", 2, 10, 10), ("ordinary", 17, 24, 24), ("cool or damp", 48, 72, 120),
     ("unknown", 17, 24, 24)],
)  # fmt: skip
def test_a_coat_dries_by_the_room(condition: str, least: int, plan: int, most: int) -> None:
    known = drying(condition)
    assert (known.least_h, known.plan_h, known.most_h) == (least, plan, most)
    assert known.least_h <= known.plan_h <= known.most_h


# The bag marked 20 sets in 25 to 35 minutes; the others in proportion: 45 x 25/20 and 45 x 35/20.
@pytest.mark.parametrize(
    ("bag", "least", "most", "confidence"),
    [(20, 25, 35, "seen"), (45, 56, 79, "inferred"), (90, 112, 158, "inferred")],
)
def test_a_bag_sets_in_its_time(bag: int, least: int, most: int, confidence: str) -> None:
    assert setting(bag) == (least, most, confidence)


def test_what_is_not_on_file_is_said() -> None:
    with pytest.raises(NotOnFile, match="'steamy' is not on file; on file are cool or damp"):
        drying("steamy")
    with pytest.raises(NotOnFile, match="'30' is not on file; on file are 20, 45, 90"):
        setting(30)


@pytest.mark.parametrize(
    ("wait", "condition", "want"),
    [(24, "ordinary", 24), (24, "unknown", 24), (24, "cool or damp", 72), (24, "warm and dry", 10),
     (0, "cool or damp", 0)],
)  # fmt: skip
def test_a_wait_of_the_plan_in_the_room_at_hand(wait: int, condition: str, want: int) -> None:
    assert in_room_h(Decimal(wait), condition) == want


@pytest.mark.parametrize(
    ("compound", "scope", "visit", "want"),
    [("setting", "painted", 1, 2), ("setting", "taped", 1, 2), ("setting", "painted", 2, 0),
     ("drying", "painted", 1, 0), ("setting", "closed", 1, 0), ("setting", "painted", 9, 0)],
)  # fmt: skip
def test_how_often_compound_sets_within_a_visit(
    compound: str, scope: str, visit: int, want: int
) -> None:
    assert set_waits_count(compound, scope, visit) == want
