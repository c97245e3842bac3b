"""Events with suppliers and the tax office: bills, what went back, and debts paid."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal
from itertools import groupby

from estimator.ledger.bought import BoughtLine, bought_lines
from estimator.ledger.estimated import Closed
from estimator.ledger.event_records import Event, Posting
from estimator.ledger.kinds import BY_PURPOSE, PAID_FROM
from estimator.ledger.records import PaidOut, Receipt
from estimator.money import round_money

_ZERO = Decimal(0)


def bill_events(closed: Closed) -> Iterator[Event]:
    """Receipts, returns, and what was paid later."""
    lines = bought_lines(closed.file, closed.currency)
    for source, found in groupby(lines, key=lambda line: line.source.partition(".")[0]):
        mine = list(found)
        receipt = _receipt(closed, mine[0], source)
        yield _bill(closed, receipt, mine, source)
    for at, paid in enumerate(closed.file.record.paid_out):
        yield _paid_out(closed, paid, f"paid_out[{at}]")


def _receipt(closed: Closed, line: BoughtLine, source: str) -> Receipt:
    """The paper that a line stands on."""
    record, at = closed.file.record, int(source.partition("[")[2].removesuffix("]"))
    return (record.returns if line.paper == "returns" else record.receipts)[at]


def _bill(closed: Closed, receipt: Receipt, lines: list[BoughtLine], source: str) -> Event:
    """One paper: each line to its account, all of it from where it was paid."""
    back = lines[0].paper == "returns"
    sign = -1 if back else 1
    recovered = closed.file.record.close_out.purchase_tax == "recovered"
    net = sum((line.net for line in lines), _ZERO)
    tax = sum((line.tax for line in lines), _ZERO)
    postings = [_bought(line, sign, recovered=recovered) for line in lines]
    if recovered:
        postings.append(Posting("input-tax", _ZERO, "Tax to be claimed back", source, sign * tax))
    paid = "Credited by supplier" if back else "Paid to supplier"
    postings.append(Posting(PAID_FROM[receipt.paid], -sign * net, paid, source, -sign * tax))
    return Event(
        job=closed.file.job,
        date=receipt.date,
        doc_type="bill credit" if back else "bill",
        doc_no=receipt.doc_no,
        party=receipt.supplier,
        party_type="supplier",
        postings=tuple(postings),
        tax_code="purchase" if tax else "",
        tax_rate_pct=receipt.tax_rate_pct if tax else None,
    )


def _bought(line: BoughtLine, sign: int, *, recovered: bool) -> Posting:
    """One line of a paper, with its share of the tax where that is a cost."""
    return Posting(
        kind=f"cost-{line.kind}" if line.job else BY_PURPOSE[line.purpose],
        net=sign * line.net,
        description=line.description,
        source=line.source,
        tax=_ZERO if recovered else sign * line.tax,
        job=line.job,
        quantity=line.quantity,
        billable=line.billable,
        memo="" if line.job else line.purpose,
    )


def _paid_out(closed: Closed, paid: PaidOut, source: str) -> Event:
    """A debt paid: to a supplier's account, or tax that was collected."""
    to_office = paid.to == "tax office"
    amount = round_money(paid.amount, closed.currency)
    said = "Sales tax paid to the tax office" if to_office else "Account paid"
    return Event(
        job=closed.file.job,
        date=paid.date,
        doc_type="tax payment" if to_office else "bill payment",
        doc_no=paid.doc_no,
        party=paid.party,
        party_type=paid.to,
        postings=(
            Posting("tax" if to_office else "payable", amount, said, source),
            Posting("bank", -amount, said, source),
        ),
    )
