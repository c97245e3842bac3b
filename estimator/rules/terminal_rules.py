"""Wires on the terminals of a device: one under a screw, and when push-in holes may be used."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from estimator.rules.circuit_rules import COPPER, amperes, awg
from estimator.rules.facts import Facts
from estimator.rules.records import Finding, Remedy, RemedyTask
from estimator.rules.registry import rule
from estimator.survey.electrical import Box
from estimator.survey.fields import YesNo
from estimator.takeoff.amounts import plural
from estimator.takeoff.records import BoxCount

RULE = "terminals"
# The pigtails and connectors of a box where cables meet are in the takeoff without any remedy;
# what a remedy adds is the time to free the wires.
REMAKE: tuple[Remedy, ...] = (RemedyTask("terminate", "remake-terminals", Decimal(1), "ea"),)
_NO_TERMINALS = ("luminaire", "none")
_CURE = (
    "Free the wires. Put one wire or one pigtail under each screw and none in a push-in hole; the"
    " other wires join in connectors."
)
_LOOK = "With the power off, draw the device out: count wires under each screw, look behind it."
_QUALITY = "Allowed here. A wire under a screw holds better; move it while the box is open."


@rule(RULE)
def terminals(facts: Facts) -> Iterator[Finding]:
    """Judge how the wires sit on each device that the job touches."""
    counts = {count.box_id: count for count in facts.takeoff.boxes}
    for box in facts.boxes.values():
        if box.device not in _NO_TERMINALS:
            yield judge(facts, box, counts[box.id])


def judge(facts: Facts, box: Box, count: BoxCount) -> Finding:
    """One device; a new one is planned on screws unless the survey says otherwise."""
    found, most = box.contents, facts.electrical("wires-per-terminal")
    push, screws = found.push_in_terminals, found.wires_per_screw
    if not box.existing:
        push, screws = "no" if push == "unknown" else push, 1 if screws is None else screws
    fits = _push_in_fits(facts, box, count)
    name, figures = (RULE, box.id), _figures(facts, (push, fits, screws), count)
    push_cite = facts.cite(facts.electrical("push-in-wire"))
    if push == "yes" and fits == "no":
        return facts.finding(name, "fail", figures, push_cite, _CURE, REMAKE)
    if screws is not None and screws > most.value:
        return facts.finding(name, "fail", figures, facts.cite(most), _CURE, REMAKE)
    if screws is None or (push != "no" and fits == "unknown") or (push, fits) == ("unknown", "no"):
        return facts.finding(name, "unknown", figures, facts.cite(most), _LOOK, REMAKE)
    if push == "yes":
        return facts.finding(name, "note", figures, push_cite, _QUALITY)
    return facts.finding(name, "pass", figures, facts.cite(most))


def _push_in_fits(facts: Facts, box: Box, count: BoxCount) -> YesNo:
    """Whether push-in terminals may be used here: thin solid copper behind a small breaker."""
    circuit, stated = facts.survey.circuit, box.contents.device_wire
    size, breaker = facts.electrical("push-in-wire"), facts.electrical("push-in-breaker")
    wires = [stated] if stated is not None else [wire for wire, _ in count.conductors]
    metal = circuit.material if box.existing else COPPER
    too_thick = any(awg(wire) != size.value for wire in wires)
    too_large = circuit.breaker_a is not None and circuit.breaker_a > breaker.value
    if too_thick or too_large or metal not in (COPPER, "unknown"):
        return "no"
    return "unknown" if circuit.breaker_a is None or metal == "unknown" else "yes"


def _figures(facts: Facts, found: tuple[YesNo, YesNo, int | None], count: BoxCount) -> str:
    """What was found, what is allowed, and what the takeoff joins."""
    push, fits, screws = found
    size, breaker = facts.electrical("push-in-wire"), facts.electrical("push-in-breaker")
    most = facts.electrical("wires-per-terminal")
    under = "not counted" if screws is None else f"{screws}"
    said = [f"wires under one screw: {under}, at most {most.value}"]
    if push == "unknown":
        said.append("push-in terminals: not looked at")
    elif push == "yes":
        allowed = {"yes": "allowed", "no": "not allowed", "unknown": "perhaps not allowed"}[fits]
        said.append(
            f"push-in terminals in use: {allowed} behind {amperes(facts.survey.circuit.breaker_a)}"
            f" (only {size.value} AWG solid copper, {breaker.value} A)"
        )
    if count.joints:
        joints = plural(len(count.joints), "connector")
        said.append(f"{joints} and {plural(count.pigtails, 'pigtail')} here in the takeoff")
    return "; ".join(said)
