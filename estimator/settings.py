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

from estimator.language import CrewLanguage, LanguageCode
from estimator.settings_risk import CalendarTerms, RiskTerms

SupplyRunPolicy = Literal["line", "in-markup", "in-labor"]
TaxMode = Literal[
    "none", "paid-at-purchase", "materials-sold", "whole-price", "purchase-and-labor",
    "gross-receipts", "part-of-price", "vat",
]  # fmt: skip
TaxRounding = Literal["half-up", "down", "half-even"]
PriceFormKind = Literal["fixed", "time-and-material", "not-to-exceed"]
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
        labor_rate_per_hour: None where it is built from [rate]; ask
            pricing.rate_builder.labor_rate for the figure.
        hours_basis: which hours are charged: "likely" or "expected" (three-point).
        materials_markup_pct: on cost; when the book gave a margin it has been turned into this.
        small_items_pct: visible percentage on the cost of listed materials.
        overhead_pct: on labor, materials, trips and supply run; profit_pct: on those plus
            overhead.
        permit_cost: what the office charges; permit_handling: the shop's fee for getting it.
            None where no permit is priced.
        permit_visits: trips for inspections, charged like the others; not where a job states
            its trips. permit_filed_by: who files it, in words.
        supply_run_hours: for fetching materials. supply_run_policy: "line" charges them as a
            line of their own, "in-labor" adds them to the hours, "in-markup" adds nothing.
        contingency_pct: of labor or of the built-up price, by contingency_on.
        contingency_from: "percent", or "confidence": then the amount comes from the range.
        contingency_shown: as a line on the bid; otherwise it is inside the price.
        offer_step: the price offered is a multiple of it; 0 where it is not rounded.
        one_more_path_in: cable path taken for one more outlet.
    """

    labor_rate_per_hour: Decimal | None
    hours_basis: Literal["likely", "expected"]
    materials_markup_pct: Decimal
    small_items_pct: Decimal
    minimum_charge: Decimal
    trip_charge: Decimal
    overhead_pct: Decimal
    profit_pct: Decimal
    permit_cost: Decimal | None
    permit_handling: Decimal
    permit_visits: int
    permit_filed_by: str
    supply_run_hours: Decimal
    supply_run_policy: SupplyRunPolicy
    contingency_pct: Decimal
    contingency_on: Literal["labor", "built-up"]
    contingency_from: Literal["percent", "confidence"]
    contingency_confidence_pct: Decimal
    contingency_shown: bool
    offer_step: Decimal
    offer_rounding: Literal["nearest", "up"]
    one_more_path_in: Fraction


@dataclass(frozen=True, slots=True)
class RateTerms:
    """What an hour costs the shop, from which its labor rate can be built.

    Attributes:
        burden_pct: of the straight wage (not of pay with leave): payroll taxes, insurance,
            paid time off and benefits.
        paid_hours: in a year. billable_pct: the share of them that customers pay.
        profit_margin_pct: share of the price.
    """

    wage_per_hour: Decimal
    burden_pct: Decimal
    paid_hours: Decimal
    billable_pct: Decimal
    overhead_per_year: Decimal
    profit_margin_pct: Decimal


@dataclass(frozen=True, slots=True)
class TaxTerms:
    """How sales tax or VAT is treated; the user chooses, nothing is preset for a place.

    Attributes:
        rate_pct: charged to the customer. purchase_rate_pct: paid at the counter.
        purchase_tax: how tax paid at the counter gets into the price.
        taxed_share_pct: share of the price that is taxed in mode "part-of-price".
        materials_base: which figure of the materials is taxed in mode "materials-sold".
        gross_factor_pct: None: the exact gross-up of rate_pct.
        basis: tax on the whole invoice, or on each line and then added.
        prices_include_tax: the materials book holds prices with tax in them.
    """

    mode: TaxMode
    rate_pct: Decimal
    purchase_rate_pct: Decimal
    purchase_tax: Literal["before-markup", "after-markup", "not-recovered"]
    taxed_share_pct: Decimal
    materials_base: Literal["sold", "before-profit"]
    gross_factor_pct: Decimal | None
    basis: Literal["invoice", "line"]
    rounding: TaxRounding
    prices_include_tax: bool


@dataclass(frozen=True, slots=True)
class PlannedPayment:
    """One payment of the plan: when it is due, and its percentage of the total."""

    when: str
    pct: Decimal


@dataclass(frozen=True, slots=True)
class Terms:
    """What the bid says besides the price; wording belongs to the user.

    Attributes:
        not_to_exceed_pct: how far above the total the cap of form "not-to-exceed" lies.
        fixed_line, time_and_material_line, not_to_exceed_line: each form in one sentence.
        deposit_of: what deposit_pct is a share of: the total, or the materials as sold.
        deposit_cap_pct, deposit_cap_amount: the most a deposit may be, as a share of the total
            and as an amount; the lesser holds, None where there is none. The deposit is never
            changed for it: a deposit that is over is flagged.
        payment_steps: shares of the total; the first is the deposit. Empty: deposit, balance.
        cancellation_file: as written, None for none; cancellation_text: what stands in it.
        language: what the customer reads. crew_language: what the crew reads.
    """

    price_form: PriceFormKind
    not_to_exceed_pct: Decimal
    fixed_line: str
    time_and_material_line: str
    not_to_exceed_line: str
    deposit_of: Literal["total", "materials"]
    deposit_pct: Decimal
    deposit_cap_pct: Decimal | None
    deposit_cap_amount: Decimal | None
    payment_steps: tuple[PlannedPayment, ...]
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
    start_line: str
    finish_line: str
    cleanup_line: str
    insurance_line: str
    lien_line: str
    cancellation_file: str | None
    cancellation_text: str = ""
    language: LanguageCode = "en"
    crew_language: CrewLanguage = "en"


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
    rate: RateTerms
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
