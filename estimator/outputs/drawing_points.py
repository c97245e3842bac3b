"""The points of a wall drawing, in the job's unit: shapes that look alike stand together."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from estimator.drawing.kind_words import KINDS
from estimator.drawing.records import Elevation, Line, Point, Rect
from estimator.outputs.drawing_style import LINES, RECTS, Fill, Stroke, run_stroke

_SOLID: tuple[Fill, ...] = ("black", "dark")


@dataclass(frozen=True, slots=True)
class Shape:
    """One shape as a line through points: what it is in a word, and its name."""

    kind: str
    name: str
    points: tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class Group:
    """Shapes that look alike.

    Attributes:
        wide_in: width of the line in inches of the wall, where it fills the shape; else None.
    """

    shapes: tuple[Shape, ...]
    stroke: Stroke
    fill: Fill = "none"
    wide_in: Fraction | None = None


def groups_of(view: Elevation) -> Iterator[Group]:
    """All shapes of a view in the order they are laid down, lines that look alike in one group."""
    found: dict[tuple[object, ...], list[Shape]] = {}
    looks: dict[tuple[object, ...], tuple[Stroke, Fill, Fraction | None]] = {}
    for rect in view.rects:
        stroke, fill = RECTS[rect.kind]
        solid = fill in _SOLID
        wide = rect.right_in - rect.left_in if solid else None
        key: tuple[object, ...] = ("rect", stroke, fill if solid else "", wide)
        found.setdefault(key, []).append(_of_rect(rect, solid=solid))
        looks[key] = (stroke, fill if solid else "none", wide)
    for line in view.lines:
        stroke = run_stroke(line.pattern) if line.kind == "run" else LINES[line.kind]
        key = ("line", stroke)
        found.setdefault(key, []).append(_of_line(line))
        looks[key] = (stroke, "none", None)
    return (Group(tuple(shapes), *looks[key]) for key, shapes in found.items())


def _of_rect(rect: Rect, *, solid: bool) -> Shape:
    """Four sides; a rectangle that is filled is one line as wide as itself."""
    left, right, low, high = rect.left_in, rect.right_in, rect.bottom_in, rect.top_in
    if solid:
        x = (left + right) / 2
        return Shape(KINDS[rect.kind], rect.name, ((x, low), (x, high)))
    round_it = ((left, low), (right, low), (right, high), (left, high), (left, low))
    return Shape(KINDS[rect.kind], rect.name, round_it)


def _of_line(line: Line) -> Shape:
    return Shape(KINDS[line.kind], line.name, line.points)
