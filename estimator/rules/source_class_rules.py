"""May this circuit serve that place, and which box would be better."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from estimator.rules.circuit_rules import is_no_branch_circuit
from estimator.rules.facts import Facts
from estimator.rules.place_facts import OutletKind, outlets, place_words
from estimator.rules.records import Finding, Verdict
from estimator.rules.registry import rule
from estimator.rules.source_class import SOURCE_CLASS, Answer, Standing, judge_as_planned, seen_by
from estimator.rules.source_ranking import RankedSource, ranked_for
from estimator.rules.source_rules import DWELLING, REFUSED_KINDS
from estimator.survey.electrical import Box, CircuitKind
from estimator.tables.source_class import ANY, circuit_classes, source_row

RULE = SOURCE_CLASS
OTHER_SOURCES = "job"
_SMALL: CircuitKind = "ten ampere"
_VERDICTS: dict[Standing, Verdict] = {
    "allowed": "pass",
    "unknown": "unknown",
    "refused": "fail",
}
_RANKED: dict[Standing, str] = {
    "allowed": "may feed it",
    "unknown": "ask first",
    "refused": "may not feed it",
}


@rule(RULE)
def source_class(facts: Facts) -> Iterator[Finding]:
    """Hold each new outlet against what its circuit is kept for; then say which box would do."""
    refused: list[tuple[Box, OutletKind]] = []
    for box, kind in outlets(facts):
        answer = judge_as_planned(facts, box, kind)
        told = _told_of_the_circuit(facts, box, answer) or _told_of_the_breaker(facts, box, kind)
        if not told:
            yield _finding(facts, box, kind, answer)
        if answer.standing == "refused":
            refused.append((box, kind))
    if refused:
        yield _other_sources(facts, refused)


def _told_of_the_circuit(facts: Facts, box: Box, answer: Answer) -> bool:
    """True where the circuit as such is refused for what it is: other-dwelling says so, once."""
    told = seen_by(facts, box).kind in REFUSED_KINDS and facts.is_in_force(DWELLING)
    return told and answer.standing == "refused"


def _told_of_the_breaker(facts: Facts, box: Box, kind: OutletKind) -> bool:
    """True where nothing but the size of the breaker refuses it, which breaker-wire says, once."""
    if not is_no_branch_circuit(facts) or seen_by(facts, box).breaker_a is None:
        return False
    if facts.survey.circuit.kind == _SMALL:
        return True
    circuit = facts.survey.circuit.model_copy(update={"breaker_a": None})
    survey = facts.survey.model_copy(update={"circuit": circuit})
    return judge_as_planned(replace(facts, survey=survey), box, kind).standing != "refused"


def _finding(facts: Facts, box: Box, kind: OutletKind, answer: Answer) -> Finding:
    figures = (
        f"{_circuit_words(facts, box, answer)}; new {kind} in {place_words(facts, box)}: "
        f"{answer.reason}"
    )
    remedy = answer.look
    if answer.standing == "refused":
        remedy = _better(ranked_for(facts, box, kind))
    verdict, law = _VERDICTS[answer.standing], facts.law(answer.where, answer.confidence)
    return facts.finding((RULE, box.id), verdict, figures, law, remedy)


def _circuit_words(facts: Facts, box: Box, answer: Answer) -> str:
    """The circuit in words, with its breaker, and how its kind is known."""
    circuit = seen_by(facts, box)
    breaker = "breaker unknown" if circuit.breaker_a is None else f"{circuit.breaker_a} A"
    if len(answer.kinds) > 1:
        return f"a circuit of unknown kind, {breaker}"
    words = f"{circuit_classes()[answer.kinds[0]].words}, {breaker}"
    if circuit.kind == "unknown":
        served = ", ".join(circuit.serves)
        return f"{words}, worked out from the rooms it serves ({served})"
    return words


def _better(ranked: tuple[RankedSource, ...]) -> str:
    """What to do with a refused outlet: the first box that may feed it, else where to look."""
    free = [each.source_id for each in ranked if each.standing == "allowed"]
    if free:
        return f"Feed it from box {free[0]} instead."
    asked = [each.source_id for each in ranked if each.standing == "unknown"]
    if asked:
        return f"Feed it from another circuit; find out which one box {asked[0]} hangs on."
    return "Feed it from another circuit, or have a new circuit run; survey the boxes near it."


def _other_sources(facts: Facts, refused: list[tuple[Box, OutletKind]]) -> Finding:
    """One note with all boxes of the survey ranked for every outlet that was refused."""
    lists = [f"for {box.id}: {_ranking(ranked_for(facts, box, kind))}" for box, kind in refused]
    law = facts.law(source_row("general", ANY, ANY, facts.edition or "").where, "inferred")
    return facts.finding((RULE, OTHER_SOURCES), "note", "; ".join(lists), law, _TRACE)


_TRACE = "Trace the circuit of a box before you feed from it; its room proves nothing."


def _ranking(ranked: tuple[RankedSource, ...]) -> str:
    return "; ".join(
        f"{each.rank}. {each.source_id} {_RANKED[each.standing]} ({'; '.join(each.reasons)})"
        for each in ranked
    )
