"""What an event of the books is: a balanced set of postings, debit above zero."""

from __future__ import annotations

import datetime
from dataclasses import dataclass
from decimal import Decimal

_ZERO = Decimal(0)


@dataclass(frozen=True, slots=True)
class Posting:
    """One line of an event.

    Attributes:
        kind: which account, by accounts.csv.
        net, tax: what is posted, debit above zero and credit below; tax is the part of it
            that is tax.
        source: the line of the close-out file that it comes from.
    """

    kind: str
    net: Decimal
    description: str
    source: str
    tax: Decimal = _ZERO
    job: str = ""
    phase: str = ""
    quantity: Decimal | None = None
    unit: str = ""
    unit_cost: Decimal | None = None
    billable: bool = False
    memo: str = ""

    @property
    def amount(self) -> Decimal:
        """Debit above zero, credit below."""
        return self.net + self.tax


@dataclass(frozen=True, slots=True)
class Event:
    """One thing that happened, with postings that add up to zero.

    Attributes:
        doc_type: bill, credit, invoice, payment ...; it also orders the events of a day.
        tax_code: "purchase" or "sales" where tax is in it. tax_rate_pct: None where not known.
        detail: tells events of one document apart, such as who worked at what.
    """

    job: str
    date: datetime.date
    doc_type: str
    doc_no: str
    party: str
    party_type: str
    postings: tuple[Posting, ...]
    tax_code: str = ""
    tax_rate_pct: Decimal | None = None
    detail: str = ""
