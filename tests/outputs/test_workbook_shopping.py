"""Packs on the shopping list stay live: the last kind covers what the others leave."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from functools import cache

import pytest

from estimator.outputs.workbook import bid_workbook
from estimator.pricing.records import Bid, PackBought, StockDrawn
from tests.outputs.bid_factory import sample_bid
from tests.outputs.spreadsheet import cells, reckoned
from tests.outputs.test_workbook_changed import retyped, row_of

ITEM = "receptacle-15"
LIST = "Shopping list"
TEN = PackBought("North", "ten in a box", "pack", Decimal(10), "ea", 1, Decimal(9), Decimal(9))
ONE = PackBought("North", "single", "pack", Decimal(1), "ea", 3, Decimal("1.10"), Decimal("3.30"))
DRAWN = StockDrawn(ITEM, Decimal(2), "ea", Decimal("0.50"), Decimal(1))


def bid_with(need: int, packs: tuple[PackBought, ...], stock: tuple[StockDrawn, ...] = ()) -> Bid:
    """The nightstand job needing so many receptacles, bought as said."""
    bid = sample_bid("nightstand")
    drawn = sum((each.quantity for each in stock), Decimal(0))
    cost = sum((pack.cost for pack in packs), Decimal(0))
    cost += sum((each.cost or Decimal(0) for each in stock), Decimal(0))
    shopping = tuple(
        replace(line, need=Decimal(need), to_buy=need - drawn, packs=packs, stock=stock, cost=cost)
        if line.item == ITEM else line
        for line in bid.shopping
    )  # fmt: skip
    parts = tuple(
        replace(part, quantity=Decimal(need)) if part.item == ITEM else part
        for part in bid.takeoff.parts
    )
    return replace(bid, shopping=shopping, takeoff=replace(bid.takeoff, parts=parts))


@cache
def two_kinds() -> bytes:
    """Thirteen: one box of ten, and three singles."""
    return bid_workbook(bid_with(13, (TEN, ONE)))


@cache
def too_many() -> bytes:
    """Three, bought as two tens: more than the number asks for."""
    return bid_workbook(bid_with(3, (replace(TEN, count=2, cost=Decimal(18)),)))


@cache
def outcomes() -> dict[str, bytes]:
    """Files after typing, reckoned in one start."""
    part = f"Takeoff!E{row_of(two_kinds(), 'Takeoff', 'C', ITEM)}"
    get = row_of(two_kinds(), LIST, "D", ITEM)
    stocked = bid_workbook(bid_with(13, (TEN, replace(ONE, count=1)), (DRAWN,)))
    drawn = f"{LIST}!E{row_of(stocked, LIST, 'B', 'truck')}"
    return reckoned({
        "as written": two_kinds(),
        "sixteen": retyped(two_kinds(), {part: 16}),
        "two boxes": retyped(two_kinds(), {f"{LIST}!E{get}": 2}),
        "none": retyped(two_kinds(), {part: 0}),
        "too many": too_many(),
        "too many of forty": retyped(too_many(), {part: 40}),
        "from the truck": stocked,
        "more from the truck": retyped(stocked, {drawn: 3}),
    })  # fmt: skip


def counts(name: str) -> list[object]:
    """Packs of each kind of the item, in order, as reckoned."""
    found = cells(outcomes()[name])
    rows = [place[1][1:] for place, cell in found.items()
            if place[0] == LIST and place[1][0] == "D" and cell.value == ITEM]  # fmt: skip
    return [found[LIST, f"E{row}"].value for row in rows[:-1]]


@pytest.mark.parametrize(
    ("name", "want"),
    [
        ("as written", [1, 3]),
        ("sixteen", [1, 6]),  # 16 - 10
        ("two boxes", [2, 0]),  # 20 are enough for 13
        ("none", [1, 0]),
        ("too many", [2]),
        ("too many of forty", [4]),  # two was the least, four are needed
        ("from the truck", [2, 1, 1]),  # 13 - 2 - 10
        ("more from the truck", [3, 1, 0]),
    ],
)
def test_the_last_kind_of_pack_covers_the_rest(name: str, want: list[int]) -> None:
    assert counts(name) == want


@pytest.mark.parametrize(("name", "cost"), [("as written", 12.30), ("sixteen", 15.60),
                                            ("from the truck", 11.10)])  # fmt: skip
def test_costs_follow_the_counts(name: str, cost: float) -> None:
    # 9.00 + 3 x 1.10; 9.00 + 6 x 1.10; 1.00 + 9.00 + 1.10, by hand.
    found = cells(outcomes()[name])
    rows = [place[1][1:] for place, cell in found.items()
            if place[0] == LIST and place[1][0] == "D" and cell.value == ITEM]  # fmt: skip
    assert found[LIST, f"J{rows[-1]}"].value == pytest.approx(cost)


def test_a_count_that_is_not_live_may_be_typed_over() -> None:
    get = row_of(two_kinds(), LIST, "D", ITEM)
    found = cells(two_kinds())
    assert not found[LIST, f"E{get}"].formula
    assert found[LIST, f"E{get + 1}"].formula.startswith("MAX(ROUNDUP(")


def test_what_is_left_over_is_shown() -> None:
    found = cells(too_many())
    needs = [place[1][1:] for place, cell in found.items()
             if place[0] == LIST and place[1][0] == "D" and cell.value == ITEM]  # fmt: skip
    assert found[LIST, f"I{needs[-1]}"].value == 17  # 20 bought, 3 needed
