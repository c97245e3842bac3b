"""Ways and their reasons: a difference in materials alone, two cables, hours with a supply run."""

from __future__ import annotations

from decimal import Decimal

from estimator.pricing.way_reasons import reasons_for
from tests.pricing.made_books import bid, plain
from tests.pricing.made_ways import DOLLARS, way


def test_half_a_dollar_of_materials_alone() -> None:
    cheap, dear = way("80.00", "10.00"), way("80.00", "10.50")
    assert reasons_for([("A", cheap), ("B", dear)], DOLLARS) == (
        "costs $0.50 less than B (materials -$0.50)",
        "costs $0.50 more than A (materials +$0.50)",
    )


def test_half_a_dollar_of_labor_alone() -> None:
    cheap, dear = way("80.00", "10.00"), way("80.50", "10.00")
    assert reasons_for([("A", cheap), ("B", dear)], DOLLARS) == (
        "costs $0.50 less than B (labor -$0.50)",
        "costs $0.50 more than A (labor +$0.50)",
    )


def test_the_hours_of_a_way_hold_a_supply_run_in_labor() -> None:
    stated = {"labor_hours": Decimal(4)}
    books = plain(supply_run_hours=Decimal("0.75"), supply_run_policy="in-labor")
    (only,) = bid(books, overrides=stated).routes
    assert only.hours == Decimal("4.75")


def test_two_cables_of_a_way_stand_side_by_side() -> None:
    runs = [
        {"id": name, "from": "a", "to": "b", "cable": cable, "way": "wall", "method": "bored"}
        for name, cable in (("1", "14-2"), ("2", "12-2"))
    ]
    (only,) = bid(runs=runs).routes
    first, second = only.order_text.split(", ")
    assert (first.split(" of ")[1], second.split(" of ")[1]) == ("14-2", "12-2")
