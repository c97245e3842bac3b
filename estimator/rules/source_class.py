"""May a circuit serve an outlet in a place: the matrix, for all that the circuit may be."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from typing import Literal, get_args

from estimator.rules.facts import Facts
from estimator.rules.place_facts import (
    ANY_USE,
    OUTLET_KINDS,
    UNKNOWN,
    OutletKind,
    source_of,
    use_of_box,
)
from estimator.rules.source_conditions import CONDITIONS, Asked, SeenCircuit
from estimator.survey.electrical import Box, CircuitKind
from estimator.survey.place import RoomUse
from estimator.tables.source_class import CircuitClass, circuit_classes, source_row

SOURCE_CLASS = "source-class"
Standing = Literal["allowed", "unknown", "refused"]
KINDS: tuple[CircuitKind, ...] = tuple(kind for kind in get_args(CircuitKind) if kind != UNKNOWN)
_REFUSED = "refused"


@dataclass(frozen=True, slots=True)
class Answer:
    """What the matrix says of one outlet on one circuit.

    Attributes:
        kinds: what the circuit may be; one kind where it is known or worked out.
        reason: in plain words, going on from "this circuit: ...".
        look: what to look at where nobody can say.
        rows: keys of the matrix rows asked.
    """

    standing: Standing
    kinds: tuple[CircuitKind, ...]
    reason: str
    where: str
    confidence: str
    rows: tuple[str, ...]
    look: str = ""


def judge(facts: Facts, outlet: Box, kind: OutletKind, source: Box | None) -> Answer:
    """Answer for a new outlet and the existing box it would be fed from.

    Where the kind of circuit or the use of the room is not known, each one possible is asked;
    only what all of them say is said.
    """
    asked = Asked(facts, outlet, kind, source, seen_circuit(facts, source))
    kinds = possible_kinds(asked.circuit, facts)
    use = use_of_box(facts, outlet)
    uses = ANY_USE if use == UNKNOWN else (use,)
    found = [_answer(asked, each, in_use) for each in kinds for in_use in uses]
    return replace(_together(found, asked), kinds=kinds)


def seen_by(facts: Facts, outlet: Box) -> SeenCircuit:
    """What is known of the circuit that the survey plans for a new outlet."""
    return seen_circuit(facts, source_of(facts, outlet))


def judge_as_planned(facts: Facts, outlet: Box, kind: OutletKind) -> Answer:
    """Answer for a new outlet and the source that the survey plans for it."""
    return judge(facts, outlet, kind, source_of(facts, outlet))


def is_surveyed(facts: Facts, source: Box | None) -> bool:
    """True where the surveyed circuit is that of an existing box: the box feeds a run.

    A box may say that it hangs on another; of a box that feeds nothing, nobody has said.
    """
    if source is None:
        return True
    feeds = any(source.id == each.id for each in facts.sources)
    return feeds and source.circuit_kind in (None, facts.survey.circuit.kind)


def seen_circuit(facts: Facts, source: Box | None) -> SeenCircuit:
    """What is known of the circuit of an existing box."""
    circuit = facts.survey.circuit
    if is_surveyed(facts, source) or source is None:
        return SeenCircuit(circuit.kind, circuit.breaker_a, circuit.serves, circuit.fixed_a)
    return SeenCircuit(source.circuit_kind or UNKNOWN)


def possible_kinds(circuit: SeenCircuit, facts: Facts) -> tuple[CircuitKind, ...]:
    """Every kind that the circuit may be, by its breaker and by the rooms it serves."""
    if circuit.kind != UNKNOWN:
        return (circuit.kind,)
    uses = [facts.use_of(room) for room in circuit.serves]
    known = [use for use in uses if use != UNKNOWN]
    found = tuple(kind for kind in KINDS if _may_be(kind, circuit.breaker_a, known, facts))
    return found or KINDS


def _may_be(
    kind: CircuitKind, breaker_a: int | None, served: Sequence[RoomUse], facts: Facts
) -> bool:
    known = circuit_classes()[kind]
    if not known.takes(breaker_a) or (served and not known.served_rooms):
        return False
    return all(_may_serve(kind, use, facts.edition or "") for use in served)


def _may_serve(kind: CircuitKind, use: RoomUse, edition: str) -> bool:
    """True where such a circuit may have any outlet at all in such a room."""
    answers = (source_row(kind, use, outlet, edition).answer for outlet in OUTLET_KINDS)
    return any(answer != _REFUSED for answer in answers)


def _answer(asked: Asked, kind: CircuitKind, use: RoomUse) -> Answer:
    row = source_row(kind, use, asked.kind, asked.facts.edition or "")
    standing: Standing = "refused" if row.answer == _REFUSED else "allowed"
    look = ""
    for name in row.conditions:
        holds = CONDITIONS[name](asked)
        if holds == "no":
            standing = "refused"
        elif holds == UNKNOWN and standing == "allowed":
            standing, look = "unknown", _LOOK[name]
    answer = Answer(standing, (kind,), row.reason, row.where, row.confidence, (row.row,), look)
    return _with_rating(answer, asked, kind)


_LOOK = {
    "one-kitchen": "Find out which kitchen the circuit serves.",
    "same-bath": "Find out which bathroom the circuit serves.",
    "fixed-share": "Add up the amperes of what is fastened in place on it (fixed = ...).",
    "one-bay": "Say how many vehicles the garage is built for (vehicle_bays = ...).",
    "reachable": "Say whether the outlet is easy to reach (readily_accessible = ...).",
}


def _with_rating(answer: Answer, asked: Asked, kind: CircuitKind) -> Answer:
    """The surveyed circuit, and any of one rating alone, must have its rating to feed anything.

    Of another circuit nobody can have written the breaker down.
    """
    known, circuit = circuit_classes()[kind], asked.circuit
    if answer.standing == _REFUSED or circuit.kind == UNKNOWN:
        return answer
    if not known.takes(circuit.breaker_a):
        has = f"a breaker of {_ratings(known)} A"
        reason = f"such a circuit has {has}, this one {circuit.breaker_a} A"
        return replace(
            answer, standing="refused", reason=reason, where=known.where,
            confidence=known.confidence, look="",
        )  # fmt: skip
    must_say = known.is_exact or is_surveyed(asked.facts, asked.source)
    if answer.standing == "allowed" and circuit.breaker_a is None and must_say:
        reason = f"{answer.reason}; its breaker must be {_ratings(known)} A"
        look = "Read the number on the breaker."
        return replace(answer, standing="unknown", reason=reason, look=look)
    return answer


def _ratings(known: CircuitClass) -> str:
    """Breakers that such a circuit may have: "20", or "15 or 20"."""
    return f"{known.most_a}" if known.is_exact else f"{known.least_a} or {known.most_a}"


def _together(found: list[Answer], asked: Asked) -> Answer:
    """One answer for all that the circuit and the room may be."""
    standings = {each.standing for each in found}
    if len(standings) == 1:
        return found[0]
    first = next((each for each in found if each.standing == "refused"), found[0])
    reason, look = _why_open(found, asked)
    return replace(first, standing="unknown", reason=reason, rows=_rows(found), look=look)


def _why_open(found: list[Answer], asked: Asked) -> tuple[str, str]:
    """Why nobody can say yet, and what to find out."""
    if asked.circuit.kind != UNKNOWN:
        return "that hangs on what the room is used for", _SAY_USE
    said = [
        f"as a {_names(found, standing)} {words}"
        for standing, words in _IF_IT_IS
        if any(each.standing == standing for each in found)
    ]
    return ", ".join(said), _FIND_KIND


_IF_IT_IS: tuple[tuple[Standing, str], ...] = (
    ("allowed", "it may feed it"),
    ("unknown", "nobody can say yet"),
    ("refused", "it may not"),
)
_SAY_USE = "Say what the room is used for (use = ...)."
_FIND_KIND = (
    "Turn the breaker off, write down everything that goes dead and the breaker's number; "
    "then say what the circuit is for (kind = ...)."
)
_NAMES_SAID = 2


def _names(found: Iterable[Answer], standing: Standing) -> str:
    """The kinds with one answer; a long list of them is not read out."""
    kinds = tuple(dict.fromkeys(each.kinds[0] for each in found if each.standing == standing))
    names = [circuit_classes()[kind].words for kind in kinds[:_NAMES_SAID]]
    more = ["circuit kept for something else"] if len(kinds) > _NAMES_SAID else []
    return " or ".join(names + more)


def _rows(found: Iterable[Answer]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(row for each in found for row in each.rows))
