"""What is on the wall: boxes found and boxes planned, openings to cut, the trim."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from estimator.drawing.kind_words import opening_called, room_called
from estimator.drawing.records import Line, Point, Rect, RectKind
from estimator.drawing.view import View
from estimator.saying import Saying, listed, said
from estimator.survey.closing import Opening
from estimator.survey.electrical import Box

# A box is drawn as large as a device box of one gang is about; each further gang is as wide
# again as a strap. A ceiling box is seen from its side.
_BOX_WIDE_IN, _BOX_HIGH_IN, _GANG_IN = Fraction(9, 4), Fraction(15, 4), Fraction(29, 16)
_NORTH_AMERICA = ("US", "CA", "MX")
_ROUND_WIDE_IN, _ROUND_HIGH_IN = Fraction(4), Fraction(3, 2)


_NEW: dict[str, Saying] = {
    "receptacle": said("new receptacle"),
    "gfci receptacle": said("new gfci receptacle"),
    "afci receptacle": said("new afci receptacle"),
    "damp receptacle": said("new damp receptacle"),
    "wet receptacle": said("new wet receptacle"),
    "damp gfci receptacle": said("new damp gfci receptacle"),
    "wet gfci receptacle": said("new wet gfci receptacle"),
    "switch": said("new switch"),
    "three-way switch": said("new three-way switch"),
    "luminaire": said("new luminaire"),
    "none": said("new box"),
}
_NEW_ABROAD: dict[str, Saying] = {
    "receptacle": said("new socket"),
    "gfci receptacle": said("new gfci socket"),
    "afci receptacle": said("new afci socket"),
    "damp receptacle": said("new damp socket"),
    "wet receptacle": said("new wet socket"),
    "damp gfci receptacle": said("new damp gfci socket"),
    "wet gfci receptacle": said("new wet gfci socket"),
}


@dataclass(frozen=True, slots=True)
class Edges:
    """The edges of an opening on its wall."""

    opening: Opening
    left_in: Fraction
    bottom_in: Fraction
    right_in: Fraction
    top_in: Fraction


def boxes_on(view: View) -> tuple[Box, ...]:
    """Boxes on this wall, or measured from it, whose place is known; from left to right."""
    here = (
        box
        for box in view.survey.boxes
        if box.wall == view.wall.id and box.x_in is not None and box.height_in is not None
    )
    return tuple(sorted(here, key=lambda box: (box.x_in, box.height_in)))


def place_of(box: Box) -> Point:
    """The middle of a box whose place is known."""
    return box.x_in or Fraction(0), box.height_in or Fraction(0)


def box_words(view: View, box: Box) -> Saying:
    """A box in words: its name, old or new, and where it opens if that is not this room."""
    parts = [_state(view, box)]
    if box.mount == "ceiling":
        parts.append(said("on the ceiling"))
    if box.room is not None and box.room != view.wall.room:
        parts.append(said("in the {room}", room=room_called(box.room)))
    return box_named(box, listed(parts))


def box_named(box: Box, state: Saying) -> Saying:
    """A box by its name, with what it is behind it in brackets."""
    return listed((box.id, " (", state, ")"), "")


def _state(view: View, box: Box) -> Saying:
    if box.existing:
        return said("existing box")
    local = view.survey.job.country in _NORTH_AMERICA
    return (_NEW if local else _NEW | _NEW_ABROAD)[box.device]


def box_rect(view: View, box: Box) -> Rect:
    """The rectangle that stands for a box."""
    x, height = place_of(box)
    wide = _BOX_WIDE_IN + (box.gangs_count - 1) * _GANG_IN
    high = _BOX_HIGH_IN
    if box.mount == "ceiling":
        wide, high = _ROUND_WIDE_IN, _ROUND_HIGH_IN
    kind: RectKind = "existing box" if box.existing else "new box"
    name = box_words(view, box)
    half = wide / 2
    return Rect(kind, x - half, height - high / 2, x + half, height + high / 2, name)


def openings_on(view: View) -> tuple[Edges, ...]:
    """Openings of this wall whose four edges are known."""
    return tuple(
        edges
        for opening in view.survey.openings
        if opening.wall == view.wall.id and (edges := edges_of(opening)) is not None
    )


def edges_of(opening: Opening) -> Edges | None:
    """The four edges of an opening in a wall; one that is missing follows from its size."""
    across = _pair(opening.left_in, opening.right_in, opening.width_in)
    up = _pair(opening.bottom_in, opening.top_in, opening.height_in)
    if across is None or up is None or opening.surface != "wall":
        return None
    return Edges(opening, across[0], up[0], across[1], up[1])


def _pair(
    low: Fraction | None, high: Fraction | None, size: Fraction | None
) -> tuple[Fraction, Fraction] | None:
    if low is not None and high is not None:
        return min(low, high), max(low, high)
    if low is not None and size is not None:
        return low, low + size
    if high is not None and size is not None:
        return high - size, high
    return None


def opening_words(view: View, edges: Edges) -> Saying:
    """An opening with its size."""
    wide, high = edges.right_in - edges.left_in, edges.top_in - edges.bottom_in
    return said(
        "{opening}: {wide} x {high}",
        opening=opening_called(edges.opening.id),
        wide=view.say(wide),
        high=view.say(high),
    )


def opening_rect(view: View, edges: Edges) -> Rect:
    """The rectangle of an opening."""
    place = (edges.left_in, edges.bottom_in, edges.right_in, edges.top_in)
    return Rect("opening", *place, opening_words(view, edges))


def trim_lines(view: View) -> Iterator[Line]:
    """The top of the trim, where it is known; it stops at doors."""
    height = view.wall.trim_height_in
    if height:
        for left, right in view.floor_pieces():
            yield Line("trim", ((left, height), (right, height)), trim_words(view))


def trim_words(view: View) -> Saying:
    """How high the trim is."""
    height = view.wall.trim_height_in or Fraction(0)
    return said("top of the trim {height}", height=view.say(height))
