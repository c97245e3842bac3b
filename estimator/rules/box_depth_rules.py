"""Is the box deep enough for the device and the wires on it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from estimator.rules.box_place_rules import tape
from estimator.rules.facts import Facts
from estimator.rules.records import Finding
from estimator.rules.registry import rule
from estimator.survey.electrical import Box
from estimator.tables.box_places import NO_DEVICE, DepthRule, depth_rule, usual_device_depth_in
from estimator.takeoff.box_inside import NO_YOKE
from estimator.takeoff.records import BoxCount

RULE = "box-depth"
_WHERE = "314.24"


@rule(RULE)
def box_depth(facts: Facts) -> Iterator[Finding]:
    """Hold the depth of new boxes, and of old ones that were measured, against the least."""
    for count in facts.takeoff.boxes:
        box = facts.boxes[count.box_id]
        if not box.existing or count.replaced or box.depth_in is not None:
            yield _judge(facts, box, count)


@dataclass(frozen=True, slots=True)
class _Asked:
    """Least depths by the wires that may be on the device, with the device's own depth."""

    rules: tuple[DepthRule, ...]
    device_in: Fraction | None
    device: str

    @property
    def most_in(self) -> Fraction | None:
        """The depth that is enough for every wire; None while the device's depth is unknown."""
        if self.device_in is None:
            return None
        return max(each.asked_in(self.device_in) for each in self.rules)

    @property
    def least_in(self) -> Fraction:
        """The depth below which no wire and no device fits."""
        return min(each.asked_in(self.device_in or Fraction(0)) for each in self.rules)


def _judge(facts: Facts, box: Box, count: BoxCount) -> Finding:
    name, depth_in = (RULE, box.id), count.depth_in
    asked = _asked(facts, box, count)
    if asked is None:
        figures = "no least depth on file for the wires in it"
        remedy = "Ask a licensed electrician."
        return facts.finding(name, "unknown", figures, facts.law(_WHERE), remedy)
    cite = facts.cite(max(asked.rules, key=lambda each: each.least.value).least)
    if depth_in is None:
        figures = f"depth unknown, least {tape(facts, asked.most_in or asked.least_in)}"
        remedy = "Measure the box from its front edge to its back, or put it in the book."
        return facts.finding(name, "unknown", figures, cite, remedy)
    held = f"{tape(facts, depth_in)} deep{asked.device}"
    if depth_in < asked.least_in:
        figures = f"{held}, least {tape(facts, asked.least_in)}"
        remedy = "Use a deeper box, or a device that reaches back less far."
        return facts.finding(name, "fail", figures, cite, remedy)
    if asked.most_in is None:
        figures = f"{held}, least {tape(facts, asked.least_in)} and more for a deep device"
        remedy = "Measure how far the device reaches back behind its strap."
        return facts.finding(name, "unknown", figures, cite, remedy)
    if depth_in < asked.most_in:
        low, high = tape(facts, asked.least_in), tape(facts, asked.most_in)
        figures = f"{held}, least {low} to {high} by the wires on the device"
        return facts.finding(name, "unknown", figures, cite, "Look which wires are on it.")
    return facts.finding(name, "pass", f"{held}, least {tape(facts, asked.most_in)}", cite)


def _asked(facts: Facts, box: Box, count: BoxCount) -> _Asked | None:
    """The least depths that hold; None where a wire size has no row."""
    edition = facts.edition or ""
    if box.device in NO_YOKE:
        bare = depth_rule(NO_DEVICE, edition)
        return None if bare is None else _Asked((bare,), Fraction(0), "")
    told = box.contents.device_wire
    sizes = [told] if told is not None else [size for size, _ in count.conductors]
    found = [depth_rule(size, edition) for size in sizes]
    rules = tuple(each for each in found if each is not None)
    if not rules or len(rules) < len(found):
        return None
    device_in, words = _device(box)
    said = "" if device_in is None else f", {words} {tape(facts, device_in)} deep"
    return _Asked(rules, device_in, said)


def _device(box: Box) -> tuple[Fraction | None, str]:
    """How far the device reaches back: as measured; for one to be bought as is usual."""
    if box.contents.device_depth_in is not None:
        return box.contents.device_depth_in, "device"
    kept = box.existing and box.reuse_plate
    return (None if kept else usual_device_depth_in(box.device)), "device taken as"
