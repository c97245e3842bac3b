"""The source: always live, with a neutral, of this dwelling, and joined inside boxes."""

from __future__ import annotations

from collections.abc import Iterator

from estimator.rules.circuit_rules import CIRCUIT
from estimator.rules.facts import Facts
from estimator.rules.records import Finding
from estimator.rules.registry import rule
from estimator.survey.electrical import Box, CircuitKind, Run
from estimator.survey.fields import YesNo
from estimator.tables.place import device_traits

NEUTRAL = "neutral-source"
SWITCHED = "switched-source"
SPLICE = "splice-box"
DWELLING = "other-dwelling"
_NEUTRAL_LAW, _SWITCH_LAW, _SPLICE_LAW, _DWELLING_LAW = "300.3(B)", "404.2(C)", "300.15", "210.25"
_ONE_THING_LAW = "210.23"
_COUNTED_LAW = "210.52"
# Kinds of circuit that no outlet of the job may hang on, whatever the room.
REFUSED_KINDS: tuple[CircuitKind, ...] = ("individual", "other dwelling")
_PURPOSE = "the purpose of the job"
_NO_NEUTRAL = (
    "Start from the light's box or from a receptacle, where the whites are. Never use the ground"
    " as a neutral: it would put current on bare metal."
)
_FIND_NEUTRAL = (
    "With the power off, draw the switch out: is there a bundle of whites joined together that is"
    " not on the switch? If the only white goes to the switch, there is no neutral."
)
_FIND_HOT = (
    "Turn every switch in and near the room off and test the source: it must stay live. Look"
    " whether the tab between the two brass screws is broken off."
)
_OTHER_HOT = (
    "What is fed from here would die with the switch. Find a box that stays live with all switches"
    " off."
)


@rule(NEUTRAL)
def neutral_source(facts: Facts) -> Iterator[Finding]:
    """Refuse a switch box, or a splice box, that holds no neutral for the new outlet."""
    for box in facts.sources:
        if device_traits(box.device).is_switch or box.device == "none":
            yield _judge_neutral(facts, box)


def _judge_neutral(facts: Facts, box: Box) -> Finding:
    name, law, bundle = (NEUTRAL, box.id), facts.law(_NEUTRAL_LAW), box.contents.neutral_bundle
    if bundle == "yes":
        return facts.finding(name, "pass", "the whites are joined here, apart from the switch", law)
    if all(device_traits(each.device).is_switch for each in fed_from(facts, box)):
        figures = "only switches are fed from here; they do without a neutral, with exceptions"
        remedy = "A new switch box in most rooms wants a neutral for later: ask the inspector."
        return facts.finding(name, "note", figures, facts.law(_SWITCH_LAW), remedy)
    if bundle == "no":
        figures = "no neutral here, only a switch loop: its white is a hot wire"
        return facts.finding(name, "fail", figures, law, _NO_NEUTRAL)
    figures = "nobody has looked for a neutral in this box"
    return facts.finding(name, "unknown", figures, law, _FIND_NEUTRAL)


def fed_from(facts: Facts, source: Box) -> tuple[Box, ...]:
    """Every box of this job that hangs on a source, directly or through others."""
    found: list[Box] = []
    waiting = [source.id]
    while waiting:
        at = waiting.pop()
        ends = [run.to_box for run in facts.survey.runs if run.from_box == at]
        new = [facts.boxes[end] for end in ends if facts.boxes[end] not in (source, *found)]
        found += new
        waiting += [box.id for box in new]
    return tuple(found)


@rule(SWITCHED)
def switched_source(facts: Facts) -> Iterator[Finding]:
    """Refuse a source that dies with a switch, but for one more light on that same switch."""
    for box in facts.sources:
        yield _judge_live(facts, box)


