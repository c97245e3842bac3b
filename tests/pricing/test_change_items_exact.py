"""What a change buys, gives back and compares, item by item; every row worked by hand."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal
from functools import cache

import pytest

from estimator.pricing.change_items import item_changes
from estimator.pricing.change_records import ItemChange, PackRow
from estimator.pricing.records import Bid, PackBought, ShoppingLine, StockDrawn
from tests.pricing.change_case import changed

SCREWS, CABLE = "screw-drywall", "cable-14-2"
Pack = tuple[str, str, int, str]
"""What it is, how much is in one, how many, the price of one."""


@cache
def nightstand() -> Bid:
    return changed(changes=()).before


def listed(
    need: str, packs: Sequence[Pack] = (), stock: Sequence[StockDrawn] = (), *,
    item: str = SCREWS, priced: bool = True, sold_as: str = "pack",
) -> ShoppingLine:  # fmt: skip
    """A line of a list; the cost is not looked at but for whether there is one."""
    bought = tuple(
        PackBought("Sample supply house", what, sold_as, Decimal(size), "each", count,
                   Decimal(price), Decimal(price) * count)
        for what, size, count, price in packs
    )  # fmt: skip
    cost = Decimal(1) if priced else None
    return ShoppingLine(
        item, "Screws", "", "each", Decimal(need), Decimal(0), bought, tuple(stock), cost, "reason"
    )


def one(old: ShoppingLine | None, new: ShoppingLine | None, *, bought: bool) -> ItemChange:
    """The change of the one item on two lists."""
    before = replace(nightstand(), shopping=() if old is None else (old,))
    (found,) = item_changes(before, () if new is None else (new,), bought=bought)
    return found


def test_whole_packs_go_back_the_dearest_first() -> None:
    """14 bought as a box of 10 and 4 single, 3 needed: of 11 spare the box goes back, and one."""
    old = listed("14", [("single", "1", 4, "0.50"), ("box of 10", "10", 1, "4.00")])
    assert one(old, listed("3"), bought=True) == ItemChange(
        SCREWS, "Screws", "each", Decimal(14), Decimal(3),
        (PackRow("goes back", "box of 10", Decimal(1), Decimal("4.00"), Decimal("4.00")),
         PackRow("goes back", "single", Decimal(1), Decimal("0.50"), Decimal("0.50"))),
        Decimal(0), Decimal("4.50"), "whole packs that are no longer needed go back",
    )  # fmt: skip


def test_what_the_truck_gave_is_used_before_the_packs() -> None:
    """4 single and 5 from the truck; 7 needed: 2 of the packs are, so 2 go back."""
    drawn = StockDrawn("Screws", Decimal(5), "each", None, None)
    old = listed("9", [("single", "1", 4, "0.50")], [drawn])
    (row,) = one(old, listed("7"), bought=True).rows
    assert (row.count, row.cost) == (Decimal(2), Decimal("1.00"))


@pytest.mark.parametrize(
    ("item", "after", "back", "why"),
    [
        (SCREWS, "10", 1, "whole packs that are no longer needed go back"),
        (CABLE, "10", 0, "what was bought stays: it is opened, cut, or still needed in part"),
        (CABLE, "0", 2, "whole packs that are no longer needed go back"),
        (SCREWS, "41", 0, "what was bought for the first bid is enough"),
        (SCREWS, "39", 0, "what was bought stays: it is opened, cut, or still needed in part"),
    ],
)
def test_of_cable_coils_go_back_only_where_none_is_needed(
    item: str, after: str, back: int, why: str
) -> None:
    """2 x 25 bought for 40; of 10 needed one would be left whole."""
    coils = [("coil", "25", 2, "9.00")]
    old, new = listed("40", coils, item=item, sold_as="coil"), listed(after, item=item)
    got = one(old, new, bought=True)
    assert (sum(row.count for row in got.rows), got.why) == (back, why)
    assert got.cost_dropped == 9 * back


def test_lengths_that_were_cut_never_go_back() -> None:
    old = listed("4", [("cut", "1", 4, "0.50")], sold_as="length")
    assert one(old, None, bought=True).rows == ()


def test_what_goes_beyond_the_first_parts_is_bought() -> None:
    new = listed("9", [("single", "1", 4, "0.50"), ("box of 5", "5", 1, "2.00")])
    got = one(listed("1"), new, bought=True)
    assert got.rows == (
        PackRow("to buy", "single", Decimal(4), Decimal("0.50"), Decimal("2.00")),
        PackRow("to buy", "box of 5", Decimal(1), Decimal("2.00"), Decimal("2.00")),
    )
    assert (got.cost_added, got.cost_dropped, got.why) == (Decimal("4.00"), Decimal(0), "reason")


@pytest.mark.parametrize(
    ("turned", "added", "dropped"), [(False, "1.25", "0"), (True, "0", "1.25")]
)
def test_two_lists_side_by_side_with_what_the_truck_gives(
    turned: bool, added: str, dropped: str
) -> None:
    """0.50 from the truck, against 0.75 from it and 2 x 0.50 bought; what has no price is out."""
    quarter = Decimal("0.25")
    first = listed("2", stock=[StockDrawn("Screws", Decimal(2), "each", quarter, 2 * quarter)])
    drawn = [StockDrawn("Screws", Decimal(3), "each", quarter, 3 * quarter),
             StockDrawn("Screws", Decimal(9), "each", None, None)]  # fmt: skip
    second = listed("5", [("single", "1", 2, "0.50")], drawn)
    got = one(second, first, bought=False) if turned else one(first, second, bought=False)
    assert (got.cost_added, got.cost_dropped) == (Decimal(added), Decimal(dropped))
    assert got.why == "the difference of the two shopping lists"
    a, b = ("new list", "first list") if turned else ("first list", "new list")
    assert {
        (row.what, row.description, row.count, row.price_each, row.cost) for row in got.rows
    } == {
        (a, "Screws, from the truck", Decimal(2), quarter, Decimal("0.50")),
        (b, "Screws, from the truck", Decimal(3), quarter, Decimal("0.75")),
        (b, "single", Decimal(2), Decimal("0.50"), Decimal("1.00")),
    }


def test_lists_that_cost_the_same_show_no_row() -> None:
    packs = [("single", "1", 4, "0.50")]
    got = one(listed("3", packs), listed("4", packs), bought=False)
    assert (got.rows, got.cost_added, got.why) == (
        (),
        Decimal(0),
        "the difference of the two shopping lists",
    )


@pytest.mark.parametrize("bought", [True, False])
def test_a_new_list_without_a_price_leaves_the_cost_unknown(bought: bool) -> None:
    got = one(listed("3"), listed("4", priced=False), bought=bought)
    assert (got.cost_added, got.cost_dropped, got.rows, got.why) == (None, Decimal(0), (), "reason")
