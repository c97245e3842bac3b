"""Books made for one purpose, and bids of small houses by them."""

from __future__ import annotations

import csv
from collections.abc import Mapping
from dataclasses import replace
from decimal import Decimal
from functools import cache
from pathlib import Path
from typing import Any

from estimator.catalog.books import read_books
from estimator.catalog.records import Books
from estimator.pricing.engine import estimate
from estimator.pricing.records import Bid, ShoppingLine
from estimator.survey.records import Survey
from tests.route.made_house import house

HEAD = (
    "item,description,unit,pack_size,pack_price,supplier,aisle,tax_class,sold_as,volume_in3,gangs,"
    "clamps,metal,depth_in,mount,holds,priced_on,source\n"
)
"""First line of a materials book."""

CATALOGS = Path(__file__).parents[2] / "catalogs"


@cache
def shipped(units: str = "us") -> Books:
    """The books that come along."""
    return read_books(CATALOGS / "metric" if units == "metric" else CATALOGS)


def with_terms(books: Books | None = None, *, currency: str = "USD", **terms: Any) -> Books:
    """The same books with other terms of price, labor rate, tax, deposit or form."""
    books = books or shipped()
    shop = books.shop
    price = {key: value for key, value in terms.items() if hasattr(shop.price, key)}
    tax = {key: value for key, value in terms.items() if hasattr(shop.tax, key)}
    deposit = {key: value for key, value in terms.items() if hasattr(shop.terms, key)}
    rate = {key: value for key, value in terms.items() if hasattr(shop.rate, key)}
    assert price.keys() | tax.keys() | deposit.keys() | rate.keys() == terms.keys()
    own = replace(
        shop,
        price=replace(shop.price, **price),
        rate=replace(shop.rate, **rate),
        tax=replace(shop.tax, **tax),
        terms=replace(shop.terms, **deposit),
        currency=currency,
    )
    return replace(books, shop=own)


PLAIN: dict[str, Any] = {
    "hours_basis": "likely", "minimum_charge": Decimal(0), "trip_charge": Decimal(0),
    "small_items_pct": Decimal(0), "overhead_pct": Decimal(0), "profit_pct": Decimal(0),
    "permit_cost": None, "permit_handling": Decimal(0), "mode": "none",
}  # fmt: skip


def plain(**terms: Any) -> Books:
    """The shipped books with no charge but labor and materials, and then these terms."""
    return with_terms(**(PLAIN | terms))


def bid(books: Books | None = None, **tables: Any) -> Bid:
    """The bid for a small house: one run of 72 in along a wall with boxes at both ends."""
    return estimate(house(**tables), books or plain())


def of_overrides(books: Books, **overrides: Any) -> Bid:
    """The bid of a job whose hours, materials or trips are stated."""
    return bid(books, overrides=overrides)


def line(made: Bid, item: str) -> ShoppingLine:
    """The shopping line of an item."""
    (only,) = (each for each in made.shopping if each.item == item)
    return only


def written(folder: Path, survey: Survey, *, materials: str, hours: Mapping[str, str]) -> Books:
    """Books in a folder: these materials, and no hours but these; the rest as shipped."""
    folder.mkdir(exist_ok=True)
    for name in ("shop.toml", "accounts.csv"):
        (folder / name).write_text((CATALOGS / name).read_text("utf-8"), "utf-8")
    (folder / "materials.csv").write_text(materials, "utf-8")
    with (CATALOGS / "labor.csv").open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    with (folder / "labor.csv").open("w", encoding="utf-8", newline="") as file:
        book = csv.DictWriter(file, list(rows[0]))
        book.writeheader()
        for row in rows:
            own = hours.get(row["task"], "0")
            figures = dict.fromkeys(("hours_low", "hours_likely", "hours_high"), own)
            book.writerow(row | figures | {"conditions": ""})
    return read_books(folder)
