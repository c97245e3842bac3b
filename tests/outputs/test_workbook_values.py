"""What is stored in the workbook, read by openpyxl without reckoning, is what the engine found."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest
from openpyxl import Workbook

from estimator.pricing.records import Bid
from tests.outputs.bid_factory import NAMES, full_bid, full_file, sample_bid, sample_file
from tests.outputs.spreadsheet import opened

CENT = Decimal("0.01")
# Defined name of a cell, and the field of the price or hours that it must show.
AMOUNTS = {
    "labor_amount": "labor", "materials_listed": "materials_listed", "small_items": "small_items",
    "materials_cost": "materials_cost", "materials_sold": "materials_sell",
    "trips_amount": "trips", "base_amount": "base", "overhead_amount": "overhead",
    "profit_amount": "profit", "built_up": "built_up", "offered": "offered",
    "before_tax": "before_tax", "tax_amount": "tax", "bid_total": "total",
    "deposit_amount": "deposit", "balance_amount": "balance", "labor_rate": "labor_rate_per_hour",
    "trip_charge": "trip_charge", "minimum_charge": "minimum_charge",
    "permit_cost": "permit_cost", "permit_handling": "permit_handling",
}  # fmt: skip
RATES = {
    "small_items_rate": "small_items_pct", "markup_rate": "markup_pct",
    "overhead_rate": "overhead_pct", "profit_rate": "profit_pct", "tax_rate": "tax_rate_pct",
    "deposit_rate": "deposit_pct",
}  # fmt: skip
BIDS = [*NAMES, "everything"]


def bid_and_values(name: str) -> tuple[Bid, Workbook]:
    if name == "everything":
        return full_bid(), opened(full_file(), values=True)
    return sample_bid(name), opened(sample_file(name), values=True)


def named(book: Workbook, name: str) -> Any:
    """What stands in the cell of a defined name."""
    sheet, place = book.defined_names[name].attr_text.rsplit("!", 1)
    return book[sheet.strip("'")][place.replace("$", "")].value


def cents(value: Any) -> Decimal:
    return Decimal(repr(value)).quantize(CENT)


def rows(book: Workbook, sheet: str, table: str) -> list[dict[str, Any]]:
    """The rows of a named table, by header."""
    cells = book[sheet][book[sheet].tables[table].ref]
    headers = [cell.value for cell in cells[0]]
    return [dict(zip(headers, (cell.value for cell in row), strict=True)) for row in cells[1:]]


@pytest.mark.parametrize("name", BIDS)
def test_every_amount_of_the_price_is_stored_to_the_cent(name: str) -> None:
    bid, book = bid_and_values(name)
    stored = {cell: cents(named(book, cell)) for cell in AMOUNTS}
    assert stored == {cell: getattr(bid.price, field) for cell, field in AMOUNTS.items()}


@pytest.mark.parametrize("name", BIDS)
def test_rates_are_stored_as_the_fraction_that_a_percent_cell_shows(name: str) -> None:
    bid, book = bid_and_values(name)
    stored = {cell: Decimal(repr(named(book, cell))) * 100 for cell in RATES}
    assert stored == {cell: getattr(bid.price, field) for cell, field in RATES.items()}


@pytest.mark.parametrize("name", BIDS)
def test_hours_are_stored_as_the_engine_found_them(name: str) -> None:
    bid, book = bid_and_values(name)
    for part in ("low", "likely", "high", "expected", "charged"):
        assert named(book, f"hours_{part}") == float(getattr(bid.hours, part))
    low = [Decimal(repr(row["Hours low"])) for row in rows(book, "Labor", "Tasks")]
    assert low == [line.hours_low for line in bid.labor]


@pytest.mark.parametrize("name", BIDS)
def test_shopping_costs_are_stored_to_the_cent_or_as_the_word_unknown(name: str) -> None:
    bid, book = bid_and_values(name)
    stored = {row["Item"]: row["Cost"] for row in rows(book, "Shopping list", "Needs")}
    for line in bid.shopping:
        found = stored[line.item]
        assert (found if line.cost is None else cents(found)) == (line.cost or "unknown")


@pytest.mark.parametrize("name", BIDS)
def test_packs_to_buy_are_those_of_the_engine(name: str) -> None:
    bid, book = bid_and_values(name)
    bought = [
        (row["Item"], row["Packs"], row["Pack size"])
        for row in rows(book, "Shopping list", "To_get")
        if row["From"] not in ("truck", "no price in the book")
    ]
    packs = [(line.item, pack) for line in bid.shopping for pack in line.packs]
    assert sorted(bought) == sorted((item, p.count, float(p.pack_size)) for item, p in packs)


@pytest.mark.parametrize("name", BIDS)
def test_the_takeoff_lists_every_part_and_task_with_its_quantity(name: str) -> None:
    bid, book = bid_and_values(name)
    parts = {row["Line"]: row["Quantity"] for row in rows(book, "Takeoff", "Parts")}
    assert parts == {part.line_id: float(part.quantity) for part in bid.takeoff.parts}
    work = {row["Line"]: row["Quantity"] for row in rows(book, "Takeoff", "Work")}
    assert work == {task.line_id: float(task.quantity) for task in bid.takeoff.tasks}


def test_the_cable_block_shows_the_sum_worked_by_hand() -> None:
    # S1, worked by hand: path 95, tails 24, cut 119, with 10 % 130.9, order 11 ft.
    _, book = bid_and_values("nightstand")
    steps = {row["What"]: row["Quantity"] for row in rows(book, "Takeoff", "Cable_sums")}
    assert steps == {
        "Path": 95, "Extra at corners": 0, "Extra at obstacles": 0, "Tails": 24, "Cut": 119,
        "All cuts": 119, "Allowance": 10, "With allowance": 130.9, "Step to order in": 12,
        "To order": 11,
    }  # fmt: skip


def test_the_metric_cable_block_shows_the_sum_worked_by_hand() -> None:
    # S10, worked by hand: cuts 2200 and 2100 mm, 4300 x 1.15 = 4945, 5.0 m.
    _, book = bid_and_values("lounge")
    lines = [(row["What"], row["Quantity"], row["Unit"])
             for row in rows(book, "Takeoff", "Cable_sums")]  # fmt: skip
    assert [line for line in lines if line[0] == "Cut"] == [
        ("Cut", 2200, "mm"),
        ("Cut", 2100, "mm"),
    ]
    assert ("With allowance", 4945, "mm") in lines
    assert lines[-1] == ("To order", 5, "m")


def test_the_minimum_charge_is_said_to_govern_where_it_does() -> None:
    _, book = bid_and_values("closet-charger")
    said = [cell.value for row in book["Price build-up"].iter_rows() for cell in row]
    assert "The larger of the two: the minimum charge governs." in said
    assert named(book, "bid_total") == 225


@pytest.mark.parametrize("name", BIDS)
def test_the_books_tie_to_the_total(name: str) -> None:
    bid, book = bid_and_values(name)
    lines = rows(book, "Books", "Book_lines")
    assert sum(cents(row["Price"]) for row in lines) == bid.price.total
    accounts = rows(book, "Books", "Accounts")
    assert sum(cents(row["Price"]) for row in accounts) == bid.price.total
    assert "ties to the total" in {cell.value for row in book["Books"].iter_rows() for cell in row}


def test_items_without_a_price_are_named_unknown_counted_and_left_out() -> None:
    bid, book = bid_and_values("everything")
    assert len(bid.price.unpriced_items) == 2
    assert named(book, "unpriced_count") == 2
    prices = {row["Item"]: row["Price each"] for row in rows(book, "Shopping list", "To_get")}
    assert [prices[item] for item in bid.price.unpriced_items] == ["unknown", "unknown"]
    said = [cell.value for cell in book["Bid"]["B"]]
    assert "2 item(s) have no price yet; the total leaves them out." in said
