"""What a receptacle itself must be: tamper-resistant, weather-resistant; and a replaced one."""

from __future__ import annotations

from collections.abc import Iterator

from estimator.rules.facts import Facts
from estimator.rules.gfci_rules import gets_ground_fault
from estimator.rules.place_facts import (
    UNKNOWN,
    moisture,
    new_receptacles,
    place_words,
    weather_asked,
)
from estimator.rules.protection import arc_fault_listed, ground_fault_need
from estimator.rules.records import Finding, Remedy, RemedyChange
from estimator.rules.registry import rule
from estimator.survey.electrical import Box
from estimator.tables.place import device_traits, receptacle_for

TAMPER = "tamper-resistant"
WEATHER = "weather-resistant"
REPLACED = "replaced-receptacle"
_WEATHERS = ("dry", "damp", "wet")
_COVERS = {
    "damp": "a weather-resistant receptacle and a cover that is tight when closed",
    "wet": "a weather-resistant receptacle and an extra-duty cover that is tight with a plug in",
}


@rule(TAMPER)
def tamper_resistant(facts: Facts) -> Iterator[Finding]:
    """New receptacles of a dwelling have shutters; a few places are free."""
    for box in new_receptacles(facts):
        free, height = _free_of_shutters(facts, box), facts.electrical("tamper-height")
        subject, cite = (TAMPER, box.id), facts.cite(height)
        if free:
            yield facts.finding(subject, "pass", f"not asked for: {free}", cite)
        else:
            figures = f"asked for up to {facts.units.say_unit(height.value)} above the floor"
            remedy = "Buy the tamper-resistant kind (marked TR)."
            yield facts.finding(subject, "note", figures, cite, remedy)


def _free_of_shutters(facts: Facts, box: Box) -> str:
    """Why a receptacle needs no shutters; empty where it needs them."""
    height, rating = facts.electrical("tamper-height"), facts.electrical("tamper-rating")
    if box.height_in is not None and box.height_in > height.value:
        limit = facts.units.say_unit(height.value)
        return f"{facts.units.say_unit(box.height_in)} above the floor, over {limit}"
    if box.device_rating_a is not None and box.device_rating_a > rating.value:
        return f"rated {box.device_rating_a} A, over {rating.value} A"
    if box.spot.behind_appliance == "yes":
        return "in the space of one appliance that is not easily moved"
    return ""


@rule(WEATHER)
def weather_resistant(facts: Facts) -> Iterator[Finding]:
    """Receptacles in damp and wet places, and their covers."""
    for box in new_receptacles(facts):
        made_for, asked = device_traits(box.device).weather, weather_asked(facts, box)
        if moisture(facts, box) == UNKNOWN and made_for != "wet":
            yield _not_said(facts, box, asked)
        elif asked != "dry":
            yield _judge(facts, box, asked)
        elif box.spot.moisture == "dry":
            subject, law = (WEATHER, box.id), facts.law("406.9", "seen")
            yield facts.finding(subject, "pass", "a dry place", law)


def _not_said(facts: Facts, box: Box, asked: str) -> Finding:
    """Nobody said how wet it is: outdoors is taken as wet, elsewhere it is asked."""
    if asked != "dry":
        return _judge(facts, box, asked)
    figures = f"{place_words(facts, box)}: nobody has said whether it is damp or wet"
    remedy = f"Say so (moisture = ...). A damp place asks for {_COVERS['damp']}."
    return facts.finding(
        (WEATHER, box.id), "unknown", figures, facts.law("406.9(A), (B)", "seen"), remedy
    )


def _judge(facts: Facts, box: Box, asked: str) -> Finding:
    subject, made_for = (WEATHER, box.id), device_traits(box.device).weather
    law = facts.law("406.9(A)" if asked == "damp" else "406.9(B)", "seen")
    figures = f"{place_words(facts, box)}: a {asked} place, the device is for {made_for} places"
    if _WEATHERS.index(made_for) >= _WEATHERS.index(asked):
        return facts.finding(subject, "pass", figures, law)
    remedy = f"Fit {_COVERS[asked]}."
    return facts.finding(subject, "fail", figures, law, remedy, _remedies(facts, box, asked))


def _remedies(facts: Facts, box: Box, asked: str) -> tuple[Remedy, ...]:
    device = receptacle_for(asked, gets_ground_fault(facts, box))
    return (RemedyChange("device", box.id, device),)


@rule(REPLACED)
def replaced_receptacle(facts: Facts) -> Iterator[Finding]:
    """A new receptacle in an old box must be what the place asks for today."""
    for box in facts.boxes.values():
        old = box.existing and device_traits(box.device).is_receptacle
        if old and not box.reuse_plate:
            figures = f"its receptacle is replaced, so it must be: {', '.join(_asked(facts, box))}"
            remedy = "Keep the old receptacle, or buy one that is all of this."
            law = facts.law("406.4(D)", "seen")
            yield facts.finding((REPLACED, box.id), "note", figures, law, remedy)


def _asked(facts: Facts, box: Box) -> list[str]:
    said = [_GROUNDING[facts.survey.circuit.grounded]]
    if ground_fault_need(facts, box).needed != "no":
        said.append(f"ground-fault protected ({ground_fault_need(facts, box).words})")
    if arc_fault_listed(facts, box)[0] != "no":
        said.append("arc-fault protected (short wire does not free it)")
    if not _free_of_shutters(facts, box):
        said.append("tamper-resistant")
    if weather_asked(facts, box) != "dry":
        said.append("weather-resistant")
    return said


_GROUNDING = {
    "yes": "of the grounding type",
    "no": (
        "without a ground: of the two-slot type, or a ground-fault one marked "
        '"no equipment ground", or three-slot behind one with both marks, and no ground wire '
        "between them"
    ),
    "unknown": "of the grounding type where there is a ground",
}
