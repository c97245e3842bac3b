"""Two hots on one neutral, split receptacles, and white wires used as hots."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from estimator.rules.circuit_rules import CIRCUIT
from estimator.rules.facts import Facts
from estimator.rules.records import Finding, Remedy, RemedyPart, RemedyTask
from estimator.rules.registry import rule
from estimator.rules.terminal_rules import REMAKE, judge
from estimator.survey.electrical import Box, Circuit, Run
from estimator.tables.facts import cable_kinds
from estimator.tables.place import device_traits

MULTIWIRE = "multiwire"
WHITE = "white-as-hot"
_TIE_LAW, _NEUTRAL_LAW, _YOKE_LAW, _WHITE_LAW = "210.4(B)", "300.13(B)", "210.7", "200.7(C)(1)"
_THREE = 3
_TIE: tuple[Remedy, ...] = (
    RemedyPart("devices", "breaker-handle-tie", Decimal(1), "ea"),
    RemedyTask("terminate", "fit-handle-tie", Decimal(1), "ea"),
)
_LOOK = (
    "Look in the source box and in the panel for a red and a black that share one white. If they"
    " do, look for a handle tie, measure from hot to hot and see whether the whites are joined with"
    " a pigtail."
)
_MEASURE = "Measure from hot to hot: two legs show double the usual voltage, one leg shows none."
_LOOK_TIE = "Look in the panel for a handle tie."
_LOOK_WHITES = "Look in the source box whether the whites are joined with a pigtail."
_WHICH_HOT = "Say which hot the new outlet takes (new_on_hot = ...), so its leg is known."
_OFF = "Turn both breakers off: the shared white is live while either hot is on."
_BOTH = "Both breakers must open together. Turn both off before you touch the device."
_LEGS = (
    "Both hots are on one leg, so the white carries the sum of them. Have the breakers set on"
    " different legs before anything is added."
)
_REMARK = "Mark the white with tape or paint at every visible end as a hot wire."


@rule(MULTIWIRE)
def multiwire(facts: Facts) -> Iterator[Finding]:
    """Ask for one handle and a joined neutral where two hots share a white."""
    yield _circuit(facts)
    if facts.survey.circuit.multiwire != "yes":
        for box in facts.sources:
            if box.contents.tab_removed == "yes" and box.contents.half_switched != "yes":
                yield _split_device(facts, box)


def _circuit(facts: Facts) -> Finding:
    circuit, name = facts.survey.circuit, (MULTIWIRE, CIRCUIT)
    law = facts.law(_TIE_LAW)
    if circuit.multiwire == "no":
        return facts.finding(name, "pass", "one hot, one white: no shared neutral", law)
    if circuit.multiwire == "unknown":
        figures = "nobody has said whether two hots share one white"
        remedies = _TIE if _may_share(facts) else ()
        return facts.finding(name, "unknown", figures, law, _LOOK, remedies)
    figures = (
        f"two hots share one white; handle tie: {circuit.handle_tie}, on two legs:"
        f" {circuit.hots_on_two_legs}, whites joined with a pigtail: {circuit.neutral_pigtailed},"
        f" new outlet on hot: {circuit.new_on_hot}"
    )
    if circuit.hots_on_two_legs == "no":
        return facts.finding(name, "fail", figures, law, _LEGS)
    return _tie_and_neutral(facts, figures)


def _may_share(facts: Facts) -> bool:
    """True where a source box has a three-wire cable, or nobody has looked."""
    return any(
        box.unknown_cables
        or not box.cables
        or any(cable_kinds()[each].insulated_count >= _THREE for each in box.cables)
        for box in facts.sources
    )


def _tie_and_neutral(facts: Facts, figures: str) -> Finding:
    """A missing tie and a neutral through a device are put right; unknown ones may have to be."""
    circuit, name = facts.survey.circuit, (MULTIWIRE, CIRCUIT)
    answers = (circuit.handle_tie, circuit.neutral_pigtailed)
    verdict = "fail" if "no" in answers else "unknown"
    wrong = ("no",) if verdict == "fail" else ("unknown",)
    remedies = _TIE if circuit.handle_tie in wrong else ()
    words = ["Tie the two breaker handles."] if remedies else []
    if circuit.neutral_pigtailed in wrong:
        remedies += _joined_neutrals(facts)
        words.append(
            "Join the whites in a connector with a pigtail to the device, so that taking the"
            " device out never opens the neutral; the pigtail is in the takeoff."
        )
    words += _still_asked(circuit, wrong)
    where = _TIE_LAW if circuit.handle_tie in wrong else _NEUTRAL_LAW
    remedy = " ".join([*words, _OFF])
    if verdict == "fail":
        return facts.finding(name, "fail", figures, facts.law(where), remedy, remedies)
    if "unknown" in (*answers, circuit.hots_on_two_legs, circuit.new_on_hot):
        return facts.finding(name, "unknown", figures, facts.law(where), remedy, remedies)
    return facts.finding(name, "pass", figures, facts.law(_TIE_LAW), _OFF)


def _still_asked(circuit: Circuit, said: tuple[str, ...]) -> list[str]:
    """What to look at for each fact that nobody knows and that was not spoken of yet."""
    asked = (
        (_LOOK_TIE, circuit.handle_tie, said),
        (_LOOK_WHITES, circuit.neutral_pigtailed, said),
        (_MEASURE, circuit.hots_on_two_legs, ()),
        (_WHICH_HOT, circuit.new_on_hot, ()),
    )
    return [words for words, known, told in asked if known == "unknown" and known not in told]


def _joined_neutrals(facts: Facts) -> tuple[Remedy, ...]:
    """Time to free the whites at each source, unless the terminals there are remade anyway."""
    counts = {count.box_id: count for count in facts.takeoff.boxes}
    verdicts = [judge(facts, box, counts[box.id]).verdict for box in facts.sources]
    return tuple(each for verdict in verdicts if verdict != "fail" for each in REMAKE)


def _split_device(facts: Facts, box: Box) -> Finding:
    """A receptacle with its tab broken off and no switched half has two circuits on it."""
    name, tie, law = (MULTIWIRE, box.id), facts.survey.circuit.handle_tie, facts.law(_YOKE_LAW)
    if box.contents.half_switched == "unknown":
        figures = "the tab of the receptacle is broken off: a switched half, or two circuits"
        remedy = "Count the hots on it, and see which half dies with a switch or a breaker."
        return facts.finding(name, "unknown", figures, law, remedy)
    figures = f"two circuits on one receptacle; handle tie: {tie}"
    if tie == "yes":
        return facts.finding(name, "pass", figures, law, _BOTH)
    remedy = f"Tie the two breaker handles. {_BOTH}"
    return facts.finding(name, "fail" if tie == "no" else "unknown", figures, law, remedy, _TIE)


@rule(WHITE)
def white_as_hot(facts: Facts) -> Iterator[Finding]:
    """Note each switch loop: its white is a hot wire and has to be marked as one."""
    for box in facts.sources:
        if device_traits(box.device).is_switch and box.contents.neutral_bundle == "no":
            figures = "a switch loop: the white in this box is a hot wire"
            yield facts.finding((WHITE, box.id), "note", figures, facts.law(_WHITE_LAW), _REMARK)
    for run in facts.survey.runs:
        if _is_new_loop(facts, run):
            figures = f"{run.cable} from a light to a switch: its white is a hot wire"
            remedy = (
                f"Use the white for the supply to the switch, not for the return. {_REMARK} The"
                " switch box gets no neutral this way; three-wire cable brings one."
            )
            subject = (WHITE, f"run {run.id}")
            yield facts.finding(subject, "note", figures, facts.law(_WHITE_LAW), remedy)


def _is_new_loop(facts: Facts, run: Run) -> bool:
    to_switch = device_traits(facts.boxes[run.to_box].device).is_switch
    two_wire = cable_kinds()[run.cable].insulated_count < _THREE
    return facts.boxes[run.from_box].device == "luminaire" and to_switch and two_wire
