"""What to buy more of because of a change, and what can go back."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from decimal import Decimal

from estimator.money import round_money
from estimator.pricing.change_records import ItemChange, PackRow, RowKind
from estimator.pricing.records import Bid, PackBought, ShoppingLine
from estimator.survey.electrical import TruckStock
from estimator.survey.records import Survey

_ZERO = Decimal(0)
_CUT = "length"
NOT_BOUGHT = "the difference of the two shopping lists"
ENOUGH = "what was bought for the first bid is enough"
GOES_BACK = "whole packs that are no longer needed go back"
STAYS = "what was bought stays: it is opened, cut, or still needed in part"


@dataclass(frozen=True, slots=True)
class _Pair:
    """One item on both lists; None where a list does not have it.

    Attributes:
        shown: of the two, the line that says what the item is.
        cable: it comes in pieces, and not by count.
    """

    shown: ShoppingLine
    old: ShoppingLine | None
    new: ShoppingLine | None
    currency: str
    cable: bool

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


def with_first_parts(survey: Survey, before: Bid) -> Survey:
    """The survey with everything that was bought for the first bid in the truck.

    The new job then buys only what goes beyond it, and takes its cuts of cable from the coils
    that are there as far as each fits in one piece.
    """
    cables = {order.item for order in before.takeoff.cable}
    bought = (
        stock
        for line in before.shopping
        for stock in (_pieces(line) if line.item in cables else _counted(line))
    )
    return survey.model_copy(update={"truck_stock": (*survey.truck_stock, *bought)})


def _counted(line: ShoppingLine) -> Iterator[TruckStock]:
    for pack in line.packs:
        yield TruckStock(item=line.item, quantity=pack.pack_size * pack.count)


def _pieces(line: ShoppingLine) -> Iterator[TruckStock]:
    for pack in line.packs:
        if pack.sold_as == _CUT:
            yield _piece(line.item, pack.pack_size * pack.count, pack.unit)
        else:
            yield from (_piece(line.item, pack.pack_size, pack.unit) for _ in range(pack.count))


def _piece(item: str, length: Decimal, unit: str) -> TruckStock:
    return TruckStock.model_validate({"item": item, "length": f"{length:f} {unit}"})


def item_changes(
    before: Bid, after: tuple[ShoppingLine, ...], *, bought: bool
) -> tuple[ItemChange, ...]:
    """Items whose cost or need differs, in the order of the first list, new items last.

    Args:
        before: the first bid.
        after: the shopping list of the changed job; with `bought`, one that draws on
            everything bought for the first bid (see `with_first_parts`).
        bought: the parts of the first bid are bought.
    """
    found = (_beyond(pair) if bought else _difference(pair) for pair in _pairs(before, after))
    return tuple(each for each in found if each.need_before != each.need_after or each.rows)


def _pairs(before: Bid, after: tuple[ShoppingLine, ...]) -> Iterator[_Pair]:
    old = {line.item: line for line in before.shopping}
    new = {line.item: line for line in after}
    cables = {order.item for order in before.takeoff.cable}
    for item, shown in (old | new).items():
        currency = before.books.shop.currency
        yield _Pair(shown, old.get(item), new.get(item), currency, item in cables)


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
    for drawn in line.stock:
        if drawn.unit_cost is not None and drawn.cost is not None:
            said = f"{line.description}, from the truck"
            yield PackRow(what, said, drawn.quantity, drawn.unit_cost, drawn.cost)


def _row(what: RowKind, pack: PackBought) -> PackRow:
    return PackRow(what, pack.description, Decimal(pack.count), pack.price_each, pack.cost)


def _beyond(pair: _Pair) -> ItemChange:
    """The first parts are bought: only what goes beyond them is added, whole packs come back."""
    new = pair.new
    if new is not None and new.cost is None:
        return pair.change(new.why, cost_added=None)
    if new is not None and new.packs:
        rows = tuple(_row("to buy", pack) for pack in new.packs)
        return pair.change(new.why, rows=rows, cost_added=sum((row.cost for row in rows), _ZERO))
    back = tuple(_given_back(pair))
    if back:
        cost = sum((row.cost for row in back), _ZERO)
        return pair.change(GOES_BACK, rows=back, cost_dropped=cost)
    return pair.change(ENOUGH if pair.need_after >= pair.need_before else STAYS)


def _given_back(pair: _Pair) -> Iterator[PackRow]:
    """Whole packs beyond the need, the dearest first; of cable only where none is needed."""
    if pair.old is None or (pair.cable and pair.need_after):
        return
    spare = sum((pack.pack_size * pack.count for pack in pair.old.packs), _ZERO)
    drawn = sum((each.quantity for each in pair.old.stock), _ZERO)
    spare -= min(spare, max(pair.need_after - drawn, _ZERO))
    for pack in sorted(pair.old.packs, key=lambda each: -each.price_each):
        count = 0 if pack.sold_as == _CUT else min(pack.count, int(spare // pack.pack_size))
        if count:
            spare -= count * pack.pack_size
            cost = round_money(pack.price_each * count, pair.currency)
            yield _row("goes back", replace(pack, count=count, cost=cost))
