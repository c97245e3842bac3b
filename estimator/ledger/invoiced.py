"""What was invoiced and what came in: net, tax and what is still owed."""

from __future__ import annotations

from collections.abc import Iterable
from decimal import Decimal

from estimator.ledger.records import CloseOutRecord, Invoice, Payment
from estimator.money import round_money


def parts_of(invoice: Invoice, currency: str) -> dict[str, Decimal]:
    """The amounts of an invoice before tax, by kind; those that are zero left out."""
    parts = {"materials": invoice.materials, "labor": invoice.labor, "other": invoice.other}
    return {kind: round_money(amount, currency) for kind, amount in parts.items() if amount}


def invoice_net(invoice: Invoice, currency: str) -> Decimal:
    """Amount before tax, as it stands on the paper."""
    return sum(parts_of(invoice, currency).values(), Decimal(0))


def invoice_tax(invoice: Invoice, currency: str) -> Decimal:
    """Tax on an invoice: as invoiced, or the rate on what is taxed, rounded once."""
    if invoice.tax is not None:
        return round_money(invoice.tax, currency)
    parts = parts_of(invoice, currency)
    taxed = parts if invoice.taxed == "all" else {"materials": parts.get("materials", Decimal(0))}
    base = sum(taxed.values(), Decimal(0))
    return round_money(base * (invoice.tax_rate_pct or 0) / 100, currency)


def sign_of(invoice: Invoice) -> int:
    """A credit note takes back what an invoice asked."""
    return -1 if invoice.credit else 1


def invoiced_net(record: CloseOutRecord, currency: str) -> Decimal:
    """All invoices less credit notes, before tax."""
    nets = (sign_of(each) * invoice_net(each, currency) for each in record.invoices)
    return sum(nets, Decimal(0))


def balance_due(record: CloseOutRecord, currency: str) -> Decimal | None:
    """Invoiced with tax, less what came in; None where nothing was invoiced."""
    if not record.invoices:
        return None
    taxes = (sign_of(each) * invoice_tax(each, currency) for each in record.invoices)
    came = came_in(record.payments, currency)
    return invoiced_net(record, currency) + sum(taxes, Decimal(0)) - came


def came_in(payments: Iterable[Payment], currency: str) -> Decimal:
    """Payments added up, each rounded to the cent as the books post it."""
    amounts = (round_money(each.amount, currency) for each in payments)
    return sum(amounts, round_money(Decimal(0), currency))
