"""How long joint compound takes: drying by the room, setting by the bag."""

from __future__ import annotations

from decimal import Decimal
from functools import cache
from typing import NamedTuple

from estimator.tables.facts import NotOnFile, rows

ORDINARY, UNKNOWN = "ordinary", "unknown"


class Drying(NamedTuple):
    """Hours that one coat dries in a room: the least seen, what to plan with, the most seen."""

    least_h: Decimal
    plan_h: Decimal
    most_h: Decimal
    confidence: str


class Setting(NamedTuple):
    """Minutes in which compound from a bag is hard enough for the next coat."""

    least_min: int
    most_min: int
    confidence: str


@cache
def drying(condition: str) -> Drying:
    """How long a coat dries; a condition that is unknown is taken as ordinary.

    Raises:
        NotOnFile: no such condition.
    """
    wanted = ORDINARY if condition == UNKNOWN else condition
    for row in rows("drying_times"):
        if row["condition"] == wanted:
            least, plan, most = (Decimal(row[end]) for end in ("least_h", "plan_h", "most_h"))
            return Drying(least, plan, most, row["confidence"])
    raise NotOnFile("drying_times", condition, tuple(r["condition"] for r in rows("drying_times")))


@cache
def setting(bag_min: int) -> Setting:
    """How long compound sets, by the minutes on its bag.

    Raises:
        NotOnFile: no such bag.
    """
    for row in rows("setting_times"):
        if int(row["bag_min"]) == bag_min:
            return Setting(int(row["least_min"]), int(row["most_min"]), row["confidence"])
    bags = tuple(row["bag_min"] for row in rows("setting_times"))
    raise NotOnFile("setting_times", str(bag_min), bags)


def in_room_h(wait_h: Decimal, condition: str) -> Decimal:
    """A wait of the plan of visits, which is for an ordinary room, in the room at hand.

    >>> in_room_h(Decimal(24), "cool or damp")
    Decimal('72')
    """
    return wait_h * drying(condition).plan_h / drying(ORDINARY).plan_h


@cache
def set_waits_count(compound: str, scope: str, visit: int) -> int:
    """How often on a visit compound has to set before the next coat; 0 where it is not on file."""
    for row in rows("visits"):
        if (row["compound"], row["scope"], row["number"]) == (compound, scope, str(visit)):
            return int(row["set_waits_count"])
    return 0
