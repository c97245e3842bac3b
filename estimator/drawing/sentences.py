"""What a drawing shows, in sentences: for those who cannot see it, and for those who read."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from estimator.drawing.fixtures import box_words, boxes_on, opening_words, openings_on, place_of
from estimator.drawing.framing import grid_in, too_long
from estimator.drawing.records import Rect
from estimator.drawing.runs import Seen
from estimator.drawing.view import ZERO, View
from estimator.measures import System, show_length
from estimator.route.records import PathLeg, RunPath


def wall_sentences(view: View, seen: tuple[Seen, ...], rects: tuple[Rect, ...]) -> Iterator[str]:
    """Everything that is drawn of one wall."""
    yield _wall(view)
    yield _studs(view)
    for kind, gap, left in view.placed_gaps():
        sill = f", sill {view.say(gap.bottom_in)} above the floor" if gap.bottom_in else ""
        size = f"{view.say(gap.width_in)} wide and {view.say(gap.height_in)} high"
        yield f"A {kind} {size}, its left edge {_from_left(view, left)}{sill}."
    for box in boxes_on(view):
        x, height = place_of(box)
        yield f"Box {box_words(view, box)}: {_from_left(view, x)}, {_above(view, height)}."
    for path in dict.fromkeys(leg.path for leg in seen):
        yield run_sentence(path, view.system, {leg.leg.stretch for leg in seen})
    for edges in openings_on(view):
        said = opening_words(view, edges)
        place = f"{_from_left(view, edges.left_in)}, {_above(view, edges.bottom_in)}"
        yield f"{said[:1].upper()}{said[1:]}, its lower left corner {place}."
    plates = sum(rect.count for rect in rects if rect.kind == "protection plate")
    if plates:
        counted = "1 protection plate" if plates == 1 else f"{plates} protection plates"
        yield f"{counted} over the cable, where a hole is near the face of the wood."
    if view.wall.trim_height_in:
        yield f"The top of the trim is {_above(view, view.wall.trim_height_in)}."


def _wall(view: View) -> str:
    high = "height not measured; drawn at the usual height"
    if view.wall.height_in is not None:
        high = f"{view.say(view.height_in)} high"
    return f"The wall is {view.say(view.wall.length_in)} long; {high}."


def _studs(view: View) -> str:
    """The studs with their depth; where their places are unknown, none is drawn."""
    depth = view.frame.depth_in
    deep = "of unknown depth" if depth is None else f"{view.say(depth)} deep"
    places = grid_in(view)
    if too_long(view):
        return f"Studs {deep}; there are too many to draw those on a grid."
    if not places:
        return f"Studs {deep}; nobody measured where they stand, so none on a grid are drawn."
    step = view.wall.spacing_in or ZERO
    first = view.say(places[0])
    return f"Studs {deep}, every {view.say(step)}, the first at {first} from the left end."


def run_sentence(path: RunPath, system: System, here: set[object] | None = None) -> str:
    """A run leg by leg; `here` are the stretches seen in this wall, others are said to be not."""
    parts = [_leg(leg, system, here) for leg in path.legs]
    run, whole = path.run, show_length(path.path_in, system)
    return (
        f"Run {run.id} of cable, from box {run.from_box} to box {run.to_box}: "
        f"{', '.join(parts)}; {whole} in all."
    )


def _leg(leg: PathLeg, system: System, here: set[object] | None) -> str:
    said = f"{leg.go} {show_length(leg.length_in, system)}"
    elsewhere = here is not None and leg.wall is not None and leg.stretch not in here
    return f"{said} (wall {leg.wall})" if elsewhere else said


def _from_left(view: View, x: Fraction) -> str:
    return f"{view.say(x)} from the left end"


def _above(view: View, height: Fraction) -> str:
    if not height:
        return "at the floor"
    side = "above" if height > 0 else "below"
    return f"{view.say(abs(height))} {side} the floor"
