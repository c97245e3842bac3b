"""The frame of a wall: plates, studs, what frames doors and windows, blocks, what is in the way."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction

from estimator.drawing.kind_words import KINDS, OBSTACLES
from estimator.drawing.records import Rect, RectKind
from estimator.drawing.view import THICK_IN, ZERO, View
from estimator.saying import Saying, said
from estimator.survey.place import Gap, Member, Wall

_MOST_STUDS = 300


@dataclass(frozen=True, slots=True)
class Upright:
    """A member that stands: where its middle is, and from where to where it reaches.

    Attributes:
        low_in, high_in: None where it reaches to the plate.
        edge_in: of a hole bored in it, to the nearest face, where that was stated.
    """

    kind: RectKind
    x_in: Fraction
    low_in: Fraction | None = None
    high_in: Fraction | None = None
    edge_in: Fraction | None = None
    count: int = 1

    def is_at(self, height_in: Fraction) -> bool:
        """Whether a level leg at this height would meet it."""
        above = self.low_in is None or self.low_in <= height_in
        return above and (self.high_in is None or height_in < self.high_in)


@dataclass(frozen=True, slots=True)
class Lying:
    """A member that lies: its height, and from where to where it reaches."""

    kind: RectKind
    height_in: Fraction
    left_in: Fraction
    right_in: Fraction


def uprights(view: View) -> tuple[Upright, ...]:
    """Every member that stands in the wall, as far as its place is known."""
    return (
        *_grid(view),
        *(each for _, gap, left in view.placed_gaps() for each in _round_gap(view, gap, left)),
        *(_standing(each) for each in view.frame.members if each.at_in is not None),
        *(
            Upright("tee stud", tee.at_in, edge_in=tee.edge_in, count=tee.members_count)
            for tee in view.frame.tees
            if tee.members_count
        ),
    )


def lying(view: View) -> tuple[Lying, ...]:
    """Every listed member that lies in the wall."""
    return tuple(
        Lying(
            each.kind,
            each.height_in,
            each.from_in or ZERO,
            view.wall.length_in if each.to_in is None else each.to_in,
        )
        for each in view.frame.members
        if each.height_in is not None and each.at_in is None
    )


def too_long(view: View) -> bool:
    """Whether a wall has more studs than anybody could tell apart in a drawing."""
    step = view.wall.spacing_in
    return step is not None and view.wall.length_in > step * _MOST_STUDS


def grid_in(view: View) -> tuple[Fraction, ...]:
    """Middles of the studs on the grid, between the ends of the wall; none where unknown."""
    first, step = view.wall.layout_from_in, view.wall.spacing_in
    if first is None or step is None or too_long(view):
        return ()
    start = first % step
    places = (start + step * number for number in range(int(view.wall.length_in // step) + 1))
    return tuple(x for x in places if 0 < x < view.wall.length_in)


def _grid(view: View) -> Iterator[Upright]:
    """Studs on the grid, all but those that a door or window takes the place of."""
    spans = [(left, left + gap.width_in) for _, gap, left in view.placed_gaps()]
    for x in grid_in(view):
        if not any(left < x < right for left, right in spans):
            yield Upright("stud", x)


def _round_gap(view: View, gap: Gap, left_in: Fraction) -> Iterator[Upright]:
    """What stands beside a door or window, over its header and under its sill."""
    bottom = gap.bottom_in or ZERO
    head = bottom + gap.height_in
    over = head if gap.header_top_in is None else gap.header_top_in
    yield from (Upright("king", x) for x in gap.kings_in)
    yield from (Upright("jack", x, high_in=head) for x in gap.jacks_in)
    grid = [x for x in grid_in(view) if left_in < x < left_in + gap.width_in]
    for x in grid if gap.cripples_in is None else gap.cripples_in:
        yield Upright("cripple", x, low_in=over)
        if bottom > THICK_IN:
            yield Upright("cripple", x, high_in=bottom)


def _standing(member: Member) -> Upright:
    return Upright(member.kind, member.at_in or ZERO, member.from_in, member.to_in)


def frame_rects(view: View) -> Iterator[Rect]:
    """The wall with all that stands and lies in it."""
    wall, under = view.wall, view.under_plates_in
    yield Rect("wall", ZERO, ZERO, wall.length_in, view.height_in, _wall_name(wall))
    for left, right in view.floor_pieces():
        yield Rect("plate", left, ZERO, right, THICK_IN, said("bottom plate"))
    for number in range(wall.top_plates_count):
        bottom, name = under + number * THICK_IN, said("top plate")
        yield Rect("plate", ZERO, bottom, wall.length_in, bottom + THICK_IN, name)
    yield from (_upright_rect(view, each) for each in uprights(view))
    yield from (_lying_rect(each) for each in lying(view))
    for kind, gap, left in view.placed_gaps():
        yield from _gap_rects(view, kind, gap, left)
    for thing in view.frame.obstacles:
        place = (thing.left_in, thing.bottom_in, thing.right_in, thing.top_in)
        yield Rect("obstacle", *place, OBSTACLES[thing.kind])


def _wall_name(wall: Wall) -> Saying:
    return said("wall {wall}", wall=wall.id)


def _upright_rect(view: View, each: Upright) -> Rect:
    half = THICK_IN * each.count / 2
    low = THICK_IN if each.low_in is None else each.low_in
    high = view.under_plates_in if each.high_in is None else each.high_in
    left, right = each.x_in - half, each.x_in + half
    return Rect(each.kind, left, low, right, max(high, low), KINDS[each.kind])


def _lying_rect(each: Lying) -> Rect:
    half = THICK_IN / 2
    low, high = each.height_in - half, each.height_in + half
    return Rect(each.kind, each.left_in, low, each.right_in, high, KINDS[each.kind])


def _gap_rects(view: View, kind: str, gap: Gap, left: Fraction) -> Iterator[Rect]:
    """A door or window with the header over it and the sill under it."""
    right, bottom = left + gap.width_in, gap.bottom_in or ZERO
    head = bottom + gap.height_in
    sized = {"wide": view.say(gap.width_in), "high": view.say(gap.height_in)}
    if kind == "door":
        yield Rect("door", left, bottom, right, head, said("door {wide} x {high}", **sized))
    else:
        yield Rect("window", left, bottom, right, head, said("window {wide} x {high}", **sized))
    if gap.header_top_in is not None and gap.header_top_in > head:
        sides = _inner_sides(gap, left, right)
        yield Rect("header", sides[0], head, sides[1], gap.header_top_in, KINDS["header"])
    if bottom > THICK_IN:
        yield Rect("sill", left, bottom - THICK_IN, right, bottom, KINDS["sill"])


def _inner_sides(gap: Gap, left: Fraction, right: Fraction) -> tuple[Fraction, Fraction]:
    """A header reaches from king to king, where these are known."""
    half = THICK_IN / 2
    before, after = _nearest(gap.kings_in, left, right)
    return (
        left if before is None else before + half,
        right if after is None else after - half,
    )


def _nearest(
    places: Iterable[Fraction], left: Fraction, right: Fraction
) -> tuple[Fraction | None, Fraction | None]:
    listed = tuple(places)
    before = max((x for x in listed if x <= left), default=None)
    return before, min((x for x in listed if x >= right), default=None)
