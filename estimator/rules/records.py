"""A finding: what one rule says of one subject."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Verdict = Literal["pass", "fail", "unknown", "note"]


@dataclass(frozen=True, slots=True)
class Finding:
    """One rule's answer about one box, run, circuit or room.

    Attributes:
        rule: kebab-case rule id that never changes. subject: what it was asked about.
        figures: the figures compared, in words.
        cite: citation with its edition, own wording ("NEC 2023 314.16"); may say "from memory".
        remedy: what to do; empty for a pass.
        blocking: a fail that stops the bid unless the job accepts it by id with a reason.
        accepted: the reason given in the job, empty where nobody accepted it.
    """

    rule: str
    subject: str
    verdict: Verdict
    figures: str
    cite: str
    edition: str
    remedy: str = ""
    blocking: bool = False
    accepted: str = ""

    @property
    def finding_id(self) -> str:
        """Rule and subject, as a job names it to accept or decline ("box-fill:source")."""
        return f"{self.rule}:{self.subject}"

    @property
    def stops_the_bid(self) -> bool:
        """True for a blocking fail that nobody accepted."""
        return self.blocking and self.verdict == "fail" and not self.accepted
