"""What a clear bid states, with the source of each field."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from estimator.tables.facts import rows


@dataclass(frozen=True, slots=True)
class BidField:
    """One field: its key, its name in words, and who asks for it."""

    field: str
    title: str
    source: str
    where: str
    confidence: str


@cache
def bid_fields() -> tuple[BidField, ...]:
    """All fields, in the order of a bid."""
    return tuple(
        BidField(row["field"], row["title"], row["source"], row["where"], row["confidence"])
        for row in rows("bid_fields")
    )
