"""Small steps that packs and cable share: a pack bought, stock drawn, one shopping line."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal
from functools import lru_cache

from estimator.catalog.records import Books, Material
from estimator.money import round_money
from estimator.pricing.packs import PackOffer
from estimator.pricing.records import PackBought, ShoppingLine, StockDrawn
from estimator.saying import said, word
from estimator.survey.electrical import TruckStock
from estimator.takeoff.records import PartLine

NOT_ON_FILE = said("not in the materials book: price it by hand, or add a row")
_SHELVES_KEPT = 4096
NO_PRICE = said("in the materials book without a price")


@dataclass(frozen=True, slots=True)
class Shelf:
    """All ways to buy one item: those with a price, and the same as offers to choose from.

    Attributes:
        offers: an offer's id is the place of its row in `priced`, so that a tie goes to the first.
    """

    ways: tuple[Material, ...]
    priced: tuple[Material, ...]
    offers: tuple[PackOffer, ...]

    @property
    def why_unpriced(self) -> str:
        """Why nothing can be said about the price."""
        return NO_PRICE if self.ways else NOT_ON_FILE


def shelf(ways: tuple[Material, ...]) -> Shelf:
    """Sort the rows of one item."""
    priced = tuple(row for row in ways if row.pack_price is not None)
    offers = tuple(
        PackOffer(f"{number:09d}", row.supplier, row.pack_size, row.pack_price or Decimal(0))
        for number, row in enumerate(priced)
    )
    return Shelf(ways, priced, offers)


@lru_cache(maxsize=_SHELVES_KEPT)
def shelf_of(books: Books, item: str) -> Shelf:
    """The shelf of one item, made once for each set of books."""
    return shelf(books.materials.get(item, ()))


@dataclass(frozen=True, slots=True)
class Wanted:
    """One item with what it is needed for, the ways to buy it and the truck stock of it."""

    part: PartLine
    need: Decimal
    shelf: Shelf
    stock: tuple[TruckStock, ...]


@dataclass(frozen=True, slots=True)
class Answer:
    """What to buy of one item; `known` is false where a price is missing."""

    to_buy: Decimal
    packs: tuple[PackBought, ...]
    drawn: tuple[StockDrawn, ...]
    known: bool
    why: str


def shopping_line(wanted: Wanted, answer: Answer, description: str) -> ShoppingLine:
    """One line of the list."""
    return ShoppingLine(
        item=wanted.part.item,
        description=word(description),
        aisle=word(wanted.shelf.ways[0].aisle if wanted.shelf.ways else "other"),
        unit=word(wanted.part.unit),
        need=wanted.need,
        to_buy=answer.to_buy,
        packs=answer.packs,
        stock=answer.drawn,
        cost=_cost(answer) if answer.known else None,
        why=answer.why,
    )


def _cost(answer: Answer) -> Decimal | None:
    """Packs and truck stock together; None where a part of it has no price."""
    costs = [*(pack.cost for pack in answer.packs), *(each.cost for each in answer.drawn)]
    known = [cost for cost in costs if cost is not None]
    return sum(known, Decimal(0)) if len(known) == len(costs) else None


def unit_price(ways: Iterable[Material]) -> Decimal | None:
    """The lowest price of one unit on file, not rounded; None where nothing has a price."""
    prices = [row.pack_price / row.pack_size for row in ways if row.pack_price is not None]
    return min(prices, default=None)


def stock_drawn(books: Books, wanted: Wanted, stock: TruckStock, quantity: Decimal) -> StockDrawn:
    """Truck stock used, at its stated cost, else at the lowest price on file."""
    each = stock.unit_cost if stock.unit_cost is not None else unit_price(wanted.shelf.ways)
    cost = None if each is None else round_money(each * quantity, books.shop.currency)
    return StockDrawn(stock.item, quantity, word(wanted.part.unit), each, cost)


def pack_bought(row: Material, count: int, currency: str) -> PackBought:
    """So many packs of one row of the book."""
    price = row.pack_price or Decimal(0)
    return PackBought(
        row.supplier,
        word(row.description),
        word(row.properties.get("sold_as") or "pack"),
        row.pack_size,
        word(row.unit),
        count,
        price,
        round_money(price * count, currency),
    )
