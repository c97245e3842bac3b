"""How one shop works: the frozen settings that shop.toml, or a job, gives to every stage.

Nothing here has a default: the shipped shop.toml is the one place where defaults stand.
Lengths are inches, areas square inches, volumes cubic inches, all exact fractions;
percentages are plain numbers (10 is 10 %); money is in the job's currency.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import Literal

from estimator.settings_risk import CalendarTerms, RiskTerms

PerWhat = Literal["job", "run", "opening", "visible-opening", "new-box", "plaster-opening", "paint"]


@dataclass(frozen=True, slots=True)
class Consumable:
    """Something used up on the job that no length or area measures.

    Attributes:
        item: key in the materials book.
        quantity: how many for each `per`, in the item's unit.
        per: what it is counted by; "paint" is each room that gets wall paint.
    """

    item: str
    quantity: Decimal
    per: PerWhat


@dataclass(frozen=True, slots=True)
class Practice:
    """Takeoff conventions of the shop; a run in a job may override some of them.

    Attributes:
        count_built_in_clamps: the flaps and wings that hold the cable in a plastic or old-work
            box take room like a clamp; inspectors differ.
    """

    tail_in: Fraction
    tail_floor_in: Fraction
    corner_extra_in: Fraction
    obstacle_extra_in: Fraction
    allowance_pct: Decimal
    order_step_in: Fraction
    hole_in: Fraction
    plate_edge_in: Fraction
    plate_behind_trim_always: bool
    count_built_in_clamps: bool
    staple_first_in: Fraction
    staple_spacing_in: Fraction
    hole_end_supports: bool
    compound_in3_per_in: Fraction
    feather_in: Fraction
    paint_coats: int
    paint_in2_per_in3: Fraction
    primer_in2_per_in3: Fraction
    board_waste_pct: Decimal
    backing_overlap_in: Fraction
    patch_screws_count: int
    patch_screws_side_in: Fraction
    patch_screws_per_ft: Decimal
    trim_nails_per_ft: Decimal
    consumables: tuple[Consumable, ...]


@dataclass(frozen=True, slots=True)
class PriceTerms:
    """Rates and the way from cost to price.

    Attributes:
        hours_basis: which hours are charged: "likely" or "expected" (three-point).
        materials_markup_pct: on cost; when the book gave a margin it has been turned into this.
        small_items_pct: visible percentage on the cost of listed materials.
        overhead_pct: on labor, materials and trips; profit_pct: on those plus overhead.
        permit_cost: what the office charges; permit_handling: the shop's fee for getting it.
            None where no permit is priced.
    """

    labor_rate_per_hour: Decimal
    hours_basis: Literal["likely", "expected"]
    materials_markup_pct: Decimal
    small_items_pct: Decimal
    minimum_charge: Decimal
    trip_charge: Decimal
    overhead_pct: Decimal
    profit_pct: Decimal
    permit_cost: Decimal | None
    permit_handling: Decimal


@dataclass(frozen=True, slots=True)
class TaxTerms:
    """Sales tax: one rate on the materials as sold, or none."""

    mode: Literal["materials-sold", "none"]
    rate_pct: Decimal


@dataclass(frozen=True, slots=True)
class Terms:
    """What the bid says besides the price; wording belongs to the user."""

    price_form: Literal["fixed"]
    deposit_pct: Decimal
    validity_days: int
    firm_name: str
    firm_contact: str
    firm_license: str
    included: tuple[str, ...]
    excluded: tuple[str, ...]
    permit_line: str
    payment_line: str
    workmanship_line: str
    change_line: str


@dataclass(frozen=True, slots=True)
class ChangeTerms:
    """How work that is added or dropped after the bid is priced; None is as in the bid.

    Attributes:
        handling: a fee for each change order.
        credit_pct: the share of the price of dropped work that is given back.
        materials_bought: the parts of the first bid are bought when a change is priced.
    """

    labor_rate_per_hour: Decimal | None
    materials_markup_pct: Decimal | None
    trip_charge: Decimal | None
    minimum_charge: Decimal
    handling: Decimal
    credit_pct: Decimal
    materials_bought: bool


@dataclass(frozen=True, slots=True)
class CompareTerms:
    """What stands in where a job says nothing about doing the work yourself.

    Attributes:
        own_hour: worth of an hour of the owner's.
        hire_own_hours: hours that hiring takes the owner, for one bid.
    """

    own_hour: Decimal
    hire_own_hours: Decimal


@dataclass(frozen=True, slots=True)
class LedgerTerms:
    """What closing a job goes by.

    Attributes:
        labor_cost_per_hour: what an hour costs the shop; None is the burdened wage of [rate].
        credibility_jobs: jobs of one's own that weigh as much as the labor book.
    """

    labor_cost_per_hour: Decimal | None
    credibility_jobs: Decimal


@dataclass(frozen=True, slots=True)
class Shop:
    """All settings of a shop after every layer was laid over the one before.

    Attributes:
        conditions: hour factor by condition key ("plaster" -> 1.75).
        origin: layer that each setting came from, by dotted key ("practice.tail").
        shown: each setting as it was written, by dotted key, for the assumptions sheet.
        currency: ISO 4217 code that every price in this shop's books is in.
        units: the system that bare numbers and order steps are meant in.
        decimal_comma: the books write 1,25 where others write 1.25.
        stale_after_days: a price older than this is called stale.
    """

    practice: Practice
    price: PriceTerms
    tax: TaxTerms
    terms: Terms
    change: ChangeTerms
    conditions: Mapping[str, Decimal]
    risk: RiskTerms
    calendar: CalendarTerms
    compare: CompareTerms
    ledger: LedgerTerms
    currency: str
    units: Literal["us", "metric"]
    decimal_comma: bool
    stale_after_days: int
    origin: Mapping[str, str]
    shown: Mapping[str, str]
