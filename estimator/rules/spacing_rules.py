"""Receptacles along the walls: how far the farthest point is from one, as advice."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from estimator.rules.facts import Facts
from estimator.rules.place_facts import has_trait, new_receptacles
from estimator.rules.records import Finding
from estimator.rules.registry import rule
from estimator.survey.electrical import Box
from estimator.survey.place import Wall
from estimator.tables.place import device_traits

RULE = "receptacle-spacing"


@dataclass(frozen=True, slots=True)
class Space:
    """Unbroken wall between corners and doors, with the receptacles on it, by x in inches."""

    left_in: Fraction
    right_in: Fraction
    receptacles_in: tuple[Fraction, ...]

    @property
    def width_in(self) -> Fraction:
        """From end to end."""
        return self.right_in - self.left_in

    @property
    def farthest_in(self) -> Fraction | None:
        """The farthest that a point of it is from a receptacle of it; None: it has none."""
        if not self.receptacles_in:
            return None
        at = sorted(self.receptacles_in)
        between = [(right - left) / 2 for left, right in pairwise(at)]
        return max(at[0] - self.left_in, self.right_in - at[-1], *between, Fraction(0))


@rule(RULE)
def receptacle_spacing(facts: Facts) -> Iterator[Finding]:
    """Measure each wall that gets a receptacle, in rooms that have a rule of spacing."""
    walls = dict.fromkeys(box.wall for box in new_receptacles(facts) if _on_its_wall(facts, box))
    for wall_id in walls:
        wall = facts.walls[wall_id or ""]
        if has_trait(facts, facts.use_of(wall.room), "wall spacing"):
            yield _judge(facts, wall)


def _on_its_wall(facts: Facts, box: Box) -> bool:
    """True for a box in a wall's own face: not in its back, not in the ceiling."""
    wall = facts.walls.get(box.wall or "")
    return wall is not None and box.mount == "wall" and facts.room_of(box) == wall.room


def _judge(facts: Facts, wall: Wall) -> Finding:
    reach, subject = facts.electrical("spacing-reach"), (RULE, f"wall {wall.id}")
    say, cite = facts.units.say_unit, facts.cite(reach)
    limit = f"at most {say(reach.value)} from a receptacle"
    doors = [door for door in facts.survey.doors if door.wall == wall.id]
    counted = [box for box in facts.survey.boxes if _counts(facts, box, wall)]
    if any(door.left_in is None for door in doors) or any(box.x_in is None for box in counted):
        remedy = "Measure where the doors and the receptacles of this wall stand."
        figures = f"{limit}; where a door or a receptacle stands is unknown"
        return facts.finding(subject, "unknown", figures, cite, remedy)
    edges = [(door.left_in or Fraction(0), door.width_in) for door in doors]
    spaces = _spaces(wall, edges, [box.x_in or Fraction(0) for box in counted])
    wide = [space for space in spaces if space.width_in >= facts.electrical("spacing-wall").value]
    if any(space.farthest_in is None for space in wide):
        return facts.finding(subject, "note", f"{limit}; one part has none", cite, _ROUND_CORNERS)
    farthest_in = max((space.farthest_in or Fraction(0) for space in wide), default=Fraction(0))
    figures = f"{limit}; the farthest point of this wall is {say(farthest_in)} away"
    if farthest_in <= reach.value:
        return facts.finding(subject, "pass", figures, cite)
    return facts.finding(subject, "note", figures, cite, _ROUND_CORNERS)


_ROUND_CORNERS = (
    "A receptacle round the corner may serve it, measured along the floor. If none does, think "
    "of one more while the wall is open."
)


def _counts(facts: Facts, box: Box, wall: Wall) -> bool:
    """True for a receptacle of this wall that counts: low enough, always live, not hidden."""
    if box.wall != wall.id or not device_traits(box.device).is_receptacle:
        return False
    high = facts.electrical("spacing-height").value
    too_high = box.height_in is not None and box.height_in > high
    away = box.spot.in_place_of_light == "yes" or box.spot.behind_appliance == "yes"
    return _on_its_wall(facts, box) and not (too_high or away)


def _spaces(
    wall: Wall, doors: list[tuple[Fraction, Fraction]], at_in: list[Fraction]
) -> list[Space]:
    """The parts of a wall that doors leave."""
    found, left_in = [], Fraction(0)
    for door_left_in, width_in in [*sorted(doors), (wall.length_in, Fraction(0))]:
        inside = tuple(x_in for x_in in at_in if left_in <= x_in <= door_left_in)
        found.append(Space(left_in, door_left_in, inside))
        left_in = door_left_in + width_in
    return found
