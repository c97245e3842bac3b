"""Words in the view of a wall: names, sizes and lengths, each where there is room for it."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import product

from estimator.drawing.fixtures import (
    box_rect,
    box_words,
    boxes_on,
    opening_rect,
    opening_words,
    openings_on,
    trim_lines,
    trim_words,
)
from estimator.drawing.placing import Box, Place, Placer, line_box, round_about
from estimator.drawing.records import Label, Rect
from estimator.drawing.runs import Seen
from estimator.drawing.view import ZERO, View
from estimator.saying import Saying, listed, said

_THIRDS = (Fraction(1, 2), Fraction(1, 4), Fraction(3, 4))
_TO_SIDE = Fraction(1, 2)
_OVER_TRIM = (Fraction(3, 4), Fraction(2), Fraction(13, 4))
_OFF = (Fraction(17, 20), Fraction(7, 4), Fraction(11, 4), Fraction(15, 4))


def wall_labels(
    view: View, seen: tuple[Seen, ...], fixed: tuple[Label, ...], rects: tuple[Rect, ...]
) -> tuple[Label, ...]:
    """All words of a view; `fixed` are those of the dimensions, which stay where they are."""
    placer = Placer(view.text_in, (ZERO, view.wall.length_in), view.language)
    placer.take(fixed)
    placer.keep_free(_in_the_way(view, seen))
    _name_boxes(placer, view, rects)
    for leg in seen:
        placer.put(_leg_words(view, leg, seen), _along(leg, view.text_in))
    for words, spot in _corner_words(view, seen):
        placer.put(words, (spot,))
    _name_openings(placer, view, rects)
    if view.wall.trim_height_in:
        placer.put(trim_words(view), tuple(_at_trim(view)))
    return tuple(placer.labels)


def _in_the_way(view: View, seen: tuple[Seen, ...]) -> Iterator[Box]:
    """What words should not cover: boxes, cable, the trim, the edges of openings."""
    text = view.text_in
    yield from (_box_of(box_rect(view, box)) for box in boxes_on(view))
    yield from (_line_of(leg, text) for leg in seen)
    yield from (line_box(line.points[0], line.points[-1], text) for line in trim_lines(view))
    for edges in openings_on(view):
        for height in (edges.bottom_in, edges.top_in):
            yield line_box((edges.left_in, height), (edges.right_in, height), text)


def _name_boxes(placer: Placer, view: View, rects: tuple[Rect, ...]) -> None:
    """Names of the boxes, and how many plates stand where there are several."""
    for box in boxes_on(view):
        around = round_about(_box_of(box_rect(view, box)), view.text_in)
        placer.put(box_words(view, box), around)
    for rect in rects:
        if rect.kind == "protection plate" and rect.count > 1:
            placer.put(rect.name, round_about(_box_of(rect), view.text_in))


def _name_openings(placer: Placer, view: View, rects: tuple[Rect, ...]) -> None:
    """Openings, doors, windows and obstacles with their sizes."""
    for edges in openings_on(view):
        place = _box_of(opening_rect(view, edges))
        around = round_about(place, view.text_in)
        placer.put(opening_words(view, edges), (*around, *_inside(place)))
    for rect in rects:
        if rect.kind in ("door", "window", "obstacle"):
            place = _box_of(rect)
            placer.put(rect.name, (*_inside(place), *round_about(place, view.text_in)))


def _box_of(rect: Rect) -> Box:
    return (rect.left_in, rect.bottom_in), (rect.right_in, rect.top_in)


def _line_of(leg: Seen, text_in: Fraction) -> Box:
    at = leg.at
    return line_box((at.x1_in, at.height1_in), (at.x2_in, at.height2_in), text_in)


def _leg_words(view: View, leg: Seen, seen: tuple[Seen, ...]) -> str:
    """The length of a leg; the longest one also says which run it is of."""
    words = view.say(leg.leg.length_in)
    own = [each for each in seen if each.number == leg.number]
    if leg is max(own, key=lambda each: each.leg.length_in):
        words = said("run {run}: {length}", run=leg.path.run.id, length=words)
    if leg.leg.wall is None and leg.level:
        return listed([_on_level(words, leg.path.run.level), *_out_words(view, leg)])
    return words


def _on_level(length: str, level: str | None) -> str:
    """A length, and that it lies above or below the room."""
    if level == "attic":
        return said("{length} in the attic", length=length)
    if level == "basement":
        return said("{length} in the basement", length=length)
    return said("{length} in the crawlspace", length=length) if level == "crawlspace" else length


def _out_words(view: View, leg: Seen) -> Iterator[Saying]:
    """How far a cable on a level goes out from the wall, beside what is seen of it."""
    for each in (leg.before, leg.after):
        if each is not None and each.go == "across":
            yield said("{length} out from the wall", length=view.say(each.length_in))


def _along(leg: Seen, text_in: Fraction) -> tuple[Place, ...]:
    """Places along a leg: over and under one that lies, beside one that stands."""
    at = leg.at
    found: list[Place] = []
    for off, share in product((each * text_in for each in _OFF), _THIRDS):
        x = at.x1_in + (at.x2_in - at.x1_in) * share
        y = at.height1_in + (at.height2_in - at.height1_in) * share
        beside = text_in * _TO_SIDE
        if leg.level:
            found += [((x, y + off), "middle"), ((x, y - off), "middle")]
        else:
            found += [((x + beside, y), "start"), ((x - beside, y), "end")]
    return (*found, *round_about(_line_of(leg, text_in), text_in))


def _corner_words(view: View, seen: tuple[Seen, ...]) -> Iterator[tuple[str, Place]]:
    """Where a run comes round a corner or goes on round one."""
    height = view.height_in + view.text_in
    found = set()
    for leg in seen:
        for beside, x in ((leg.before, leg.at.x1_in), (leg.after, leg.at.x2_in)):
            at_end = x in (ZERO, view.wall.length_in)
            if beside is None or beside.wall in (None, view.wall.id) or not at_end:
                continue
            words = said("corner with wall {wall}", wall=beside.wall)
            if words not in found:
                found.add(words)
                yield words, ((x, height), "start" if x == 0 else "end")


def _inside(box: Box) -> tuple[Place, ...]:
    (left, bottom), (right, top) = box
    x = (left + right) / 2
    return tuple(((x, bottom + (top - bottom) * share), "middle") for share in _THIRDS)


def _at_trim(view: View) -> Iterator[Place]:
    """Just above the trim, at one of its ends or in between; higher where there is no room."""
    edge = view.text_in / 2
    for off in _OVER_TRIM:
        height = (view.wall.trim_height_in or ZERO) + view.text_in * off
        for share in (Fraction(1), *_THIRDS):
            x = view.wall.length_in * share
            yield ((x - edge, height), "end") if share == 1 else ((x, height), "middle")
        yield (edge, height), "start"
