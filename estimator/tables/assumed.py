"""What is taken where a finding is not known, in words for the bid."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from estimator.saying import said, small, word
from estimator.tables.facts import rows

_AS_ASKED = said("as the rule asks")


@dataclass(frozen=True, slots=True)
class Words:
    """One row.

    Attributes:
        finding: rule id, or "rule:subject" where that subject has words of its own.
        facts: facts of the takeoff's own assumptions that it may hang on, likeliest first.
        about: what nobody looked at. taken: what the price takes it to be.
    """

    finding: str
    facts: tuple[str, ...]
    about: str
    taken: str


@cache
def assumed_words(rule: str, subject: str, title: str) -> Words:
    """The row of one finding, or of its rule; a rule without a row is called by its title."""
    on_file = {row["finding"]: row for row in rows("assumed")}
    row = on_file.get(f"{rule}:{subject}") or on_file.get(rule)
    if row is None:
        return Words(rule, (), small(word(title)), _AS_ASKED)
    facts = tuple(fact for fact in row["facts"].split("|") if fact)
    return Words(row["finding"], facts, word(row["about"]), word(row["taken"]))
