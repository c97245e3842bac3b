"""What to buy: truck stock first, whole packs, cable in one piece, prices nobody knows."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest

from estimator.catalog.records import Books
from estimator.pricing.records import Bid
from tests.pricing.made_books import HEAD, bid, line, plain, shipped, written
from tests.route.made_house import house

CABLE = """\
cable-14-2,"Cable, two 14, cut to length",ft,1,0.60,A,wire,goods,length,,,,,,,,2026-11-02,invented
cable-14-2,"Cable, two 14, 25 ft coil",ft,25,10.00,A,wire,goods,coil,,,,,,,,2026-11-02,invented
"""
PARTS = """\
staple,Staple,ea,1,0.10,A,wire,goods,,,,,,,,,2026-11-02,invented
cable-staple,"Staple, box of 100",ea,100,3.00,A,wire,goods,,,,,,,,,2026-11-02,invented
cable-staple,"Staple, box of 20",ea,20,1.00,B,wire,goods,,,,,,,,,2026-11-02,invented
dust-mask,Mask without a price,ea,2,,A,care,goods,,,,,,,,,2026-11-02,invented
"""


@pytest.fixture(name="books", scope="module")
def _books(tmp_path_factory: pytest.TempPathFactory) -> Books:
    folder: Path = tmp_path_factory.mktemp("books") / "own"
    return written(folder, house(), materials=HEAD + CABLE + PARTS, hours={})


def stock(item: str, **more: Any) -> dict[str, Any]:
    return {"truck_stock": [{"item": item} | more]}


def exposed(books: Books, length: int = 500, **tables: Any) -> Bid:
    """A typed run laid open: (length + 24) x 1.1 of cable, staples by the length."""
    legs = [{"go": "along", "length": length, "method": "exposed"}]
    runs = [{"id": "1", "from": "a", "to": "b", "cable": "14-2", "legs": legs}]
    return bid(books, runs=runs, **tables)


def test_each_item_stands_once_with_the_sum_of_its_lines() -> None:
    made = bid()
    items = [each.item for each in made.shopping]
    assert len(set(items)) == len(items)
    for each in made.shopping:
        parts = [part.quantity for part in made.takeoff.parts if part.item == each.item]
        assert each.need == sum(parts)


def test_what_is_bought_covers_what_is_to_buy() -> None:
    for each in bid().shopping:
        bought = sum(pack.pack_size * pack.count for pack in each.packs)
        assert bought >= each.to_buy
        assert each.why


def test_costs_are_packs_and_stock_to_the_cent() -> None:
    made = bid(**stock("dust-mask", quantity=1))
    for each in made.shopping:
        costs = [pack.cost for pack in each.packs] + [drawn.cost or 0 for drawn in each.stock]
        assert each.cost == sum(costs)
        assert all(pack.cost == pack.count * pack.price_each for pack in each.packs)
    assert made.price.materials_listed == sum(each.cost or 0 for each in made.shopping)


def test_whole_packs_at_least_cost(books: Books) -> None:
    """500 in: 2 + ceil(476 / 54) - 1 = 10 staples: a box of 20 at 1.00, not of 100 at 3.00."""
    staples = line(exposed(books), "cable-staple")
    assert staples.need == 10
    assert [(pack.pack_size, pack.count) for pack in staples.packs] == [(Decimal(20), 1)]
    assert staples.cost == Decimal("1.00")


@pytest.mark.parametrize(
    ("quantity", "drawn", "to_buy", "cost"),
    [
        ("4", 4, 6, "1.12"),  # 4 x 0.03, and a box of 20
        ("10", 10, 0, "0.30"),  # 10 x 0.03
        ("99", 10, 0, "0.30"),
    ],
)
def test_the_truck_gives_first(
    books: Books, quantity: str, drawn: int, to_buy: int, cost: str
) -> None:
    """Worked by hand: drawn at the lowest price of one on file, 3.00 / 100 = 0.03."""
    made = line(exposed(books, **stock("cable-staple", quantity=Decimal(quantity))), "cable-staple")
    assert (made.stock[0].quantity, made.to_buy) == (drawn, to_buy)
    assert made.cost == Decimal(cost)


def test_stock_at_its_own_cost(books: Books) -> None:
    table = stock("cable-staple", quantity=10, unit_cost=Decimal("0.055"))
    made = line(exposed(books, **table), "cable-staple")
    assert made.cost == Decimal("0.55")
    assert made.why == "all from the truck"


def test_several_boxes_on_the_truck_are_used_in_turn(books: Books) -> None:
    boxes = [{"item": "cable-staple", "quantity": each} for each in (3, 5, 9)]
    made = line(exposed(books, truck_stock=boxes), "cable-staple")
    assert [each.quantity for each in made.stock] == [3, 5, 2]


def test_cable_from_the_truck_in_one_piece(books: Books) -> None:
    """(72 + 24) x 1.1 = 105.6 in, 9 ft: a remnant of 9 ft holds the cut of 8 ft; 8.8 ft is used."""
    made = line(bid(books, **stock("cable-14-2", length="9 ft", unit_cost=Decimal("0.50"))),
                "cable-14-2")  # fmt: skip
    assert (made.need, made.packs, made.to_buy) == (9, (), 0)
    assert made.stock[0].quantity == Decimal("8.8")
    assert made.cost == Decimal("4.40")


def test_a_remnant_shorter_than_the_cut_is_no_help(books: Books) -> None:
    made = line(bid(books, **stock("cable-14-2", length="7 ft")), "cable-14-2")
    assert made.stock == ()
    assert [(pack.sold_as, pack.count, pack.cost) for pack in made.packs] == [
        ("length", 9, Decimal("5.40"))
    ]


@pytest.mark.parametrize(
    ("to_x", "sold_as", "cost"),
    [(92, "length", "5.40"), (196, "coil", "10.00"), (236, "coil", "10.00")],
)
def test_a_coil_where_it_costs_less(books: Books, to_x: int, sold_as: str, cost: str) -> None:
    """Worked by hand: 9 ft at 0.60; 19 ft would be 11.40 and 23 ft 13.80, a coil is 10.00."""
    made = line(bid(books, to_x=to_x), "cable-14-2")
    assert [pack.sold_as for pack in made.packs] == [sold_as]
    assert made.cost == Decimal(cost)
    assert made.description == "Cable, two 14"


def test_a_row_without_a_price_stays_on_the_list(books: Books) -> None:
    made = bid(books)
    mask = line(made, "dust-mask")
    assert (mask.cost, mask.packs, mask.to_buy) == (None, (), 2)
    assert mask.why == "in the materials book without a price"
    assert "dust-mask" in made.price.unpriced_items


def test_an_item_without_a_row_stays_on_the_list(books: Books) -> None:
    made = bid(books)
    plate = line(made, "plate-receptacle-1g")
    assert plate.cost is None
    assert plate.why.startswith("not in the materials book")
    assert plate.aisle == "other"
    priced = [each for each in made.shopping if each.cost is not None]
    assert {each.item for each in priced} == {"cable-14-2"}
    assert set(made.price.unpriced_items) == {each.item for each in made.shopping} - {"cable-14-2"}


def test_no_price_for_the_part_that_stock_does_not_cover(books: Books) -> None:
    made = line(bid(books, **stock("dust-mask", quantity=1, unit_cost=Decimal(1))), "dust-mask")
    assert (made.to_buy, made.cost) == (1, None)


def test_a_price_that_the_job_gives_goes_before_the_book(books: Books) -> None:
    prices = {"dust-mask": Decimal("1.25"), "cable-14-2": Decimal("0.10")}
    made = bid(books, overrides={"prices": prices})
    assert line(made, "dust-mask").cost == Decimal("2.50")
    assert line(made, "cable-14-2").cost == Decimal("0.90")
    assert line(made, "dust-mask").packs[0].supplier == "priced by the job"


def test_a_price_of_zero_is_a_price(books: Books) -> None:
    made = bid(books, overrides={"prices": {"dust-mask": Decimal(0)}})
    assert line(made, "dust-mask").cost == 0
    assert "dust-mask" not in made.price.unpriced_items


def test_no_coil_long_enough_is_said(tmp_path: Path) -> None:
    coil = CABLE.splitlines()[1].replace("25,10.00", "5,2.00")
    books = written(tmp_path / "b", house(), materials=f"{HEAD}{coil}\n", hours={})
    made = line(bid(books), "cable-14-2")
    assert made.cost is None
    assert "long enough" in made.why


def test_metric_cable_by_the_half_metre() -> None:
    """Worked by hand: 1800 + 400 = 2200 mm, x 1.1 = 2420, up to 2.5 m: five half metres."""
    job = {"id": "J", "title": "t", "units": "metric", "country": "GB"}
    cable = "2.5 mm2 2-core and earth"
    wall = {"id": "w", "length": 4200, "spacing": 600, "layout_from": 600, "stud_depth": 90}
    boxes = [
        {"id": name, "wall": "w", "x": x, "height": 300, "existing": name == "a",
         "cables": [cable] * (name == "a")}
        for name, x in (("a", 900), ("b", 2700))
    ]  # fmt: skip
    made = bid(shipped("metric"), job=job, walls=[wall], boxes=boxes,
               run={"cable": cable, "tail": 200})  # fmt: skip
    cut = line(made, "cable-2.5-2e")
    assert (cut.need, cut.unit) == (Decimal("2.5"), "m")
    assert cut.packs[0].pack_size * cut.packs[0].count >= Decimal("2.5")


def test_shipped_books_price_everything_of_a_plain_job() -> None:
    assert bid(plain()).price.unpriced_items == ()
