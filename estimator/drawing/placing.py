"""Finds room for words in a drawing: the first place asked for where nothing is in the way."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction

from estimator.drawing.records import Anchor, Label, Point, label_box
from estimator.language import ENGLISH, Language

Box = tuple[Point, Point]
Place = tuple[Point, Anchor]
_Rough = tuple[float, float, float, float]
# Distances in heights of letters.
_NEAR, _FAR, _FURTHER = Fraction(9, 10), Fraction(11, 5), Fraction(7, 2)
_BESIDE = Fraction(3, 5)
_WORDS_WEIGH, _EDGE_WEIGHS = 100, 4


class Placer:
    """Places labels one after the other; those placed early have the better places.

    Binary numbers do here: they only choose between places, which stay exact.

    Args:
        text_in: height of letters.
        bounds: where words should stay, as left and right end.
        language: what they are told in; how much room they take hangs on it.
    """

    def __init__(
        self, text_in: Fraction, bounds: tuple[Fraction, Fraction], language: Language = ENGLISH
    ) -> None:
        self._text_in, self._language = text_in, language
        self._first, self._last = map(float, bounds)
        self._things: list[_Rough] = []
        self._words: list[_Rough] = []
        self.labels: list[Label] = []

    def keep_free(self, boxes: Iterable[Box]) -> None:
        """Say where words would cover something that has to be seen."""
        self._things += map(_rough, boxes)

    def take(self, labels: Iterable[Label]) -> None:
        """Labels that stand where they are."""
        for label in labels:
            self.labels.append(label)
            self._words.append(_rough(label_box(label, self._text_in)))

    def put(self, text: str, places: Sequence[Place]) -> None:
        """Put a label at the best of some places, the first of those that are as good."""
        best, least = None, float("inf")
        told = self._language.say(text)
        for at, anchor in places:
            label = Label(told, at, anchor)
            cost = self._cost(_rough(label_box(label, self._text_in)))
            if cost < least:
                best, least = label, cost
            if not cost:
                break
        if best is not None:
            self.take([best])

    def _cost(self, box: _Rough) -> float:
        over = sum(_shared(box, each) for each in self._words)
        hidden = sum(_shared(box, each) for each in self._things)
        left, bottom, right, top = box
        out = max(self._first - left, 0.0) + max(right - self._last, 0.0)
        return over * _WORDS_WEIGH + hidden + out * (top - bottom) * _EDGE_WEIGHS


def _rough(box: Box) -> _Rough:
    (left, bottom), (right, top) = box
    return float(left), float(bottom), float(right), float(top)


def _shared(one: _Rough, two: _Rough) -> float:
    """The area that two boxes share."""
    wide = min(one[2], two[2]) - max(one[0], two[0])
    if wide <= 0:
        return 0.0
    high = min(one[3], two[3]) - max(one[1], two[1])
    return wide * high if high > 0 else 0.0


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
