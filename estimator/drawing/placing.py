"""Finds room for words in a drawing: the first place asked for where nothing is in the way."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction

from estimator.drawing.records import Anchor, Label, Point, label_box

Box = tuple[Point, Point]
Place = tuple[Point, Anchor]
# Distances in heights of letters.
_NEAR, _FAR, _FURTHER = Fraction(9, 10), Fraction(11, 5), Fraction(7, 2)
_BESIDE = Fraction(3, 5)
_WORDS_WEIGH, _EDGE_WEIGHS = 100, 4
_NONE = Fraction(0)


class Placer:
    """Places labels one after the other; those placed early have the better places.

    Args:
        text_in: height of letters.
        bounds: where words should stay, as left and right end.
    """

    def __init__(self, text_in: Fraction, bounds: tuple[Fraction, Fraction]) -> None:
        self._text_in, self._bounds = text_in, bounds
        self._things: list[Box] = []
        self._words: list[Box] = []
        self.labels: list[Label] = []

    def keep_free(self, boxes: Iterable[Box]) -> None:
        """Say where words would cover something that has to be seen."""
        self._things += boxes

    def take(self, labels: Iterable[Label]) -> None:
        """Labels that stand where they are."""
        for label in labels:
            self.labels.append(label)
            self._words.append(label_box(label, self._text_in))

    def put(self, text: str, places: Sequence[Place]) -> None:
        """Put a label at the best of some places, the first of those that are as good."""
        labels = [Label(text, at, anchor) for at, anchor in places]
        self.take([min(labels, key=self._cost)])

    def _cost(self, label: Label) -> Fraction:
        box = label_box(label, self._text_in)
        over = sum((_shared(box, each) for each in self._words), _NONE)
        hidden = sum((_shared(box, each) for each in self._things), _NONE)
        (left, bottom), (right, top) = box
        first, last = self._bounds
        out = max(first - left, _NONE) + max(right - last, _NONE)
        return over * _WORDS_WEIGH + hidden + out * (top - bottom) * _EDGE_WEIGHS


def _shared(one: Box, two: Box) -> Fraction:
    """The area that two boxes share."""
    (left1, bottom1), (right1, top1) = one
    (left2, bottom2), (right2, top2) = two
    wide = min(right1, right2) - max(left1, left2)
    high = min(top1, top2) - max(bottom1, bottom2)
    return wide * high if wide > 0 and high > 0 else _NONE


def round_about(box: Box, text_in: Fraction) -> tuple[Place, ...]:
    """Places round a thing: above, below and beside it, near ones first."""
    (left, bottom), (right, top) = box
    x, y = (left + right) / 2, (bottom + top) / 2
    found: list[Place] = []
    for share in (_NEAR, _FAR, _FURTHER):
        off = share * text_in
        found += [((x, top + off), "middle"), ((x, bottom - off), "middle")]
        for up in (top + off, y, bottom - off):
            beside = _BESIDE * text_in
            found += [((right + beside, up), "start"), ((left - beside, up), "end")]
    return tuple(found)


def line_box(one: Point, two: Point, text_in: Fraction) -> Box:
    """The room a straight line takes, with a little air."""
    air = text_in / 8
    (x1, y1), (x2, y2) = one, two
    return (min(x1, x2) - air, min(y1, y2) - air), (max(x1, x2) + air, max(y1, y2) + air)
