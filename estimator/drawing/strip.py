"""A run whose legs were typed, laid out flat: there is no wall to draw, but each leg has a length.

What goes along, across or through is drawn to the right; up is up and down is down.
"""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

from estimator.drawing.fixtures import box_named
from estimator.drawing.kind_words import KINDS, counted
from estimator.drawing.placing import Placer, line_box, round_about
from estimator.drawing.records import Elevation, Line, Point, Rect, RectKind
from estimator.drawing.sentences import leg_words, run_sentence
from estimator.drawing.view import letters_in
from estimator.language import Language
from estimator.measures import System
from estimator.route.records import PathLeg, RunPath
from estimator.saying import Saying, listed, said
from estimator.survey.electrical import Box

_HALF_BOX_IN = Fraction(2)
_RISE = {"up": 1, "down": -1}


def strip(
    path: RunPath, number: int, boxes: dict[str, Box], system: System, language: Language
) -> Elevation:
    """Lay out one run."""
    points = _points(path)
    text = letters_in(max(_size(points)))
    run = path.run
    ends = ((points[0], boxes[run.from_box]), (points[-1], boxes[run.to_box]))
    rects = tuple(_box(point, box) for point, box in ends)
    across = [x for x, _ in points]
    placer = Placer(text, (min(across), max(across)), language)
    spots = [((rect.left_in, rect.bottom_in), (rect.right_in, rect.top_in)) for rect in rects]
    lines = [line_box(*pair, text) for pair in pairwise(points)]
    placer.keep_free([*spots, *lines])
    for rect, spot in zip(rects, spots, strict=True):
        placer.put(rect.name, round_about(spot, text))
    for leg, room in zip(path.legs, lines, strict=True):
        placer.put(_words(leg, system), round_about(room, text))
    name = said("run {run}", run=run.id)
    return Elevation(
        said(
            "Run {run} laid out flat, from box {box} to box {other}",
            run=run.id,
            box=run.from_box,
            other=run.to_box,
        ),
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
    (x, y), half = point, _HALF_BOX_IN
    kind: RectKind = "existing box" if box.existing else "new box"
    name = box_named(box, KINDS[kind])
    return Rect(kind, x - half, y - half, x + half, y + half, name)


def _words(leg: PathLeg, system: System) -> Saying:
    """A leg with its length and what it passes."""
    parts: list[str] = [leg_words(leg, system)]
    if leg.studs:
        parts.append(counted(leg.studs, "stud"))
    parts += [counted(each.count, each.kind) for each in leg.crossed if each.kind != "corner stud"]
    if leg.corners:
        parts.append(counted(leg.corners, "corner"))
    return listed(parts)
