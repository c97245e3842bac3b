"""Runs every rule over one job and sorts the findings, worst first."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace

from estimator.rules.box_rules import box_fill
from estimator.rules.cable_rules import free_conductor, protection_plates
from estimator.rules.circuit_rules import breaker_wire
from estimator.rules.facts import Facts
from estimator.rules.records import Finding, Verdict
from estimator.rules.route_rules import level_access, way_blocked

Rule = Callable[[Facts], Iterator[Finding]]

RULES: tuple[Rule, ...] = (
    way_blocked,
    level_access,
    box_fill,
    breaker_wire,
    protection_plates,
    free_conductor,
)
_WORST_FIRST: tuple[Verdict, ...] = ("fail", "unknown", "note", "pass")


def screen(facts: Facts) -> tuple[Finding, ...]:
    """Every finding of every rule, those the job accepts marked with its reason."""
    reasons = {
        each.finding: each.reason for each in facts.survey.acceptances if each.decision == "accept"
    }
    findings = [
        replace(finding, accepted=reasons.get(finding.finding_id, "")) if reasons else finding
        for rule in RULES
        for finding in rule(facts)
    ]
    return tuple(sorted(findings, key=_rank))


def _rank(finding: Finding) -> tuple[bool, int]:
    return not finding.stops_the_bid, _WORST_FIRST.index(finding.verdict)
