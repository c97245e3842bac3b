"""What counts as bought when a change is priced: packs and lengths, and what each cost."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from decimal import Decimal
from fractions import Fraction
from typing import Literal

from estimator.measures import LENGTH_IN, to_decimal
from estimator.money import round_money
from estimator.pricing.records import Bid, PackBought, ShoppingLine
from estimator.survey.electrical import TruckStock
from estimator.survey.records import Survey

CUT = "length"
_ZERO = Decimal(0)
_PRICE_PLACES = 6


@dataclass(frozen=True, slots=True)
class PaidLine:
    """One line of a file that says what was bought.

    Attributes:
        what: as the file has it. quantity: in the item's unit.
        paid: for all of it before tax; None where the file does not say.
        had: it was there already, so it was not bought.
    """

    item: str
    what: str
    quantity: Decimal
    paid: Decimal | None
    supplier: str = ""
    had: bool = False


@dataclass(frozen=True, slots=True)
class PaidFile:
    """A file that says what was bought; `notes` are about lines that do not count."""

    name: str
    lines: tuple[PaidLine, ...]
    notes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class BoughtPart:
    """Packs of one kind that are there; a length is pack_size x count in one piece.

    Attributes:
        price_each: of one pack (of one step of a length); None where nothing says it.
        price_from: "file" is what was paid, "list" the price of the list or the book.
        had: it was there already: it is used first, and does not go back.
        beyond: more than the first list asks for, so that the first bid holds no price for it.
    """

    item: str
    description: str
    unit: str
    supplier: str
    sold_as: str
    pack_size: Decimal
    count: int
    price_each: Decimal | None
    price_from: Literal["file", "list", "nothing"]
    had: bool = False
    beyond: bool = False

    @property
    def quantity(self) -> Decimal:
        """How much it is, in the item's unit."""
        return self.pack_size * self.count


@dataclass(frozen=True, slots=True)
class CountedAsBought:
    """The file that a change goes by, and what of it counts as bought."""

    file: str
    parts: tuple[BoughtPart, ...]
    notes: tuple[str, ...]


def list_parts(before: Bid) -> tuple[BoughtPart, ...]:
    """Everything on the first list, at the prices of the list."""
    return tuple(_of_pack(line, pack) for line in before.shopping for pack in line.packs)


def _of_pack(line: ShoppingLine, pack: PackBought) -> BoughtPart:
    return BoughtPart(
        item=line.item,
        description=pack.description,
        unit=line.unit,
        supplier=pack.supplier,
        sold_as=pack.sold_as,
        pack_size=pack.pack_size,
        count=pack.count,
        price_each=pack.price_each,
        price_from="list",
    )


def paid_parts(before: Bid, paid: PaidFile) -> tuple[BoughtPart, ...]:
    """What a file says was bought, as packs of the list or of the book.

    A line that is no whole number of packs is one pack of its own. What was there already comes
    first; of the rest, what goes beyond the first list is told apart.
    """
    lines = sorted(paid.lines, key=lambda line: not line.had)
    room = {line.item: _asked(line) for line in before.shopping}
    parts: list[BoughtPart] = []
    for part in (_part(before, line) for line in lines):
        for piece in _split(part, room.get(part.item, _ZERO)):
            parts.append(piece)
            room[part.item] = room.get(part.item, _ZERO) - piece.quantity
    return tuple(parts)


def _asked(line: ShoppingLine) -> Decimal:
    """How much of an item the first list says to buy: what is needed, or the packs for it."""
    return max(line.to_buy, sum((pack.pack_size * pack.count for pack in line.packs), _ZERO))


