"""A finding: what one rule says of one subject, and what would put it right."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from estimator.takeoff.records import Group, Phase

Verdict = Literal["pass", "fail", "unknown", "note"]
Level = Literal["block", "fix", "note"]


@dataclass(frozen=True, slots=True)
class RemedyPart:
    """Parts that a remedy adds to the takeoff."""

    group: Group
    item: str
    quantity: Decimal
    unit: str


@dataclass(frozen=True, slots=True)
class RemedyTask:
    """Work that a remedy adds to the takeoff."""

    phase: Phase
    task: str
    quantity: Decimal
    unit: str


@dataclass(frozen=True, slots=True)
class RemedyChange:
    """Something the remedy plans differently: the cable of a run, a box, or the device in it."""

    what: Literal["cable", "device", "box"]
    subject: str
    value: str


Remedy = RemedyPart | RemedyTask | RemedyChange


@dataclass(frozen=True, slots=True)
class Finding:
    """One rule's answer about one box, run, circuit or room.

    Attributes:
        rule: kebab-case rule id that never changes. subject: what it was asked about.
        title: the rule in plain words.
        figures: the figures compared, in words.
        cite: citation with its edition, own wording ("NEC 2023 314.16"); may say "from memory".
        remedy: what to do; empty for a pass that needs nothing.
        blocking: a fail that stops the bid unless the job accepts it by id with a reason.
        accepted: the reason given in the job, empty where nobody accepted it.
        remedies: parts, work and changes that would put it right.
        remedied: they are in the takeoff, marked with this finding's id.
        declined: the reason the job gives for not having them.
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
    title: str = ""
    remedies: tuple[Remedy, ...] = ()
    remedied: bool = False
    declined: str = ""

    @property
    def finding_id(self) -> str:
        """Rule and subject, as a job names it to accept or decline ("box-fill:source")."""
        return f"{self.rule}:{self.subject}"

    @property
    def stops_the_bid(self) -> bool:
        """True for a blocking fail that nobody accepted and no remedy puts right."""
        failed = self.blocking and self.verdict == "fail"
        return failed and not self.accepted and not self.remedied
