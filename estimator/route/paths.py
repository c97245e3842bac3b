"""Turns each run of a survey into legs: from the walls that were drawn, or as typed."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from itertools import pairwise
from math import ceil

from estimator.problems import InputError, Problem
from estimator.route.members import Met, WallFrame, frames, level_leg, upright_leg
from estimator.route.plan import spread, turn_between, walls_between
from estimator.route.records import Crossed, Go, PathLeg, RunPath, Stretch
from estimator.survey.electrical import Box, Leg, Method, Run
from estimator.survey.place import Corner, Level
from estimator.survey.records import Survey
from estimator.tables.facts import stud_default

_ZERO = Fraction(0)
_TYPED_CORNER_MEMBERS = 2


def run_paths(survey: Survey) -> tuple[RunPath, ...]:
    """Work out every run of the survey.

    Raises:
        InputError: walls that no corner joins, or a level whose height is unknown.
    """
    drawn = _Drawn(survey)
    spacing_in = stud_default(survey.job.units).spacing_in
    paths: list[RunPath] = []
    problems: list[Problem] = []
    for run in survey.runs:
        try:
            legs = (
                tuple(_typed(run, leg, spacing_in) for leg in run.legs)
                if run.legs
                else drawn.legs(run)
            )
        except InputError as error:
            problems.extend(error.problems)
        else:
            paths.append(RunPath(run, legs))
    if problems:
        raise InputError(problems)
    return tuple(paths)


def _typed(run: Run, leg: Leg, spacing_in: Fraction) -> PathLeg:
    """One leg of the quick form; unstated corner members are two a corner.

    Where nobody counted the studs, there is one for each usual spacing.
    """
    crossed = [Crossed(kind, count) for kind, count in leg.members.items() if count]
    at_corners = leg.corner_members_count
    if at_corners is None:
        at_corners = leg.corners_count * _TYPED_CORNER_MEMBERS
    if at_corners:
        crossed.append(Crossed("corner stud", at_corners, leg.corner_edge_in))
    counted = leg.studs_count
    return PathLeg(
        go=leg.go,
        length_in=leg.length_in,
        method=leg.method or _usual(run, leg.go),
        studs=ceil(leg.length_in / spacing_in) if counted is None else counted,
        assumed=counted is None,
        crossed=tuple(crossed),
        corners=leg.corners_count,
        obstacles=leg.obstacles_count,
        wall_plates=leg.plates_count,
        plate_holes=min(leg.plates_count, 1),
        floor_holes=leg.floor_holes_count,
        depth_in=run.stud_depth_in,
    )


def _usual(run: Run, go: Go) -> Method:
    """Rises and drops inside a wall are fished whatever is done to the level part."""
    return "fished" if go in ("up", "down") and run.method != "exposed" else run.method


class _Drawn:
    """Legs from walls that were drawn."""

    def __init__(self, survey: Survey) -> None:
        self.survey = survey
        self.frames = frames(survey)
        self.boxes = {box.id: box for box in survey.boxes}
        self.level_heights: dict[str, Fraction | None] = {
            level.kind: _level_height(level) for level in survey.levels
        }

    def legs(self, run: Run) -> tuple[PathLeg, ...]:
        start, end = self.boxes[run.from_box], self.boxes[run.to_box]
        if run.way == "through":
            legs = self._through(run, start, end)
        elif run.level is not None:
            legs = self._by_level(run, start, end, run.level)
        else:
            legs = self._in_walls(run, start, end)
        return tuple(leg for leg in legs if leg.length_in or leg.corners)

    def _upright(self, run: Run, box: Box, from_in: Fraction, to_in: Fraction) -> PathLeg:
        """A rise or drop at a box, from one height to another."""
        frame = self.frames[box.wall or ""]
        x_in = box.x_in or _ZERO
        met = upright_leg(frame, x_in, from_in, to_in)
        go: Go = "up" if to_in > from_in else "down"
        leg = _leg(frame, met, go, abs(to_in - from_in), _usual(run, go))
        return replace(leg, stretch=Stretch(frame.wall.id, x_in, from_in, x_in, to_in))

    def _level(self, run: Run, wall: str, x1: Fraction, x2: Fraction, high: Fraction) -> PathLeg:
        frame = self.frames[wall]
        leg = _leg(frame, level_leg(frame, x1, x2, high), "along", abs(x2 - x1), run.method)
        return replace(leg, stretch=Stretch(wall, x1, high, x2, high))

    def _through(self, run: Run, start: Box, end: Box) -> list[PathLeg]:
        """Straight through the wall: the sideways and the upward offset between the boxes."""
        high = start.height_in or _ZERO
        sideways = self._level(run, start.wall or "", start.x_in or _ZERO, end.x_in or _ZERO, high)
        return [sideways, self._upright(run, end, high, end.height_in or _ZERO)]

    def _in_walls(self, run: Run, start: Box, end: Box) -> list[PathLeg]:
        high = start.height_in if run.height_in is None else run.height_in
        high = high or _ZERO
        return [
            self._upright(run, start, start.height_in or _ZERO, high),
            *self._round_walls(run, start, end, high),
            self._upright(run, end, high, end.height_in or _ZERO),
        ]

    def _round_walls(self, run: Run, start: Box, end: Box, high: Fraction) -> list[PathLeg]:
        """Level legs along each wall in turn, with the corner at the head of all but the first.

        Where two ways lead through as many walls, the shorter is taken.
        """
        ways = [self._along(run, walls, start, end, high) for walls in self._ways(run, start, end)]
        return min(ways, key=lambda legs: sum(leg.length_in for leg in legs))

    def _along(
        self, run: Run, walls: tuple[str, ...], start: Box, end: Box, high: Fraction
    ) -> list[PathLeg]:
        legs = []
        x = start.x_in or _ZERO
        corner: Corner | None = None
        for wall, following in pairwise(walls):
            turn = turn_between(self.survey, wall, following)
            if turn is None:
                raise _not_joined(run, wall, following)
            edge = self.frames[wall].wall.length_in if turn.leaves_right else _ZERO
            legs.append(_with_corner(self._level(run, wall, x, edge, high), corner))
            corner = turn.corner
            x = _ZERO if turn.leaves_right else self.frames[following].wall.length_in
        legs.append(_with_corner(self._level(run, walls[-1], x, end.x_in or _ZERO, high), corner))
        return legs

    def _ways(self, run: Run, start: Box, end: Box) -> tuple[tuple[str, ...], ...]:
        """The walls that the run names, else each way round by the fewest."""
        first, last = start.wall or "", end.wall or ""
        if run.walls:
            if (run.walls[0], run.walls[-1]) != (first, last):
                read = f'its walls go from "{run.walls[0]}" to "{run.walls[-1]}"'
                raise _bad_run(run, read, f'List them from "{first}" to "{last}".')
            return (run.walls,)
        ways = walls_between(self.survey, first, last)
        if not ways:
            raise _not_joined(run, first, last)
        return ways

    def _by_level(self, run: Run, start: Box, end: Box, level: str) -> list[PathLeg]:
        """Up or down to a level, along and across it, and back; walls are left by one hole."""
        high = self.level_heights.get(level)
        if high is None:
            write = "Give its height above the floor (attic) or below_floor (crawlspace)."
            raise _bad_run(run, f"the height of the {level} is unknown", write)
        apart = spread(self.survey, start, end)
        if apart is None:
            raise _not_joined(run, start.wall or "", end.wall or "")
        return [
            self._leave(run, start, start.height_in or _ZERO, high),
            PathLeg("across", apart[1], "exposed"),
            PathLeg("along", apart[0], "exposed", stretch=_beside_wall(start, end, high)),
            self._leave(run, end, high, end.height_in or _ZERO),
        ]

    def _leave(self, run: Run, box: Box, from_in: Fraction, to_in: Fraction) -> PathLeg:
        """The upright leg between a box and a level: through plates, or free for a ceiling box."""
        if box.mount == "ceiling":
            go: Go = "up" if to_in > from_in else "down"
            x_in = box.x_in or _ZERO
            stretch = Stretch(box.wall or "", x_in, from_in, x_in, to_in)
            return PathLeg(go, abs(to_in - from_in), "exposed", stretch=stretch)
        leg = self._upright(run, box, from_in, to_in)
        if max(from_in, to_in) > (box.height_in or _ZERO):
            plates = self.frames[box.wall or ""].wall.top_plates_count
            return replace(leg, wall_plates=plates, plate_holes=1)
        return replace(leg, floor_holes=1)


def _beside_wall(start: Box, end: Box, high: Fraction) -> Stretch | None:
    """A leg on a level, seen from the wall that both boxes are measured from."""
    if start.wall is None or start.wall != end.wall:
        return None
    return Stretch(start.wall, start.x_in or _ZERO, high, end.x_in or _ZERO, high)


def _level_height(level: Level) -> Fraction | None:
    """Where cable lies on a level, from the finished floor; below it is negative."""
    if level.below_floor_in is not None:
        return -level.below_floor_in
    return level.height_in if level.kind == "attic" else None


def _leg(frame: WallFrame, met: Met, go: Go, length_in: Fraction, method: Method) -> PathLeg:
    return PathLeg(
        go=go,
        length_in=length_in,
        method=method,
        wall=frame.wall.id,
        studs=met.studs,
        assumed=met.assumed,
        crossed=tuple(met.crossed),
        obstacles=met.obstacles,
        depth_in=frame.depth_in,
        steel=frame.wall.framing == "steel",
        passes_gap=met.passes_gap,
    )


def _with_corner(leg: PathLeg, corner: Corner | None) -> PathLeg:
    """The leg with the corner at its head, and the members bored there."""
    if corner is None:
        return leg
    studs = Crossed("corner stud", corner.members_count, corner.edge_in)
    crossed = (studs, *leg.crossed) if studs.count else leg.crossed
    return replace(leg, corners=1, crossed=crossed)


def _bad_run(run: Run, read: str, write: str) -> InputError:
    return InputError([Problem(f'run "{run.id}"', read, write)])


def _not_joined(run: Run, first: str, second: str) -> InputError:
    read = f'no corner joins the walls "{first}" and "{second}"'
    return _bad_run(run, read, 'Add [[corners]] with walls = ["left", "right"], or type the legs.')
