"""The shopping list for the terminal: what to put in the cart, aisle by aisle."""

from __future__ import annotations

from decimal import Decimal

from estimator.outputs.shopping_items import (
    OTHER_AISLE,
    TRUCK_AISLE,
    in_one_piece,
    packs_of,
)
from estimator.outputs.text_job import money, title_lines, unpriced_lines
from estimator.outputs.text_layout import heading, printable, wrapped
from estimator.outputs.unit_words import LENGTH, amount_in, amount_of, cost_with_price
from estimator.pricing.records import Bid, PackBought, ShoppingLine, StockDrawn
from estimator.saying import listed, said

BOX = "[ ] "


def shopping_text(bid: Bid) -> list[str]:
    """List what to buy by aisle, then what the truck holds, then what has no price."""
    language = bid.books.language
    bought = [line for line in bid.shopping if line.to_buy]
    aisles = dict.fromkeys(line.aisle for line in sorted(bought, key=lambda line: line.aisle))
    lines: list[str] = []
    for aisle in aisles:
        named = printable(language.say(aisle)).capitalize()
        lines += heading(named or language.say(OTHER_AISLE))
        lines += [row for line in bought if line.aisle == aisle for row in _line(bid, line)]
    total = money(bid, _cost(bid))
    together = said("Together {total} before tax, without small items.", total=total)
    return [
        *title_lines(bid, language),
        *lines,
        *_from_truck(bid),
        *unpriced_lines(bid, language),
        "",
        *_wrapped(bid, together),
    ]


def _wrapped(bid: Bid, text: str, first: str = "") -> list[str]:
    """Wrap a paragraph in the customer's language."""
    return wrapped(bid.books.language.say(text), first=first)


def _cost(bid: Bid) -> Decimal:
    packs = [pack.cost for line in bid.shopping for pack in line.packs]
    return sum(packs, Decimal(0))


def _line(bid: Bid, line: ShoppingLine) -> list[str]:
    """Show one item: each kind of pack with a box to tick, then why."""
    rows = [row for pack in line.packs for row in _pack(bid, line, pack)]
    if not rows:
        what = amount_of(line.to_buy, line.unit, line.description)
        rows = _wrapped(bid, said("{what}: price unknown", what=what), BOX)
    return [*rows, *_wrapped(bid, _need(line), f"{' ' * len(BOX)}  ")]


def _need(line: ShoppingLine) -> str:
    need = said("need {need}", need=amount_in(line.need, line.unit))
    return listed((need, line.why), "; ") if line.why else need


def _pack(bid: Bid, line: ShoppingLine, pack: PackBought) -> list[str]:
    what, cost = pack.description or line.description, money(bid, pack.cost)
    if pack.sold_as == LENGTH:
        return _bought(bid, in_one_piece(pack, what), pack, cost)
    if pack.count > 1:
        cost = cost_with_price(cost, money(bid, pack.price_each), pack)
    return _bought(bid, packs_of(pack, what), pack, cost)


def _bought(bid: Bid, what: str, pack: PackBought, price: str) -> list[str]:
    return _wrapped(bid, listed((what, pack.supplier, price), "; "), BOX)


def _from_truck(bid: Bid) -> list[str]:
    """Show what is taken from the truck."""
    drawn = [(line, stock) for line in bid.shopping for stock in line.stock]
    lines = [row for line, stock in drawn for row in _stock(bid, line, stock)]
    return [*heading(bid.books.language.say(TRUCK_AISLE)), *lines] if lines else []


def _stock(bid: Bid, line: ShoppingLine, stock: StockDrawn) -> list[str]:
    cost = said("no price") if stock.cost is None else money(bid, stock.cost)
    what = amount_of(stock.quantity, stock.unit, line.description)
    return _wrapped(
        bid, said("{what} ({item}): {cost}", what=what, item=stock.what, cost=cost), BOX
    )
