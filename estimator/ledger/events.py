"""From a close-out file to events: each a balanced set of postings."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from estimator.ledger.bill_events import bill_events
from estimator.ledger.customer_events import customer_events
from estimator.ledger.estimated import Closed
from estimator.ledger.event_records import Event
from estimator.ledger.work_events import work_events


def events_of(closed: Closed) -> Iterator[Event]:
    """Every event of one closed job that moves an amount; a bid is none and posts nothing."""
    for event in (*bill_events(closed), *work_events(closed), *customer_events(closed)):
        moved = tuple(each for each in event.postings if each.net or each.tax)
        if moved:
            yield replace(event, postings=moved)
