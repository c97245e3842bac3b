"""Events with the customer: invoices, credit notes, deposits and what came in."""

from __future__ import annotations

import datetime
from collections.abc import Iterator
from decimal import Decimal

from estimator.ledger.estimated import Closed
from estimator.ledger.event_records import Event, Posting
from estimator.ledger.invoiced import invoice_tax, parts_of, sign_of
from estimator.ledger.records import Invoice, Payment
from estimator.money import round_money

_ZERO = Decimal(0)
_SOLD = {"materials": "Materials", "labor": "Labor", "other": "Other work"}


def customer_events(closed: Closed) -> Iterator[Event]:
    """Invoices, then what the customer paid; a deposit is owed until it is applied."""
    record = closed.file.record
    for at, invoice in enumerate(record.invoices):
        yield _invoice(closed, invoice, f"invoices[{at}]")
    asked = [each.date for each in record.invoices if not each.credit]
    for at, payment in enumerate(record.payments):
        source = f"payments[{at}]"
        yield _payment(closed, payment, source)
        day = payment.applied or min(asked, default=None)
        if payment.kind == "deposit" and day is not None:
            yield _applied(closed, payment, max(day, payment.date), source)


def _invoice(closed: Closed, invoice: Invoice, source: str) -> Event:
    """What the customer owes, against sales by kind and the tax collected."""
    sign, job = sign_of(invoice), closed.file.job
    parts = parts_of(invoice, closed.currency)
    tax = invoice_tax(invoice, closed.currency)
    net = sum(parts.values(), _ZERO)
    postings = [
        Posting("receivable", sign * net, "Owed by customer", source, sign * tax, job=job),
        *(
            Posting(kind, -sign * amount, _SOLD[kind], source, job=job)
            for kind, amount in parts.items()
        ),
        Posting("tax", _ZERO, "Tax collected", source, -sign * tax, job=job),
    ]
    return Event(
        job=job,
        date=invoice.date,
        doc_type="credit" if invoice.credit else "invoice",
        doc_no=invoice.doc_no,
        party=closed.customer,
        party_type="customer",
        postings=tuple(postings),
        tax_code="sales" if tax else "",
        tax_rate_pct=invoice.tax_rate_pct if tax else None,
    )


def _payment(closed: Closed, payment: Payment, source: str) -> Event:
    """Money that came in: for an invoice, or a deposit that is still the customer's."""
    deposit = payment.kind == "deposit"
    said = "Deposit received" if deposit else "Payment received"
    return _moved(
        closed, payment, payment.date, ("bank", "deposit" if deposit else "receivable", said),
        source,
    )  # fmt: skip


def _applied(closed: Closed, payment: Payment, day: datetime.date, source: str) -> Event:
    """A deposit that pays a part of the invoice."""
    return _moved(closed, payment, day, ("deposit", "receivable", "Deposit applied"), source)


def _moved(
    closed: Closed,
    payment: Payment,
    day: datetime.date,
    kinds: tuple[str, str, str],
    source: str,
) -> Event:
    """One amount from one account to another."""
    debit, credit, said = kinds
    amount, job = round_money(payment.amount, closed.currency), closed.file.job
    return Event(
        job=job,
        date=day,
        doc_type=said.lower(),
        doc_no=payment.doc_no,
        party=closed.customer,
        party_type="customer",
        postings=(
            Posting(debit, amount, said, source, job=job),
            Posting(credit, -amount, said, source, job=job),
        ),
    )
