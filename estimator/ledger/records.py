"""The close-out file as frozen records: what was bought, drawn, worked, invoiced and paid."""

from __future__ import annotations

import datetime
from decimal import Decimal
from typing import Literal, Self

from pydantic import Field, model_validator

from estimator.ledger.fields import AboveZero, Amount, Hours, Percent, Record, refusal

THIS_JOB = "job"
OTHER_JOB = "job:"
TRUCK, TOOL, SUPPLIES, OWNER = "truck-stock", "own-tool", "supplies", "owner"
PURPOSES = (THIS_JOB, TRUCK, TOOL, SUPPLIES, OWNER)
CostKind = Literal["materials", "permit", "subcontract", "other"]


class CloseOut(Record):
    """Which job is closed, and where its estimate stands."""

    job: str = Field(min_length=1, description="job number, as on the bid")
    date: datetime.date = Field(description="day of the close-out, such as 2026-03-20")
    title: str = Field(default="", description="short name; from the job file where one is named")
    customer: str = Field(default="", description="who pays; from the job file where one is named")
    estimate: str | None = Field(
        default=None,
        min_length=1,
        description="job file of the bid, beside this file; or type `[estimate]`",
    )
    books: str | None = Field(
        default=None, min_length=1, description="folder with your books, beside this file"
    )
    locale: str = Field(
        default="en_US", description="how money and dates are shown; a job file goes before"
    )
    labor_cost_per_hour: Amount | None = Field(
        default=None, description="what an hour costs you; left out: from shop.toml"
    )
    purchase_tax: Literal["cost", "recovered"] = Field(
        default="cost", description="tax paid when buying: part of the cost, or claimed back (VAT)"
    )


class EstimatedPhase(Record):
    """Hours that the estimate gave one phase."""

    phase: str = Field(min_length=1, description="such as rough-in")
    hours: Hours = Field(description="hours estimated")


class TypedEstimate(Record):
    """The estimate typed out, where no job file is named."""

    price: Amount = Field(description="what the customer pays before tax")
    tax: Amount = Field(default=Decimal(0), description="tax that the customer pays on top of it")
    materials: Amount = Field(description="cost of materials")
    labor_hours: Amount = Field(description="hours in all")
    permit: Amount = Field(default=Decimal(0), description="permit fee paid to the office")
    other: Amount = Field(default=Decimal(0), description="any other cost")
    phases: tuple[EstimatedPhase, ...] = Field(
        default=(), description="hours by phase, where they were estimated so"
    )

    @model_validator(mode="after")
    def _phases_add_up(self) -> Self:
        hours = sum((each.hours for each in self.phases), Decimal(0))
        if self.phases and hours != self.labor_hours:
            reason = f"the phases add up to {hours} h, and labor_hours says {self.labor_hours}"
            raise refusal(reason, "Let the phases add up to labor_hours.")
        return self


class Deposit(Record):
    """What deposit was asked, and the cap that holds where you work."""

    asked_pct: Percent = Field(description="of the price with tax")
    cap_pct: Percent | None = Field(default=None, description="local cap, of the price with tax")
    cap_amount: Amount | None = Field(default=None, description="local cap; the lesser cap holds")


class ReceiptLine(Record):
    """One line of a receipt or a return, before tax."""

    description: str = Field(min_length=1, description="what it is")
    amount: Amount = Field(description="before tax")
    purpose: str = Field(
        default=THIS_JOB,
        alias="for",
        description="`job`, `job:NUMBER`, `truck-stock`, `own-tool`, `supplies` or `owner`",
    )
    kind: CostKind = Field(default="materials", description="what it costs the job as")
    item: str = Field(default="", description="item key of materials.csv, to compare by item")
    quantity: AboveZero | None = Field(default=None, description="how many, in the item's unit")
    billable: bool = Field(default=False, description="charged on to the customer apart")

    @model_validator(mode="after")
    def _purpose_is_known(self) -> Self:
        other = self.purpose.removeprefix(OTHER_JOB).strip()
        is_other = self.purpose.startswith(OTHER_JOB) and other
        if self.purpose not in PURPOSES and not is_other:
            words = ", ".join(f'"{each}"' for each in PURPOSES)
            raise refusal(
                f'"{self.purpose}" is nothing a line can be for',
                f'Write for = {words}, or "job:NUMBER" for another job.',
            )
        return self


class Receipt(Record):
    """One paper from a supplier: lines before tax, and the tax on all of them."""

    date: datetime.date = Field(description="on the paper")
    supplier: str = Field(min_length=1, description="who sold it")
    doc_no: str = Field(min_length=1, description="number on the paper; one supplier, one number")
    tax_rate_pct: Percent | None = Field(default=None, description="rate of tax on the lines")
    tax: Amount | None = Field(default=None, description="or the tax as printed")
    paid: Literal["bank", "card", "on account"] = Field(default="bank", description="how")
    lines: tuple[ReceiptLine, ...] = Field(min_length=1, description="what is on the paper")

    @model_validator(mode="after")
    def _one_tax(self) -> Self:
        if self.tax is not None and self.tax_rate_pct is not None:
            raise refusal("tax and tax_rate_pct are both given", "Keep one of them.")
        if self.tax and not any(line.amount for line in self.lines):
            raise refusal("there is tax and no amount that it is on", "Give the lines an amount.")
        return self


