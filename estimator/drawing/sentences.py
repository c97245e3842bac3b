"""What a drawing shows, in sentences: for those who cannot see it, and for those who read."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from estimator.drawing.fixtures import Edges, box_words, boxes_on, openings_on, place_of
from estimator.drawing.framing import grid_in, too_long
from estimator.drawing.kind_words import opening_called
from estimator.drawing.records import Rect
from estimator.drawing.runs import Seen
from estimator.drawing.view import ZERO, View
from estimator.measures import System, show_length
from estimator.route.records import PathLeg, RunPath
from estimator.saying import Saying, capital, listed, said, several
from estimator.survey.place import Gap


def wall_sentences(view: View, seen: tuple[Seen, ...], rects: tuple[Rect, ...]) -> Iterator[Saying]:
    """Everything that is drawn of one wall."""
    yield _wall(view)
    yield _studs(view)
    for kind, gap, left in view.placed_gaps():
        yield _gap(view, kind, gap, left)
    for box in boxes_on(view):
        x, height = place_of(box)
        yield said(
            "Box {box}: {left} from the left end, {height}.",
            box=box_words(view, box),
            left=view.say(x),
            height=_above(view, height),
        )
    for path in dict.fromkeys(leg.path for leg in seen):
        yield run_sentence(path, view.system, {leg.leg.stretch for leg in seen})
    for edges in openings_on(view):
        yield _opening(view, edges)
    plates = sum(rect.count for rect in rects if rect.kind == "protection plate")
    if plates:
        yield several(
            plates,
            "{count} protection plate over the cable, where a hole is near the face of the wood.",
            "{count} protection plates over the cable, where a hole is near the face of the wood.",
        )
    if view.wall.trim_height_in:
        trim = _above(view, view.wall.trim_height_in)
        yield said("The top of the trim is {height}.", height=trim)


def _wall(view: View) -> Saying:
    length = view.say(view.wall.length_in)
    if view.wall.height_in is None:
        return said(
            "The wall is {length} long; height not measured; drawn at the usual height.",
            length=length,
        )
    return said(
        "The wall is {length} long; {height} high.",
        length=length,
        height=view.say(view.height_in),
    )


def _studs(view: View) -> Saying:
    """The studs with their depth; where their places are unknown, none is drawn."""
    depth = view.frame.depth_in
    studs = said("Studs of unknown depth")
    if depth is not None:
        studs = said("Studs {depth} deep", depth=view.say(depth))
    places = grid_in(view)
    if too_long(view):
        return said("{studs}; there are too many to draw those on a grid.", studs=studs)
    if not places:
        return said(
            "{studs}; nobody measured where they stand, so none on a grid are drawn.", studs=studs
        )
    return said(
        "{studs}, every {step}, the first at {first} from the left end.",
        studs=studs,
        step=view.say(view.wall.spacing_in or ZERO),
        first=view.say(places[0]),
    )


def _gap(view: View, kind: str, gap: Gap, left_in: Fraction) -> Saying:
    """A door or a window with its size and place."""
    wide, high, left = view.say(gap.width_in), view.say(gap.height_in), view.say(left_in)
    if kind == "door":
        gap_said = said(
            "A door {wide} wide and {high} high, its left edge {left} from the left end",
            wide=wide,
            high=high,
            left=left,
        )
    else:
        gap_said = said(
            "A window {wide} wide and {high} high, its left edge {left} from the left end",
            wide=wide,
            high=high,
            left=left,
        )
    if not gap.bottom_in:
        return listed((gap_said, "."), "")
    sill = view.say(gap.bottom_in)
    return said("{opening}, sill {height} above the floor.", opening=gap_said, height=sill)


def _opening(view: View, edges: Edges) -> Saying:
    """An opening with its size, and where its lower left corner is."""
    return said(
        "{opening}: {wide} x {high}, its lower left corner {left} from the left end, {height}.",
        opening=capital(opening_called(edges.opening.id)),
        wide=view.say(edges.right_in - edges.left_in),
        high=view.say(edges.top_in - edges.bottom_in),
        left=view.say(edges.left_in),
        height=_above(view, edges.bottom_in),
    )


def run_sentence(path: RunPath, system: System, here: set[object] | None = None) -> Saying:
    """A run leg by leg; `here` are the stretches seen in this wall, others are said to be not."""
    run = path.run
    return said(
        "Run {run} of cable, from box {box} to box {other}: {legs}; {length} in all.",
        run=run.id,
        box=run.from_box,
        other=run.to_box,
        legs=listed(_leg(leg, system, here) for leg in path.legs),
        length=show_length(path.path_in, system),
    )


def _leg(leg: PathLeg, system: System, here: set[object] | None) -> Saying:
    words = leg_words(leg, system)
    elsewhere = here is not None and leg.wall is not None and leg.stretch not in here
    return said("{leg} (wall {wall})", leg=words, wall=leg.wall) if elsewhere else words


def leg_words(leg: PathLeg, system: System) -> Saying:
    """Where a leg goes, and how far."""
    length = show_length(leg.length_in, system)
    ways = {
        "up": said("up {length}", length=length),
        "down": said("down {length}", length=length),
        "along": said("along {length}", length=length),
        "across": said("across {length}", length=length),
        "through": said("through {length}", length=length),
    }
    return ways[leg.go]


def _above(view: View, height: Fraction) -> Saying:
    if not height:
        return said("at the floor")
    if height > 0:
        return said("{height} above the floor", height=view.say(height))
    return said("{height} below the floor", height=view.say(-height))
