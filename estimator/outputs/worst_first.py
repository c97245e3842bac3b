"""The order in which findings are read: what stops the bid first, what is in order last."""

from __future__ import annotations

from collections.abc import Iterable

from estimator.rules.records import Finding

_RANKS = {"fail": 1, "unknown": 2, "note": 3, "pass": 4}


def worst_first(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Sort findings: blocking, failed, unknown, notes, passes; else as they came."""
    return tuple(sorted(findings, key=_rank))


def blocking(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Pick the findings that stop the bid until somebody accepts them in the job file."""
    return tuple(finding for finding in findings if finding.stops_the_bid)


def _rank(finding: Finding) -> int:
    return 0 if finding.stops_the_bid else _RANKS[finding.verdict]
