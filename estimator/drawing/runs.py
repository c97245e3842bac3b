"""Cable in the view of a wall: its legs, and the protection plates where it passes members."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from estimator.drawing.framing import lying, uprights
from estimator.drawing.records import Line, Point, Rect
from estimator.drawing.view import THICK_IN, View
from estimator.route.records import PathLeg, RunPath, Stretch
from estimator.saying import said, several
from estimator.settings import Practice
from estimator.tables.facts import stud_default
from estimator.takeoff.counts import plates_each

_PLATE_HIGH_IN = Fraction(5, 2)


@dataclass(frozen=True, slots=True)
class Seen:
    """One leg in the view of a wall.

    Attributes:
        number: of the run among all runs; before, after: the legs next to it, if any.
    """

    path: RunPath
    number: int
    leg: PathLeg
    at: Stretch
    before: PathLeg | None
    after: PathLeg | None

    @property
    def level(self) -> bool:
        """Whether it lies."""
        return self.at.height1_in == self.at.height2_in

    @property
    def middle(self) -> Point:
        """Halfway along it."""
        at = self.at
        return (at.x1_in + at.x2_in) / 2, (at.height1_in + at.height2_in) / 2


def legs_on(view: View, paths: tuple[RunPath, ...]) -> tuple[Seen, ...]:
    """The legs that are seen in this wall, run by run."""
    return tuple(_legs_on(view.wall.id, paths))


def _legs_on(wall: str, paths: tuple[RunPath, ...]) -> Iterator[Seen]:
    for number, path in enumerate(paths):
        befores, afters = (None, *path.legs), (*path.legs[1:], None)
        for before, leg, after in zip(befores, path.legs, afters, strict=False):
            if leg.stretch is not None and leg.stretch.wall == wall:
                yield Seen(path, number, leg, leg.stretch, before, after)


def run_lines(seen: tuple[Seen, ...]) -> Iterator[Line]:
    """One line for each piece of a run that is seen without a break."""
    points: list[Point] = []
    for at, leg in enumerate(seen):
        start = (leg.at.x1_in, leg.at.height1_in)
        if not points or points[-1] != start:
            points = [start]
        points.append((leg.at.x2_in, leg.at.height2_in))
        following = seen[at + 1] if at + 1 < len(seen) else None
        if following is None or not _goes_on(leg, following):
            name = said("run {run}", run=leg.path.run.id)
            yield Line("run", tuple(points), name, leg.number)
            points = []


def _goes_on(leg: Seen, following: Seen) -> bool:
    ends = (leg.at.x2_in, leg.at.height2_in)
    same_run = leg.number == following.number
    return same_run and ends == (following.at.x1_in, following.at.height1_in)


def plate_rects(view: View, seen: tuple[Seen, ...], practice: Practice) -> Iterator[Rect]:
    """A protection plate on every member passed where the takeoff counts one."""
    depth_in = stud_default(view.survey.job.units).depth_in
    for leg in seen:
        for (x, height), edge_in, count in _passed(view, leg):
            faces = plates_each(leg.path, leg.leg, practice, depth_in, edge_in)
            if faces and count:
                yield _plate(x, height, faces * count)


def _plate(x: Fraction, height: Fraction, count: int) -> Rect:
    half, high = THICK_IN / 2, _PLATE_HIGH_IN / 2
    name = said("protection plate")
    if count != 1:
        name = several(count, "{count} protection plate", "{count} protection plates")
    return Rect("protection plate", x - half, height - high, x + half, height + high, name, count)


def _passed(view: View, seen: Seen) -> Iterator[tuple[Point, Fraction | None, int]]:
    """Where a leg passes members: the place, the stated edge of the hole, and how many."""
    at = seen.at
    low, high = sorted((at.x1_in, at.x2_in))
    if seen.level and seen.leg.wall is not None:
        for each in uprights(view):
            if low < each.x_in < high and each.is_at(at.height1_in):
                yield (each.x_in, at.height1_in), each.edge_in, each.count
        for crossed in seen.leg.crossed:
            if crossed.kind == "corner stud":
                yield (at.x1_in, at.height1_in), crossed.edge_in, crossed.count
    elif seen.leg.wall is not None:
        yield from _passed_upright(view, seen)


def _passed_upright(view: View, seen: Seen) -> Iterator[tuple[Point, Fraction | None, int]]:
    at = seen.at
    low, high = sorted((at.height1_in, at.height2_in))
    for each in lying(view):
        if low < each.height_in < high and each.left_in <= at.x1_in <= each.right_in:
            yield (at.x1_in, each.height_in), None, 1
    if seen.leg.plate_holes and seen.leg.method != "notched":
        yield (at.x1_in, view.under_plates_in), None, seen.leg.plate_holes
