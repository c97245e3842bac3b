"""What a change order holds: two bids of one job, and everything that differs between them."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from estimator.pricing.change_bought import CountedAsBought
from estimator.pricing.records import Bid
from estimator.survey.differences import ChangedFact

Kind = Literal["part", "work"]
RowKind = Literal[
    "to buy",
    "bought for it",
    "from the truck",
    "in the first bid",
    "goes back",
    "first list",
    "new list",
]
Status = Literal["added", "dropped", "changed"]


@dataclass(frozen=True, slots=True)
class ChangedLine:
    """One item or task whose quantity or hours differ.

    Attributes:
        key: item key or task key. quantity_before, quantity_after: summed over the job.
        hours_before, hours_after: on the basis that is charged; 0 for parts.
    """

    kind: Kind
    key: str
    description: str
    unit: str
    quantity_before: Decimal
    quantity_after: Decimal
    hours_before: Decimal
    hours_after: Decimal

    @property
    def status(self) -> Status:
        """Whether the line is new, gone, or there in both bids."""
        if not self.quantity_before:
            return "added"
        return "changed" if self.quantity_after else "dropped"

    @property
    def hours_added(self) -> Decimal:
        """Hours more than before; 0 where there are fewer."""
        return max(self.hours_after - self.hours_before, Decimal(0))

    @property
    def hours_dropped(self) -> Decimal:
        """Hours fewer than before; 0 where there are more."""
        return max(self.hours_before - self.hours_after, Decimal(0))


@dataclass(frozen=True, slots=True)
class Recheck:
    """One finding before and after; an empty verdict where it was not asked.

    Attributes:
        stops: it stops the job as it would be after the change.
    """

    finding_id: str
    title: str
    verdict_before: str
    figures_before: str
    verdict_after: str
    figures_after: str
    remedy: str
    stops: bool


@dataclass(frozen=True, slots=True)
class PackRow:
    """Packs, or stock from the truck, that one item's change is made of.

    Attributes:
        what: where the first parts are not bought, on which of the two lists they stand. Else
            "to buy", "bought for it" (beyond the first list) and "from the truck" cost more,
            "in the first bid" (not bought yet, or drawn) and "goes back" cost less.
        cost: count x price_each, rounded to the cent.
    """

    what: RowKind
    description: str
    count: Decimal
    price_each: Decimal
    cost: Decimal


@dataclass(frozen=True, slots=True)
class ItemChange:
    """What one item costs more or gives back.

    Attributes:
        rows: what the costs are made of.
        cost_added: of what is to buy, or the new list less the first where that is dearer;
            None where the book has no price. cost_dropped: of what goes back, or the reverse.
        why: how it was worked out, for cable whether every cut can be had in one piece.
    """

    item: str
    description: str
    unit: str
    need_before: Decimal
    need_after: Decimal
    rows: tuple[PackRow, ...]
    cost_added: Decimal | None
    cost_dropped: Decimal
    why: str


@dataclass(frozen=True, slots=True)
class Sold:
    """Materials from what they cost to what they are sold for, every step to the cent.

    small_items = round(listed x small_items_pct); cost = listed + small_items - input_tax;
    purchase_tax, where tax paid at the counter is a cost: round(cost x counter_rate_pct), or the
    input_tax where book prices hold it; sell as in the bid: (cost + purchase_tax) x (1 + markup),
    or the purchase tax after the markup, or not at all.
    """

    listed: Decimal
    small_items_pct: Decimal
    small_items: Decimal
    input_tax: Decimal
    cost: Decimal
    purchase_tax: Decimal
    markup_pct: Decimal
    sell: Decimal


@dataclass(frozen=True, slots=True)
class ChangePrice:
    """The price of the change, every step rounded to the cent before the next uses it.

    labor_added = hours_added x labor_rate; labor_credit = hours_dropped x labor_rate_before x
    credit; materials_credit = dropped.sell x credit; trips = trips_more x trip_charge, or
    fewer trips x the old charge x credit (then below zero); base = labor_added + added.sell -
    both credits + trips + handling; overhead on base; profit on both; built_up; offered = the
    larger of that and the minimum, where built_up is above zero; before_tax = offered + permit +
    allowances (as they differ); tax on what is taxed of it; total; job_total = job_total_before
    + total.

    Attributes:
        handling: charged where the change adds or drops anything.
        minimum_charge: the least that a change costs; one that gives back is not held to it.
        cap: round(job_total x (1 + not_to_exceed_pct)) where the price form has a cap.
        counter_rate_pct, counter_how: tax paid at the counter, as in the bid.
        tax_share_pct: of what is taxed by the mode, the part that is.
        taxed: what the tax is on; below zero where the change gives back more than it adds.
    """

    hours_added: Decimal
    hours_dropped: Decimal
    labor_rate: Decimal
    labor_rate_before: Decimal
    credit_pct: Decimal
    labor_added: Decimal
    labor_credit: Decimal
    counter_rate_pct: Decimal
    counter_how: str
    added: Sold
    dropped: Sold
    materials_credit: Decimal
    trips_more: int
    trip_charge: Decimal
    trips: Decimal
    handling: Decimal
    base: Decimal
    overhead_pct: Decimal
    overhead: Decimal
    profit_pct: Decimal
    profit: Decimal
    built_up: Decimal
    minimum_charge: Decimal
    offered: Decimal
    permit: Decimal
    allowances_materials: Decimal
    allowances_labor: Decimal
    allowances_other: Decimal
    before_tax: Decimal
    tax_mode: str
    tax_share_pct: Decimal
    tax_rounding: str
    tax_factor_pct: Decimal
    taxed: Decimal
    tax: Decimal
    total: Decimal
    job_total_before: Decimal
    job_total: Decimal
    not_to_exceed_pct: Decimal
    cap: Decimal | None
    unpriced_items: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ChangeOrder:
    """A change to a job that was bid: what the house turned out to be, and what it costs.

    Attributes:
        before, after: the two bids; `after` is the job as it now stands, bid anew.
        why: the reason as somebody gave it; empty where nobody did.
        materials_bought: the parts of the first bid are bought, so that only what goes beyond
            them costs more, and only whole packs come back.
        bought: which of them, where a file says so; None: all of them, or none.
    """

    before: Bid
    after: Bid
    why: str
    materials_bought: bool
    facts: tuple[ChangedFact, ...]
    lines: tuple[ChangedLine, ...]
    items: tuple[ItemChange, ...]
    rechecks: tuple[Recheck, ...]
    price: ChangePrice
    bought: CountedAsBought | None = None

    @property
    def changes_anything(self) -> bool:
        """Whether the two jobs state, need or cost anything different."""
        return bool(self.facts or self.lines or self.items or self.price.total)

    @property
    def stopped_by(self) -> tuple[str, ...]:
        """Ids of findings that stop the job as it would be."""
        return tuple(each.finding_id for each in self.rechecks if each.stops)
