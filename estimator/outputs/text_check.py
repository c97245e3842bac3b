"""Findings for the terminal: verdict in words, figures, citation and what to do."""

from __future__ import annotations

from estimator.outputs.finding_words import counts, decisions, held_against, named, verdict_word
from estimator.outputs.text_job import assumption_lines, caution_lines, title_lines
from estimator.outputs.text_layout import heading, wrapped
from estimator.pricing.records import Bid
from estimator.rules.records import Finding
from estimator.rules.safety_list import safety_list

WIDTH = 11


def check_text(bid: Bid) -> list[str]:
    """List every finding, worst first, with a closing line of counts."""
    lines = [line for finding in bid.findings for line in finding_lines(finding)]
    return [
        *title_lines(bid),
        *wrapped(held_against(bid.survey.job)),
        *heading("Findings, worst first"),
        *lines,
        *assumption_lines(bid.assumptions),
        "",
        *wrapped(counts(bid.findings)),
        *caution_lines(),
    ]


def finding_lines(finding: Finding) -> list[str]:
    """Show one finding: verdict and rule, figures and citation, what to do, what was decided."""
    indent = " " * WIDTH
    lines = finding_head(finding)
    lines += wrapped(f"{finding.figures} [{finding.cite}]", first=indent)
    if finding.remedy and finding.verdict != "pass":
        lines += wrapped(finding.remedy, first=f"{indent}-> ")
    for decision in decisions(finding):
        lines += wrapped(decision, first=indent)
    return lines


def finding_head(finding: Finding) -> list[str]:
    """Show the verdict and the rule alone."""
    return wrapped(_head(finding), first=f"{verdict_word(finding):<{WIDTH}}", rest=" " * WIDTH)


def _head(finding: Finding) -> str:
    stops = ": stops the bid" if finding.stops_the_bid else ""
    return f"{named(finding)}{stops}"


def list_of_tests(bid: Bid) -> list[str]:
    """List what to look at and to test, in the order of the work: one page to print."""
    lines = [*title_lines(bid), "Tests and cautions: tick each line"]
    for title, texts in safety_list(bid.survey, bid.findings):
        lines += heading(title)
        lines += [line for text in texts for line in wrapped(text, first="[ ] ")]
    return [*lines, *caution_lines()]


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
