"""The conditions under which the matrix of circuits and places allows an outlet."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from decimal import Decimal

from estimator.rules.facts import Facts
from estimator.rules.place_facts import UNKNOWN, OutletKind, use_of_box
from estimator.survey.electrical import Box, Circuit, CircuitKind
from estimator.survey.fields import YesNo
from estimator.tables.circuit import ground_end

KITCHEN = "kitchen"
BATHROOM = "bathroom"


@dataclass(frozen=True, slots=True)
class SeenCircuit:
    """What is known of the circuit that a box hangs on; the survey tells much of one alone."""

    kind: CircuitKind
    breaker_a: int | None = None
    serves: tuple[str, ...] = ()
    fixed_a: Decimal | None = None


@dataclass(frozen=True, slots=True)
class Asked:
    """One question: may this outlet hang on the circuit of this source."""

    facts: Facts
    outlet: Box
    kind: OutletKind
    source: Box | None
    circuit: SeenCircuit


def _one_kitchen(asked: Asked) -> YesNo:
    """A kitchen must be the circuit's own; no second kitchen hangs on it."""
    if use_of_box(asked.facts, asked.outlet) != KITCHEN:
        return "yes"
    kitchens = [room for room in asked.facts.survey.rooms if room.use == KITCHEN]
    return _its_own(asked, KITCHEN, if_none=UNKNOWN if len(kitchens) > 1 else "yes")


def _same_bath(asked: Asked) -> YesNo:
    """The outlet's bathroom is the one that the circuit is for."""
    return _its_own(asked, BATHROOM, if_none=UNKNOWN)


def _its_own(asked: Asked, use: str, if_none: YesNo) -> YesNo:
    """Whether the outlet's room is among those of one use that hang on the circuit."""
    facts, source = asked.facts, asked.source
    served = asked.circuit.serves
    if source is not None:
        served = (*served, facts.room_of(source))
    known = [room for room in served if facts.use_of(room) == use]
    if not known:
        return if_none
    return "yes" if facts.room_of(asked.outlet) in known else "no"


def _fixed_share(asked: Asked) -> YesNo:
    """Equipment fastened in place takes no more than half of the circuit."""
    if asked.circuit.fixed_a is None:
        return UNKNOWN
    return "yes" if asked.circuit.fixed_a <= asked.facts.electrical("bath-fixed").value else "no"


def _one_bay(asked: Asked) -> YesNo:
    """The garage is built for one vehicle."""
    room = asked.facts.room(asked.facts.room_of(asked.outlet))
    if room is None or room.vehicle_bays_count is None:
        return UNKNOWN
    return "yes" if room.vehicle_bays_count == 1 else "no"


def _reachable(asked: Asked) -> YesNo:
    return asked.outlet.spot.readily_accessible


def _in_place_of_light(asked: Asked) -> YesNo:
    return "yes" if asked.outlet.spot.in_place_of_light == "yes" else "no"


def _extra(asked: Asked) -> YesNo:
    """Nothing asks for this one; a survey that does not say so gets no relief."""
    return "yes" if asked.outlet.spot.required == "no" else "no"


def _extra_off_counter(asked: Asked) -> YesNo:
    """Nothing asks for this one, and it does not serve a counter."""
    return "no" if asked.outlet.spot.countertop == "yes" else _extra(asked)


CONDITIONS: Mapping[str, Callable[[Asked], YesNo]] = {
    "one-kitchen": _one_kitchen,
    "same-bath": _same_bath,
    "fixed-share": _fixed_share,
    "one-bay": _one_bay,
    "reachable": _reachable,
    "in-place-of-light": _in_place_of_light,
    "extra": _extra,
    "extra-and-off-counter": _extra_off_counter,
}


def tie_and_pigtail(circuit: Circuit) -> YesNo:
    """Both hots trip together, the shared neutral runs through no device, the leg is known."""
    leg: YesNo = UNKNOWN if circuit.new_on_hot == UNKNOWN else "yes"
    known = (circuit.handle_tie, circuit.neutral_pigtailed, leg)
    if "no" in known:
        return "no"
    return UNKNOWN if UNKNOWN in known else "yes"


def separate_ground(circuit: Circuit) -> YesNo:
    """A ground of its own is planned for a circuit without one, to a place the code names."""
    if circuit.new_ground_to == "none":
        return "no"
    return "yes" if ground_end(circuit.new_ground_to).allowed else "no"
