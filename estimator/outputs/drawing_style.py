"""How each kind of thing is drawn: by lines, dashes and fills that black and white shows too.

Widths and dashes are shares of the height of letters, so that a picture and a chart agree.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from estimator.drawing.records import Drawing, LineKind, RectKind

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
_DASH_WORDS: dict[Dash, str] = {
    "solid": "thick line",
    "dashed": "thick dashed line",
    "dash-dot": "thick line of dashes and dots",
    "dotted": "thick dotted line",
}
_FRAMING: tuple[RectKind, ...] = (
    "plate", "stud", "king", "jack", "cripple", "post", "block", "nog", "joist", "tee stud",
    "header", "sill",
)  # fmt: skip
_RECT_WORDS: tuple[tuple[RectKind, str, str], ...] = (
    ("existing box", "box that is there", "white rectangle with a thick edge"),
    ("new box", "new box", "black rectangle"),
    ("opening", "opening cut in the wall", "rectangle with a dashed edge"),
    ("protection plate", "protection plate", "small dark rectangle on a stud or plate"),
    ("door", "door", "rectangle with its name inside"),
    ("window", "window", "rectangle with its name inside"),
    ("obstacle", "something in the way", "rectangle with a dotted edge, with its name"),
)


@dataclass(frozen=True, slots=True)
class Key:
    """One line of the key: what is drawn, and how, in words; and the kind it shows."""

    what: str
    how: str
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
        yield Key(f"{name} of cable", _DASH_WORDS[stroke.dash], line=stroke)
    for kind, what, how in _RECT_WORDS:
        if kind in rects:
            yield Key(what, how, rect=kind)
    if rects & set(_FRAMING):
        how = "thin lines; a stud shows its narrow side"
        yield Key("studs, plates and other framing", how, rect="stud")
    if "trim" in lines:
        yield Key("top of the trim", "thin line of dashes and dots", line=LINES["trim"])
