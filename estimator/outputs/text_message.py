"""The shopping list as a message for a phone: short lines, no table, nothing to line up."""

from __future__ import annotations

from itertools import groupby

from estimator.guide.title_words import title_of
from estimator.outputs.shopping_items import expected, items_of
from estimator.outputs.text_job import money
from estimator.outputs.text_layout import printable
from estimator.pricing.records import Bid
from estimator.saying import said


def message_text(bid: Bid) -> list[str]:
    """List what to get by aisle, each on a line that the phone may break as it likes."""
    job, items, language = bid.survey.job, items_of(bid), bid.books.language
    title = said("Shopping list {job}: {title}", job=job.id, title=title_of(bid.survey))
    lines = [printable(language.say(title))]
    for aisle, group in groupby(items, key=lambda item: item.aisle):
        whats = (printable(language.say(item.what)) for item in group)
        lines += ["", printable(language.say(aisle)).upper(), *(f"- {what}" for what in whats)]
    missing = sum(item.kind == "buy" and item.cost is None for item in items)
    total = money(bid, expected(items))
    lines += ["", language.say(said("About {total} before tax.", total=total))]
    if missing:
        without = said("{count} without a price in the book.", count=missing)
        lines.append(language.say(without))
    return lines
