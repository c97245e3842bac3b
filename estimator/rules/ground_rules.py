"""The equipment ground: is there one at the source, and is its wire thick enough."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction

from estimator.measures import ceil_to_step
from estimator.rules.circuit_rules import CIRCUIT, COPPER, MATERIALS, amperes, awg, breaker_limit
from estimator.rules.facts import Facts
from estimator.rules.records import Finding, Remedy, RemedyPart, RemedyTask
from estimator.rules.registry import rule
from estimator.survey.electrical import Box
from estimator.tables.circuit import circular_mils, ground_end, ground_size, wires_on_file
from estimator.tables.facts import cable_kinds

SIZE = "ground-size"
SOURCE = "ground-source"
_ENDS = 2
_TABLE = "Table 250.122"
_WAYS = "250.130(C)"
_CHOICES = (
    'A GFCI does not cure this: the relief marked "no equipment ground" is for replacing a'
    " receptacle, not for adding one. Run a separate ground to the electrode system, its"
    " conductor, the panel's ground bar, the neutral inside the service equipment or another"
    " circuit of the same panel (set new_ground_to"
    " and new_ground_length), or have a new circuit priced. Never tie grounds together between"
    " outlets that have only a GFCI."
)
_TEST = (
    "With the power on, a qualified person measures hot to ground and neutral to ground: a wire"
    " tied to the neutral in the box, or a ground that leads nowhere, is no ground. Then correct"
    " grounded or ground_present."
)
_MEASURE = "Measure the way of the new ground wire and write new_ground_length, so it is priced."
_LOOK = (
    "With the power off, look for a bare or green wire in the box; then test hot to ground with a"
    " meter. A three-slot receptacle alone proves nothing."
)


@rule(SIZE)
def ground_wire_size(facts: Facts) -> Iterator[Finding]:
    """Hold the old ground wire against the breaker; a new cable brings one of full size."""
    circuit = facts.survey.circuit
    if circuit.ground_wire is not None or circuit.grounded == "yes":
        yield _judge_size(facts, circuit.ground_wire or "", circuit.wire or "")


def _judge_size(facts: Facts, ground: str, wire: str) -> Finding:
    circuit, name = facts.survey.circuit, (SIZE, CIRCUIT)
    metals = MATERIALS if circuit.material == "unknown" else (circuit.material,)
    needs = [need for metal in metals if (need := _need_awg(facts, metal, awg(wire)))]
    cite = facts.law(_TABLE)
    figures = (
        f"ground wire {f'{ground} AWG' if ground else 'unknown'},"
        f" breaker {amperes(circuit.breaker_a)}"
    )
    if not (needs and awg(ground)):
        remedy = (
            "Look at the bare or green wire in the source box, at the other wires and at the"
            ' breaker; write sizes such as "14".'
        )
        return facts.finding(name, "unknown", figures, cite, remedy)
    figures = f"{figures}: least {min(needs)} AWG"
    if awg(ground) > max(needs):
        remedy = "The old ground is too thin. Start from another circuit."
        return facts.finding(name, "fail", figures, cite, remedy)
    if awg(ground) > min(needs):
        remedy = "Find out what metal the old wires are; aluminum wants a thicker ground."
        return facts.finding(name, "unknown", figures, cite, remedy)
    return _grown(facts, (ground, wire), figures, cite)


def _need_awg(facts: Facts, metal: str, wire_awg: int) -> int:
    """Size that the table asks for, never thicker than the wires; 0 where that is not known."""
    breaker_a = facts.survey.circuit.breaker_a
    if breaker_a is None or not wire_awg:
        return 0
    row = ground_size(breaker_a, metal, facts.edition or "")
    return 0 if row is None else max(int(row.value), wire_awg)


def _grown(facts: Facts, wires: tuple[str, str], figures: str, cite: str) -> Finding:
    """Where the hot wires are thicker than the breaker needs, the ground has to keep up."""
    name, (ground, wire) = (SIZE, CIRCUIT), wires
    least = _least_wire(facts)
    if least is None or awg(wire) >= awg(least):
        return facts.finding(name, "pass", figures, cite)
    share = facts.electrical("ground-in-proportion")
    if _keeps_up(facts, (ground, wire, least), share.value / 100):
        return facts.finding(name, "pass", figures, cite)
    figures = f"{figures}; the hot wires are {wire} AWG where {least} would do"
    remedy = (
        "A ground grows with its wires, unless they were made thicker because of heat. Ask why."
    )
    return facts.finding(name, "unknown", figures, facts.cite(share), remedy)


def _keeps_up(facts: Facts, wires: tuple[str, str, str], share: Fraction) -> bool:
    """True where the ground is thicker than the table asks by as much as the hot wires are.

    `wires` are the ground, the hot wire, and the hot wire that would do.
    """
    row = ground_size(facts.survey.circuit.breaker_a or 0, _metal(facts), facts.edition or "")
    table = None if row is None else circular_mils(str(int(row.value)))
    there, thick, thin = map(circular_mils, wires)
    if table is None or there is None or thick is None or thin is None:
        return False
    return there * thin >= share * table * thick


def _metal(facts: Facts) -> str:
    """The metal of the circuit; copper where nobody knows."""
    material = facts.survey.circuit.material
    return COPPER if material == "unknown" else material


def _least_wire(facts: Facts) -> str | None:
    """The thinnest wire that the breaker goes with."""
    breaker_a = facts.survey.circuit.breaker_a or 0
    limits = {wire: breaker_limit(facts, wire, _metal(facts)) for wire in wires_on_file()}
    fitting = (wire for wire, limit in limits.items() if limit and breaker_a <= limit.value)
    return next(fitting, None)


@rule(SOURCE)
def ground_source(facts: Facts) -> Iterator[Finding]:
    """Refuse to extend a circuit without a ground, unless a separate one is chosen and priced."""
    for box in facts.sources:
        yield _judge_source(facts, box)


def _judge_source(facts: Facts, box: Box) -> Finding:
    name, law, circuit = (SOURCE, box.id), facts.law(_WAYS), facts.survey.circuit
    stated = box.contents.ground_present
    grounded = circuit.grounded if stated == "unknown" else stated
    if grounded == "yes" and circuit.grounded == "no":
        figures = "a ground was seen in the box, and the circuit is said to have none"
        return facts.finding(name, "unknown", figures, law, _TEST)
    if grounded == "yes":
        return facts.finding(name, "pass", "the source has a ground", law)
    if grounded == "unknown":
        figures = "nobody has said whether the source has a ground"
        return facts.finding(name, "unknown", figures, law, _LOOK)
    return _without(facts, box)


def _without(facts: Facts, box: Box) -> Finding:
    """A source without a ground: refused, or a separate one to a place that the code names."""
    name, law, circuit = (SOURCE, box.id), facts.law(_WAYS), facts.survey.circuit
    figures = "no ground at the source; a new cable may not start there"
    if circuit.new_ground_to == "none":
        return facts.finding(name, "fail", figures, law, _CHOICES)
    end = ground_end(circuit.new_ground_to)
    words = end.words
    figures = f"{figures} without a separate ground, here to {words}"
    if not end.allowed:
        cite = facts.law(end.where, end.confidence)
        return facts.finding(name, "fail", f"{figures}, which is no place for it", cite, _CHOICES)
    if circuit.new_ground_length_in is None:
        return facts.finding(name, "fail", figures, law, _MEASURE)
    remedy = f"Run a separate ground wire from this box to {words}, before the outlet is used."
    remedies = _new_ground(facts, box, circuit.new_ground_length_in)
    return facts.finding(name, "fail", figures, law, remedy, remedies)


def _new_ground(facts: Facts, box: Box, length_in: Fraction) -> tuple[Remedy, ...]:
    """Wire as cable is ordered (tails, allowance, rounded up once), its end, and the work."""
    practice, unit = facts.practice, facts.units.length
    tails_in = _ENDS * max(practice.tail_in, practice.tail_floor_in)
    allowed_in = (length_in + tails_in) * (1 + Fraction(practice.allowance_pct) / 100)
    order_in = ceil_to_step(allowed_in, practice.order_step_in)
    end = ground_end(facts.survey.circuit.new_ground_to)
    wire = f"ground-wire-{_new_ground_awg(facts, box)}"
    return (
        RemedyPart("cable", wire, facts.units.lengths(order_in), unit),
        *(RemedyPart("joints", item, Decimal(1), "ea") for item in end.items),
        RemedyTask("rough-in", "pull-ground-wire", facts.units.lengths(length_in), unit),
        RemedyTask("terminate", "connect-ground", Decimal(_ENDS), "ea"),
    )


def _new_ground_awg(facts: Facts, box: Box) -> int:
    """Copper by the table, never thicker than the thickest wire of the new cables."""
    cables = [run.cable for run in facts.survey.runs if run.from_box == box.id]
    wire_awg = min(awg(cable_kinds()[cable].wire) for cable in cables)
    row = ground_size(facts.survey.circuit.breaker_a or 0, COPPER, facts.edition or "")
    if facts.survey.circuit.breaker_a is None or row is None:
        return wire_awg
    return max(int(row.value), wire_awg)