class StockMove(Record):
    """Something from the truck to the job, or back: by the foot, the piece or the whole coil."""

    date: datetime.date = Field(description="when")
    what: str = Field(min_length=1, description="in words")
    move: Literal["drawn", "put back"] = Field(default="drawn", description="which way")
    quantity: AboveZero = Field(description="how many of the unit")
    unit: str = Field(default="ea", min_length=1, description="ft, ea, coil ...")
    unit_cost: Amount | None = Field(default=None, description="what one unit cost you")
    pack_size: AboveZero | None = Field(
        default=None, description="units in a whole coil or pack, in place of unit_cost"
    )
    pack_cost: Amount | None = Field(default=None, description="what the whole coil or pack cost")
    item: str = Field(default="", description="item key of materials.csv, to compare by item")

    @model_validator(mode="after")
    def _one_cost(self) -> Self:
        pack = (self.pack_size is not None, self.pack_cost is not None)
        if (self.unit_cost is not None) == any(pack) or pack[0] != pack[1]:
            raise refusal(
                "the cost of a unit is not clear",
                "Write unit_cost, or pack_size together with pack_cost.",
            )
        return self


class WorkedHours(Record):
    """Hours of one person on one day, for a task of the labor book or for a phase."""

    date: datetime.date = Field(description="when")
    task: str = Field(default="", description="task key of labor.csv")
    phase: str = Field(default="", description="or the phase, such as rough-in")
    hours: Hours = Field(description="hands on")
    cost_per_hour: Amount | None = Field(default=None, description="if not labor_cost_per_hour")
    quantity: AboveZero | None = Field(
        default=None, description="how much was done; left out: as the estimate has it"
    )
    who: str = Field(default="", description="who worked")

    @model_validator(mode="after")
    def _task_or_phase(self) -> Self:
        if not self.task and not self.phase:
            raise refusal("these hours have no task and no phase", "Write a task or a phase.")
        return self


class Drive(Record):
    """Distance driven for the job."""

    date: datetime.date = Field(description="when")
    distance: AboveZero = Field(description="miles, or kilometres with a rate of your own")
    unit: Literal["mi", "km"] = Field(default="mi", description="miles or kilometres")
    rate: Amount | None = Field(
        default=None, description="cost of one; left out: the IRS rate of that year, for miles"
    )
    why: str = Field(default="", description="where to")

    @model_validator(mode="after")
    def _rate_of_kilometres(self) -> Self:
        if self.unit == "km" and self.rate is None:
            raise refusal("there is no rate on file for kilometres", "Write rate = 0.45 or so.")
        return self


class Invoice(Record):
    """What the customer was invoiced, before tax by kind, and the tax."""

    date: datetime.date = Field(description="on the invoice")
    doc_no: str = Field(min_length=1, description="number of the invoice")
    materials: Amount = Field(default=Decimal(0), description="before tax")
    labor: Amount = Field(default=Decimal(0), description="before tax")
    other: Amount = Field(default=Decimal(0), description="before tax: trips, permit, fixed price")
    tax_rate_pct: Percent | None = Field(default=None, description="rate of tax on what is taxed")
    taxed: Literal["materials", "all"] = Field(default="all", description="what the rate is on")
    tax: Amount | None = Field(default=None, description="or the tax as invoiced")
    credit: bool = Field(default=False, description="a credit note: the amounts are taken back")

    @model_validator(mode="after")
    def _something(self) -> Self:
        if self.tax is not None and self.tax_rate_pct is not None:
            raise refusal("tax and tax_rate_pct are both given", "Keep one of them.")
        if not (self.materials or self.labor or self.other):
            raise refusal("this invoice has no amount", "Write materials, labor or other.")
        return self


class Payment(Record):
    """Money that came from the customer."""

    date: datetime.date = Field(description="when it came")
    doc_no: str = Field(min_length=1, description="number of the check or transfer")
    kind: Literal["deposit", "balance"] = Field(
        default="balance", description="a deposit is owed until it is applied to an invoice"
    )
    amount: AboveZero = Field(description="what came")
    applied: datetime.date | None = Field(
        default=None, description="deposit: when applied; left out: the day of the first invoice"
    )


class PaidOut(Record):
    """Money that went out for what was booked before: a supplier's account, the tax office."""

    date: datetime.date = Field(description="when it went")
    doc_no: str = Field(min_length=1, description="number of the check or transfer")
    to: Literal["supplier", "tax office"] = Field(description="which debt it pays")
    amount: AboveZero = Field(description="what went")
    party: str = Field(default="", description="who got it")


class CloseOutRecord(Record):
    """Everything written down for one job once it is done."""

    format: Literal[1] = Field(default=1, description="version of this file's form")
    close_out: CloseOut
    estimate: TypedEstimate | None = Field(default=None, description="the estimate typed out")
    deposit: Deposit | None = Field(default=None, description="deposit asked, and local caps")
    receipts: tuple[Receipt, ...] = Field(default=(), description="what was bought")
    returns: tuple[Receipt, ...] = Field(default=(), description="what went back")
    stock: tuple[StockMove, ...] = Field(default=(), description="truck stock")
    hours: tuple[WorkedHours, ...] = Field(default=(), description="hours worked")
    mileage: tuple[Drive, ...] = Field(default=(), description="distance driven")
    invoices: tuple[Invoice, ...] = Field(default=(), description="what was invoiced")
    payments: tuple[Payment, ...] = Field(default=(), description="what the customer paid")
    paid_out: tuple[PaidOut, ...] = Field(default=(), description="debts paid")
