"""Cable to buy for one order: coils, lengths and truck remnants, every cut in one piece."""

from __future__ import annotations

from collections import Counter
from decimal import Decimal
from fractions import Fraction
from functools import lru_cache

from estimator.catalog.records import Books
from estimator.measures import LENGTH_IN, System
from estimator.pricing.bought import Answer, Wanted, pack_bought, stock_drawn
from estimator.pricing.coils import (
    ByLength,
    CablePlan,
    Coil,
    Piece,
    Remnant,
    choose_cable,
)
from estimator.pricing.records import PackBought, StockDrawn
from estimator.saying import said, word
from estimator.takeoff.amounts import Units, exact, trim, units_of
from estimator.takeoff.records import CableOrder

_TOO_SHORT = said("no coil on file is long enough for the longest cut")
_LENGTH = "length"
_PLANS_KEPT = 4096
_Offers = tuple[tuple[Coil, ...], tuple[ByLength, ...], tuple[Remnant, ...]]


def cable_words(order: CableOrder, wanted: Wanted) -> str:
    """The cable's own words without those of one pack."""
    if wanted.shelf.ways:
        return word(wanted.shelf.ways[0].description.rsplit(", ", 1)[0])
    return said("{kind} cable", kind=order.kind)


def cable_answer(books: Books, order: CableOrder, wanted: Wanted, system: System) -> Answer:
    """The least-cost way to have every cut in one piece and the whole order on the truck."""
    units = units_of(system)
    offers = _offers(order, wanted)
    if not any(offers):
        return Answer(order.order, (), (), False, wanted.shelf.why_unpriced)
    try:
        plan = _plan(tuple(cut.cut_in for cut in order.cuts), order.order_in, offers, units)
    except ValueError:  # no piece is long enough, or truck pieces alone do not do
        why = _TOO_SHORT if wanted.shelf.priced else wanted.shelf.why_unpriced
        return Answer(order.order, (), (), False, why)
    drawn = _drawn(books, order, wanted, plan, units)
    to_buy = order.order - sum((each.quantity for each in drawn), Decimal(0))
    packs = _packs(plan, wanted, books.shop.currency)
    to_buy = max(Decimal(0), trim(to_buy)) if packs else Decimal(0)
    return Answer(to_buy, packs, drawn, True, plan.why)


def _offers(order: CableOrder, wanted: Wanted) -> _Offers:
    """Rows of the book as coils and lengths, truck pieces as remnants; ids are places."""
    per_unit = LENGTH_IN[order.unit]
    coils, lengths = [], []
    for number, row in enumerate(wanted.shelf.priced):
        size_in = Fraction(row.pack_size) * per_unit
        name, price = f"{number:09d}", row.pack_price or Decimal(0)
        if row.properties.get("sold_as") == _LENGTH:
            lengths.append(ByLength(name, row.supplier, size_in, price))
        else:
            coils.append(Coil(name, row.supplier, size_in, price))
    remnants = tuple(
        Remnant(str(number), each.length_in)
        for number, each in enumerate(wanted.stock, start=1)
        if each.length_in is not None
    )
    return tuple(coils), tuple(lengths), remnants


@lru_cache(maxsize=_PLANS_KEPT)
def _plan(
    cuts: tuple[Fraction, ...], order_in: Fraction, offers: _Offers, units: Units
) -> CablePlan:
    def show(length_in: Fraction) -> str:
        length = exact(length_in / LENGTH_IN[units.length])
        return said("{length} {unit}", length=length, unit=word(units.length))

    return choose_cable(cuts, order_in, *offers, show=show)


def _packs(plan: CablePlan, wanted: Wanted, currency: str) -> tuple[PackBought, ...]:
    """Coils counted, and lengths counted by their step."""
    counts = Counter[int]()
    for piece in plan.pieces:
        if isinstance(piece.source, Coil):
            counts[int(piece.source.offer_id)] += 1
        elif isinstance(piece.source, ByLength):
            counts[int(piece.source.offer_id)] += int(piece.length_in / piece.source.step_in)
    priced = wanted.shelf.priced
    return tuple(pack_bought(priced[row], count, currency) for row, count in sorted(counts.items()))


def _drawn(
    books: Books, order: CableOrder, wanted: Wanted, plan: CablePlan, units: Units
) -> tuple[StockDrawn, ...]:
    """Remnants used: the cuts in them with their allowance, never more than the piece."""
    return tuple(
        stock_drawn(
            books,
            wanted,
            wanted.stock[int(piece.source.remnant_id) - 1],
            units.lengths(_used_in(order, piece)),
        )
        for piece in plan.pieces
        if isinstance(piece.source, Remnant)
    )


def _used_in(order: CableOrder, piece: Piece) -> Fraction:
    cuts_in = sum((order.cuts[number].cut_in for number in piece.cuts), Fraction(0))
    with_allowance_in = cuts_in * (1 + Fraction(order.allowance_pct) / 100)
    return min(piece.length_in, with_allowance_in)
