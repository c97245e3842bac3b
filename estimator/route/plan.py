"""The walls seen from above: how corners join them, and where a box stands on the floor plan."""

from __future__ import annotations

from collections import deque
from dataclasses import dataclass
from fractions import Fraction

from estimator.survey.electrical import Box
from estimator.survey.place import Corner
from estimator.survey.records import Survey

Point = tuple[Fraction, Fraction]
_Heading = tuple[int, int]


@dataclass(frozen=True, slots=True)
class Turn:
    """From one wall into the next: the corner, and whether the first is left by its right end."""

    corner: Corner
    leaves_right: bool


def turn_between(survey: Survey, first: str, second: str) -> Turn | None:
    """The corner that joins two walls; None where they do not meet."""
    for corner in survey.corners:
        if corner.walls == (first, second):
            return Turn(corner, True)
        if corner.walls == (second, first):
            return Turn(corner, False)
    return None


def walls_between(survey: Survey, first: str, last: str) -> tuple[tuple[str, ...], ...]:
    """Each way round corners from one wall to another by the fewest walls; none where none leads.

    In a closed room two opposite walls have two such ways.
    """
    ways: list[tuple[str, ...]] = [(first,)]
    seen = {first}
    while ways and not any(way[-1] == last for way in ways):
        ways = [(*way, wall) for way in ways for wall in _next_to(survey, way[-1]) - seen]
        seen |= {way[-1] for way in ways}
    return tuple(sorted(way for way in ways if way[-1] == last))


def _next_to(survey: Survey, wall: str) -> set[str]:
    """The walls that corners join to one."""
    return {
        there
        for corner in survey.corners
        for here, there in (corner.walls, corner.walls[::-1])
        if here == wall
    }


@dataclass(frozen=True, slots=True)
class Footing:
    """Where a wall begins on the plan and which way its x runs; the room lies to its right."""

    start: Point
    heading: _Heading

    def point(self, x_in: Fraction, out_in: Fraction) -> Point:
        """The place x along the wall and `out` into the room."""
        (dx, dy), (sx, sy) = self.heading, self.start
        return sx + dx * x_in + dy * out_in, sy + dy * x_in - dx * out_in


def footings(survey: Survey, first: str) -> dict[str, Footing]:
    """Lay out the walls that corners join to `first`, each turning a right angle.

    Facing a wall from its room, an inside corner at its right end turns the next wall
    clockwise, an outside corner the other way.
    """
    lengths = {wall.id: wall.length_in for wall in survey.walls}
    laid = {first: Footing((Fraction(0), Fraction(0)), (1, 0))}
    queue = deque([first])
    while queue:
        wall = queue.popleft()
        for corner in survey.corners:
            left, right = corner.walls
            if left == wall and right not in laid:
                start = laid[wall].point(lengths[wall], Fraction(0))
                laid[right] = Footing(start, _turned(laid[wall].heading, corner))
                queue.append(right)
            elif right == wall and left not in laid:
                laid[left] = _before(laid[wall], lengths[left], corner)
                queue.append(left)
    return laid


def _turned(heading: _Heading, corner: Corner) -> _Heading:
    dx, dy = heading
    return (dy, -dx) if corner.kind == "inside" else (-dy, dx)


def _before(footing: Footing, length_in: Fraction, corner: Corner) -> Footing:
    """The wall whose right end meets this one's left end."""
    dx, dy = footing.heading
    heading = (-dy, dx) if corner.kind == "inside" else (dy, -dx)
    (sx, sy), (hx, hy) = footing.start, heading
    return Footing((sx - hx * length_in, sy - hy * length_in), heading)


def spread(survey: Survey, start: Box, end: Box) -> tuple[Fraction, Fraction] | None:
    """Distance from box to box along the first wall and out from it; None where not joined."""
    if start.wall is None or end.wall is None or start.x_in is None or end.x_in is None:
        return None
    laid = footings(survey, start.wall)
    if end.wall not in laid:
        return None
    zero = Fraction(0)
    x1, y1 = laid[start.wall].point(start.x_in, start.out_in or zero)
    x2, y2 = laid[end.wall].point(end.x_in, end.out_in or zero)
    return abs(x2 - x1), abs(y2 - y1)
