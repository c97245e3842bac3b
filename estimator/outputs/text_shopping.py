"""The shopping list for the terminal: what to put in the cart, aisle by aisle."""

from __future__ import annotations

from decimal import Decimal

from estimator.outputs.text_job import money, title_lines, unpriced_lines
from estimator.outputs.text_layout import heading, number, printable, wrapped
from estimator.pricing.records import Bid, PackBought, ShoppingLine, StockDrawn

BOX = "[ ] "


def shopping_text(bid: Bid) -> list[str]:
    """List what to buy by aisle, then what the truck holds, then what has no price."""
    bought = [line for line in bid.shopping if line.to_buy]
    aisles = sorted({line.aisle for line in bought})
    lines: list[str] = []
    for aisle in aisles:
        lines += heading(printable(aisle).capitalize() or "Other")
        lines += [row for line in bought if line.aisle == aisle for row in _line(bid, line)]
    return [
        *title_lines(bid),
        *lines,
        *_from_truck(bid),
        *unpriced_lines(bid),
        "",
        *wrapped(f"Together {money(bid, _cost(bid))} before tax, without small items."),
    ]


def _cost(bid: Bid) -> Decimal:
    packs = [pack.cost for line in bid.shopping for pack in line.packs]
    return sum(packs, Decimal(0))


def _line(bid: Bid, line: ShoppingLine) -> list[str]:
    """Show one item: each kind of pack with a box to tick, then why."""
    need = f"need {number(line.need)} {line.unit}"
    indent = " " * len(BOX)
    rows = [row for pack in line.packs for row in _pack(bid, line, pack)]
    if not rows:
        what = f"{number(line.to_buy)} {line.unit} {line.description}: price unknown"
        rows = wrapped(what, first=BOX)
    return [*rows, *wrapped(f"{need}; {line.why}" if line.why else need, first=f"{indent}  ")]


def _pack(bid: Bid, line: ShoppingLine, pack: PackBought) -> list[str]:
    what = pack.description or line.description
    if pack.sold_as == "length":
        piece = f"{number(pack.pack_size * pack.count)} {pack.unit} in one piece"
        return _bought(f"{piece}: {what}", pack, money(bid, pack.cost))
    each = f" ({money(bid, pack.price_each)} each)" if pack.count > 1 else ""
    return _bought(f"{pack.count} x {what}", pack, f"{money(bid, pack.cost)}{each}")


def _bought(what: str, pack: PackBought, price: str) -> list[str]:
    return wrapped(f"{what}; {pack.supplier}; {price}", first=BOX)


def _from_truck(bid: Bid) -> list[str]:
    """Show what is taken from the truck."""
    drawn = [(line, stock) for line in bid.shopping for stock in line.stock]
    lines = [row for line, stock in drawn for row in _stock(bid, line, stock)]
    return [*heading("From the truck"), *lines] if lines else []


def _stock(bid: Bid, line: ShoppingLine, stock: StockDrawn) -> list[str]:
    cost = "no price" if stock.cost is None else money(bid, stock.cost)
    amount = f"{number(stock.quantity)} {stock.unit}"
    return wrapped(f"{amount} {line.description} ({stock.what}): {cost}", first=BOX)
