"""S14, a door in the way and three routes; worked by hand."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest

from estimator.pricing.records import Bid
from tests.worked.job import changed, cut_in, ft2, parts, run, tasks, worked

NAME = "door-in-the-way"


def on(route: str) -> Bid:
    """The bid for one of the ways."""
    return changed(NAME, ("# route =", f'route = "{route}" #'))


@pytest.mark.parametrize(
    ("route", "path", "cut", "order_in", "order"),
    [
        ("A", 76 + 68 + 76, 244, "268.4", 23),
        ("B", 52 + 144 + 156 + 144 + 36, 572, "629.2", 53),
        ("C", 25 + 68 + 25, 142, "156.2", 14),
    ],
)
def test_path_cut_and_order(route: str, path: int, cut: int, order_in: str, order: int) -> None:
    bid = on(route)
    assert (run(bid, route).path_in, cut_in(bid, route)) == (path, cut)
    assert bid.takeoff.cable[0].with_allowance_in == Fraction(order_in)
    assert bid.takeoff.cable[0].order == order


@pytest.mark.parametrize(
    ("route", "studs", "listed"),
    [
        ("A", 2, {"king": 2, "cripple": 2}),  # 64, 112; 67.75, 104.25; 80, 96
        ("B", 3 + 8 + 9 + 8 + 2, {"corner stud": 8}),
        ("C", 0, {}),
    ],
)
def test_members(route: str, studs: int, listed: dict[str, int]) -> None:
    count = run(on(route), route)
    assert (count.studs, dict(count.listed)) == (studs, listed)


def test_over_the_door_the_opening_is_seen() -> None:
    closing = on("A").takeoff.closing
    assert (closing.openings, closing.visible_openings) == (1, 1)
    assert closing.patch_in2 == 280


def test_opening_area_as_printed() -> None:
    assert round(float(ft2(on("A").takeoff.closing.patch_in2)), 3) == 1.944


def test_crawlspace_staples_and_floor_holes() -> None:
    bid = on("C")
    assert parts(bid)["cable-staple"] == 3
    assert tasks(bid)["bore-floor"] == 2


def test_baseboard_of_the_long_way() -> None:
    assert round(tasks(on("B"))["trim-off-on"], 2) == Decimal("44.33")


def test_ranking() -> None:
    assert [option.route for option in worked(NAME).routes] == ["C", "A", "B"]


def test_without_access_to_the_crawlspace_the_way_is_over_the_door() -> None:
    bid = changed(NAME, ('accessible = "yes"', 'accessible = "no"'))
    assert next(option.route for option in bid.routes if option.chosen) == "A"


def test_a_run_across_the_doorway_itself_is_refused() -> None:
    bid = changed(NAME, ('height = "91 in"', 'height = "50 in"'), ("# route =", 'route = "A" #'))
    failed = [each.finding_id for each in bid.findings if each.stops_the_bid]
    assert failed == ["way-blocked:run A"]
