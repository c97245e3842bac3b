"""The books' entries: every posting with its account, its place in time and a lasting number."""

from __future__ import annotations

import datetime
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from hashlib import sha256

from estimator.ledger.estimated import Closed
from estimator.ledger.event_records import Event, Posting
from estimator.ledger.events import events_of
from estimator.ledger.kinds import GROUPS
from estimator.ledger.reader import CloseOutFile
from estimator.money import round_money
from estimator.problems import InputError, Problem
from estimator.toml_lines import TomlPath

_ID_DIGITS = 12
_BETWEEN = "\x1f"
_ZERO = Decimal(0)
YES, NO = "Y", "N"
_ONE_FILE = 'Keep it in one file; lines of a receipt may be for = "job:NUMBER".'


@dataclass(frozen=True, slots=True)
class Entry:
    """One line of one transaction.

    Debits equal credits within a txn_id. amount_net, tax_amount and amount_gross have one
    sign, debit above zero; each adds up to zero within a txn_id. tax_amount is the part of the
    posting that is tax.

    Attributes:
        txn_id: the same at every export, whatever stands before it in the file.
        phase: such as rough-in; empty where there is none.
        billable: Y or N for lines of a job, else empty.
        markup_pct: of billable lines, where the job file gives it.
        source_line_id: file and line of the file that it comes from.
        line_kind: row of accounts.csv that gave the account. group: what it counts as.
    """

    txn_id: str
    date: datetime.date
    doc_type: str
    doc_no: str
    party: str
    party_type: str
    job_no: str
    job_name: str
    phase: str
    account_code: str
    account_name: str
    line_no: int
    description: str
    qty: Decimal | None
    unit: str
    unit_cost: Decimal | None
    amount_net: Decimal
    tax_code: str
    tax_rate: Decimal | None
    tax_amount: Decimal
    amount_gross: Decimal
    currency: str
    debit: Decimal
    credit: Decimal
    billable: str
    markup_pct: Decimal | None
    memo: str
    source_line_id: str
    line_kind: str
    group: str


def entries_of(jobs: Sequence[Closed]) -> tuple[Entry, ...]:
    """The entries of all jobs, by date; the same files give the same entries in any order.

    Raises:
        InputError: a job or a paper that stands in two files, kinds of line that accounts.csv
            has no row for, or currencies that differ; all of a sort.
    """
    refuse(_twice(jobs))
    events = [(closed, event) for closed in jobs for event in events_of(closed)]
    refuse(_unmapped(events))
    names = {closed.file.job: closed.title for closed in jobs}
    counts: Counter[str] = Counter()
    found = [
        entry
        for closed, event in events
        for entry in _lines(closed, event, _number(event, counts), names)
    ]
    return tuple(sorted(found, key=_order))


def _order(entry: Entry) -> tuple[str, str, str, int]:
    return entry.date.isoformat(), entry.doc_type, entry.txn_id, entry.line_no


def refuse(problems: Iterator[Problem]) -> None:
    """Raise InputError with every problem there is, each once."""
    found = tuple(dict.fromkeys(problems))
    if found:
        raise InputError(found)


def _twice(jobs: Sequence[Closed]) -> Iterator[Problem]:
    """Currencies that cannot be added, and jobs and papers that would be booked twice."""
    for closed in jobs:
        if closed.currency != jobs[0].currency:
            read = f"its books are in {closed.currency}, those before in {jobs[0].currency}"
            yield Problem(str(closed.file.path), read, "Export each currency on its own.")
    yield from papers_twice([closed.file for closed in jobs])


def papers_twice(files: Sequence[CloseOutFile]) -> Iterator[Problem]:
    """Jobs and papers that stand in two files and would be counted twice."""
    seen: dict[tuple[str, ...], int] = {}
    for at, file in enumerate(files):
        for key, place in _papers(file):
            first = seen.setdefault(key, at)
            if first != at:
                shown = " ".join(key[1:])
                read = f'{key[0]} "{shown}" stands already in {files[first].path}'
                yield Problem(file.where(*place), read, _ONE_FILE)


def _papers(file: CloseOutFile) -> Iterator[tuple[tuple[str, ...], TomlPath]]:
    """What may stand in one file alone, and its place: the job, receipts and returns."""
    yield ("job", file.job), ("close_out",)
    for name, papers in (("receipt", file.record.receipts), ("return", file.record.returns)):
        for at, each in enumerate(papers):
            key = (name, each.supplier.strip(), each.doc_no.strip())
            yield key, (f"{name}s", at, "doc_no")


def _unmapped(events: Sequence[tuple[Closed, Event]]) -> Iterator[Problem]:
    """Every kind of line that has no account."""
    for closed, event in events:
        where = closed.books.files.get("accounts", "accounts.csv")
        for posting in event.postings:
            if posting.kind not in closed.books.accounts:
                read = f'no account for lines of kind "{posting.kind}"'
                yield Problem(where, read, "Add a row with its account code and name.")


def _number(event: Event, counts: Counter[str]) -> str:
    """A number made of what the event is, never of its amounts or its place in the file."""
    parts = (
        event.job, event.doc_type, event.date.isoformat(), event.party, event.doc_no, event.detail
    )  # fmt: skip
    key = _BETWEEN.join(parts)
    counts[key] += 1
    digest = sha256(f"{key}{_BETWEEN}{counts[key]}".encode()).hexdigest()
    return f"{event.doc_type.replace(' ', '-')}-{digest[:_ID_DIGITS]}"


def _lines(closed: Closed, event: Event, number: str, names: Mapping[str, str]) -> Iterator[Entry]:
    for at, posting in enumerate(event.postings, start=1):
        yield _entry(closed, event, posting, (number, at, names.get(posting.job, "")))


def _entry(closed: Closed, event: Event, posting: Posting, place: tuple[str, int, str]) -> Entry:
    number, line_no, job_name = place
    account = closed.books.accounts[posting.kind]
    net, tax, gross = (
        round_money(each, closed.currency) for each in (posting.net, posting.tax, posting.amount)
    )
    nothing = round_money(_ZERO, closed.currency)
    markup = closed.bid.price.markup_pct if closed.bid and posting.billable else None
    return Entry(
        txn_id=number,
        date=event.date,
        doc_type=event.doc_type,
        doc_no=event.doc_no,
        party=event.party,
        party_type=event.party_type,
        job_no=posting.job,
        job_name=job_name,
        phase=posting.phase,
        account_code=account.account_code,
        account_name=account.account_name,
        line_no=line_no,
        description=posting.description,
        qty=posting.quantity,
        unit=posting.unit,
        unit_cost=posting.unit_cost,
        amount_net=net,
        tax_code=event.tax_code if posting.tax else "",
        tax_rate=event.tax_rate_pct if posting.tax else None,
        tax_amount=tax,
        amount_gross=gross,
        currency=closed.currency,
        debit=max(gross, nothing),
        credit=max(-gross, nothing),
        billable=_billable(posting),
        markup_pct=markup,
        memo=posting.memo,
        source_line_id=f"{closed.file.path.name}:{posting.source}",
        line_kind=posting.kind,
        group=GROUPS[posting.kind],
    )


def _billable(posting: Posting) -> str:
    """Y or N for a cost of a job; other lines are nobody's to bill."""
    if not posting.job or GROUPS[posting.kind] != "cost":
        return ""
    return YES if posting.billable else NO


def in_year(entries: Sequence[Entry], year: int | None) -> tuple[Entry, ...]:
    """The entries dated in one year; all where no year is asked for."""
    return tuple(each for each in entries if year is None or each.date.year == year)
