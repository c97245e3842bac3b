"""Hiring it out: each bid with what it leaves out, and the hours it takes the owner."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace
from decimal import Decimal

from estimator.money import round_money
from estimator.pricing.compare_own import (
    STATED,
    UNKNOWN,
    own_work,
    permit_for_owner,
    time_line,
    unpriced_of_list,
)
from estimator.pricing.compare_parts import (
    MATERIALS,
    PAINT,
    PATCH,
    PATCH_AND_PAINT,
    PERMIT,
    items_of,
    parts_there,
    priced,
)
from estimator.pricing.compare_records import (
    ColumnKind,
    CompareColumn,
    CostLine,
    LineKind,
    Priced,
    Taken,
)
from estimator.pricing.records import Bid
from estimator.survey.compare import Hire

THIS_BID = "This bid"
NOT_IN_IT = "Not in it: "


def hire_columns(bid: Bid, own_hour: Taken) -> Iterator[CompareColumn]:
    """A column for each bid of the job; this bid where the job names none."""
    bids = bid.survey.compare.hire
    if not bids:
        yield _this_bid(bid, own_hour)
    for each, name in zip(bids, _names(bids), strict=True):
        yield _hire(bid, each.model_copy(update={"name": name}), own_hour)


def _names(bids: Sequence[Hire]) -> Iterator[str]:
    """The name of each bid, with a number where another has the same."""
    names = [each.name for each in bids]
    met: Counter[str] = Counter()
    for name in names:
        met[name] += 1
        yield name if names.count(name) == 1 else f"{name} ({met[name]})"


def _hours(bid: Bid, stated: Decimal | None) -> Taken:
    if stated is not None:
        return Taken(stated, True, STATED)
    return Taken(bid.books.shop.compare.hire_own_hours, False, "the shop's figure for one bid")


def _this_bid(bid: Bid, own_hour: Taken) -> CompareColumn:
    """The price of this bid; a permit that it does not hold comes on top."""
    quote = CostLine("quote", "Total of this bid", bid.price.total, bid.price.total, "this bid")
    lines = [quote]
    if not bid.price.permit_cost:
        lines.append(_permit(bid))
    hours = _hours(bid, None)
    unpriced = tuple(f"price of {item}" for item in bid.price.unpriced_items)
    lines.append(time_line(bid, hours, own_hour))
    return column(("this bid", THIS_BID), tuple(lines), hours, unpriced)


def _hire(bid: Bid, hire: Hire, own_hour: Taken) -> CompareColumn:
    hours = _hours(bid, hire.own_hours)
    lines = (
        _amount(bid, "quote", "Quote", hire.quote),
        *([] if hire.tax == 0 else [_amount(bid, "tax", "Tax on top of it", hire.tax)]),
        *_excluded(bid, hire),
        *(_amount(bid, "extra", name, amount) for name, amount in hire.extras.items()),
        time_line(bid, hours, own_hour),
    )
    unpriced = tuple(f"price of {item}" for item in _unpriced(bid, hire))
    made = column(("hire", hire.name), lines, hours, unpriced)
    unstated = tuple(_unstated(bid, hire))
    return replace(made, unstated=unstated, notes=hire.notes)


def _amount(bid: Bid, kind: LineKind, name: str, amount: Decimal | None) -> CostLine:
    if amount is None:
        return CostLine(kind, name, None, None, UNKNOWN)
    shown = round_money(amount, bid.books.shop.currency)
    return CostLine(kind, name, shown, shown, STATED)


def _permit(bid: Bid) -> CostLine:
    """A permit that is not in a bid costs what it costs the owner."""
    taken = permit_for_owner(bid)
    line = _amount(bid, "excluded", f"{NOT_IN_IT}{PERMIT}", taken.value)
    return replace(line, how=taken.why, part=PERMIT)


def _excluded(bid: Bid, hire: Hire) -> Iterator[CostLine]:
    """What the bid leaves out: at the price stated, else priced from this takeoff."""
    for part in hire.excludes:
        if part in hire.prices:
            line = _amount(bid, "excluded", f"{NOT_IN_IT}{part}", hire.prices[part])
            yield replace(line, part=part)
        else:
            yield _from_takeoff(bid, hire, part)


def _from_takeoff(bid: Bid, hire: Hire, part: str) -> CostLine:
    if part == PERMIT:
        return _permit(bid)
    name = f"{NOT_IN_IT}{part}"
    if part == MATERIALS:
        own = own_work(bid)
        cost = (own.parts.value or Decimal(0)) + (own.consumables.value or Decimal(0))
        return CostLine(
            "excluded", name, cost, cost, "what parts and consumables cost you", part=part
        )
    made = priced(bid, part, with_materials=MATERIALS not in hire.excludes)
    return CostLine("excluded", name, made.amount, made.amount, made.how, part=part)


def _unpriced(bid: Bid, hire: Hire) -> Iterator[str]:
    """Items without a price in what this takeoff puts in for parts that the bid leaves out."""
    asked = [part for part in hire.excludes if part not in hire.prices]
    if MATERIALS in asked:
        yield from unpriced_of_list(bid, own_work(bid))
    if MATERIALS not in hire.excludes:
        theirs = {item for part in asked if part != PERMIT for item in items_of(bid, part)}
        yield from (item for item in bid.price.unpriced_items if item in theirs)


def _unstated(bid: Bid, hire: Hire) -> Iterator[Priced]:
    """Parts that the bid neither includes nor excludes, priced in case they are not in it."""
    named: set[str] = {*hire.includes, *hire.excludes}
    if PATCH_AND_PAINT in named:
        named |= {PATCH, PAINT}
    for part in parts_there(bid):
        if part not in named:
            yield priced(bid, part, with_materials=MATERIALS not in hire.excludes)
    if PERMIT not in named and bid.survey.house.permit != "not needed":
        permit = permit_for_owner(bid)
        yield Priced(PERMIT, (), Decimal(0), (), Decimal(0), permit.value, permit.why)


def column(
    who: tuple[ColumnKind, str],
    lines: tuple[CostLine, ...],
    hours: Taken,
    unpriced: tuple[str, ...],
) -> CompareColumn:
    """Add a column up; without a quote nothing can be said of the sums."""
    known = not any(line.kind == "quote" and line.cash is None for line in lines)
    cash = sum((line.cash for line in lines if line.cash is not None), Decimal(0))
    all_in = sum((line.all_in for line in lines if line.all_in is not None), Decimal(0))
    time = sum((line.all_in or Decimal(0) for line in lines if line.kind == "time"), Decimal(0))
    left_out = tuple(line.name.lower() for line in lines if line.all_in is None)
    return CompareColumn(
        kind=who[0],
        name=who[1],
        lines=lines,
        hours=hours.value or Decimal(0),
        hours_taken=hours,
        cash=cash if known else None,
        before_time=all_in - time if known else None,
        all_in=all_in if known else None,
        left_out=(*left_out, *unpriced),
    )
