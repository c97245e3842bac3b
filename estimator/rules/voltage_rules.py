"""Voltage drop over the old and the new length, as advice."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction

from estimator.measures import in_to_ft, to_decimal
from estimator.route.records import RunPath
from estimator.rules.circuit_rules import COPPER
from estimator.rules.facts import Facts
from estimator.rules.records import Finding
from estimator.rules.registry import rule
from estimator.tables.cable import wire_resistance
from estimator.tables.facts import cable_kinds

RULE = "voltage-drop"
_FT_PER_KFT = 1000
_TENTHS = 1
_TAKEN = ", with the old wire taken as copper: its metal is unknown"


def drop_volts(length_ft: Fraction, ohm_per_kft: Fraction, load_a: Fraction) -> Fraction:
    """Volts lost out and back over one wire size: 2 x length x load x resistance / 1000.

    Args:
        length_ft: one way.
        ohm_per_kft: of one wire, ohms for each 1000 ft.
        load_a: amperes.

    >>> drop_volts(Fraction(50), Fraction("1.93"), Fraction(16))
    Fraction(386, 125)
    """
    return 2 * length_ft * load_a * ohm_per_kft / _FT_PER_KFT


@rule(RULE)
def voltage_drop(facts: Facts) -> Iterator[Finding]:
    """Add up the drop from the breaker to each new outlet and hold it against the advice."""
    advice, metal = facts.electrical("branch-drop"), facts.survey.circuit.material
    for box in facts.new_boxes:
        paths = _chain(facts, box.id)
        missing = _missing(facts, paths)
        subject = (RULE, box.id)
        if missing:
            figures = f"not worked out: {missing}"
            remedy = "Pace off the old wire from the panel, and ask what will be plugged in."
            yield facts.finding(subject, "note", figures, facts.cite(advice), remedy)
            continue
        if _not_on_file(facts):
            figures = f"not worked out: the resistance of {metal} wire on file"
            remedy = "Ask its maker for the resistance, or start from a circuit that is copper."
            yield facts.finding(subject, "unknown", figures, facts.cite(advice), remedy)
            continue
        volts = _volts(facts, paths)
        percent = 100 * volts / facts.electrical("circuit-volts").value
        figures = (
            f"{to_decimal(volts, _TENTHS)} V, {to_decimal(percent, _TENTHS)} %,"
            f" advice {advice.value} %{_TAKEN if metal == 'unknown' else ''}"
        )
        if percent <= advice.value:
            yield facts.finding(subject, "pass", figures, facts.cite(advice))
        else:
            remedy = "Thicker cable on the new run, or a source nearer to the panel."
            yield facts.finding(subject, "note", figures, facts.cite(advice), remedy)


def _chain(facts: Facts, box_id: str) -> tuple[RunPath, ...]:
    """The runs from the existing source to a new box, the last first."""
    feeding = {path.run.to_box: path for path in facts.paths}
    found: list[RunPath] = []
    while box_id in feeding and feeding[box_id] not in found:
        found.append(feeding[box_id])
        box_id = found[-1].run.from_box
    return tuple(found)


def _missing(facts: Facts, paths: tuple[RunPath, ...]) -> str:
    """What stands in the way of a figure, in words; empty where nothing does."""
    circuit = facts.survey.circuit
    wires = [circuit.wire or "", *(cable_kinds()[path.run.cable].wire for path in paths)]
    needed = {
        "the length of the old wire": circuit.existing_length_in,
        "the load": circuit.load_a,
        "the size of the old wire": circuit.wire,
    }
    unknown = [words for words, value in needed.items() if value is None]
    if not unknown and any(wire_resistance(wire, COPPER) is None for wire in wires):
        unknown.append("the resistance of a wire size on file")
    return ", ".join(unknown)


def _not_on_file(facts: Facts) -> bool:
    """Whether a wire of that size has a figure as copper, and none in the metal it is of."""
    return wire_resistance(facts.survey.circuit.wire or "", _old_metal(facts)) is None


def _old_metal(facts: Facts) -> str:
    """The metal of the old wire; copper is taken where nobody knows, and the figures say so."""
    metal = facts.survey.circuit.material
    return COPPER if metal == "unknown" else metal


def _volts(facts: Facts, paths: tuple[RunPath, ...]) -> Fraction:
    circuit = facts.survey.circuit
    load_a = Fraction(circuit.load_a or Decimal(0))
    old_wire = circuit.wire or "", _old_metal(facts)
    lengths_in = [(old_wire, circuit.existing_length_in or Fraction(0))]
    lengths_in += [((cable_kinds()[path.run.cable].wire, COPPER), path.path_in) for path in paths]
    drops = (
        drop_volts(in_to_ft(length_in), on_file.ohm_per_kft, load_a)
        for wire, length_in in lengths_in
        if (on_file := wire_resistance(*wire)) is not None
    )
    return sum(drops, Fraction(0))
