"""What pricing hands to the outputs: shopping lines, hours, the price step by step, the bid."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from fractions import Fraction
from typing import Literal

from estimator.catalog.records import Books
from estimator.pricing.price_records import (
    NO_CONTINGENCY,
    NO_FORM,
    NO_PAYMENT,
    NO_SUPPLY_RUN,
    NO_TAX,
    ZERO,
    AllowanceLine,
    Contingency,
    OneMore,
    Payment,
    PriceForm,
    RateBuild,
    SupplyRun,
    TaxBuild,
)
from estimator.rules.records import Finding
from estimator.survey.differences import ChangedFact
from estimator.survey.records import Survey
from estimator.takeoff.records import Assumption, Takeoff


@dataclass(frozen=True, slots=True)
class PackBought:
    """One kind of pack and how many of it to buy; cost is count x price_each.

    `sold_as` is "pack", "coil" or "length" (a length: pack_size x count in one piece).
    """

    supplier: str
    description: str
    sold_as: str
    pack_size: Decimal
    unit: str
    count: int
    price_each: Decimal
    cost: Decimal


@dataclass(frozen=True, slots=True)
class StockDrawn:
    """Truck stock used: quantity x unit_cost, rounded to the cent; None where it has no price."""

    what: str
    quantity: Decimal
    unit: str
    unit_cost: Decimal | None
    cost: Decimal | None


@dataclass(frozen=True, slots=True)
class ShoppingLine:
    """One item: what the takeoff needs, what the truck gives, what to buy and why.

    Attributes:
        need: sum of the takeoff lines of this item. to_buy: need less truck stock, never below 0.
        cost: packs plus truck stock drawn; None where the book has no price ("unknown").
    """

    item: str
    description: str
    aisle: str
    unit: str
    need: Decimal
    to_buy: Decimal
    packs: tuple[PackBought, ...]
    stock: tuple[StockDrawn, ...]
    cost: Decimal | None
    why: str


@dataclass(frozen=True, slots=True)
class LaborLine:
    """One takeoff task with its hours.

    Attributes:
        task_line_id: the takeoff line it comes from.
        unit_low, unit_likely, unit_high: hours for one unit, from the labor book.
        factor: product of the condition factors that hold and that the book names for the task.
        factor_why: those conditions in words, empty for factor 1.
        hours_low, hours_likely, hours_high: quantity x unit x factor, to six places.
    """

    task_line_id: str
    task: str
    description: str
    phase: str
    quantity: Decimal
    unit: str
    where: str
    unit_low: Decimal
    unit_likely: Decimal
    unit_high: Decimal
    factor: Decimal
    factor_why: str
    hours_low: Decimal
    hours_likely: Decimal
    hours_high: Decimal


@dataclass(frozen=True, slots=True)
class Hours:
    """Sums over the labor lines, and the hours charged.

    Attributes:
        expected: (low + 4 x likely + high) / 6, to six places.
        charged: what the price uses. basis: "likely", "expected" or "override".
    """

    low: Decimal
    likely: Decimal
    high: Decimal
    expected: Decimal
    charged: Decimal
    basis: Literal["likely", "expected", "override"]


@dataclass(frozen=True, slots=True)
class PriceBuild:
    """From cost to total, every step rounded to the cent before the next uses it.

    labor_hours = hours_charged + supply_run.labor_hours; labor = labor_hours x rate.
    materials_cost = materials_listed + small_items - input_tax; materials_sell by purchase_tax_how:
    before-markup: (materials_cost + purchase_tax) x (1 + markup); after-markup: materials_cost x
    (1 + markup) + purchase_tax; not-recovered, or no purchase tax: materials_cost x (1 + markup).
    base = labor + materials_sell + trips + supply_run.amount; overhead on base; profit on base +
    overhead; built_up = base + overhead + profit + contingency.amount; offered = the larger of
    built_up and minimum_charge, + offer_rounding (to a multiple of offer_step, 0: none; never
    below the minimum or to nothing); before_tax = offered + allowances_total + permit_cost +
    permit_handling; total = before_tax + tax; balance = total - deposit.

    Attributes:
        hours_charged: of the tasks, a supply run not in it.
        rate_build: how the labor rate was built; None where it is a stated number.
        input_tax: tax inside the prices of the book that was taken out; 0 unless they hold it.
        purchase_tax: paid at the counter as a cost: round(materials_cost x purchase_rate_pct), or
            input_tax where the book prices hold it.
        purchase_rate_pct: 0 where nothing is paid at the counter, or what is paid comes back
            and the book prices are without it.
        trips_count: with permit_visits; permit_visits: 0 where the job states its trips.
        minimum_governs: the minimum charge is more than built_up.
        tax: what is charged to the customer, as tax_build says.
    """

    hours_charged: Decimal
    labor_rate_per_hour: Decimal
    labor: Decimal
    materials_listed: Decimal
    materials_overridden: bool
    small_items_pct: Decimal
    small_items: Decimal
    materials_cost: Decimal
    markup_pct: Decimal
    margin_pct: Decimal
    materials_sell: Decimal
    trips_count: int
    trip_charge: Decimal
    trips: Decimal
    base: Decimal
    overhead_pct: Decimal
    overhead: Decimal
    profit_pct: Decimal
    profit: Decimal
    built_up: Decimal
    minimum_charge: Decimal
    minimum_governs: bool
    offered: Decimal
    permit_cost: Decimal
    permit_handling: Decimal
    before_tax: Decimal
    tax_mode: str
    tax_rate_pct: Decimal
    tax: Decimal
    total: Decimal
    deposit_pct: Decimal
    deposit: Decimal
    balance: Decimal
    unpriced_items: tuple[str, ...]
    labor_hours: Decimal = ZERO
    rate_build: RateBuild | None = None
    input_tax: Decimal = ZERO
    purchase_rate_pct: Decimal = ZERO
    purchase_tax: Decimal = ZERO
    purchase_tax_how: Literal["before-markup", "after-markup", "not-recovered"] = "before-markup"
    permit_visits: int = 0
    permit_filed_by: str = ""
    supply_run: SupplyRun = NO_SUPPLY_RUN
    contingency: Contingency = NO_CONTINGENCY
    offer_step: Decimal = ZERO
    offer_rounding_how: Literal["nearest", "up"] = "nearest"
    offer_rounding: Decimal = ZERO
    allowances: tuple[AllowanceLine, ...] = ()
    allowances_total: Decimal = ZERO
    tax_build: TaxBuild = NO_TAX
    form: PriceForm = NO_FORM
    payment: Payment = NO_PAYMENT


@dataclass(frozen=True, slots=True)
class FindingCounts:
    """How many findings of each kind; a fail is put right, accepted, or still stands (failed)."""

    failed: int
    put_right: int
    accepted: int
    unknown: int
    notes: int
    passed: int


@dataclass(frozen=True, slots=True)
class RouteOption:
    """One way of the survey priced on its own, for the comparison of ways.

    Attributes:
        hours: charged. labor: these at the shop's rate. materials: listed, as far as priced.
        cost: labor + materials, before small items, markup and trips.
        blocked_by: ids of the findings that stop this way. unpriced_items: what the cost leaves
            out. why: the reason for its rank, in words.
    """

    route: str
    rank: int
    order_text: str
    members: int
    openings: int
    opening_in2: Fraction
    hours: Decimal
    labor: Decimal
    materials: Decimal
    cost: Decimal
    total: Decimal
    findings: FindingCounts
    blocked_by: tuple[str, ...]
    unpriced_items: tuple[str, ...]
    why: str
    chosen: bool


@dataclass(frozen=True, slots=True)
class BookLine:
    """One line for the bookkeeper: a budget memo, nothing is posted by a bid.

    Attributes:
        cost: what the shop expects to spend; None where unknown. price: what the customer pays.
    """

    line_kind: str
    account_code: str
    account_name: str
    description: str
    quantity: Decimal | None
    unit: str
    cost: Decimal | None
    price: Decimal


@dataclass(frozen=True, slots=True)
class VersionNote:
    """One version of a bid.

    Attributes:
        total: what it comes to with the books of today; None where its file is not named.
        changes: what it states differently from the version before it.
    """

    number: int
    dated: date | None
    why: str
    total: Decimal | None
    changes: tuple[ChangedFact, ...]


@dataclass(frozen=True, slots=True)
class Bid:
    """Everything the outputs need, and nothing they must work out themselves.

    Attributes:
        second_total: the total if every unknown that moves the price turns out badly; None
            where none does. second_total_why: which unknowns those are.
        one_more: what one more outlet would cost; None where nobody asked.
    """

    survey: Survey
    books: Books
    takeoff: Takeoff
    findings: tuple[Finding, ...]
    shopping: tuple[ShoppingLine, ...]
    labor: tuple[LaborLine, ...]
    hours: Hours
    price: PriceBuild
    routes: tuple[RouteOption, ...]
    book_lines: tuple[BookLine, ...]
    second_total: Decimal | None
    second_total_why: str
    one_more: OneMore | None = None
    versions: tuple[VersionNote, ...] = ()

    @property
    def assumptions(self) -> tuple[Assumption, ...]:
        """What is taken as so: one numbered line for each fact that nobody looked at.

        Lines about what was found and left as it is come last; they are `decided`.
        """
        return self.takeoff.assumptions
