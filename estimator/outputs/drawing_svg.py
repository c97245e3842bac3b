"""The wall drawing as SVG: plain shapes and words, with a title and all of it in sentences."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from estimator.drawing.records import Drawing, Elevation, Label, Line, Rect
from estimator.language import ENGLISH, Language
from estimator.outputs.drawing_style import (
    LINES,
    RECTS,
    Dash,
    Fill,
    Key,
    Stroke,
    key_of,
    run_stroke,
)
from estimator.outputs.markup import plain, safe
from estimator.saying import listed

LETTER = 10
"""Height of letters in the picture's own units; everything else follows."""
_MARGIN = Fraction(5)
_BASELINE = Fraction(7, 20)  # from the middle of a capital down to the line it stands on
_HALO = Fraction(5, 2)
_INK, _SOFT = "#000", "#444"
_DASHES: dict[Dash, tuple[Fraction, ...]] = {
    "solid": (),
    "dashed": (Fraction(6), Fraction(4)),
    "dotted": (Fraction(1), Fraction(3)),
    "dash-dot": (Fraction(9), Fraction(3), Fraction(2), Fraction(3)),
}
_SWATCH = (48, 20)


@dataclass(frozen=True, slots=True)
class _Frame:
    """Turns inches from the floor up into the picture's units from the top down."""

    left_in: Fraction
    top_in: Fraction
    scale: Fraction
    mark: str

    def x(self, x_in: Fraction) -> str:
        return plain((x_in - self.left_in) * self.scale + _MARGIN)

    def y(self, height_in: Fraction) -> str:
        return plain((self.top_in - height_in) * self.scale + _MARGIN)

    def size(self, length_in: Fraction) -> str:
        return plain(length_in * self.scale)


def elevation_svg(view: Elevation, mark: str, language: Language = ENGLISH) -> str:
    """Draw one view.

    Args:
        view: the view.
        mark: begins every id of the picture, so that several may stand on one page.
        language: of its title and description, and what its labels were told in when drawn.
    """
    (left, bottom), (right, top) = view.bounds
    scale = LETTER / view.text_in
    frame = _Frame(left, top, scale, mark)
    wide = plain((right - left) * scale + 2 * _MARGIN)
    high = plain((top - bottom) * scale + 2 * _MARGIN)
    shapes = "\n".join(_shapes(view, frame))
    title, said = language.say(view.title), language.say(listed(view.said, " "))
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {wide} {high}" role="img" '
        f'aria-labelledby="{mark}-title {mark}-desc" font-family="Arial, Helvetica, sans-serif" '
        f'font-size="{LETTER}">\n'
        f'<title id="{mark}-title">{safe(title)}</title>\n'
        f'<desc id="{mark}-desc">{safe(said)}</desc>\n'
        f"{_patterns(mark)}\n{shapes}\n</svg>"
    )


def _patterns(mark: str) -> str:
    """Fills of slanting lines and of dots."""
    box = 'width="6" height="6" patternUnits="userSpaceOnUse"'
    return (
        f'<defs><pattern id="{mark}-hatched" {box} patternTransform="rotate(45)">'
        f'<path d="M0 0V6" stroke="{_INK}" stroke-width="1"/></pattern>'
        f'<pattern id="{mark}-dotted" {box}><circle cx="3" cy="3" r="1"/></pattern></defs>'
    )


def _shapes(view: Elevation, frame: _Frame) -> Iterator[str]:
    """Everything in the order it is laid down: the wall first, words last."""
    front = ("existing box", "new box", "protection plate")
    yield from (_rect(each, frame) for each in view.rects if each.kind not in front)
    yield from (_line(each, frame) for each in view.lines if each.kind != "run")
    yield from (_line(each, frame) for each in view.lines if each.kind == "run")
    yield from (_rect(each, frame) for each in view.rects if each.kind in front)
    yield from (_text(each, frame) for each in view.labels)


def _rect(rect: Rect, frame: _Frame) -> str:
    stroke, fill = RECTS[rect.kind]
    wide, high = rect.right_in - rect.left_in, rect.top_in - rect.bottom_in
    return (
        f'<rect x="{frame.x(rect.left_in)}" y="{frame.y(rect.top_in)}" '
        f'width="{frame.size(wide)}" height="{frame.size(high)}" '
        f"{_fill(fill, frame.mark)} {_stroke(stroke)}/>"
    )


def _line(line: Line, frame: _Frame) -> str:
    points = " ".join(f"{frame.x(x)},{frame.y(y)}" for x, y in line.points)
    stroke = run_stroke(line.pattern) if line.kind == "run" else LINES[line.kind]
    return f'<polyline points="{points}" fill="none" {_stroke(stroke)}/>'


def _fill(fill: Fill, mark: str) -> str:
    plain_fills = {"none": "none", "white": "#fff", "pale": "#eee", "dark": _SOFT, "black": _INK}
    return f'fill="{plain_fills.get(fill, f"url(#{mark}-{fill})")}"'


def _stroke(stroke: Stroke) -> str:
    said = f'stroke="{_INK}" stroke-width="{plain(stroke.wide * LETTER)}"'
    dashes = _DASHES[stroke.dash]
    if not dashes:
        return said
    return f'{said} stroke-dasharray="{" ".join(map(plain, dashes))}"'


def _text(label: Label, frame: _Frame) -> str:
    """Words with a white edge, so that they can be read over lines."""
    x, y = label.at
    down = y - _BASELINE * LETTER / frame.scale
    return (
        f'<text x="{frame.x(x)}" y="{frame.y(down)}" text-anchor="{label.anchor}" '
        f'stroke="#fff" stroke-width="{plain(_HALO)}" paint-order="stroke" '
        f'stroke-linejoin="round" xml:space="preserve">{safe(label.text)}</text>'
    )


def swatch_svg(key: Key, mark: str) -> str:
    """A small piece of what a line of the key speaks of; hidden from readers of words."""
    wide, high = _SWATCH
    shape = ""
    if key.rect is not None:
        stroke, fill = RECTS[key.rect]
        shape = f'<rect x="14" y="3" width="20" height="14" {_fill(fill, mark)} {_stroke(stroke)}/>'
    elif key.line is not None:
        shape = f'<path d="M2 10H46" fill="none" {_stroke(key.line)}/>'
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {wide} {high}" width="{wide}" '
        f'height="{high}" aria-hidden="true" focusable="false">{_patterns(mark)}{shape}</svg>'
    )


def titled_elevation(view: Elevation, at: int, title: str, language: Language) -> Iterator[str]:
    """One view on a page below its title; it scrolls by itself where the page is not so wide.

    Args:
        view: the view.
        at: its number on the page.
        title: as markup.
        language: as for `elevation_svg`.
    """
    yield f'<h3 id="view{at}">{title}</h3>'
    yield f'<div class="wide" role="group" aria-labelledby="view{at}" tabindex="0">'
    yield elevation_svg(view, f"wall{at}", language)
    yield "</div>"


def key_items(drawing: Drawing, language: Language = ENGLISH) -> Iterator[tuple[str, str]]:
    """The key to all views: a swatch, and what it stands for in words."""
    for at, key in enumerate(key_of(drawing), start=1):
        words = listed((key.what, key.how), ": ")
        yield swatch_svg(key, f"key{at}"), language.say(words)
