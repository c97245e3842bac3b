"""What a job used: bought, returned, drawn from the truck and put back, driven."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal

from estimator.ledger.bought import BoughtLine
from estimator.ledger.comparison import CostPart, Estimate, ItemLine
from estimator.ledger.records import CloseOutRecord
from estimator.ledger.spent import drive_cost, stock_cost

_ZERO = Decimal(0)
MATERIALS, DRIVING = "materials", "driving"
_BACK = ("returns", "put back")


@dataclass(frozen=True, slots=True)
class _Use:
    """One amount used of one item, below zero where it went back."""

    item: str
    description: str
    quantity: Decimal | None
    cost: Decimal


def cost_of(line: BoughtLine, record: CloseOutRecord) -> Decimal:
    """What one line costs the shop: tax that is claimed back is no cost; a return takes off."""
    recovered = record.close_out.purchase_tax == "recovered"
    cost = line.net if recovered else line.gross
    return -cost if line.paper == "returns" else cost


def cost_parts(
    record: CloseOutRecord, lines: Sequence[BoughtLine], currency: str
) -> Iterator[CostPart]:
    """Every amount that the costs of the job are made of, hours apart, in order of the file."""
    for line in lines:
        back = line.paper == "returns"
        net = -line.net if back else line.net
        amount = cost_of(line, record)
        paper = f"{'return' if back else 'receipt'} {line.doc_no}"
        yield CostPart(line.date, line.kind, line.description, paper, net, amount - net, amount)
    for move in record.stock:
        cost = stock_cost(move, currency)
        amount = -cost if move.move == "put back" else cost
        paper = f"truck stock, {move.move}"
        yield CostPart(move.date, MATERIALS, move.what, paper, amount, _ZERO, amount)
    for drive in record.mileage:
        cost = drive_cost(drive, currency)
        paper = f"{drive.distance} {drive.unit}"
        yield CostPart(drive.date, DRIVING, drive.why or "Driving", paper, cost, _ZERO, cost)


def item_lines(
    record: CloseOutRecord, estimate: Estimate, lines: Sequence[BoughtLine], currency: str
) -> Iterator[ItemLine]:
    """Items of the estimate that were also written down, then those nobody estimated."""
    uses = list(_uses(record, lines, currency))
    expected = {each.item: each for each in estimate.items}
    for item in dict.fromkeys([*expected, *(use.item for use in uses)]):
        mine = [use for use in uses if use.item == item]
        if not mine:
            continue
        known = expected.get(item)
        yield ItemLine(
            item=item,
            description=known.description if known else mine[0].description,
            unit=known.unit if known else "",
            estimated_quantity=known.quantity if known else None,
            quantity=_quantity(mine),
            estimated_cost=known.cost if known else None,
            cost=sum((use.cost for use in mine), _ZERO),
        )


def _quantity(uses: Iterable[_Use]) -> Decimal | None:
    """Sum of the quantities that are known; None where none is."""
    known = [use.quantity for use in uses if use.quantity is not None]
    return sum(known, _ZERO) if known else None


def _uses(record: CloseOutRecord, lines: Sequence[BoughtLine], currency: str) -> Iterator[_Use]:
    """Lines and stock that name an item."""
    for line in lines:
        if line.item:
            quantity = _signed(line.quantity, line.paper)
            yield _Use(line.item, line.description, quantity, cost_of(line, record))
    for move in record.stock:
        if move.item:
            cost = _signed(stock_cost(move, currency), move.move) or _ZERO
            yield _Use(move.item, move.what, _signed(move.quantity, move.move), cost)


def _signed(amount: Decimal | None, way: str) -> Decimal | None:
    return -amount if amount is not None and way in _BACK else amount
