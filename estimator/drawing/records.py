"""A drawing as plain shapes, in inches: x from the wall's left end, y up from the floor.

Nothing here knows how it will be shown; a picture and a chart are both made from these. Names and
sentences are sayings; labels are told already, for their place hangs on how long they are.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import Literal
from unicodedata import normalize

Point = tuple[Fraction, Fraction]
Anchor = Literal["start", "middle", "end"]
RectKind = Literal[
    "wall", "plate", "stud", "king", "jack", "cripple", "post", "block", "nog", "joist",
    "tee stud", "header", "sill", "obstacle", "door", "window", "opening", "protection plate",
    "existing box", "new box",
]  # fmt: skip
LineKind = Literal["run", "trim", "floor", "dimension", "tick", "witness"]

# Widths of letters as a share of their height, rather too much than too little.
_NARROW, _WIDE = "'\" .,:;!|ijlftrI()[]-/", "mwMW@%"
_NARROW_SHARE, _USUAL_SHARE = Fraction(35, 100), Fraction(57, 100)
_CAPITAL_SHARE, _WIDE_SHARE = Fraction(72, 100), Fraction(9, 10)
# Height of a line of text as a share of the height of its letters.
LINE_HIGH = Fraction(6, 5)


@dataclass(frozen=True, slots=True)
class Rect:
    """A rectangle, such as a stud or a box.

    Attributes:
        name: what it is, in words.
        count: how many things the one rectangle stands for (plates on both faces of a stud).
    """

    kind: RectKind
    left_in: Fraction
    bottom_in: Fraction
    right_in: Fraction
    top_in: Fraction
    name: str
    count: int = 1


@dataclass(frozen=True, slots=True)
class Line:
    """A line through points.

    Attributes:
        pattern: runs of cable are told apart by the pattern of their line: 0, 1, 2 ...
    """

    kind: LineKind
    points: tuple[Point, ...]
    name: str
    pattern: int = 0


@dataclass(frozen=True, slots=True)
class Label:
    """Words in the drawing; `at` is the left end, the middle or the right end of the text.

    Its height is halfway up the letters.

    Attributes:
        text: in the language of whoever reads the drawing.
    """

    text: str
    at: Point
    anchor: Anchor = "middle"


@dataclass(frozen=True, slots=True)
class Elevation:
    """One wall seen from its room, or one run laid out flat where no wall was drawn.

    Attributes:
        title: what is seen, in words. text_in: height of letters that suits its size.
        said: everything that is drawn, in sentences, for those who cannot see it.
    """

    title: str
    rects: tuple[Rect, ...]
    lines: tuple[Line, ...]
    labels: tuple[Label, ...]
    text_in: Fraction
    said: tuple[str, ...]

    @property
    def bounds(self) -> tuple[Point, Point]:
        """The corner at the bottom left and the one at the top right, labels included."""
        corners = [
            *((rect.left_in, rect.bottom_in) for rect in self.rects),
            *((rect.right_in, rect.top_in) for rect in self.rects),
            *(point for line in self.lines for point in line.points),
            *(point for label in self.labels for point in label_box(label, self.text_in)),
        ]
        across, up = zip(*corners, strict=True)
        return (min(across), min(up)), (max(across), max(up))


@dataclass(frozen=True, slots=True)
class Drawing:
    """All views of one job, and what could not be drawn and why."""

    elevations: tuple[Elevation, ...]
    remarks: tuple[str, ...]


def text_width_in(text: str, text_in: Fraction) -> Fraction:
    """About how wide a text will be."""
    return sum(map(_share, text), Fraction(0)) * text_in


@cache
def _share(letter: str) -> Fraction:
    """An accent makes no letter wider."""
    letter = normalize("NFD", letter)[0]
    if letter in _NARROW:
        return _NARROW_SHARE
    if letter in _WIDE or not letter.isascii():
        return _WIDE_SHARE
    return _CAPITAL_SHARE if letter.isupper() else _USUAL_SHARE


def label_box(label: Label, text_in: Fraction) -> tuple[Point, Point]:
    """About the room a label takes: bottom left and top right."""
    wide, (x, y) = text_width_in(label.text, text_in), label.at
    left = {"start": x, "middle": x - wide / 2, "end": x - wide}[label.anchor]
    high = text_in * LINE_HIGH / 2
    return (left, y - high), (left + wide, y + high)
