"""The parts of a price: supply run, contingency, allowances, tax, price form, payment, rate."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from estimator.settings import PriceFormKind, SupplyRunPolicy, TaxMode, TaxRounding

ZERO = Decimal(0)


@dataclass(frozen=True, slots=True)
class SupplyRun:
    """Hours for fetching materials, and how they get into the price.

    Attributes:
        worth: round(hours x labor rate), by any policy. amount: what stands as a line of its
            own: worth where the policy is "line", else 0. labor_hours: what is added to the
            hours charged: the hours where the policy is "in-labor", else 0.
        why: the policy in a sentence; empty where there are no hours.
    """

    policy: SupplyRunPolicy = "line"
    hours: Decimal = ZERO
    worth: Decimal = ZERO
    amount: Decimal = ZERO
    labor_hours: Decimal = ZERO
    why: str = ""


@dataclass(frozen=True, slots=True)
class Contingency:
    """What is put by for what may be found.

    Attributes:
        pct: of basis_amount; where it comes from a confidence, worked out of the amount and
            rounded to two places.
        on: "labor": basis_amount is the labor (hours of a supply run in it, a line of its own
            not). "built-up": basis_amount is base + overhead + profit.
        source: "percent": amount = round(basis_amount x pct). "confidence": the amount that
            reaches confidence_pct in the range of the job.
        shown: a line of its own on the bid; otherwise it is inside the price, never both.
    """

    pct: Decimal = ZERO
    on: Literal["labor", "built-up"] = "labor"
    source: Literal["percent", "confidence"] = "percent"
    confidence_pct: Decimal = ZERO
    basis_amount: Decimal = ZERO
    amount: Decimal = ZERO
    shown: bool = True
    why: str = ""


@dataclass(frozen=True, slots=True)
class AllowanceLine:
    """A sum set aside for what is not chosen yet; it comes after the price offered."""

    name: str
    kind: Literal["materials", "labor", "other"]
    amount: Decimal


@dataclass(frozen=True, slots=True)
class TaxedLine:
    """One line of the price that is taxed.

    Attributes:
        name: "materials", "labor", "trips", "supply run", "overhead", "profit", "contingency",
            "minimum" (the step up to it), "offer rounding", "allowance: its name", "permit",
            "permit handling".
        amount: the whole line; in mode "materials-sold" with their part of the overhead where
            they are taxed before profit.
        tax: on round(amount x share_pct) alone; counts only where the basis is "line". Of a
            line below zero (a price rounded down) it takes off, never more than the taxes
            before it brought.
    """

    name: str
    amount: Decimal
    tax: Decimal


@dataclass(frozen=True, slots=True)
class TaxBuild:
    """The tax charged to the customer.

    Attributes:
        factor_pct: what the base is multiplied by: rate_pct; in mode "gross-receipts" the
            published gross_factor_pct, or 100 x rate / (100 - rate) (not rounded).
        base: on the basis "invoice" round(sum of the lines x share_pct), on the basis "line"
            the sum of round(line x share_pct); never below zero.
        tax: on the basis "invoice" base x factor, on the basis "line" the taxes of the lines
            added up; a tax is rounded as `rounding` says (0.005 to 0.01, down, or to even).
    """

    mode: TaxMode = "none"
    basis: Literal["invoice", "line"] = "invoice"
    rounding: TaxRounding = "half-up"
    rate_pct: Decimal = ZERO
    share_pct: Decimal = Decimal(100)
    factor_pct: Decimal = ZERO
    lines: tuple[TaxedLine, ...] = ()
    base: Decimal = ZERO
    tax: Decimal = ZERO


@dataclass(frozen=True, slots=True)
class PriceForm:
    """What the customer is promised, in one sentence.

    Attributes:
        cap: round(total x (1 + not_to_exceed_pct)) where the form is "not-to-exceed"; None else.
    """

    kind: PriceFormKind = "fixed"
    sentence: str = ""
    not_to_exceed_pct: Decimal = ZERO
    cap: Decimal | None = None


@dataclass(frozen=True, slots=True)
class PaymentStep:
    """One payment: when it is due, its percentage of the total, and its amount."""

    when: str
    pct: Decimal
    amount: Decimal


@dataclass(frozen=True, slots=True)
class Payment:
    """How the total is paid.

    Attributes:
        deposit_of: "total": round(total x deposit_pct). "materials": round(materials_sell x
            deposit_pct), and no more than the total. "plan": the first step of the plan.
        cap: the lesser of round(total x deposit_cap_pct) and deposit_cap_amount; None where
            neither is set. over_cap: the deposit is more than that; it is not changed for it.
        steps: add up to the total: of a plan the shares of the total by largest remainder,
            else deposit and balance (each left out where it is zero).
    """

    deposit_of: Literal["total", "materials", "plan"] = "total"
    deposit: Decimal = ZERO
    cap_pct: Decimal | None = None
    cap_amount: Decimal | None = None
    cap: Decimal | None = None
    over_cap: bool = False
    steps: tuple[PaymentStep, ...] = ()


@dataclass(frozen=True, slots=True)
class RateBuild:
    """A labor rate worked out from what an hour costs; every step rounded to the cent.

    Attributes:
        burden_base: what the burden is a percentage of, in words.
        burdened: wage x (1 + burden). billable_hours: paid_hours x billable_pct.
        labor_per_hour: burdened x paid_hours / billable_hours.
        overhead_per_hour: overhead_per_year / billable_hours.
        cost_per_hour: the two added up. rate: cost_per_hour / (1 - profit margin).
    """

    wage_per_hour: Decimal
    burden_pct: Decimal
    burden_base: str
    burdened: Decimal
    paid_hours: Decimal
    billable_pct: Decimal
    billable_hours: Decimal
    labor_per_hour: Decimal
    overhead_per_year: Decimal
    overhead_per_hour: Decimal
    cost_per_hour: Decimal
    profit_margin_pct: Decimal
    rate: Decimal


@dataclass(frozen=True, slots=True)
class OneMore:
    """One more outlet while there: what the total would be more; None with the reason."""

    amount: Decimal | None
    why: str


NO_SUPPLY_RUN, NO_CONTINGENCY, NO_TAX = SupplyRun(), Contingency(), TaxBuild()
NO_FORM, NO_PAYMENT = PriceForm(), Payment()
