"""How much of a fire-rated wall its boxes take up."""

from __future__ import annotations

from fractions import Fraction

from estimator.measures import AREA_IN2, to_decimal
from estimator.rules.box_place_rules import box_width_in
from estimator.rules.facts import Facts
from estimator.rules.records import Verdict
from estimator.survey.place import Wall
from estimator.takeoff.amounts import trim

_PLACES = 2


def boxes_in_rated(facts: Facts, wall: Wall) -> tuple[str, Verdict]:
    """The boxes of a rated wall against the most that one and all of them may take, in words.

    Counted are those that stand in it and those that this job adds. A wall larger than the
    surface that the sum holds for may have more of them, spread out: nobody can say from here.
    """
    areas_in2 = _areas_in2(facts, wall)
    if not areas_in2:
        return "", "note"
    each, together = facts.building("rated-box"), facts.building("rated-boxes")
    within = facts.building("rated-boxes-within")
    largest_in2, sum_in2 = max(areas_in2), sum(areas_in2, Fraction(0))
    words = (
        f"; largest box {_show(largest_in2)} in2, at most {each.value} in2; boxes together "
        f"{_show(sum_in2)} in2, at most {together.value} in2 in any {within.value} {within.unit}"
    )
    too_many = sum_in2 > together.value
    if largest_in2 > each.value or (too_many and _is_small(wall, within.value)):
        return words, "fail"
    return words, "unknown" if too_many else "note"


def _areas_in2(facts: Facts, wall: Wall) -> list[Fraction]:
    height_in = facts.electrical("box-height").value
    return [
        box_width_in(facts, box) * height_in
        for box in facts.survey.boxes
        if box.wall == wall.id and box.mount == "wall" and (box.existing or box.id in facts.boxes)
    ]


def _is_small(wall: Wall, within_ft2: Fraction) -> bool:
    """True for a wall no larger than the surface that the sum holds for."""
    if wall.height_in is None:
        return False
    return wall.length_in * wall.height_in <= within_ft2 * AREA_IN2["ft2"]


def _show(area_in2: Fraction) -> str:
    return str(trim(to_decimal(area_in2, _PLACES)))
