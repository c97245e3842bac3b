"""What a finding says in full, so that a test holds every word of it."""

from __future__ import annotations

from typing import NamedTuple

from estimator.rules.records import Finding


class Told(NamedTuple):
    """The words of one finding."""

    verdict: str
    figures: str
    cite: str
    remedy: str = ""


def told(found: Finding) -> Told:
    """The words of a finding, without its subject and its remedies."""
    return Told(found.verdict, found.figures, found.cite, found.remedy)