def _split(part: BoughtPart, room: Decimal) -> Iterator[BoughtPart]:
    """Tell packs within the list from those beyond it; one that is begun is within."""
    within = min(part.count, max(0, -int(-room // part.pack_size)))
    if part.had or part.sold_as == CUT:
        within = part.count if room > 0 or part.had else 0
    if within:
        yield replace(part, count=within)
    if within < part.count:
        yield replace(part, count=part.count - within, beyond=True)


def _part(before: Bid, line: PaidLine) -> BoughtPart:
    """One line of the file as packs, at the price paid where it says one."""
    found = _known_pack(before, line)
    part = replace(found, supplier=line.supplier or found.supplier, had=line.had)
    if line.paid is None:
        return part
    each = _each(line.paid, part.count, before.books.shop.currency)
    return replace(part, price_each=each, price_from="file")


def _each(paid: Decimal, count: int, currency: str) -> Decimal:
    """The price of one pack, to the cent where it comes out so."""
    each = to_decimal(Fraction(paid) / count, _PRICE_PLACES)
    cents = round_money(each, currency)
    return cents if cents == each else each


def _known_pack(before: Bid, line: PaidLine) -> BoughtPart:
    """The packs that a line stands for: of the list, then of that shop's rows, else one of its own.

    Of packs that the quantity can be made of, the largest counts: fewest packs were opened.
    """
    listed = [part for part in list_parts(before) if part.item == line.item]
    same = [part for part in listed if part.quantity == line.quantity]
    sized = [part for part in listed if _fits(part, line)]
    shop = [part for part in _of_book(before, line) if _fits(part, line)]
    for found in (same, sized, shop):
        if found:
            best = max(found, key=lambda part: (part.supplier == line.supplier, part.pack_size))
            return replace(best, count=int(line.quantity / best.pack_size))
    unit = unit_of(before, line.item)
    return BoughtPart(
        line.item, line.what, unit, line.supplier, "pack", line.quantity, 1, None, "nothing"
    )


def _fits(part: BoughtPart, line: PaidLine) -> bool:
    return line.quantity % part.pack_size == 0


def _of_book(before: Bid, line: PaidLine) -> Iterator[BoughtPart]:
    """Every row of the book for an item from one shop."""
    for row in before.books.materials.get(line.item, ()):
        if row.supplier == line.supplier:
            yield BoughtPart(
                item=row.item,
                description=row.description,
                unit=row.unit,
                supplier=row.supplier,
                sold_as=row.properties.get("sold_as") or "pack",
                pack_size=row.pack_size,
                count=1,
                price_each=row.pack_price,
                price_from="nothing" if row.pack_price is None else "list",
            )


def unit_of(before: Bid, item: str) -> str:
    """The unit of an item, by the first list or the book; empty where neither has it."""
    on_list = (line.unit for line in before.shopping if line.item == item)
    in_book = (row.unit for row in before.books.materials.get(item, ()))
    return next(on_list, None) or next(in_book, "")


def with_parts(survey: Survey, parts: Iterable[BoughtPart], cables: frozenset[str]) -> Survey:
    """The survey with what was bought in the truck, at no cost.

    A job then buys only what goes beyond it, and takes its cuts of cable from the pieces that
    are there as far as each fits in one piece.

    Args:
        survey: the job.
        parts: what was bought.
        cables: items that come in pieces, and not by count.
    """
    stock = (
        each
        for part in parts
        for each in (_pieces(part) if part.item in cables else _counted(part))
    )
    return survey.model_copy(update={"truck_stock": (*survey.truck_stock, *stock)})


def _counted(part: BoughtPart) -> Iterator[TruckStock]:
    yield TruckStock(item=part.item, quantity=part.quantity, unit_cost=_ZERO)


def _pieces(part: BoughtPart) -> Iterator[TruckStock]:
    if part.sold_as == CUT:
        yield _piece(part, part.quantity)
    else:
        yield from (_piece(part, part.pack_size) for _ in range(part.count))


def _piece(part: BoughtPart, length: Decimal) -> TruckStock:
    length_in = Fraction(length) * LENGTH_IN[part.unit]
    return TruckStock(item=part.item, unit_cost=_ZERO).model_copy(update={"length_in": length_in})
