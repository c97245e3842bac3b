"""Dimensions round a wall: each box from the left end and above the floor, heights of runs."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from estimator.drawing.fixtures import boxes_on, place_of
from estimator.drawing.records import Label, Line, text_width_in
from estimator.drawing.runs import Seen
from estimator.drawing.view import ZERO, View
from estimator.saying import Saying, listed, said

# Distances in heights of letters.
_FIRST_ROW, _ROW = Fraction(8, 5), Fraction(2)
_FIRST_COLUMN, _GAP = Fraction(3, 2), Fraction(1, 2)
_TICK = Fraction(2, 5)
_ABOVE_LINE = Fraction(7, 10)
_END, _WITNESS = said("end"), said("witness line")


@dataclass(frozen=True, slots=True)
class Dimensions:
    """Lines with the figures that belong to them."""

    lines: tuple[Line, ...]
    labels: tuple[Label, ...]


def dimensions(view: View, seen: tuple[Seen, ...]) -> Dimensions:
    """All dimensions of one view."""
    lowest = min([ZERO, *(leg.at.height1_in for leg in seen), *(leg.at.height2_in for leg in seen)])
    parts = [*_rows(view, lowest), *_columns(view, seen)]
    lines = tuple(line for part in parts for line in part.lines)
    return Dimensions(lines, tuple(label for part in parts for label in part.labels))


def _rows(view: View, lowest_in: Fraction) -> Iterator[Dimensions]:
    """One row below the floor for each box from the left end, then the wall's own length."""
    measured: dict[Fraction, list[str]] = {}
    for box in boxes_on(view):
        measured.setdefault(place_of(box)[0], []).append(box.id)
    height = lowest_in - _FIRST_ROW * view.text_in
    for x, names in measured.items():
        boxes = listed(names)
        text = said("{length} from the left end to {boxes}", length=view.say(x), boxes=boxes)
        yield _row(view, x, height, text)
        height -= _ROW * view.text_in
    length = view.wall.length_in
    yield _row(view, length, height, said("{length} wall", length=view.say(length)))


def _row(view: View, x: Fraction, height: Fraction, words: Saying) -> Dimensions:
    """A row with its text on the line, or after its end where the line is short."""
    text, told = view.text_in, view.language.say(words)
    fits = text_width_in(told, text) + 2 * _GAP * text <= x
    label = Label(told, (x + _GAP * text, height), "start")
    if fits:
        label = Label(told, (x / 2, height + _ABOVE_LINE * text))
    ends = [
        Line("tick", ((at, height - _TICK * text), (at, height + _TICK * text)), _END)
        for at in (ZERO, x)
    ]
    witness = [Line("witness", ((at, ZERO), (at, height)), _WITNESS) for at in (ZERO, x)]
    line = Line("dimension", ((ZERO, height), (x, height)), words)
    return Dimensions((line, *ends, *witness), (label,))


def _columns(view: View, seen: tuple[Seen, ...]) -> Iterator[Dimensions]:
    """One column left of the wall for each height above the floor, the wall's own the last."""
    text = view.text_in
    heights = _heights(view, seen)
    wide = max(text_width_in(view.say(height), text) for height in heights)
    at = -_FIRST_COLUMN * text
    for height, reach in heights.items():
        yield _column(view, at, height, reach)
        at -= wide + 2 * _GAP * text


def _heights(view: View, seen: tuple[Seen, ...]) -> Mapping[Fraction, Fraction]:
    """Heights to show, lowest first, each with how far its thin line reaches into the wall."""
    found: dict[Fraction, Fraction] = {}
    for leg in seen:
        if leg.level and leg.at.height1_in != 0:
            near = min(leg.at.x1_in, leg.at.x2_in)
            found[leg.at.height1_in] = min(near, found.get(leg.at.height1_in, near))
    for box in boxes_on(view):
        x, height = place_of(box)
        if height:
            found[height] = max(x, found.get(height, x))
    if view.wall.height_in is not None:
        found.setdefault(view.height_in, ZERO)
    return dict(sorted(found.items())) or {view.height_in: ZERO}


def _column(view: View, at: Fraction, height: Fraction, reach: Fraction) -> Dimensions:
    text = view.text_in
    ends = [
        Line("tick", ((at - _TICK * text, each), (at + _TICK * text, each)), _END)
        for each in (ZERO, height)
    ]
    witness = Line("witness", ((at, height), (reach, height)), _WITNESS)
    words = said("{height} above the floor", height=view.say(height))
    line = Line("dimension", ((at, ZERO), (at, height)), words)
    label = Label(view.say(abs(height)), (at - _GAP * text, height / 2), "end")
    return Dimensions((line, *ends, witness), (label,))
