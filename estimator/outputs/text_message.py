"""The shopping list as a message for a phone: short lines, no table, nothing to line up."""

from __future__ import annotations

from itertools import groupby

from estimator.outputs.shopping_items import expected, items_of
from estimator.outputs.text_job import money
from estimator.outputs.text_layout import printable
from estimator.pricing.records import Bid


def message_text(bid: Bid) -> list[str]:
    """List what to get by aisle, each on a line that the phone may break as it likes."""
    job, items = bid.survey.job, items_of(bid)
    lines = [printable(f"Shopping list {job.id}: {job.title}")]
    for aisle, listed in groupby(items, key=lambda item: item.aisle):
        lines += ["", printable(aisle).upper(), *(f"- {printable(item.what)}" for item in listed)]
    missing = sum(item.kind == "buy" and item.cost is None for item in items)
    lines += ["", f"About {money(bid, expected(items))} before tax."]
    if missing:
        lines.append(f"{missing} without a price in the book.")
    return lines
