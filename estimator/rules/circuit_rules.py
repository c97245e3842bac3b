"""Does the breaker protect the wire, old and new."""

from __future__ import annotations

from collections.abc import Iterator

from estimator.rules.facts import Facts, found
from estimator.rules.records import Finding
from estimator.tables.facts import cable_kinds, max_breaker_a

RULE = "breaker-wire"
_WHERE = "240.4(D)"


def breaker_wire(facts: Facts) -> Iterator[Finding]:
    """Hold the breaker against the old wire and against each kind of new cable."""
    if facts.edition is None:
        return
    circuit = facts.survey.circuit
    if circuit.aluminum == "yes":
        yield _not_copper(facts.edition)
    else:
        yield _judge(facts, "circuit", circuit.wire, "the smallest old wire")
    for kind in dict.fromkeys(run.cable for run in facts.survey.runs):
        yield _judge(facts, kind, cable_kinds()[kind].wire, f"new {kind} cable")


def _not_copper(edition: str) -> Finding:
    figures = "the old wire is aluminum, and the figures on file are for copper"
    remedy = "Ask a licensed electrician: smaller breakers and special connectors may be needed."
    return found(RULE, "circuit", "unknown", figures, (edition, _WHERE), remedy)


def _judge(facts: Facts, subject: str, wire: str | None, what: str) -> Finding:
    edition, breaker_a = facts.edition or "", facts.survey.circuit.breaker_a
    law = (edition, _WHERE)
    if wire is None:
        figures = f"{what} is unknown, breaker {_amperes(breaker_a)}"
        remedy = "Look at the wire in the source box and at the breaker; every wire counts."
        return found(RULE, subject, "unknown", figures, law, remedy)
    limit_a = max_breaker_a(edition, wire)
    if limit_a is None:
        figures = f"{what}: no figure on file for {wire}"
        return found(RULE, subject, "unknown", figures, law, "Ask a licensed electrician.")
    figures = f"{what}, {wire} AWG copper: breaker {_amperes(breaker_a)}, at most {limit_a} A"
    if breaker_a is None:
        return found(RULE, subject, "unknown", figures, law, "Read the number on the breaker.")
    if breaker_a > limit_a:
        remedy = "Use thicker wire, or have the breaker changed where the circuit allows it."
        return found(RULE, subject, "fail", figures, law, remedy)
    return found(RULE, subject, "pass", figures, law)


def _amperes(breaker_a: int | None) -> str:
    return "unknown" if breaker_a is None else f"{breaker_a} A"
