"""What takes room in a box, read from the survey: as told, and as it could be at best."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Any

from estimator.survey.electrical import Contents, Device
from estimator.survey.fields import YesNo
from estimator.tables.box_fill import FillRules
from estimator.takeoff.fill import Inside, Wires

NO_YOKE: tuple[Device, ...] = ("luminaire", "none")


@dataclass(frozen=True, slots=True)
class Space:
    """A box, or one side of the barrier in it.

    Attributes:
        clamps: inner clamps that count; unknown where nobody has looked.
        connectors: wire connectors there; None where nobody has counted them.
        device_in: how far a device to be bought reaches back.
        yokes_count: straps; None: one a gang. alone: no barrier parts it from another.
    """

    contents: Contents
    device: Device
    gangs_count: int
    wires: Wires
    clamps: YesNo
    connectors: int | None
    device_in: Fraction | None = None
    yokes_count: int | None = None
    alone: bool = True


def device_gangs(space: Space) -> int:
    """Gangs that devices take: one a strap, and all that a wide device needs."""
    wide = space.contents.wide_gangs_count
    if space.yokes_count is not None:
        return space.yokes_count + max(0, wide - 1)
    if space.device in NO_YOKE:
        return 0
    return max(space.gangs_count, wide)


def inside_of(space: Space) -> Inside:
    """What is there besides the cables; where a fact is unknown, what takes the most room."""
    found = space.contents
    return Inside(
        device_gangs=device_gangs(space),
        device_wire=found.device_wire or space.wires.largest,
        device_depth_in=_first_known(found.device_depth_in, space.device_in),
        clamps=space.clamps != "no",
        stud=found.luminaire_stud,
        hickey=found.hickey,
        loops=found.loops_count,
        passing=found.passing_count,
        through_wire=_through_wire(space),
        fixture_wires=tuple((each.wire, each.count) for each in found.fixture_wires),
        canopy=found.canopy,
        terminal_blocks=found.terminal_blocks,
        isolated_grounds=found.isolated_grounds_count,
        bonding_jumpers=found.bonding_jumpers_count,
        connectors=space.connectors or 0,
    )


def _first_known(told_in: Fraction | None, planned_in: Fraction | None) -> Fraction | None:
    return planned_in if told_in is None else told_in


def _through_wire(space: Space) -> str:
    """Size of the unbroken wires, as told or else of the cables; empty without such wires."""
    found = space.contents
    if not (found.loops_count or found.passing_count):
        return ""
    return found.through_wire or space.wires.largest or "unknown"


def missing_facts(space: Space, inside: Inside, rules: FillRules) -> Iterator[str]:
    """Facts without which the code gives no figure."""
    blocks = inside.terminal_blocks if rules.counts.terminal_block else ()
    named = (
        *(size for size, _ in space.wires.by_size),
        *(size for size, _ in inside.fixture_wires),
        *blocks,
        inside.device_wire,
        inside.through_wire,
    )
    for size in named:
        if size and size not in rules.volume:
            yield f"how much room a wire of size {size} takes"
    if rules.deep_over_cm is not None and inside.device_gangs and inside.device_depth_in is None:
        yield "how far the device reaches behind its strap"
    if rules.counts.connector_pair and space.connectors is None:
        yield "how many wire connectors are in it"


# Of these a survey does not tell the side; without them a side is as empty as it can be.
_EITHER_SIDE = (
    "stud",
    "hickey",
    "loops",
    "passing",
    "through_wire",
    "fixture_wires",
    "terminal_blocks",
    "isolated_grounds",
    "bonding_jumpers",
)
_ON_THE_OTHER_SIDE: dict[str, Any] = {name: getattr(Inside(), name) for name in _EITHER_SIDE}


def open_facts(
    space: Space, inside: Inside, rules: FillRules
) -> Iterator[tuple[str, dict[str, Any]]]:
    """Facts nobody knows that could only lower the count, and what they would change."""
    found, sizes = space.contents, [size for size, _ in space.wires.by_size]
    if space.clamps == "unknown" and rules.counts.clamps:
        yield "whether it has inner clamps", {"clamps": False}
    if len(sizes) > 1:
        thin = min(sizes, key=rules.volume.__getitem__)
        if found.device_wire is None and inside.device_gangs:
            yield "which wires are on the device", {"device_wire": thin}
        if found.through_wire is None and inside.through_wire:
            yield "the size of the wires that pass unbroken", {"through_wire": thin}
    if not space.alone and replace(inside, **_ON_THE_OTHER_SIDE) != inside:
        yield "on which side of the barrier its other wires and fittings are", _ON_THE_OTHER_SIDE
