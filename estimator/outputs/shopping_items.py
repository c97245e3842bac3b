"""Things to get, one by one, as the page and the message for a phone show them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from estimator.outputs.text_layout import number
from estimator.outputs.unit_words import LENGTH, amount_in, amount_of
from estimator.pricing.records import Bid, PackBought, ShoppingLine, StockDrawn
from estimator.saying import capital, said

NO_PRICE = said("no price in the book")
TRUCK_AISLE = said("From the truck")
OTHER_AISLE = said("Other")


@dataclass(frozen=True, slots=True)
class Item:
    """One thing to get; its texts are sayings.

    Attributes:
        key: the same on every run for the same list; ticks are remembered by it.
        item: key in the materials book. quantity: in its unit.
        what: what to look for. why: what it is for.
        cost: what the list expects to pay; None where the book has no price.
        pack: where the price of one is shown beside the cost.
    """

    key: str
    aisle: str
    item: str
    what: str
    detail: str
    why: str
    quantity: Decimal
    unit: str
    supplier: str
    cost: Decimal | None
    pack: PackBought | None
    kind: Literal["buy", "truck"]


def items_of(bid: Bid) -> tuple[Item, ...]:
    """Everything to get: what is bought, aisle by aisle, then what the truck gives."""
    lines = sorted(bid.shopping, key=lambda line: (not line.aisle, line.aisle))
    bought = (item for line in lines for item in _bought(line))
    drawn = (item for line in lines for item in _drawn(line))
    return (*bought, *drawn)


def _bought(line: ShoppingLine) -> Iterator[Item]:
    for at, pack in enumerate(line.packs, start=1):
        what, size = _pack_words(line, pack)
        several_of_it = pack.count > 1 or pack.sold_as == LENGTH
        yield Item(
            key=f"{line.item}/{at}",
            aisle=_aisle(line),
            item=line.item,
            what=what,
            detail=size,
            why=_why(line),
            quantity=pack.pack_size * pack.count,
            unit=pack.unit,
            supplier=pack.supplier,
            cost=pack.cost,
            pack=pack if several_of_it else None,
            kind="buy",
        )
    if line.to_buy and not line.packs:
        yield _unpriced(line)


def _pack_words(line: ShoppingLine, pack: PackBought) -> tuple[str, str]:
    """How many of what, and how large each pack is."""
    what = pack.description or line.description
    if pack.sold_as == LENGTH:
        return in_one_piece(pack, what), ""
    if pack.pack_size == 1:
        return packs_of(pack, what), ""
    held = amount_in(pack.pack_size, pack.unit)
    return packs_of(pack, what), said("{amount} in each", amount=held)


def in_one_piece(pack: PackBought, what: str) -> str:
    """A length to be cut from a reel."""
    whole = number(pack.pack_size * pack.count)
    return said("{length} {unit} in one piece: {what}", length=whole, unit=pack.unit, what=what)


def packs_of(pack: PackBought, what: str) -> str:
    """So many of a thing."""
    return said("{count} x {what}", count=pack.count, what=what)


def _unpriced(line: ShoppingLine) -> Item:
    return Item(
        key=f"{line.item}/0",
        aisle=_aisle(line),
        item=line.item,
        what=amount_of(line.to_buy, line.unit, line.description),
        detail="",
        why=_why(line),
        quantity=line.to_buy,
        unit=line.unit,
        supplier="",
        cost=None,
        pack=None,
        kind="buy",
    )


def _drawn(line: ShoppingLine) -> Iterator[Item]:
    for at, stock in enumerate(line.stock, start=1):
        yield Item(
            key=f"{line.item}/truck{at}",
            aisle=TRUCK_AISLE,
            item=line.item,
            what=amount_of(stock.quantity, stock.unit, line.description),
            detail=_stock_words(line, stock),
            why=_why(line),
            quantity=stock.quantity,
            unit=stock.unit,
            supplier="",
            cost=stock.cost,
            pack=None,
            kind="truck",
        )


def _stock_words(line: ShoppingLine, stock: StockDrawn) -> str:
    """Which piece on the truck, where that says more than the name."""
    return "" if stock.what in ("", line.description) else stock.what


def _aisle(line: ShoppingLine) -> str:
    return capital(line.aisle) if line.aisle else OTHER_AISLE


def _why(line: ShoppingLine) -> str:
    need = amount_in(line.need, line.unit)
    if not line.why:
        return said("The work needs {need}.", need=need)
    return said("The work needs {need}: {why}", need=need, why=line.why)


def expected(items: tuple[Item, ...]) -> Decimal:
    """What all that is bought should cost before tax, where there is a price."""
    costs = (item.cost for item in items if item.kind == "buy" and item.cost is not None)
    return sum(costs, Decimal(0))
