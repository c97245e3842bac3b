"""Parts of the work priced from this takeoff, for what a hire bid leaves out."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from decimal import Decimal

from estimator.money import round_money
from estimator.pricing.compare_records import Priced
from estimator.pricing.hours import three_point
from estimator.pricing.records import Bid

WIRING, PATCH, PAINT, CLEAN_UP = "wiring", "patch", "paint", "clean-up"
PATCH_AND_PAINT = "patch and paint"
MATERIALS, PERMIT = "materials", "permit"
PHASES: Mapping[str, tuple[str, ...]] = {
    WIRING: ("set-up", "rough-in", "terminate", "test"),
    PATCH: ("close",),
    PAINT: ("paint",),
    PATCH_AND_PAINT: ("close", "paint"),
    CLEAN_UP: ("clean-up",),
}
"""Phases of the labor that each part of the work is made of."""
CONSUMABLES = "consumables"
NOTHING = "none in this job"
_GROUPS = {"closing": PATCH, "paint": PAINT}
_USED_BY = {
    "opening": PATCH, "visible-opening": PATCH, "plaster-opening": PATCH, "paint": PAINT,
}  # fmt: skip
_BASES = {"expected": "expected", "likely": "likely", "override": "likely"}


def part_of_items(bid: Bid) -> dict[str, str]:
    """Which part of the work each item belongs to; an item of several, to its first line's."""
    used_by = {each.item: each.per for each in bid.books.shop.practice.consumables}
    found: dict[str, str] = {}
    for line in bid.takeoff.parts:
        if line.group == CONSUMABLES:
            part = _USED_BY.get(used_by.get(line.item, ""), WIRING)
        else:
            part = _GROUPS.get(line.group, WIRING)
        found.setdefault(line.item, part)
    return found


def consumable_items(bid: Bid) -> frozenset[str]:
    """Items that are used up on the job: those whose first line stands among the consumables."""
    first: dict[str, str] = {}
    for line in bid.takeoff.parts:
        first.setdefault(line.item, line.group)
    return frozenset(item for item, group in first.items() if group == CONSUMABLES)


def cost_of(bid: Bid, items: frozenset[str] | tuple[str, ...]) -> Decimal:
    """What these items cost by the shopping list, as far as they have a price."""
    known = (line.cost for line in bid.shopping if line.item in items)
    return sum((cost for cost in known if cost is not None), Decimal(0))


def likely_hours(bid: Bid, phases: tuple[str, ...]) -> Decimal:
    """Likely hours of the tasks of some phases."""
    met = (line.hours_likely for line in bid.labor if line.phase in phases)
    return sum(met, Decimal(0))


def range_hours(bid: Bid, phases: tuple[str, ...]) -> tuple[Decimal, Decimal]:
    """Low and high hours of the tasks of some phases."""
    met = [line for line in bid.labor if line.phase in phases]
    low = sum((line.hours_low for line in met), Decimal(0))
    return low, sum((line.hours_high for line in met), Decimal(0))


def basis_of(bid: Bid) -> str:
    """Which hours a part is priced by: those the shop charges, expected or likely."""
    return _BASES[bid.hours.basis]


def hours_of(bid: Bid, phases: tuple[str, ...]) -> Decimal:
    """Hours of some phases on the shop's basis."""
    likely = likely_hours(bid, phases)
    if basis_of(bid) == "likely":
        return likely
    low, high = range_hours(bid, phases)
    return three_point(low, likely, high)


def priced(bid: Bid, part: str, *, with_materials: bool = True) -> Priced:
    """Price a part from this takeoff: its hours x the shop's rate + the cost of its materials.

    Args:
        bid: this bid, with its takeoff.
        part: a key of `PHASES`.
        with_materials: false where somebody has paid for all materials already.
    """
    rate, currency = bid.price.labor_rate_per_hour, bid.books.shop.currency
    phases, hours = PHASES[part], hours_of(bid, PHASES[part])
    items = items_of(bid, part) if with_materials else ()
    materials = cost_of(bid, items)
    amount = round_money(hours * rate, currency) + materials
    how = f"this takeoff: {basis_of(bid)} hours of {' and '.join(phases)} at the shop's rate"
    how += ", and their materials" if items else ""
    how = how if hours or items else NOTHING
    return Priced(part, phases, hours, items, materials, amount, how)


def items_of(bid: Bid, part: str) -> tuple[str, ...]:
    """Items that belong to a part, in the order of the shopping list."""
    wanted = (PATCH, PAINT) if part == PATCH_AND_PAINT else (part,)
    parts = part_of_items(bid)
    return tuple(line.item for line in bid.shopping if parts.get(line.item) in wanted)


def parts_there(bid: Bid) -> Iterator[str]:
    """Parts that a bid may leave out, and that this job has."""
    phases = {line.phase for line in bid.labor}
    for part in (PATCH, PAINT, CLEAN_UP):
        if phases & set(PHASES[part]):
            yield part