def _judge_live(facts: Facts, box: Box) -> Finding:
    name, found = (SWITCHED, box.id), box.contents
    if found.always_live == "no":
        return _switched(facts, box)
    split = _split(box)
    if found.always_live == "unknown":
        figures = "nobody has said whether the source stays live with every switch off"
        return facts.finding(name, "unknown", figures, _live_cite(facts), _FIND_HOT)
    if split == "yes":
        figures = "one half of the receptacle goes with a switch, the other stays live"
        remedy = "Take the new cable from the half that stays live, and test it with switches off."
        return facts.finding(name, "note", figures, _live_cite(facts), remedy)
    if split == "unknown":
        figures = "live with every switch off; whether both halves are is not known"
        return facts.finding(name, "unknown", figures, _live_cite(facts), _FIND_HOT)
    return facts.finding(name, "pass", "live with every switch off", _live_cite(facts))


def _live_cite(facts: Facts) -> str:
    """The purpose; and in the US that a switched receptacle is none of the required ones."""
    return _PURPOSE if facts.edition is None else f"{_PURPOSE}; {facts.law(_COUNTED_LAW)}"


def _split(box: Box) -> YesNo:
    """Whether one half of a receptacle is switched; a whole tab says no."""
    if not device_traits(box.device).is_receptacle:
        return "no"
    if box.contents.half_switched != "unknown":
        return box.contents.half_switched
    return "no" if box.contents.tab_removed == "no" else "unknown"


def _switched(facts: Facts, box: Box) -> Finding:
    name = (SWITCHED, box.id)
    figures = "the source dies with a switch"
    if all(each.device == "luminaire" for each in fed_from(facts, box)):
        remedy = "The new light goes on and off with the old one. If that is not wanted, find"
        return facts.finding(
            name, "note", figures, _live_cite(facts), f"{remedy} a box that stays live."
        )
    return facts.finding(name, "fail", figures, _live_cite(facts), _OTHER_HOT)


@rule(SPLICE)
def splice_box(facts: Facts) -> Iterator[Finding]:
    """Refuse a joint outside a box."""
    for run in facts.survey.runs:
        yield _judge_splice(facts, run)


def _judge_splice(facts: Facts, run: Run) -> Finding:
    name, law = (SPLICE, f"run {run.id}"), facts.law(_SPLICE_LAW)
    if run.splice_without_box == "no":
        return facts.finding(name, "pass", "every joint of this run is in a box", law)
    if run.splice_without_box == "unknown":
        figures = "nobody has said whether the run is joined outside a box"
        return facts.finding(name, "unknown", figures, law, "Plan one piece from box to box.")
    remedy = (
        "Run the cable in one piece from box to box, or put a box with a cover at the joint, within"
        " reach. A listed connector for cable is for repair in closed walls only."
    )
    return facts.finding(name, "fail", "a joint outside a box", law, remedy)


@rule(DWELLING)
def other_dwelling(facts: Facts) -> Iterator[Finding]:
    """Refuse the circuit of another dwelling, and one that is there for a single appliance."""
    yield _judge_kind(facts, CIRCUIT, facts.survey.circuit.kind)
    for box in facts.sources:
        if box.circuit_kind is not None:
            yield _judge_kind(facts, box.id, box.circuit_kind)


def _judge_kind(facts: Facts, subject: str, kind: CircuitKind) -> Finding:
    name, law, serves = (DWELLING, subject), facts.law(_DWELLING_LAW), facts.survey.circuit.serves
    if kind == "other dwelling":
        figures = "the circuit belongs to another dwelling or to rooms in common"
        remedy = "Start from a circuit of this dwelling's own panel."
        return facts.finding(name, "fail", figures, law, remedy)
    if kind == "individual":
        figures = "the circuit is there for one appliance alone"
        remedy = "Leave it to that appliance; start from a general circuit."
        return facts.finding(name, "fail", figures, facts.law(_ONE_THING_LAW), remedy)
    if kind != "unknown":
        return facts.finding(name, "pass", f"kind of circuit: {kind}", law)
    if serves and subject == CIRCUIT:
        figures = f"it serves {', '.join(serves)}; what it was put in for was not said"
        remedy = "See that nothing next door, and no single large appliance, goes dead with it."
        return facts.finding(name, "note", figures, law, remedy)
    figures = "nobody has said what the circuit was put in for"
    remedy = (
        "Turn the breaker off and list all that goes dead. It must be this dwelling's own, and"
        " must not be there for one appliance."
    )
    return facts.finding(name, "unknown", figures, law, remedy)
