"""Does the box carry its luminaire or paddle fan."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from estimator.rules.facts import Facts
from estimator.rules.records import Finding, Remedy, RemedyChange
from estimator.rules.registry import rule
from estimator.survey.electrical import Box
from estimator.tables.box_places import fan_is_likely
from estimator.tables.limits import Limit
from estimator.takeoff.amounts import exact
from estimator.takeoff.box_choice import FAN_BOX

RULE = "luminaire-box"
_FAN = "314.27(C)"
_WEIGH = "Look up or weigh what will hang on the box."
_READ = "Read the weight marked in the box, or plan one that is marked."
_HANG = "Hang it on the framing, apart from the box, or use a box marked for its weight."
_FAN_BOX = "Use a box made and marked for paddle fans, fastened to the framing."


@rule(RULE)
def luminaire_box(facts: Facts) -> Iterator[Finding]:
    """Hold the weight on each box for a luminaire or fan against what the box may carry."""
    for box in facts.boxes.values():
        if box.device != "luminaire":
            continue
        if box.spot.fan == "yes":
            yield _fan(facts, box)
        elif box.spot.fan == "unknown" and box.contents.fan_rated != "yes":
            figures = "nobody has said whether a fan will hang there"
            remedy = "Ask; a fan needs a box made for it."
            yield facts.finding((RULE, box.id), "unknown", figures, _fan_cite(facts), remedy)
        else:
            yield _with_fan_note(facts, box, _luminaire(facts, box))


def _fan_cite(facts: Facts) -> str:
    return facts.cite(facts.electrical("fan-weight"))


def _fan(facts: Facts, box: Box) -> Finding:
    most, unmarked = facts.electrical("fan-weight"), facts.electrical("fan-weight-unmarked")
    weight_lb, cite, name = _weight_lb(box), facts.cite(most), (RULE, box.id)
    figures = f"fan of {_pounds(weight_lb)}, a fan box holds at most {_pounds(most.value)}"
    if weight_lb is not None and weight_lb > most.value:
        return facts.finding(name, "fail", figures, cite, "Hang it on the framing, not the box.")
    rated = box.contents.fan_rated
    if rated == "unknown" and box.existing:
        figures = f"{figures}; nobody has read whether the box is made for fans"
        remedy = "Read the marks inside the box. A box made for fans says so."
        return facts.finding(name, "unknown", figures, cite, remedy, _fan_box(box))
    if rated != "yes":
        figures = f"{figures}; the box is not made for fans"
        return facts.finding(name, "fail", figures, cite, _FAN_BOX, _fan_box(box))
    if weight_lb is None:
        return facts.finding(name, "unknown", figures, cite, _WEIGH)
    if weight_lb <= unmarked.value:
        return facts.finding(name, "pass", figures, cite)
    return _against_mark(facts, box, weight_lb, unmarked)


def _fan_box(box: Box) -> tuple[Remedy, ...]:
    """A box made for fans in the place of the one planned or found; none goes into a wall."""
    return (RemedyChange("box", box.id, FAN_BOX),) if box.mount == "ceiling" else ()


def _luminaire(facts: Facts, box: Box) -> Finding:
    figure = "luminaire-ceiling-weight" if box.mount == "ceiling" else "luminaire-device-box-weight"
    limit, weight_lb = facts.electrical(figure), _weight_lb(box)
    name, cite = (RULE, box.id), facts.cite(limit)
    figures = f"luminaire of {_pounds(weight_lb)}, unmarked at most {_pounds(limit.value)}"
    if weight_lb is None:
        return facts.finding(name, "unknown", figures, cite, _WEIGH)
    if weight_lb <= limit.value:
        return facts.finding(name, "pass", figures, cite)
    return _against_mark(facts, box, weight_lb, limit)


def _against_mark(facts: Facts, box: Box, weight_lb: Fraction, limit: Limit) -> Finding:
    """Judge a weight that only a marked box may carry."""
    name, cite, marked = (RULE, box.id), facts.cite(limit), box.contents.marked_weight_lb
    figures = f"{_pounds(weight_lb)} on the box, unmarked at most {_pounds(limit.value)}"
    if marked is None and box.existing:
        return facts.finding(name, "unknown", figures, cite, _READ)
    if marked is None:
        return facts.finding(name, "fail", figures, cite, _HANG)
    figures = f"{_pounds(weight_lb)} on a box marked for {_pounds(Fraction(marked))}"
    if weight_lb > Fraction(marked):
        return facts.finding(name, "fail", figures, cite, _HANG)
    return facts.finding(name, "pass", figures, cite)


def _with_fan_note(facts: Facts, box: Box, found: Finding) -> Finding:
    """A pass for a new ceiling box in a room where a fan is likely becomes a note."""
    use = facts.use_of(facts.room_of(box))
    confidence = fan_is_likely(use, facts.edition or "")
    plain = found.verdict != "pass" or box.existing or box.mount != "ceiling"
    if plain or confidence is None or box.contents.fan_rated == "yes":
        return found
    figures = f"{found.figures}; a fan is likely in a {use}"
    cite = facts.law(_FAN, confidence)
    return replace(found, verdict="note", figures=figures, cite=cite, remedy=_FAN_BOX)


def _weight_lb(box: Box) -> Fraction | None:
    weight = box.spot.luminaire_weight_lb
    return None if weight is None else Fraction(weight)


def _pounds(weight_lb: Fraction | None) -> str:
    return "unknown weight" if weight_lb is None else f"{exact(weight_lb)} lb"
