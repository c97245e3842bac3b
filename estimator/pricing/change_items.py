"""What to buy more of because of a change, and what can go back."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from decimal import Decimal

from estimator.money import round_money
from estimator.pricing.change_bought import CUT, BoughtPart, list_parts
from estimator.pricing.change_records import ItemChange, PackRow, RowKind
from estimator.pricing.records import Bid, PackBought, ShoppingLine

_ZERO = Decimal(0)
NOT_BOUGHT = "the difference of the two shopping lists"
NOT_YET = "not all bought yet: what is now to buy, less what the first bid holds for it"
NOT_YET_SAME = "not all bought yet; what is still to buy costs the same as in the first bid"
BOUGHT_FOR_IT = "bought beyond the first list, and the change needs it"
NO_PRICE_PAID = "bought beyond the first list, and nothing says what was paid"
ENOUGH = "what was bought for the first bid is enough"
GOES_BACK = "whole packs that are no longer needed go back"
STAYS = "what was bought stays: it is opened, cut, or still needed in part"


@dataclass(frozen=True, slots=True)
class OnHand:
    """What was bought before the change, and what the first bid still has to buy beyond it.

    Attributes:
        parts: what was bought.
        still: the first job's list with those parts there; empty where all of it is bought.
        pressing: items of which the changed job needs more than the first list's parts.
    """

    parts: tuple[BoughtPart, ...]
    still: tuple[ShoppingLine, ...] = ()
    pressing: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True)
class _Pair:
    """One item on both lists; None where a list does not have it.

    Attributes:
        shown: of the two, the line that says what the item is.
        cable: it comes in pieces, and not by count.
        have, still, pressing: as in `OnHand`, of this item.
    """

    shown: ShoppingLine
    old: ShoppingLine | None
    new: ShoppingLine | None
    currency: str
    cable: bool
    have: tuple[BoughtPart, ...] = ()
    still: ShoppingLine | None = None
    pressing: bool = False

    @property
    def to_buy(self) -> tuple[PackBought, ...]:
        """Packs that the changed job has yet to buy."""
        return self.new.packs if self.new else ()

    @property
    def need_before(self) -> Decimal:
        return self.old.need if self.old else _ZERO

    @property
    def need_after(self) -> Decimal:
        return self.new.need if self.new else _ZERO

    def change(self, why: str, **found: object) -> ItemChange:
        """The item with what was found; nothing added or dropped where nothing was."""
        framed = ItemChange(
            item=self.shown.item,
            description=self.shown.description,
            unit=self.shown.unit,
            need_before=self.need_before,
            need_after=self.need_after,
            rows=(),
            cost_added=_ZERO,
            cost_dropped=_ZERO,
            why=why,
        )
        return replace(framed, **found)  # type: ignore[arg-type]


def item_changes(
    before: Bid, after: tuple[ShoppingLine, ...], *, bought: bool, on_hand: OnHand | None = None
) -> tuple[ItemChange, ...]:
    """Items whose cost or need differs, in the order of the first list, new items last.

    Args:
        before: the first bid.
        after: the shopping list of the changed job; with `bought`, one that draws on
            everything that was bought (see `change_bought.with_parts`).
        bought: parts of the first bid are bought.
        on_hand: which; left out: all of them.
    """
    there = (on_hand or OnHand(list_parts(before))) if bought else OnHand(())
    pairs = _pairs(before, after, there)
    found = (_beyond(pair) if bought else _difference(pair) for pair in pairs)
    return tuple(each for each in found if each.need_before != each.need_after or each.rows)


def _pairs(before: Bid, after: tuple[ShoppingLine, ...], there: OnHand) -> Iterator[_Pair]:
    old = {line.item: line for line in before.shopping}
    new = {line.item: line for line in after}
    still = {line.item: line for line in there.still}
    cables = {order.item for order in before.takeoff.cable}
    for item, shown in (old | new).items():
        yield _Pair(
            shown=shown,
            old=old.get(item),
            new=new.get(item),
            currency=before.books.shop.currency,
            cable=item in cables,
            have=tuple(part for part in there.parts if part.item == item),
            still=still.get(item),
            pressing=item in there.pressing,
        )


def _difference(pair: _Pair) -> ItemChange:
    """Nothing is bought yet: one list less the other."""
    old, new = pair.old, pair.new
    if new is not None and new.cost is None:
        return pair.change(new.why, cost_added=None)
    rows = (*_listed("first list", old), *_listed("new list", new))
    more = sum((row.cost if row.what == "new list" else -row.cost for row in rows), _ZERO)
    if not more:
        return pair.change(NOT_BOUGHT)
    added, dropped = max(more, _ZERO), max(-more, _ZERO)
    return pair.change(NOT_BOUGHT, rows=rows, cost_added=added, cost_dropped=dropped)


def _listed(what: RowKind, line: ShoppingLine | None) -> Iterator[PackRow]:
    """Packs and truck stock of one line of a list, as far as they have a price."""
    if line is None:
        return
    for pack in line.packs:
        yield _row(what, pack)
    yield from _from_truck(what, line)


def _from_truck(what: RowKind, line: ShoppingLine | None) -> Iterator[PackRow]:
    """Truck stock of one line, as far as it costs anything; what was bought costs nothing here."""
    for drawn in line.stock if line else ():
        if drawn.unit_cost is not None and drawn.cost:
            said = f"{line.description if line else ''}, from the truck"
            yield PackRow(what, said, drawn.quantity, drawn.unit_cost, drawn.cost)


def _row(what: RowKind, pack: PackBought) -> PackRow:
    return PackRow(what, pack.description, Decimal(pack.count), pack.price_each, pack.cost)


def _beyond(pair: _Pair) -> ItemChange:
    """Parts are bought: only what goes beyond them is added, whole packs come back.

    What the first bid holds and nobody bought yet is set against what is now to buy.
    """
    if pair.new is not None and pair.new.cost is None:
        return pair.change(pair.new.why, cost_added=None)
    back = tuple(_given_back(pair))
    kept = tuple(_kept_beyond(pair, back))
    if any(part.price_each is None for part in kept):
        return pair.change(NO_PRICE_PAID, cost_added=None)
    more = (
        *(_row("to buy", pack) for pack in pair.to_buy),
        *(_part_row("bought for it", part, pair.currency) for part in kept),
        *_from_truck("from the truck", pair.new),
    )
    less = (
        *(_row("in the first bid", pack) for pack in (pair.still.packs if pair.still else ())),
        *_from_truck("in the first bid", pair.old),
    )
    net = _sum(more) - _sum(less)
    if less and not net:
        more = less = ()
    credit = tuple(_part_row("goes back", part, pair.currency) for part in _credited(pair, back))
    return pair.change(
        _why(pair, kept, less, credit),
        rows=(*more, *less, *credit),
        cost_added=max(net, _ZERO),
        cost_dropped=max(-net, _ZERO) + _sum(credit),
    )


def _sum(rows: Iterable[PackRow]) -> Decimal:
    return sum((row.cost for row in rows), _ZERO)


def _part_row(what: RowKind, part: BoughtPart, currency: str) -> PackRow:
    price = part.price_each or _ZERO
    cost = round_money(price * part.count, currency)
    return PackRow(what, part.description, Decimal(part.count), price, cost)


def _why(
    pair: _Pair,
    kept: tuple[BoughtPart, ...],
    less: tuple[PackRow, ...],
    credit: tuple[PackRow, ...],
) -> str:
    """How the change of an item was worked out."""
    if pair.still is not None and pair.still.packs:
        return NOT_YET if less else NOT_YET_SAME
    if pair.new is not None and pair.new.packs:
        return pair.new.why
    if kept:
        return BOUGHT_FOR_IT
    if credit:
        return GOES_BACK
    return ENOUGH if pair.need_after >= pair.need_before else STAYS


def _given_back(pair: _Pair) -> Iterator[BoughtPart]:
    """Whole packs beyond the need; of cable only where none is needed.

    What was bought beyond the first list goes first, then the dearest.
    """
    if pair.to_buy or (pair.cable and pair.need_after):
        return
    bought = [part for part in pair.have if not part.had]
    there = sum((part.quantity for part in pair.have if part.had), _ZERO)
    there += sum((each.quantity for each in pair.old.stock), _ZERO) if pair.old else _ZERO
    spare = sum((part.quantity for part in bought), _ZERO)
    spare -= min(spare, max(pair.need_after - there, _ZERO))
    for part in sorted(bought, key=lambda each: (not each.beyond, -(each.price_each or _ZERO))):
        count = 0 if part.sold_as == CUT else min(part.count, int(spare // part.pack_size))
        if count:
            spare -= count * part.pack_size
            yield replace(part, count=count)


def _credited(pair: _Pair, back: tuple[BoughtPart, ...]) -> Iterator[BoughtPart]:
    """Of what goes back, what the first bid was paid for and has a price."""
    if pair.old is None or pair.old.cost is None:
        return
    yield from (part for part in back if not part.beyond and part.price_each is not None)


def _kept_beyond(pair: _Pair, back: tuple[BoughtPart, ...]) -> Iterator[BoughtPart]:
    """What was bought beyond the first list and does not go back, where the change needs it."""
    if not pair.pressing:
        return
    gone = sum(part.count for part in back if part.beyond)
    for part in (each for each in pair.have if each.beyond):
        count = max(part.count - gone, 0)
        gone -= part.count - count
        if count:
            yield replace(part, count=count)
