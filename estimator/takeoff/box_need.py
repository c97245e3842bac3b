"""Room that one box asks for, each side of a barrier alone.

A fact nobody knows that could only lower the count is counted both ways: `Side.least` is the
room taken if every such fact turns out well, `Side.most` if badly. A fact without which there
is no figure is named in `Need.missing`.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import lru_cache
from typing import Any, NamedTuple

from estimator.saying import listed
from estimator.survey.electrical import Box, Contents, Device
from estimator.survey.fields import YesNo
from estimator.tables.box_fill import FillRules
from estimator.takeoff.box_inside import (
    Space,
    inside_of,
    missing_facts,
    open_facts,
)
from estimator.takeoff.fill import Fill, Inside, Wires, fill_of, wires_of

_NEEDS_KEPT = 4096


@dataclass(frozen=True, slots=True)
class Holding:
    """Cables that end in a box, old and new, and what else the plan knows of it.

    Attributes:
        connectors: wire connectors there; None where nobody has counted them.
        device_in: how far a device to be bought reaches back, unless the survey says.
    """

    old: tuple[str, ...]
    new: tuple[str, ...] = ()
    connectors: int | None = None
    device_in: Fraction | None = None


@dataclass(frozen=True, slots=True)
class Side:
    """One side of a barrier, or the whole box: its share of the room, and what it takes."""

    share: Fraction
    least: Fill
    most: Fill
    open: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Need:
    """What one box asks for, in the unit of the code that counted it.

    Attributes:
        most: the smallest box that holds it whatever the open facts are: on every side its
            share of the room, with the barrier off, is enough.
        least: the same if every open fact turns out well.
        taken: room taken in all, each side with its own; None where there is no figure.
        missing: facts without which there is no figure. open: facts that could lower it.
        said: the sums in words, side by side.
    """

    most: Fraction = Fraction(0)
    least: Fraction = Fraction(0)
    taken: Fraction | None = None
    missing: tuple[str, ...] = ()
    open: tuple[str, ...] = ()
    said: str = ""

    def fits(self, room: Fraction) -> bool:
        """True where it fits whatever the open facts are; equality fits."""
        return self.most <= room

    def is_over(self, room: Fraction) -> bool:
        """True where it does not fit whatever the open facts are."""
        return self.least > room


def need_of(box: Box, holding: Holding, clamps: YesNo, rules: FillRules) -> Need:
    """Count one box.

    Args:
        box: its contents, device and gangs as surveyed.
        holding: what ends in it; unbroken wires stand in its contents.
        clamps: inner clamps that count; unknown where nobody has looked.
        rules: of the code in force.
    """
    return _need_of(_Kind(box.contents, box.device, box.gangs_count), holding, clamps, rules)


class _Kind(NamedTuple):
    """What of a box is counted; boxes alike are counted once."""

    contents: Contents
    device: Device
    gangs_count: int


@lru_cache(maxsize=_NEEDS_KEPT)
def _need_of(kind: _Kind, holding: Holding, clamps: YesNo, rules: FillRules) -> Need:
    inside = kind.contents
    if inside.barrier == "none":
        space = Space(
            inside,
            kind.device,
            kind.gangs_count,
            _wires(inside, holding.old, holding.new),
            clamps,
            holding.connectors,
            holding.device_in,
            inside.yokes_count,
        )
        return _counted((space,), Fraction(0), rules)
    missing = _barrier_missing(inside, holding, rules)
    if missing:
        return Need(missing=(missing,))
    barrier = Fraction(rules.barrier[inside.barrier])
    return _counted(tuple(_sides(inside, holding, clamps)), barrier, rules)


def _wires(inside: Contents, old: tuple[str, ...], new: tuple[str, ...]) -> Wires:
    """Wires of the cables; old ones bring no ground where there is none in the box."""
    wires = wires_of(old + new)
    if inside.ground_present != "no":
        return wires
    added = wires_of(new)
    return replace(wires, grounds=added.grounds, ground_wire=added.ground_wire)


def _barrier_missing(inside: Contents, holding: Holding, rules: FillRules) -> str:
    if inside.barrier not in rules.barrier:
        return "how much room the barrier takes"
    if not inside.sides:
        return "what is on each side of the barrier"
    if holding.new and sum(side.takes_new for side in inside.sides) != 1:
        return "which side of the barrier the new cable enters"
    return ""


def _sides(inside: Contents, holding: Holding, clamps: YesNo) -> Iterator[Space]:
    """Each side of the barrier, the new cables on the side that they enter.

    Codes that ask for wire connectors or for the depth of a device have no barrier on file.
    """
    for side in inside.sides:
        yield Space(
            inside,
            side.device,
            side.gangs_count,
            _wires(inside, side.cables, holding.new if side.takes_new else ()),
            clamps,
            None,
            alone=False,
        )


def _counted(spaces: tuple[Space, ...], barrier: Fraction, rules: FillRules) -> Need:
    insides = [(space, inside_of(space)) for space in spaces]
    missing = [fact for space, inside in insides for fact in missing_facts(space, inside, rules)]
    if missing:
        return Need(missing=tuple(dict.fromkeys(missing)))
    gangs = sum(space.gangs_count for space in spaces)
    sides = [_side(space, inside, gangs, rules) for space, inside in insides]
    return Need(
        most=barrier + max(side.most.total / side.share for side in sides),
        least=barrier + max(side.least.total / side.share for side in sides),
        taken=sum((side.most.total for side in sides), Fraction(0)),
        open=tuple(dict.fromkeys(fact for side in sides for fact in side.open)),
        said=listed((side.most.said for side in sides), "; "),
    )


def _side(space: Space, inside: Inside, gangs: int, rules: FillRules) -> Side:
    """One space counted both ways, with its share of the room by gangs."""
    share, most = Fraction(space.gangs_count, gangs), fill_of(space.wires, inside, rules)
    found = list(open_facts(space, inside, rules))
    changes: dict[str, Any] = {}
    for _, change in found:
        changes |= change
    least = fill_of(space.wires, replace(inside, **changes), rules) if changes else most
    return Side(share, least, most, tuple(fact for fact, _ in found))
