"""What a rule may look at: the survey, its paths, the takeoff, and the edition in force."""

from __future__ import annotations

from dataclasses import dataclass

from estimator.route.records import RunPath
from estimator.rules.records import Finding, Verdict
from estimator.settings import Practice
from estimator.survey.records import Survey
from estimator.tables.facts import editions, sources
from estimator.takeoff.records import Takeoff


@dataclass(frozen=True, slots=True)
class Facts:
    """Everything known of one route of a job."""

    survey: Survey
    paths: tuple[RunPath, ...]
    takeoff: Takeoff
    practice: Practice

    @property
    def edition(self) -> str | None:
        """The edition in force; None where none on file belongs to the job's country."""
        row = editions().get(self.survey.job.edition)
        if row is None or row["country"] != self.survey.job.country:
            return None
        return self.survey.job.edition


def cited(edition: str, where: str) -> str:
    """A citation with its edition, and its confidence where it was not read.

    >>> cited("nec-2023", "314.16")
    'NEC 2023 314.16'
    """
    row = editions()[edition]
    confidence = sources()[row["source"]]["confidence"]
    note = "" if confidence == "seen" else f" (from {confidence}, check)"
    return f"{row['name']} {where}{note}"


def found(
    rule: str,
    subject: str,
    verdict: Verdict,
    figures: str,
    law: tuple[str, str],
    remedy: str = "",
) -> Finding:
    """Make a finding; `law` is edition and place in it, or ("", words) where no code speaks.

    A fail of a rule is blocking.
    """
    edition, where = law
    cite = cited(edition, where) if edition else where
    return Finding(rule, subject, verdict, figures, cite, edition, remedy, verdict == "fail")
