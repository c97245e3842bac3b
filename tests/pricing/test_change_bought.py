"""Changes priced by what was really bought. All figures worked by hand (see change_case)."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

import pytest

from estimator.pricing.change import change_order
from estimator.pricing.change_bought import PaidFile, PaidLine
from estimator.pricing.change_records import ChangeOrder, ItemChange
from estimator.pricing.engine import estimate
from estimator.pricing.records import Bid
from tests.outputs.bid_factory import NAMES, sample_bid
from tests.pricing.change_case import changed, figures

CABLE, SCREWS = "cable-14-2", "screw-drywall"
OTHERWISE = {"tail_in": Fraction(40), "staple_spacing_in": Fraction(12)}
JOBS_OWN = "priced by the job"
Row = tuple[str, str, str]


def paid(*lines: tuple[str, str, str | None], had: bool = False) -> PaidFile:
    """Item, quantity and what was paid for it."""
    return PaidFile("paid.toml", tuple(
        PaidLine(item, item, Decimal(quantity), None if cost is None else Decimal(cost),
                 JOBS_OWN, had)
        for item, quantity, cost in lines
    ))  # fmt: skip


def item(order: ChangeOrder, key: str) -> ItemChange:
    return next(each for each in order.items if each.item == key)


def rows(order: ChangeOrder, key: str) -> list[Row]:
    """What one item's change is made of: what it is, how many, and their cost."""
    return [(row.what, f"{row.count:f}", f"{row.cost:.2f}") for row in item(order, key).rows]


def listed(order: ChangeOrder) -> tuple[str, str]:
    """Cost of materials added and dropped."""
    return str(order.price.added.listed), str(order.price.dropped.listed)


def test_what_was_not_bought_yet_is_set_against_the_first_bid() -> None:
    """20 screws bought: 4 more x 0.05 = 0.20. No cable yet: 14 x 0.50 - 11 x 0.50 = 1.50."""
    order = changed(paid=paid((SCREWS, "20", "1.20")))
    assert rows(order, SCREWS) == [("to buy", "4", "0.20")]
    assert rows(order, CABLE) == [("to buy", "14", "7.00"), ("in the first bid", "11", "5.50")]
    assert (item(order, CABLE).cost_added, listed(order)) == (Decimal("1.50"), ("1.70", "0.00"))


def test_cable_counts_in_the_piece_that_was_cut() -> None:
    """11 ft do not hold the cut of 143 in: 14 x 0.50. 24 - 20 screws, none bought: 0.20."""
    order = changed(paid=paid((CABLE, "11", "5.50")))
    assert rows(order, CABLE) == [("to buy", "14", "7.00")]
    assert rows(order, SCREWS) == [("to buy", "24", "1.20"), ("in the first bid", "20", "1.00")]
    assert listed(order) == ("7.20", "0.00")


def test_a_piece_that_was_cut_long_enough_is_enough() -> None:
    """14 ft were cut for the 11 of the list, so they are of the first bid, and hold the new cut."""
    order = changed(paid=paid((CABLE, "14", "8.40")))
    assert rows(order, CABLE) == []
    assert item(order, CABLE).cost_added == 0


def test_an_item_bought_in_part() -> None:
    """12 of 20 bought; of 24, 12 x 0.05 = 0.60 are to buy, 8 x 0.05 = 0.40 are in the bid."""
    order = changed(paid=paid((SCREWS, "12", "0.60")))
    assert rows(order, SCREWS) == [("to buy", "12", "0.60"), ("in the first bid", "8", "0.40")]
    assert item(order, SCREWS).cost_added == Decimal("0.20")


def test_what_goes_back_is_credited_at_the_price_paid() -> None:
    """24 screws for 2.40, 20 needed: 4 x 0.10 back. Cable not bought: 7.00 - 5.50 = 1.50 less."""
    order = changed(paid=paid((SCREWS, "24", "2.40")), backwards=True)
    assert rows(order, SCREWS) == [("goes back", "4", "0.40")]
    assert item(order, CABLE).cost_dropped == Decimal("1.50")
    assert listed(order) == ("0.00", "1.90")


def test_without_a_price_the_list_s_counts() -> None:
    """24 screws got, no price typed: 4 x 0.05 of the list."""
    order = changed(paid=paid((SCREWS, "24", None)), backwards=True)
    assert rows(order, SCREWS) == [("goes back", "4", "0.20")]
    assert order.bought is not None
    assert [part.price_from for part in order.bought.parts] == ["list"]


def test_what_was_bought_for_the_change_already_is_charged_as_paid() -> None:
    """A second piece of 14 ft for 8.40, as the 11 ft were too short: 8.40 more, none to buy."""
    order = changed(paid=paid((CABLE, "11", "5.50"), (CABLE, "14", "8.40")))
    assert rows(order, CABLE) == [("bought for it", "14", "8.40")]


def test_what_was_bought_beyond_the_list_goes_back_first_and_is_no_credit() -> None:
    """30 for 3.00, the list has 20, 24 are needed: 4 x 0.10 are charged, 6 go back unpaid for."""
    order = changed(paid=paid((SCREWS, "30", "3.00")))
    assert rows(order, SCREWS) == [("bought for it", "4", "0.40")]


