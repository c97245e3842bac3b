"""Does the breaker protect the wire, old and new."""

from __future__ import annotations

from collections.abc import Iterator

from estimator.rules.facts import Facts
from estimator.rules.records import Finding
from estimator.rules.registry import rule
from estimator.tables.facts import NotOnFile, cable_kinds

RULE = "breaker-wire"
_WHERE = "240.4(D)"


@rule(RULE)
def breaker_wire(facts: Facts) -> Iterator[Finding]:
    """Hold the breaker against the old wire and against each kind of new cable."""
    circuit = facts.survey.circuit
    yield _judge(facts, "circuit", circuit.wire, "the smallest old wire")
    for kind in dict.fromkeys(run.cable for run in facts.survey.runs):
        yield _judge(facts, kind, cable_kinds()[kind].wire, f"new {kind} cable")


def _judge(facts: Facts, subject: str, wire: str | None, what: str) -> Finding:
    name, breaker_a = (RULE, subject), facts.survey.circuit.breaker_a
    if wire is None:
        figures = f"{what} is unknown, breaker {_amperes(breaker_a)}"
        remedy = "Look at the wire in the source box and at the breaker; every wire counts."
        return facts.finding(name, "unknown", figures, facts.law(_WHERE), remedy)
    try:
        limit = facts.electrical(f"breaker-{wire}-copper")
    except NotOnFile:
        figures = f"{what}: no figure on file for {wire}"
        remedy = "Ask a licensed electrician."
        return facts.finding(name, "unknown", figures, facts.law(_WHERE), remedy)
    figures = f"{what}, {wire} AWG copper: breaker {_amperes(breaker_a)}, at most {limit.value} A"
    cite = facts.cite(limit)
    if breaker_a is None:
        return facts.finding(name, "unknown", figures, cite, "Read the number on the breaker.")
    if breaker_a > limit.value:
        remedy = "Use thicker wire, or have the breaker changed where the circuit allows it."
        return facts.finding(name, "fail", figures, cite, remedy)
    return facts.finding(name, "pass", figures, cite)


def _amperes(breaker_a: int | None) -> str:
    return "unknown" if breaker_a is None else f"{breaker_a} A"
