"""The rating of each receptacle against its circuit."""

from __future__ import annotations

from collections.abc import Iterator

from estimator.rules.circuit_rules import amperes, is_no_branch_circuit
from estimator.rules.facts import Facts
from estimator.rules.place_facts import outlet_kind
from estimator.rules.records import Finding
from estimator.rules.registry import rule
from estimator.rules.source_class import SOURCE_CLASS, judge_as_planned
from estimator.survey.electrical import Box
from estimator.tables.circuit import least_device_rating_a, receptacle_ratings
from estimator.tables.place import device_traits

RULE = "receptacle-rating"


def rating_a(facts: Facts, box: Box) -> int | None:
    """The rating as stated; for a new box without one, the smallest that is sold."""
    if box.device_rating_a is not None or box.existing:
        return box.device_rating_a
    return least_device_rating_a(box.device, facts.survey.job.units)


@rule(RULE)
def receptacle_rating(facts: Facts) -> Iterator[Finding]:
    """Hold each new receptacle, and each old one whose rating was read, against the breaker.

    A new one that source-class refuses for the same small circuit is told there, once; a breaker
    that is no branch circuit's is told by breaker-wire.
    """
    if is_no_branch_circuit(facts):
        return
    for box in facts.boxes.values():
        unread = box.existing and box.device_rating_a is None
        if device_traits(box.device).is_receptacle and not unread and not _is_told(facts, box):
            yield _judge(facts, box)


def _is_told(facts: Facts, box: Box) -> bool:
    if box.existing or not _is_too_small(facts) or not facts.is_in_force(SOURCE_CLASS):
        return False
    kind = outlet_kind(box)
    return kind is not None and judge_as_planned(facts, box, kind).standing == "refused"


def _is_too_small(facts: Facts) -> bool:
    """True for a circuit of so few amperes that it may feed no receptacle."""
    circuit, least = facts.survey.circuit, facts.electrical("receptacle-breaker-least")
    known_small = circuit.breaker_a is not None and circuit.breaker_a < least.value
    return circuit.kind == "ten ampere" or known_small


def _judge(facts: Facts, box: Box) -> Finding:
    circuit, name, rated_a = facts.survey.circuit, (RULE, box.id), rating_a(facts, box)
    least, breaker_a = facts.electrical("receptacle-breaker-least"), circuit.breaker_a
    figures = f"{amperes(rated_a)} receptacle, breaker {amperes(breaker_a)}"
    if _is_too_small(facts):
        remedy = "A circuit this small is for lights and feeds no receptacle. Use another circuit."
        figures = f"{figures}, least {least.value} A"
        return facts.finding(name, "fail", figures, facts.cite(least), remedy)
    if breaker_a is None or rated_a is None:
        remedy = "Read the number on the breaker, and the rating on the receptacle's face."
        return facts.finding(name, "unknown", figures, facts.cite(least), remedy)
    if rated_a < breaker_a and _could_be_alone(facts, box):
        return _alone(facts, box, figures)
    return _one_of_several(facts, box, (rated_a, breaker_a), figures)


def _could_be_alone(facts: Facts, box: Box) -> bool:
    """True where it may be the only, single receptacle of an individual circuit."""
    receptacles = [
        each for each in facts.boxes.values() if device_traits(each.device).is_receptacle
    ]
    individual = facts.survey.circuit.kind in ("individual", "unknown")
    return len(receptacles) == 1 and individual and box.contents.single_receptacle != "no"


def _alone(facts: Facts, box: Box, figures: str) -> Finding:
    """A receptacle of a smaller rating than its breaker, which alone on a circuit is too small."""
    share, name = facts.electrical("single-receptacle-share"), (RULE, box.id)
    figures = f"{figures}; alone on its circuit it is rated for {share.value} % of the breaker"
    known = (facts.survey.circuit.kind, box.contents.single_receptacle)
    if known == ("individual", "yes"):
        remedy = "Fit a receptacle with the rating of the breaker, or a duplex."
        return facts.finding(name, "fail", figures, facts.cite(share), remedy)
    remedy = "Find out whether the circuit feeds this one single receptacle and nothing else."
    return facts.finding(name, "unknown", figures, facts.cite(share), remedy)


def _one_of_several(facts: Facts, box: Box, rated: tuple[int, int], figures: str) -> Finding:
    """A duplex, or one of several receptacles: the ratings that the table lists."""
    rated_a, breaker_a = rated
    name, allowed = (RULE, box.id), receptacle_ratings(breaker_a, facts.edition or "")
    if not allowed:
        cite = facts.cite(facts.electrical("breaker-least"))
        remedy = "Read the breaker again; no receptacle is on file for such a circuit."
        return facts.finding(name, "unknown", figures, cite, remedy)
    listed = " or ".join(f"{each.value}" for each in allowed)
    figures = f"{figures}, allowed {listed} A"
    if rated_a in [each.value for each in allowed]:
        return facts.finding(name, "pass", figures, facts.cite(allowed[0]))
    remedy = f"Use a receptacle rated {listed} A."
    return facts.finding(name, "fail", figures, facts.cite(allowed[0]), remedy)
