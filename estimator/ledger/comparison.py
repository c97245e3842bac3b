"""What the comparison of a closed job holds: each line estimated and actual, and the margin."""

from __future__ import annotations

import datetime
from dataclasses import dataclass
from decimal import Decimal

from estimator.ledger.bought import BoughtLine


@dataclass(frozen=True, slots=True)
class EstimatedItem:
    """One item of the shopping list: how much was to be used and its cost.

    Attributes:
        cost: None where the book has no price.
    """

    item: str
    description: str
    unit: str
    quantity: Decimal
    cost: Decimal | None


@dataclass(frozen=True, slots=True)
class EstimatedTask:
    """One task of the estimate.

    Attributes:
        quantity: in the labor book's unit.
        weighted_quantity: the same times the factors of the conditions that held, so that
            hours / weighted_quantity compares with the labor book.
    """

    task: str
    phase: str
    quantity: Decimal
    weighted_quantity: Decimal
    hours: Decimal


@dataclass(frozen=True, slots=True)
class Estimate:
    """What the job was expected to cost and to bring.

    Attributes:
        price: before tax. total: with tax.
        hours: in all; by_phase adds up to it.
        deposit: what was asked. deposit_cap: the most the user's caps allow; None without one.
        source: the job file, or "typed".
    """

    job: str
    title: str
    customer: str
    currency: str
    locale: str
    source: str
    price: Decimal
    total: Decimal
    materials: Decimal
    hours: Decimal
    by_phase: tuple[tuple[str, Decimal], ...]
    cost_per_hour: Decimal
    permit: Decimal
    other: Decimal
    deposit: Decimal
    deposit_cap: Decimal | None
    items: tuple[EstimatedItem, ...]
    tasks: tuple[EstimatedTask, ...]


@dataclass(frozen=True, slots=True)
class CompareLine:
    """One line, estimated against actual.

    Attributes:
        difference: actual less estimated.
        difference_pct: of the estimate, to one decimal; None where the estimate is zero.
    """

    name: str
    estimated: Decimal
    actual: Decimal
    difference: Decimal
    difference_pct: Decimal | None


@dataclass(frozen=True, slots=True)
class PhaseLine:
    """Hours and cost of one phase."""

    phase: str
    hours: CompareLine
    cost: CompareLine


@dataclass(frozen=True, slots=True)
class ItemLine:
    """What was used of one item: bought less returned, drawn less put back.

    Attributes:
        quantity: actual of the lines that say how many; None where none does.
        cost: actual with tax. estimated_cost: None where the estimate does not know it.
    """

    item: str
    description: str
    unit: str
    estimated_quantity: Decimal | None
    quantity: Decimal | None
    estimated_cost: Decimal | None
    cost: Decimal


@dataclass(frozen=True, slots=True)
class CostPart:
    """One amount that a cost of the job is made of; taken back where below zero.

    Attributes:
        kind: the line of the comparison that it counts in, such as materials.
        amount: net and tax.
    """

    date: datetime.date
    kind: str
    what: str
    paper: str
    net: Decimal
    tax: Decimal
    amount: Decimal


@dataclass(frozen=True, slots=True)
class WorkedLine:
    """Hours of one person on one day, and their cost."""

    date: datetime.date
    phase: str
    task: str
    who: str
    hours: Decimal
    cost_per_hour: Decimal
    cost: Decimal


@dataclass(frozen=True, slots=True)
class Margin:
    """What is left of the price once the costs are paid.

    Attributes:
        pct: of the price, to one decimal; None where there is no price.
    """

    amount: Decimal
    pct: Decimal | None


@dataclass(frozen=True, slots=True)
class DepositCheck:
    """The deposit against the cap that the user set.

    Attributes:
        cap: the lesser of the caps; None where none was set. over: asked or received above it.
    """

    asked: Decimal
    received: Decimal
    cap: Decimal | None
    over: bool


@dataclass(frozen=True, slots=True)
class Comparison:
    """A closed job: where it came out against its estimate.

    Attributes:
        costs: materials, labor and the rest, each a line. total: of all costs.
        price: before tax; actual is what was invoiced, or the estimate's where nothing was.
        parts: what every cost but labor is made of; worked: what labor is made of.
        elsewhere: lines of its receipts that are for other jobs, the truck, tools ...
        balance_due: invoiced with tax and not paid; None where nothing was invoiced.
        notes: what a reader must know, such as that nothing was invoiced.
    """

    estimate: Estimate
    closed: datetime.date
    costs: tuple[CompareLine, ...]
    total: CompareLine
    price: CompareLine
    estimated_margin: Margin
    actual_margin: Margin
    phases: tuple[PhaseLine, ...]
    items: tuple[ItemLine, ...]
    parts: tuple[CostPart, ...]
    worked: tuple[WorkedLine, ...]
    elsewhere: tuple[BoughtLine, ...]
    deposit: DepositCheck
    balance_due: Decimal | None
    notes: tuple[str, ...]
