"""Charts of lines through points, as the wall drawing asks for them."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

Point = tuple[Fraction, Fraction]
Dash = Literal["solid", "dashed", "dotted", "dash-dot"]
Side = Literal["left", "right", "middle"]


@dataclass(frozen=True, slots=True)
class Trace:
    """Lines that look alike, drawn from two pieces of columns; None lifts the pen.

    Attributes:
        across, up: the ranges that x and y stand in. points: what stands there.
    """

    name: str
    across: str
    up: str
    points: tuple[Point | None, ...]
    wide_pt: Fraction
    dash: Dash
    grey: Literal["black", "dark", "pale"] = "black"


@dataclass(frozen=True, slots=True)
class Word:
    """A text at a point; `side` says on which side of the point it stands.

    Attributes:
        cell, across, up: the cells that text, x and y stand in.
    """

    text: str
    cell: str
    across: str
    up: str
    at: Point
    side: Side


@dataclass(frozen=True, slots=True)
class LinePicture:
    """One chart, true to scale: as wide against its height as what it shows.

    Attributes:
        said: everything in words, for those who cannot see it.
        low, high: the corner at the bottom left and the one at the top right, in units of x and y.
        size_cm: height and width. row: row of the sheet at whose left end the chart begins.
    """

    title: str
    said: str
    traces: tuple[Trace, ...]
    words: tuple[Word, ...]
    low: Point
    high: Point
    size_cm: tuple[Fraction, Fraction]
    text_pt: Fraction
    row: int
