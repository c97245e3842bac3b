"""A run whose legs were typed, laid out flat: there is no wall to draw, but each leg has a length.

What goes along, across or through is drawn to the right; up is up and down is down.
"""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

from estimator.drawing.placing import Placer, line_box, round_about
from estimator.drawing.records import Elevation, Line, Point, Rect
from estimator.drawing.sentences import run_sentence
from estimator.drawing.view import letters_in
from estimator.measures import System, show_length
from estimator.route.records import PathLeg, RunPath
from estimator.survey.electrical import Box
from estimator.takeoff.amounts import plural

_HALF_BOX_IN = Fraction(2)
_RISE = {"up": 1, "down": -1}


def strip(path: RunPath, number: int, boxes: dict[str, Box], system: System) -> Elevation:
    """Lay out one run."""
    points = _points(path)
    text = letters_in(max(_size(points)))
    run = path.run
    ends = ((points[0], boxes[run.from_box]), (points[-1], boxes[run.to_box]))
    rects = tuple(_box(point, box) for point, box in ends)
    placer = Placer(text, (min(x for x, _ in points), max(x for x, _ in points)))
    spots = [((rect.left_in, rect.bottom_in), (rect.right_in, rect.top_in)) for rect in rects]
    lines = [line_box(*pair, text) for pair in pairwise(points)]
    placer.keep_free([*spots, *lines])
    for rect, spot in zip(rects, spots, strict=True):
        placer.put(rect.name, round_about(spot, text))
    for leg, room in zip(path.legs, lines, strict=True):
        placer.put(_words(leg, system), round_about(room, text))
    name = f"run {run.id}"
    return Elevation(
        f"Run {run.id} laid out flat, from box {run.from_box} to box {run.to_box}",
        rects,
        (Line("run", points, name, number),),
        tuple(placer.labels),
        text,
        (run_sentence(path, system),),
    )


def _points(path: RunPath) -> tuple[Point, ...]:
    x = y = Fraction(0)
    points = [(x, y)]
    for leg in path.legs:
        rise = _RISE.get(leg.go, 0)
        x, y = (x, y + rise * leg.length_in) if rise else (x + leg.length_in, y)
        points.append((x, y))
    return tuple(points)


def _size(points: tuple[Point, ...]) -> tuple[Fraction, Fraction]:
    across, up = zip(*points, strict=True)
    return max(across) - min(across), max(up) - min(up)


def _box(point: Point, box: Box) -> Rect:
    x, y = point
    state = "existing box" if box.existing else "new box"
    half = _HALF_BOX_IN
    return Rect(
        "existing box" if box.existing else "new box",
        x - half, y - half, x + half, y + half, f"{box.id} ({state})",
    )  # fmt: skip


def _words(leg: PathLeg, system: System) -> str:
    """A leg with its length and what it passes."""
    said = [f"{leg.go} {show_length(leg.length_in, system)}"]
    if leg.studs:
        said.append(plural(leg.studs, "stud"))
    said += [plural(each.count, each.kind) for each in leg.crossed if each.kind != "corner stud"]
    if leg.corners:
        said.append(plural(leg.corners, "corner"))
    return ", ".join(said)
