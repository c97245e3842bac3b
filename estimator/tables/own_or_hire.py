"""What money does not show of doing it yourself and of hiring, by country, each with its source."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from estimator.tables.facts import rows, sources
from estimator.tables.limits import confidence_words

ANY = "any"
KNOWN_FROM = {"seen": "read there", "memory": "memory: check"}


@dataclass(frozen=True, slots=True)
class Matter:
    """One thing that weighs on either side, and no side is taken.

    Attributes:
        own: what it means if you do the work. hire: what it means if you hire.
        cite: where it is from. known_from: how far it was seen there.
    """

    topic: str
    own: str
    hire: str
    cite: str
    known_from: str


@cache
def matters(country: str) -> tuple[Matter, ...]:
    """All matters for a country in their order; its own words go before the general ones."""
    table = rows("own_or_hire")
    special = {row["matter"] for row in table if row["country"] == country}
    return tuple(
        Matter(
            row["topic"],
            row["own"],
            row["hire"],
            _cite(row["source"], row["confidence"]),
            KNOWN_FROM.get(row["confidence"], row["confidence"]),
        )
        for row in table
        if row["country"] == country or (row["country"] == ANY and row["matter"] not in special)
    )


def _cite(source: str, confidence: str) -> str:
    return sources()[source]["title"] + confidence_words(confidence)
