"""Findings in plain words: what each is called, what was decided about it, how many there are."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from estimator.outputs.bid_words import device_called
from estimator.pricing.assumed import subject_said
from estimator.pricing.records import Bid
from estimator.rules.facts import rule_rows
from estimator.rules.records import Finding, RemedyChange
from estimator.rules.remedies import is_taken
from estimator.saying import listed, said, small, word
from estimator.survey.records import Job
from estimator.tables.facts import editions

VERDICTS = {"fail": "FAILS", "unknown": "NOT KNOWN", "note": "NOTE", "pass": "within"}
PUT_RIGHT = "PUT RIGHT"
NO_RULES = (
    "No electrical rule of this country is on file. Ask a licensed electrician and your inspector."
)
SECOND = "Its remedy is not in the price; where it moves the price, the second total has it."


def verdict_word(finding: Finding) -> str:
    """The verdict; a fail whose remedy is in the takeoff is put right."""
    return PUT_RIGHT if finding.remedied else VERDICTS[finding.verdict]


def named(finding: Finding) -> str:
    """The rule in plain words, with the id to accept or decline it by."""
    ident = finding.finding_id
    return f"{finding.title} ({ident})" if finding.title else ident


def decisions(finding: Finding) -> Iterator[str]:
    """What becomes of a finding: remedy taken, remedy declined, accepted; with the reasons."""
    if finding.remedied:
        yield from _taken(finding)
    elif finding.verdict == "unknown" and is_taken(finding, bad_case=True):
        yield SECOND
    if finding.declined:
        yield f"Remedy declined in the job file: {finding.declined}"
    if finding.accepted:
        yield f"Accepted in the job file: {finding.accepted}"


def _taken(finding: Finding) -> Iterator[str]:
    """What the remedy changed, and how its lines are marked."""
    for each in finding.remedies:
        if isinstance(each, RemedyChange):
            yield f"Changed in this bid: {_change(each)}."
    yield f"Its remedy is in the takeoff, marked {finding.finding_id}."


def _change(change: RemedyChange) -> str:
    if change.what == "cable":
        return said("run {run} is {cable} cable", run=change.subject, cable=change.value)
    if change.what == "box":
        return said("box {box} is one made for paddle fans", box=change.subject)
    device = device_called(change.value)
    return said("box {box} gets a {device}", box=change.subject, device=device)


def counts(findings: Sequence[Finding]) -> str:
    """How many findings of each kind, and how many of them stop the bid."""
    fails = [each for each in findings if each.verdict == "fail"]
    put_right = sum(each.remedied for each in fails)
    accepted = sum(bool(each.accepted) and not each.remedied for each in fails)
    numbers = {
        "failed": len(fails) - put_right - accepted,
        "put right": put_right,
        "failed but accepted": accepted,
        "not known": sum(each.verdict == "unknown" for each in findings),
        "to note": sum(each.verdict == "note" for each in findings),
        "within": sum(each.verdict == "pass" for each in findings),
    }
    seldom = ("put right", "failed but accepted")
    said = [f"{count} {what}" for what, count in numbers.items() if count or what not in seldom]
    stopping = sum(each.stops_the_bid for each in findings)
    stops = f" {stopping} of them stop{'s' if stopping == 1 else ''} the bid." if stopping else ""
    word = "finding" if len(findings) == 1 else "findings"
    return f"{len(findings)} {word}: {', '.join(said)}.{stops}"


def held_against(job: Job) -> str:
    """Which rules on file the job was held against, by name."""
    rows = (editions().get(job.edition), editions().get(job.building_edition))
    names = [row["name"] for row in rows if row is not None and row["country"] == job.country]
    if names:
        return f"Held against {' and '.join(names)}, and against local changes named in the job."
    own = [row["title"] for row in rule_rows().values() if row["country"] == job.country]
    return f"Of this country's rules, only this is on file: {'; '.join(own)}." if own else NO_RULES


def included(bid: Bid) -> Iterator[str]:
    """What the bid holds because of the checks, for the customer: no codes, no unit costs."""
    for finding in bid.findings:
        if finding.remedied:
            things = listed(_things(bid, finding), "; ")
            subject = subject_said(finding.subject)
            yield said(
                "{title}, {subject}: {things}.", title=finding.title, subject=subject, things=things
            )


def _things(bid: Bid, finding: Finding) -> Iterator[str]:
    """Changes, parts and work of a taken remedy, each once."""
    for each in finding.remedies:
        if isinstance(each, RemedyChange):
            yield _change(each)
    if finding.remedies and all(isinstance(each, RemedyChange) for each in finding.remedies):
        return
    mark, book = finding.finding_id, bid.books.labor
    parts = [word(part.description) for part in bid.takeoff.parts if part.remedy == mark]
    tasks = [task.task for task in bid.takeoff.tasks if task.remedy == mark]
    works = [word(book[task].description) if task in book else task for task in tasks]
    yield from dict.fromkeys(small(words) for words in (*parts, *works))
