"""Every existing box of the survey as a source for each new outlet, the best first."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from estimator.rules.facts import Facts
from estimator.rules.place_facts import UNKNOWN, OutletKind, outlets, place_words, source_of
from estimator.rules.protection import (
    arc_fault_listed,
    ground_fault_need,
    ground_fault_upstream,
    upstream_protection,
)
from estimator.rules.source_class import Standing, is_surveyed, judge
from estimator.rules.source_conditions import separate_ground, tie_and_pigtail
from estimator.survey.electrical import Box
from estimator.survey.fields import YesNo
from estimator.tables.place import device_traits
from estimator.tables.source_class import ANY, source_row

GROUND_FAULT = "ground-fault"
ARC_FAULT = "arc-fault"
_HOLDS: dict[YesNo, str] = {
    "yes": "so it is here",
    "no": "so it is not here",
    "unknown": "nobody has looked here",
}
_ORDER: tuple[Standing, ...] = ("allowed", "unknown", "refused")


@dataclass(frozen=True, slots=True)
class RankedSource:
    """One existing box as a source for one new outlet.

    Attributes:
        rank: 1 is the best for that outlet; the order of the survey breaks a tie.
        chosen: the survey plans to feed the outlet from it.
        missing: protections that the place may ask for and that are not known to be there.
        reasons: why it stands where it stands, in words: circuit, room, protection.
    """

    outlet_id: str
    source_id: str
    rank: int
    standing: Standing
    chosen: bool
    same_room: bool
    missing: tuple[str, ...]
    reasons: tuple[str, ...]


def ranked_sources(facts: Facts) -> tuple[RankedSource, ...]:
    """Rank all existing boxes for each new outlet, those that no run uses too.

    First comes what the matrix says of the circuit, then a box in the same room, then the
    fewest protections to add, then the order of the survey.
    """
    return tuple(each for box, kind in outlets(facts) for each in ranked_for(facts, box, kind))


def ranked_for(facts: Facts, outlet: Box, kind: OutletKind) -> tuple[RankedSource, ...]:
    """Rank all existing boxes for one new outlet."""
    existing = (box for box in facts.survey.boxes if box.existing)
    found = sorted((_as_source(facts, outlet, kind, box) for box in existing), key=_key)
    return tuple(replace(each, rank=rank) for rank, each in enumerate(found, start=1))


def _key(found: RankedSource) -> tuple[int, bool, int]:
    return _ORDER.index(found.standing), not found.same_room, len(found.missing)


def _as_source(facts: Facts, outlet: Box, kind: OutletKind, box: Box) -> RankedSource:
    answer, planned = judge(facts, outlet, kind, box), source_of(facts, outlet)
    drawbacks = tuple(_drawbacks(facts, kind, box))
    same_room = facts.room_of(box) == facts.room_of(outlet)
    missing = tuple(_missing(facts, outlet, box))
    room = "in the same room" if same_room else f"in another room: {place_words(facts, box)}"
    to_add = [f"{each} protection is not known to be there" for each in missing]
    return RankedSource(
        outlet.id,
        box.id,
        0,
        "refused" if drawbacks else answer.standing,
        planned is not None and planned.id == box.id,
        same_room,
        missing,
        (answer.reason, room, *drawbacks, *_conditions(facts, box), *to_add),
    )


def _drawbacks(facts: Facts, kind: OutletKind, box: Box) -> Iterator[str]:
    """What is known of a box that keeps this outlet from it, whatever its circuit is for."""
    if box.contents.always_live == "no" and kind != "light":
        yield "it dies with a switch"
    is_switch = device_traits(box.device).is_switch
    if is_switch and box.contents.neutral_bundle == "no" and kind != "switch":
        yield "no neutral in it"
    stated, circuit = box.contents.ground_present, facts.survey.circuit
    without = stated == "no" or (stated == UNKNOWN and _on_circuit(facts, box, circuit.grounded))
    if without and separate_ground(circuit) == "no":
        yield source_row("ungrounded", ANY, ANY, facts.edition or "").reason


def _on_circuit(facts: Facts, box: Box, grounded: YesNo) -> bool:
    return grounded == "no" and is_surveyed(facts, box)


def _conditions(facts: Facts, box: Box) -> Iterator[str]:
    """What two hots on one neutral ask before anything is added to them."""
    circuit = facts.survey.circuit
    if circuit.multiwire == "yes" and is_surveyed(facts, box):
        row = source_row("multiwire", ANY, ANY, facts.edition or "")
        yield f"{row.reason} ({_HOLDS[tie_and_pigtail(circuit)]})"


def _missing(facts: Facts, outlet: Box, box: Box) -> list[str]:
    """Protections that the outlet's place may ask for and that the box is not known to bring."""
    asked = []
    if ground_fault_need(facts, outlet).needed != "no":
        asked.append((GROUND_FAULT, ground_fault_upstream(facts, box)[0]))
    if arc_fault_listed(facts, outlet)[0] != "no":
        asked.append((ARC_FAULT, upstream_protection(facts, "afci", ARC_FAULT)[0]))
    surveyed = is_surveyed(facts, box)
    return [name for name, there in asked if there != "yes" or not surveyed]
