"""Ground-fault protection by place."""

from __future__ import annotations

from collections.abc import Iterator

from estimator.rules.facts import Facts
from estimator.rules.place_facts import (
    is_decided,
    outlets,
    place_words,
    protective_device,
    upstream,
    weather_asked,
)
from estimator.rules.protection import (
    GFCI,
    Need,
    ground_fault_need,
    ground_fault_upstream,
    protecting_box,
)
from estimator.rules.records import Finding, Remedy, RemedyChange
from estimator.rules.registry import rule
from estimator.survey.electrical import Box
from estimator.tables.place import device_traits, receptacle_for

_DEVICE = "gfci receptacle"


@rule(GFCI)
def gfci_place(facts: Facts) -> Iterator[Finding]:
    """Hold each new outlet against the places that need ground-fault protection."""
    for box, _ in outlets(facts):
        need = ground_fault_need(facts, box)
        if device_traits(box.device).is_receptacle or need.needed != "no":
            yield _judge(facts, box, need)


def _judge(facts: Facts, box: Box, need: Need) -> Finding:
    name, where = (GFCI, box.id), place_words(facts, box)
    if need.needed == "no":
        return facts.finding(name, "pass", f"{where}: {need.words}", need.cite)
    there, words = ground_fault_upstream(facts, box)
    figures = f"{where}: {need.words}; {words}"
    if there == "yes":
        return _protected(facts, box, figures, need)
    if need.needed == "unknown":
        if not need.likely:
            return facts.finding(name, "unknown", figures, need.cite, need.look)
        remedy = f"{need.look} Where the place asks for it: {_fit(facts)}"
        return facts.finding(name, "unknown", figures, need.cite, remedy, _remedies(facts, box))
    remedies = _remedies(facts, box)
    if there == "unknown":
        remedy = f"Look for a test button on the breaker and upstream. If none: {_fit(facts)}"
        return facts.finding(name, "unknown", figures, need.cite, remedy, remedies)
    return facts.finding(name, "fail", figures, need.cite, _sentence(_fit(facts)), remedies)


def _protected(facts: Facts, box: Box, figures: str, need: Need) -> Finding:
    """A device in the way protects it, if its buttons can be reached."""
    name, holder = (GFCI, box.id), protecting_box(facts, box)
    reach = "yes" if holder is None else holder.spot.readily_accessible
    if reach == "yes":
        return facts.finding(name, "pass", figures, need.cite)
    law = facts.law("210.8", "seen")
    if reach == "no":
        remedy = "Put the ground-fault device where its buttons are easy to reach."
        figures = f"{figures}, which is not easy to reach"
        return facts.finding(name, "fail", figures, law, remedy, _at_the_source(facts))
    remedy = "Say whether the ground-fault device is easy to reach (readily_accessible = ...)."
    return facts.finding(name, "unknown", f"{figures}; can it be reached?", law, remedy)


def _fit(facts: Facts) -> str:
    least, most = facts.electrical("gfci-trip-least"), facts.electrical("gfci-trip-most")
    trips = f"Class A, trips at {least.value} to {most.value} {most.unit}"
    return (
        f"fit a ground-fault receptacle ({trips}) where it is easy to reach; what it feeds "
        "hangs on its LOAD side."
    )


def _sentence(words: str) -> str:
    return words[0].upper() + words[1:]


def _remedies(facts: Facts, box: Box) -> tuple[Remedy, ...]:
    """A ground-fault receptacle at the first new receptacle of the way that needs one."""
    first = _first_to_change(facts, box)
    if first is None:
        return _at_the_source(facts)
    return (RemedyChange("device", first.id, receptacle_for(weather_asked(facts, first), True)),)


def _at_the_source(facts: Facts) -> tuple[Remedy, ...]:
    return protective_device(facts, _DEVICE)


def _first_to_change(facts: Facts, box: Box) -> Box | None:
    """The new receptacle nearest the source that asks for it too; None: no receptacle will do."""
    on_the_way = (*reversed(upstream(facts, box)), box)
    for each in on_the_way:
        fits = not each.existing and device_traits(each.device).is_receptacle
        if fits and each.spot.readily_accessible == "yes" and _asks(facts, each, box):
            return each
    return None


def _asks(facts: Facts, each: Box, box: Box) -> bool:
    return each.id == box.id or ground_fault_need(facts, each).needed == "yes"


def gets_ground_fault(facts: Facts, box: Box) -> bool:
    """True where a box will hold a ground-fault receptacle: planned, or by a taken remedy."""
    if device_traits(box.device).ground_fault:
        return True
    if is_decided(facts, f"{GFCI}:{box.id}") or ground_fault_need(facts, box).needed != "yes":
        return False
    first = _first_to_change(facts, box)
    unprotected = ground_fault_upstream(facts, box)[0] == "no"
    return unprotected and first is not None and first.id == box.id
