"""Runs every rule over one job, applies local changes, and sorts the findings, worst first."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from estimator.rules import (
    afci_rules,
    ampacity_rules,
    back_to_back_rules,
    box_depth_rules,
    box_place_rules,
    box_rules,
    cable_hold_rules,
    cable_place_rules,
    cable_rules,
    canada_rules,
    circuit_load_rules,
    circuit_rules,
    gfci_rules,
    ground_rules,
    house_rules,
    joist_rules,
    lead_rules,
    luminaire_rules,
    multiwire_rules,
    outlet_rules,
    permit_rules,
    place_rules,
    plate_rules,
    rating_rules,
    receptacle_rules,
    route_rules,
    seal_rules,
    source_class_rules,
    source_rules,
    spacing_rules,
    stud_rules,
    switch_rules,
    terminal_rules,
    voltage_rules,
    wood_rules,
)
from estimator.rules.facts import Facts, rule_rows
from estimator.rules.records import Finding, Verdict
from estimator.rules.registry import FUNCTIONS
from estimator.survey.records import Amendment

ROOMS = (
    route_rules,
    source_rules,
    ground_rules,
    circuit_rules,
    rating_rules,
    circuit_load_rules,
    ampacity_rules,
    terminal_rules,
    multiwire_rules,
    source_class_rules,
    gfci_rules,
    afci_rules,
    receptacle_rules,
    place_rules,
    outlet_rules,
    spacing_rules,
    switch_rules,
    back_to_back_rules,
    box_depth_rules,
    box_place_rules,
    box_rules,
    luminaire_rules,
    canada_rules,
    wood_rules,
    stud_rules,
    joist_rules,
    plate_rules,
    seal_rules,
    cable_rules,
    cable_hold_rules,
    cable_place_rules,
    voltage_rules,
    lead_rules,
    house_rules,
    permit_rules,
)
ANY_COUNTRY = "any"
LOCAL = "local-amendment"
_WORST_FIRST: tuple[Verdict, ...] = ("fail", "unknown", "note", "pass")


def screen(facts: Facts) -> tuple[Finding, ...]:
    """Every finding of every rule for the job's country, worst first."""
    findings = [decided(facts, finding) for finding in _found(facts)]
    return by_rank(findings)


def by_rank(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Worst first: what stops the bid, other fails, what is unknown, notes, passes."""
    return tuple(sorted(findings, key=_rank))


def _found(facts: Facts) -> Iterator[Finding]:
    amended = {each.rule: each for each in facts.survey.amendments if each.change != "figure"}
    for each in facts.survey.amendments:
        yield _said(facts, each)
    for rule_id, row in rule_rows().items():
        if row["country"] not in (ANY_COUNTRY, facts.survey.job.country):
            continue
        if rule_id not in FUNCTIONS or (row["country"] == "US" and facts.edition is None):
            continue
        yield from _as_amended(facts, rule_id, amended.get(rule_id))


def _as_amended(facts: Facts, rule_id: str, change: Amendment | None) -> Iterator[Finding]:
    """A rule's findings; one that is off gives none, one that is a note never fails."""
    if change is not None and change.change == "off":
        return
    for finding in FUNCTIONS[rule_id](facts):
        if change is not None and finding.verdict == "fail" and not finding.remedied:
            yield replace(finding, verdict="note", blocking=False, remedies=())
        else:
            yield finding


def _said(facts: Facts, change: Amendment) -> Finding:
    """The local change itself, so that no rule is off in silence."""
    words = {"off": "is not checked", "note": "is only a note"}
    said = words.get(change.change, f"has {change.figure} = {change.value}")
    subject = change.figure if change.change == "figure" else change.rule
    figures = f"the rule {change.rule} {said} here"
    return facts.finding((LOCAL, subject), "note", figures, f"local: {change.reason}")


def decided(facts: Facts, finding: Finding) -> Finding:
    """The finding with what the job decided about it."""
    for each in facts.survey.acceptances:
        if each.finding == finding.finding_id:
            if each.decision == "accept":
                finding = replace(finding, accepted=each.reason)
            else:
                finding = replace(finding, declined=each.reason)
    return finding


def _rank(finding: Finding) -> tuple[bool, bool, int]:
    fails_open = finding.verdict == "fail" and not finding.remedied
    return not finding.stops_the_bid, not fails_open, _WORST_FIRST.index(finding.verdict)