def test_more_than_the_list_that_nobody_needs_costs_the_customer_nothing() -> None:
    order = changed(changes=(), paid=paid((SCREWS, "30", "3.00"), ("receptacle-20", "1", "9.99")))
    held = {each.item for each in order.items}
    assert not held & {SCREWS, "receptacle-20"}


def test_what_was_there_already_is_used_and_not_credited() -> None:
    """24 were there: enough for the change, and for the bid before it. None goes back for 20."""
    assert rows(changed(paid=paid((SCREWS, "24", None), had=True)), SCREWS) == []
    assert rows(changed(paid=paid((SCREWS, "24", None), had=True), backwards=True), SCREWS) == []


def test_a_price_that_does_not_come_out_to_the_cent() -> None:
    """24 for 1.00 is 0.041667 each; 4 x 0.041667 = 0.166668 -> 0.17."""
    order = changed(paid=paid((SCREWS, "24", "1.00")), backwards=True)
    assert item(order, SCREWS).rows[0].price_each == Decimal("0.041667")
    assert rows(order, SCREWS) == [("goes back", "4", "0.17")]


@pytest.mark.parametrize("quantity", ["7", "0.5"])
def test_what_is_no_whole_number_of_packs_is_a_pack_of_its_own(quantity: str) -> None:
    """The list has boxes of 50; 7 screws bought loose are one lot that goes back whole or not."""
    before = sample_bid("nightstand")
    line = PaidLine(SCREWS, "loose", Decimal(quantity), Decimal("1.00"), "Somewhere else")
    order = change_order(before, before.survey, before.books, paid=PaidFile("p", (line,)))
    assert order.bought is not None
    (part,) = order.bought.parts
    assert (part.description, part.pack_size, part.count) == ("loose", Decimal(quantity), 1)


def test_packs_of_the_list_are_told_by_their_quantity() -> None:
    """A box of 50 screws; 100 are two, of which the list needs one."""
    before = sample_bid("nightstand")
    line = PaidLine(SCREWS, "2 x box", Decimal(100), Decimal("6.40"), "Sample supply house")
    order = change_order(before, before.survey, before.books, paid=PaidFile("p", (line,)))
    assert order.bought is not None
    assert [
        (part.pack_size, part.count, part.price_each, part.beyond) for part in order.bought.parts
    ] == [
        (Decimal(50), 1, Decimal("3.20"), False), (Decimal(50), 1, Decimal("3.20"), True),
    ]  # fmt: skip


def whole_list(before: Bid) -> PaidFile:
    """The complete list at the prices of the list."""
    return PaidFile("all.toml", tuple(
        PaidLine(line.item, pack.description, pack.pack_size * pack.count, pack.cost, pack.supplier)
        for line in before.shopping for pack in line.packs
    ))  # fmt: skip


def two_bids(name: str, *, backwards: bool) -> tuple[Bid, Bid]:
    """A sample, and the same with longer tails and wider staples; or the other way round."""
    first = sample_bid(name)
    practice = replace(first.books.shop.practice, **OTHERWISE)
    books = replace(first.books, shop=replace(first.books.shop, practice=practice))
    pair = (first, estimate(first.survey, books))
    return (pair[1], pair[0]) if backwards else pair


@pytest.mark.parametrize("backwards", [False, True], ids=["more", "less"])
@pytest.mark.parametrize("name", NAMES)
def test_the_complete_list_at_book_prices_is_as_without_a_file(name: str, backwards: bool) -> None:
    before, after = two_bids(name, backwards=backwards)
    plain = change_order(before, after.survey, after.books)
    told = change_order(before, after.survey, after.books, paid=whole_list(before))
    assert (told.lines, told.items, told.price) == (plain.lines, plain.items, plain.price)


@pytest.mark.parametrize("backwards", [False, True], ids=["more", "less"])
@pytest.mark.parametrize("name", NAMES)
def test_an_empty_file_is_as_nothing_bought(name: str, backwards: bool) -> None:
    before, after = two_bids(name, backwards=backwards)
    shop = after.books.shop
    later = replace(shop, change=replace(shop.change, materials_bought=False))
    plain = change_order(before, after.survey, replace(after.books, shop=later))
    told = change_order(before, after.survey, after.books, paid=PaidFile("none.toml", ()))
    assert told.price == plain.price


def test_truck_stock_that_the_change_draws_is_charged() -> None:
    """The truck has 30 at 0.04: 20 drawn for the bid, 24 now, so 0.96 - 0.80 = 0.16 more."""
    truck = '\n[[truck_stock]]\nitem = "screw-drywall"\nquantity = 30\nunit_cost = 0.04\n'
    order = changed(truck + figures())
    assert rows(order, SCREWS) == [("from the truck", "24", "0.96"),
                                   ("in the first bid", "20", "0.80")]  # fmt: skip
    assert item(order, SCREWS).cost_added == Decimal("0.16")
