"""How each kind of thing is drawn: by lines, dashes and fills that black and white shows too.

Widths and dashes are shares of the height of letters, so that a picture and a chart agree.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from estimator.drawing.records import Drawing, LineKind, RectKind
from estimator.saying import Saying, said

Fill = Literal["none", "white", "pale", "dark", "black", "hatched", "dotted"]
Dash = Literal["solid", "dashed", "dotted", "dash-dot"]


@dataclass(frozen=True, slots=True)
class Stroke:
    """One line: its width as a share of the height of letters, and its dash."""

    wide: Fraction
    dash: Dash = "solid"


_HAIR, _THIN, _PLAIN, _THICK = (Fraction(share, 100) for share in (5, 8, 12, 30))

RECTS: dict[RectKind, tuple[Stroke, Fill]] = {
    "wall": (Stroke(_PLAIN), "white"),
    "plate": (Stroke(_HAIR), "pale"),
    "stud": (Stroke(_HAIR), "pale"),
    "king": (Stroke(_HAIR), "pale"),
    "jack": (Stroke(_HAIR), "pale"),
    "cripple": (Stroke(_HAIR), "pale"),
    "post": (Stroke(_HAIR), "pale"),
    "block": (Stroke(_HAIR), "pale"),
    "nog": (Stroke(_HAIR), "pale"),
    "joist": (Stroke(_HAIR), "pale"),
    "tee stud": (Stroke(_HAIR), "pale"),
    "header": (Stroke(_HAIR), "pale"),
    "sill": (Stroke(_HAIR), "pale"),
    "obstacle": (Stroke(_THIN, "dotted"), "dotted"),
    "door": (Stroke(_PLAIN), "white"),
    "window": (Stroke(_PLAIN), "white"),
    "opening": (Stroke(_THIN, "dashed"), "hatched"),
    "protection plate": (Stroke(_THIN), "dark"),
    "existing box": (Stroke(Fraction(18, 100)), "white"),
    "new box": (Stroke(_THIN), "black"),
}
LINES: dict[LineKind, Stroke] = {
    "trim": Stroke(_THIN, "dash-dot"),
    "floor": Stroke(Fraction(25, 100)),
    "dimension": Stroke(_HAIR),
    "tick": Stroke(_THIN),
    "witness": Stroke(_HAIR, "dotted"),
    "run": Stroke(_THICK),
}
RUNS: tuple[Stroke, ...] = (
    Stroke(_THICK),
    Stroke(_THICK, "dashed"),
    Stroke(_THICK, "dash-dot"),
    Stroke(_THICK, "dotted"),
)
_DASH_WORDS: dict[Dash, Saying] = {
    "solid": said("thick line"),
    "dashed": said("thick dashed line"),
    "dash-dot": said("thick line of dashes and dots"),
    "dotted": said("thick dotted line"),
}
_FRAMING: tuple[RectKind, ...] = (
    "plate", "stud", "king", "jack", "cripple", "post", "block", "nog", "joist", "tee stud",
    "header", "sill",
)  # fmt: skip
_RECT_WORDS: tuple[tuple[RectKind, Saying, Saying], ...] = (
    ("existing box", said("box that is there"), said("white rectangle with a thick edge")),
    ("new box", said("new box"), said("black rectangle")),
    ("opening", said("opening cut in the wall"), said("rectangle with a dashed edge")),
    (
        "protection plate",
        said("protection plate"),
        said("small dark rectangle on a stud or plate"),
    ),
    ("door", said("door"), said("rectangle with its name inside")),
    ("window", said("window"), said("rectangle with its name inside")),
    (
        "obstacle",
        said("something in the way"),
        said("rectangle with a dotted edge, with its name"),
    ),
)


@dataclass(frozen=True, slots=True)
class Key:
    """One line of the key: what is drawn, and how, in words; and the kind it shows."""

    what: Saying
    how: Saying
    rect: RectKind | None = None
    line: Stroke | None = None


def run_stroke(pattern: int) -> Stroke:
    """The line of a run, by its number among the runs."""
    return RUNS[pattern % len(RUNS)]


def key_of(drawing: Drawing) -> Iterator[Key]:
    """What the drawing uses, each with how it is drawn; what it does not hold is left out."""
    rects = {rect.kind for view in drawing.elevations for rect in view.rects}
    lines = {line.kind for view in drawing.elevations for line in view.lines}
    runs = {
        (line.pattern, line.name)
        for view in drawing.elevations
        for line in view.lines
        if line.kind == "run"
    }
    for pattern, name in sorted(runs):
        stroke = run_stroke(pattern)
        yield Key(said("{run} of cable", run=name), _DASH_WORDS[stroke.dash], line=stroke)
    for kind, what, how in _RECT_WORDS:
        if kind in rects:
            yield Key(what, how, rect=kind)
    if rects & set(_FRAMING):
        how = said("thin lines; a stud shows its narrow side")
        yield Key(said("studs, plates and other framing"), how, rect="stud")
    if "trim" in lines:
        how = said("thin line of dashes and dots")
        yield Key(said("top of the trim"), how, line=LINES["trim"])
