"""Boxes on file in millimetres, truck stock without cents, where a setting stands; by hand."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

import pytest

from estimator.catalog.records import Material
from estimator.pricing.books_for import books_for
from estimator.pricing.bought import Wanted, shelf, stock_drawn
from estimator.pricing.coils import choose_cable
from estimator.pricing.records import StockDrawn
from estimator.pricing.stock import stock_of
from estimator.problems import InputError
from estimator.survey.electrical import TruckStock
from estimator.survey.reader import job_from_text
from tests.pricing.made_books import bid, plain, with_terms
from tests.worked.job import SAMPLES


def on_file(**properties: str) -> Material:
    return Material(
        item="box-made", description="Box", unit="ea", pack_size=Decimal(1),
        pack_price=Decimal(1), supplier="Sample supply house", aisle="boxes", tax_class="goods",
        properties={"mount": "old-work"} | properties, priced_on=None, source="invented", row=2,
    )  # fmt: skip


@pytest.mark.parametrize(
    ("properties", "volume", "depth"),
    [
        ({"volume_ml": "300", "depth_mm": "63.5"}, Decimal("18.307123"), Fraction(5, 2)),
        ({"volume_in3": "20", "depth_in": "2.75"}, Decimal(20), Fraction(11, 4)),
        ({}, None, None),
    ],
)
def test_a_box_is_kept_in_inches(
    properties: dict[str, str], volume: Decimal | None, depth: Fraction | None
) -> None:
    """300 / 16.387064 = 18.307123; 63.5 / 25.4 = 2.5."""
    books = replace(plain(), materials={"box-made": (on_file(**properties),)})
    (box,) = stock_of(books).boxes
    assert (box.volume_in3, box.depth_in) == (volume, depth)


def test_truck_stock_costs_whole_units_of_the_currency() -> None:
    """3 x 12.5 = 37.5 -> 38 yen."""
    part = bid().takeoff.parts[0]
    stock = TruckStock(item=part.item, quantity=Decimal(3), unit_cost=Decimal("12.5"))
    wanted = Wanted(part, Decimal(3), shelf(()), (stock,))
    drawn = stock_drawn(with_terms(currency="JPY"), wanted, stock, Decimal(3))
    assert drawn == StockDrawn(part.item, Decimal(3), part.unit, Decimal("12.5"), Decimal(38))
    assert str(drawn.cost) == "38"


def test_a_setting_that_is_wrong_is_told_by_its_place_in_the_job() -> None:
    path = SAMPLES / "nightstand.toml"
    text = path.read_text(encoding="utf-8") + "\n[settings.price]\ntrip_charge = -4\n"
    with pytest.raises(InputError) as told:
        books_for(job_from_text(text, path))
    line = text.splitlines().index("trip_charge = -4") + 1
    (problem,) = told.value.problems
    assert problem.where.startswith(f"{path}: line {line}, settings.price.trip_charge")


def test_an_order_below_its_cuts_is_told_by_its_length() -> None:
    with pytest.raises(ValueError, match=r"^an order of 10 in is less than the cuts together$"):
        choose_cable([Fraction(11)], Fraction(10), [], [], [], str)
