"""Receipts and returns line by line: what each is for, and its share of the tax."""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from estimator.ledger.reader import CloseOutFile
from estimator.ledger.records import OTHER_JOB, THIS_JOB, CostKind, Receipt, ReceiptLine
from estimator.money import round_money, split_money

Paper = Literal["receipts", "returns"]
JOB = "job"


@dataclass(frozen=True, slots=True)
class BoughtLine:
    """One line of a receipt (or of a return, with the same sign: what it says on the paper).

    Attributes:
        purpose: "job" for any job, or truck-stock, own-tool, supplies, owner.
        job: number of the job that it is for; empty for other purposes.
        net: before tax. tax: its share of the tax on the paper. gross: both.
        source: where it stands in its file, such as "receipts[0].lines[2]".
    """

    paper: Paper
    date: datetime.date
    supplier: str
    doc_no: str
    description: str
    purpose: str
    job: str
    kind: CostKind
    item: str
    quantity: Decimal | None
    billable: bool
    net: Decimal
    tax: Decimal
    gross: Decimal
    source: str


def tax_on(receipt: Receipt, currency: str) -> Decimal:
    """Tax on one paper: as printed, or the rate on the sum of its lines, rounded once."""
    if receipt.tax is not None:
        return round_money(receipt.tax, currency)
    net = sum(_amounts(receipt, currency), Decimal(0))
    return round_money(net * (receipt.tax_rate_pct or 0) / 100, currency)


def _amounts(receipt: Receipt, currency: str) -> tuple[Decimal, ...]:
    return tuple(round_money(line.amount, currency) for line in receipt.lines)


def bought_lines(file: CloseOutFile, currency: str) -> Iterator[BoughtLine]:
    """Every line of every receipt and return of a file.

    The tax of a paper is split over its lines by largest remainder, so that the shares add up
    to the tax as it was paid.
    """
    papers: tuple[tuple[Paper, tuple[Receipt, ...]], ...] = (
        ("receipts", file.record.receipts),
        ("returns", file.record.returns),
    )
    for name, receipts in papers:
        for at, receipt in enumerate(receipts):
            amounts = _amounts(receipt, currency)
            taxes = split_money(tax_on(receipt, currency), amounts, currency)
            for row, line in enumerate(receipt.lines):
                source = f"{name}[{at}].lines[{row}]"
                yield _line(file, name, receipt, line, (amounts[row], taxes[row], source))


def _line(
    file: CloseOutFile,
    paper: Paper,
    receipt: Receipt,
    line: ReceiptLine,
    figures: tuple[Decimal, Decimal, str],
) -> BoughtLine:
    net, tax, source = figures
    job = job_of(line.purpose, file.job)
    return BoughtLine(
        paper=paper,
        date=receipt.date,
        supplier=receipt.supplier,
        doc_no=receipt.doc_no,
        description=line.description,
        purpose=JOB if job else line.purpose,
        job=job,
        kind=line.kind,
        item=line.item,
        quantity=line.quantity,
        billable=line.billable,
        net=net,
        tax=tax,
        gross=net + tax,
        source=source,
    )


def job_of(purpose: str, this_job: str) -> str:
    """Number of the job that a line is for; empty where it is for none."""
    if purpose == THIS_JOB:
        return this_job
    return purpose.removeprefix(OTHER_JOB).strip() if purpose.startswith(OTHER_JOB) else ""


def lines_for(job: str, files: Iterable[CloseOutFile], currency: str) -> tuple[BoughtLine, ...]:
    """The lines that are for one job, out of all files: its own, and those of other jobs."""
    return tuple(line for file in files for line in bought_lines(file, currency) if line.job == job)
