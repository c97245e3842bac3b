"""Findings for the terminal: verdict in words, figures, citation and what to do."""

from __future__ import annotations

from estimator.outputs.text_job import assumption_lines, caution_lines, title_lines
from estimator.outputs.text_layout import counted, heading, wrapped
from estimator.pricing.records import Bid
from estimator.rules.records import Finding

VERDICTS = {"fail": "FAILS", "unknown": "NOT KNOWN", "note": "NOTE", "pass": "within"}
WIDTH = 11
NO_RULES = "No rule on file speaks of this job. Ask your inspector."


def check_text(bid: Bid) -> list[str]:
    """List every finding, worst first, with a closing line of counts."""
    lines = [line for finding in bid.findings for line in finding_lines(finding)]
    return [
        *title_lines(bid),
        *heading("Findings, worst first"),
        *lines,
        *assumption_lines(bid.takeoff.assumptions),
        "",
        *wrapped(_counts(bid.findings)),
        *caution_lines(),
    ]


def finding_lines(finding: Finding) -> list[str]:
    """Show one finding: verdict and id, then figures with the citation, then the remedy."""
    indent = " " * WIDTH
    lines = wrapped(_head(finding), first=f"{VERDICTS[finding.verdict]:<{WIDTH}}", rest=indent)
    lines += wrapped(f"{finding.figures} [{finding.cite}]", first=indent)
    if finding.remedy and finding.verdict != "pass":
        lines += wrapped(finding.remedy, first=f"{indent}-> ")
    if finding.accepted:
        lines += wrapped(f"Accepted in the job file: {finding.accepted}", first=indent)
    return lines


def _head(finding: Finding) -> str:
    stops = ": stops the bid" if finding.stops_the_bid else ""
    return f"{finding.finding_id}{stops}"


def _counts(findings: tuple[Finding, ...]) -> str:
    if not findings:
        return NO_RULES
    words = [
        f"{sum(finding.verdict == verdict for finding in findings)} {said}"
        for verdict, said in (
            ("fail", "failed"), ("unknown", "not known"), ("note", "to note"), ("pass", "within"),
        )
    ]  # fmt: skip
    return f"{counted(len(findings), 'finding')}: {', '.join(words)}."


def how_to_accept(bid: Bid, job_file: str) -> list[str]:
    """Say what stops the bid, and what to write in the job file to go on all the same."""
    found = [finding for finding in bid.findings if finding.stops_the_bid]
    if not found:
        return []
    lines = [line for finding in found for line in finding_lines(finding)]
    return [
        *wrapped("What stops this bid:"),
        *lines,
        "",
        *wrapped(
            "Change the job so that it passes. To go on all the same, write your reason into "
            f"{job_file} and run again:"
        ),
        *(line for finding in found for line in _acceptance(finding)),
    ]


def _acceptance(finding: Finding) -> list[str]:
    return [
        "",
        "[[acceptances]]",
        f'finding = "{finding.finding_id}"',
        'reason = "why you accept it"',
    ]
