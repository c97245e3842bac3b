"""Arc-fault protection of a circuit that is extended."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction

from estimator.measures import LENGTH_IN
from estimator.rules.facts import Facts
from estimator.rules.place_facts import outlets, place_words, protective_device
from estimator.rules.protection import AFCI, arc_fault_listed, upstream_protection
from estimator.rules.records import Finding, Remedy, RemedyPart, RemedyTask, Verdict
from estimator.rules.registry import rule
from estimator.survey.electrical import Box
from estimator.tables.facts import NotOnFile
from estimator.tables.place import arc_fault_clause, device_traits

CIRCUIT = "circuit"
HOME_RUN = "home run"
_NAME = (AFCI, CIRCUIT)
_DEVICE = "afci receptacle"
BY_BREAKER = "breaker"
_AT_FIRST = (
    "Fit an outlet-type arc-fault receptacle at the first receptacle of the circuit (find it "
    "first); that is what is priced. The other way is an arc-fault breaker, put in by a licensed "
    'electrician: write afci_by = "breaker" to price that.'
)
_IN_PANEL = (
    "Have an arc-fault breaker to suit the panel put in by a licensed electrician; breaker and "
    "hours are what is priced. The other way is an outlet-type arc-fault receptacle at the first "
    'receptacle of the circuit: write afci_by = "receptacle" to price that.'
)
_BREAKER: tuple[Remedy, ...] = (
    RemedyPart("devices", "afci-breaker", Decimal(1), "ea"),
    RemedyTask("terminate", "fit-afci-breaker", Decimal(1), "ea"),
)
_LOOK = "Look at the breaker for a test button and the word arc-fault or AFCI."


@rule(AFCI)
def afci_extension(facts: Facts) -> Iterator[Finding]:
    """An extension in a listed room needs arc-fault protection; what is there counts."""
    answer = _free(facts) or _protected(facts)
    if answer is not None:
        yield answer
        return
    yield _open(facts)
    yield from _home_run(facts)


def _clause(facts: Facts) -> str:
    row = arc_fault_clause(facts.edition or "")
    return facts.law(row["where"], row["confidence"])


def _listed(facts: Facts, answer: str) -> dict[str, str]:
    """Rooms of the boxes of this job that the list answers so, each with its citation."""
    found: dict[str, str] = {}
    for box in facts.boxes.values():
        listed, cite = arc_fault_listed(facts, box)
        if listed == answer:
            found.setdefault(place_words(facts, box), cite)
    return found


def _free(facts: Facts) -> Finding | None:
    """Circuits, rooms and small changes that the rule does not speak of."""
    breaker_a = facts.survey.circuit.breaker_a
    least, most = facts.electrical("afci-breaker-least"), facts.electrical("afci-breaker-most")
    if breaker_a is not None and not least.value <= breaker_a <= most.value:
        figures = f"breaker {breaker_a} A; asked of {least.value} to {most.value} A"
        return facts.finding(_NAME, "pass", figures, facts.cite(most))
    if not _listed(facts, "yes") and not _listed(facts, "unknown"):
        (room, cite), *_ = _listed(facts, "no").items()
        figures = f"no room of this work is on the list ({room})"
        return facts.finding(_NAME, "pass", figures, cite)
    limit = facts.electrical("afci-lengthened")
    if not outlets(facts) and _path_in(facts) <= limit.value:
        figures = (
            f"{_path_words(facts)} of new wire and no new outlet; free up to {_free_in(facts)}"
        )
        return facts.finding(_NAME, "pass", figures, facts.cite(limit))
    return None


def _path_in(facts: Facts) -> Fraction:
    return sum((path.path_in for path in facts.paths), Fraction(0))


def _path_words(facts: Facts) -> str:
    return facts.units.say_unit(_path_in(facts))


def _free_in(facts: Facts) -> str:
    return facts.units.say_unit(facts.electrical("afci-lengthened").value)


def _protected(facts: Facts) -> Finding | None:
    """Protection at the breaker counts; a device on the way counts where it is the first."""
    there, words = upstream_protection(facts, "afci", "arc-fault")
    if there == "yes":
        return facts.finding(_NAME, "pass", f"{_where(facts)}; {words}", _clause(facts))
    holder = next((box for box in facts.sources if _is_arc_fault(box)), None)
    if holder is None:
        return None
    figures = f"{_where(facts)}; box {holder.id} holds an arc-fault receptacle"
    remedy = "It counts where it is the first receptacle of the circuit: find out."
    return facts.finding(_NAME, "unknown", figures, _clause(facts), remedy, _remedies(facts))


def _is_arc_fault(box: Box) -> bool:
    return device_traits(box.device).arc_fault


def _where(facts: Facts) -> str:
    rooms = _listed(facts, "yes")
    if rooms:
        return f"wiring added in {', '.join(rooms)}"
    return f"may be a listed room: {', '.join(_listed(facts, 'unknown'))}"


def _open(facts: Facts) -> Finding:
    """Not protected, or nobody looked; a missing fact is asked for."""
    _, words = upstream_protection(facts, "afci", "arc-fault")
    figures = f"{_where(facts)}; {words}"
    if outlets(facts) and _path_in(facts) <= facts.electrical("afci-lengthened").value:
        figures += f"; short wire ({_free_in(facts)}) is free only where no outlet is added"
    asked = _to_find(facts)
    verdict: Verdict = "unknown" if asked else "fail"
    remedy = " ".join((*asked, _IN_PANEL if _is_by_breaker(facts) else _AT_FIRST))
    return facts.finding(_NAME, verdict, figures, _cite(facts), remedy, _remedies(facts))


def _to_find(facts: Facts) -> tuple[str, ...]:
    """What nobody knows yet of what the answer hangs on."""
    asked = []
    if not _listed(facts, "yes"):
        asked.append("Say what the room is used for, and ask the inspector if it is listed.")
    if facts.survey.circuit.breaker_a is None:
        asked.append("Read the number on the breaker.")
    if facts.survey.circuit.protection is None:
        asked.append(_LOOK)
    return tuple(asked)


def _cite(facts: Facts) -> str:
    """The clause; a room that a local change lists brings its reason."""
    local = [cite for cite in _listed(facts, "yes").values() if cite.startswith("local")]
    return ", ".join((_clause(facts), *local))


def _is_by_breaker(facts: Facts) -> bool:
    return facts.survey.circuit.afci_by == BY_BREAKER


def _remedies(facts: Facts) -> tuple[Remedy, ...]:
    """A breaker or a receptacle, whichever the job says."""
    return _BREAKER if _is_by_breaker(facts) else protective_device(facts, _DEVICE)


def _home_run(facts: Facts) -> Iterator[Finding]:
    """A device that works with the breaker has a limit of wire before it; said as a note."""
    circuit = facts.survey.circuit
    if _is_by_breaker(facts):
        return
    try:
        limit = facts.electrical(f"afci-run-{circuit.wire}")
    except NotOnFile:
        return
    most = f"at most {limit.value} {limit.unit} of size {circuit.wire}"
    figures = f"if the arc-fault receptacle relies on a partner breaker: {most} between the two"
    length_in = circuit.existing_length_in
    if length_in is None:
        remedy = "Measure or estimate the wire from the breaker to the source."
        yield _note(facts, f"{figures}; here the length is unknown", facts.cite(limit), remedy)
        return
    within = length_in <= limit.value * LENGTH_IN[limit.unit]
    length = f"{facts.units.lengths(length_in)} {facts.units.length}"
    said = "within" if within else "over it: such a pair will not do"
    figures = f"{figures}; here {length} to the source, {said}"
    yield _note(facts, figures, facts.cite(limit), "")


def _note(facts: Facts, figures: str, cite: str, remedy: str) -> Finding:
    return facts.finding((AFCI, HOME_RUN), "note", figures, cite, remedy)
