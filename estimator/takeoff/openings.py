"""Openings as rectangles: which are seen, which edges they share, what grows around them."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from estimator.survey.closing import Opening
from estimator.survey.place import Corner, Wall
from estimator.survey.records import Survey

Side = Literal["left", "right", "bottom", "top"]
_ZERO = Fraction(0)


@dataclass(frozen=True, slots=True)
class Hole:
    """One opening with its size, whether it is seen when the trim is back, and its room."""

    opening: Opening
    width_in: Fraction
    height_in: Fraction
    visible: bool
    room: str
    wall: Wall | None

    @property
    def area_in2(self) -> Fraction:
        """Width times height."""
        return self.width_in * self.height_in

    @property
    def perimeter_in(self) -> Fraction:
        """All four edges."""
        return 2 * (self.width_in + self.height_in)


@dataclass(frozen=True, slots=True)
class SharedEdge:
    """An edge that two openings have in common: `side` of the first lies on the second."""

    first: str
    first_side: Side
    second: str
    second_side: Side
    length_in: Fraction


def holes(survey: Survey) -> tuple[Hole, ...]:
    """Every opening of the survey, in its order."""
    walls = {wall.id: wall for wall in survey.walls}
    return tuple(_hole(opening, walls.get(opening.wall or "")) for opening in survey.openings)


def _hole(opening: Opening, wall: Wall | None) -> Hole:
    return Hole(
        opening,
        _size(opening.width_in, opening.left_in, opening.right_in),
        _size(opening.height_in, opening.bottom_in, opening.top_in),
        _is_visible(opening, wall),
        opening.room or (wall.room if wall else "room"),
        wall,
    )


def _size(size_in: Fraction | None, low_in: Fraction | None, high_in: Fraction | None) -> Fraction:
    if size_in is not None:
        return size_in
    return abs((high_in or _ZERO) - (low_in or _ZERO))


def _is_visible(opening: Opening, wall: Wall | None) -> bool:
    """Partly hidden counts as seen; not stated: hidden only where the trim is known to cover it."""
    if opening.hidden != "unknown":
        return opening.hidden != "yes"
    if wall is None or wall.trim_height_in is None or opening.top_in is None:
        return True
    return opening.top_in > wall.trim_height_in


def shared_edges(survey: Survey, listed: tuple[Hole, ...]) -> tuple[SharedEdge, ...]:
    """Edges in common, as stated, round a corner, or side by side on one wall; each once."""
    found: dict[frozenset[str], SharedEdge] = {}
    for first in listed:
        for second in listed:
            edge = _edge_between(first, second, survey.corners)
            if edge is not None and edge.length_in > 0:
                found.setdefault(frozenset((edge.first, edge.second)), edge)
    return tuple(found.values())


def _edge_between(first: Hole, second: Hole, corners: tuple[Corner, ...]) -> SharedEdge | None:
    """The edge in common where the first opening's right, or top, meets the second."""
    one, two = first.opening, second.opening
    if one.id == two.id:
        return None
    if one.joins_right == two.id or two.joins_left == one.id:
        return SharedEdge(one.id, "right", two.id, "left", min(first.height_in, second.height_in))
    if _meet_sideways(first, second, corners):
        along_in = _overlap(one.bottom_in, one.top_in, two.bottom_in, two.top_in)
        return SharedEdge(one.id, "right", two.id, "left", along_in)
    if one.wall is not None and one.wall == two.wall and one.top_in == two.bottom_in is not None:
        along_in = _overlap(one.left_in, one.right_in, two.left_in, two.right_in)
        return SharedEdge(one.id, "top", two.id, "bottom", along_in)
    return None


def _meet_sideways(first: Hole, second: Hole, corners: tuple[Corner, ...]) -> bool:
    one, two = first.opening, second.opening
    if first.wall is None or second.wall is None or one.right_in is None or two.left_in is None:
        return False
    if first.wall.id == second.wall.id:
        return one.right_in == two.left_in
    at_corner = one.right_in == first.wall.length_in and two.left_in == 0
    return at_corner and any(corner.walls == (first.wall.id, second.wall.id) for corner in corners)


def _overlap(
    low1: Fraction | None, high1: Fraction | None, low2: Fraction | None, high2: Fraction | None
) -> Fraction:
    if low1 is None or high1 is None or low2 is None or high2 is None:
        return _ZERO
    return max(_ZERO, min(high1, high2) - max(low1, low2))


def grown_in2(hole: Hole, edges: tuple[SharedEdge, ...], feather_in: Fraction) -> Fraction:
    """Area of an opening grown by the feather on its free sides.

    A shared side is not free, nor is one on the floor, on the ceiling or at an end of the wall.
    """
    taken = _shared_sides(hole, edges) | _end_sides(hole)
    free_across = 2 - len(taken & {"left", "right"})
    free_up = 2 - len(taken & {"bottom", "top"})
    width_in = hole.width_in + free_across * feather_in
    return width_in * (hole.height_in + free_up * feather_in)


def _shared_sides(hole: Hole, edges: tuple[SharedEdge, ...]) -> set[Side]:
    firsts = {edge.first_side for edge in edges if edge.first == hole.opening.id}
    return firsts | {edge.second_side for edge in edges if edge.second == hole.opening.id}


def _end_sides(hole: Hole) -> set[Side]:
    """Sides where the wall ends: the floor, the ceiling, and its left and right."""
    opening, wall = hole.opening, hole.wall
    ends: dict[Side, bool] = {"bottom": opening.bottom_in == 0, "left": opening.left_in == 0}
    if wall is not None:
        ends["right"] = opening.right_in == wall.length_in
        ends["top"] = wall.height_in is not None and opening.top_in == wall.height_in
    return {side for side, is_end in ends.items() if is_end}
