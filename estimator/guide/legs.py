"""Legs of a run as they are typed where no wall is drawn: down or up, along, and back."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Any

from estimator.guide.defaults import length_in, system_of, value_of
from estimator.guide.questions import UNKNOWN, Answers
from estimator.units import write_length

# A cable that goes up passes both members of the top plate in one hole.
TOP_PLATES = 2
Leg = dict[str, Any]


def legs_of(known: Answers) -> list[Leg]:
    """The legs as far as the answers tell them; the one along the wall stands alone at first."""
    apart = known.get("distance")
    if apart is None:
        return []
    level = _level_in(known)
    start, end = length_in("source_height", known), length_in("new_height", known)
    along = _along(apart, known)
    if level is None or start is None or end is None:
        return [along]
    legs = [_upright(start, level, known), along, _upright(level, end, known)]
    return [leg for leg in legs if leg is not None]


def _level_in(known: Answers) -> Fraction | None:
    """How high the level part of the run lies; below the floor it is negative."""
    way = known["way"]
    if way in ("wall", "through"):
        return length_in("source_height", known)
    key = {"trim": "run_height", "attic": "level_height"}.get(way, "below_floor")
    level = length_in(key, known)
    return -level if level is not None and key == "below_floor" else level


def _along(apart: str, known: Answers) -> Leg:
    leg: Leg = {"go": "along", "length": apart}
    studs = known.get("studs")
    if studs is not None:
        leg["studs"] = studs if studs == UNKNOWN else int(studs)
    if known["way"] in ("attic", "basement", "crawlspace"):
        leg["method"] = "exposed"
    return leg


def _upright(from_in: Fraction, to_in: Fraction, known: Answers) -> Leg | None:
    if from_in == to_in:
        return None
    go = "up" if to_in > from_in else "down"
    leg: Leg = {"go": go, "length": write_length(abs(to_in - from_in), system_of(known))}
    return leg | dict(_holes(value_of("way", known)))


def _holes(way: str) -> Iterator[tuple[str, int]]:
    if way == "attic":
        yield "plates", TOP_PLATES
    elif way in ("basement", "crawlspace"):
        yield "floor_holes", 1
