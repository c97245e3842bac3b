"""The Wall drawing sheet: each wall as a native chart, the same in words, and every point."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from math import ceil
from typing import Literal

from estimator.drawing.draw import draw
from estimator.drawing.records import Anchor, Drawing, Elevation, Label
from estimator.measures import in_to_mm
from estimator.outputs import looks
from estimator.outputs.cells import Row, Sheet, blank, line_number, number, words
from estimator.outputs.draft import Draft
from estimator.outputs.drawing_points import Group, Shape, groups_of
from estimator.outputs.drawing_style import key_of
from estimator.outputs.line_charts import LinePicture, Point, Side, Trace, Word
from estimator.saying import listed, said

NAME = said("Wall drawing")
WIDTHS = "7 26 62 15 15"
SAID_HEADERS = (said("Line"), said("View"), said("What is drawn"))
KEY_HEADERS = (said("Line"), said("What"), said("How it is drawn"))
_ADVICE = said(
    "True to scale. The lines are drawn from the points further down, which are not printed."
)
_NOT_DRAWN = said("not drawn")
_PEN_UP = said("end of this shape")
_TEXT = said("words")
_WIDE_CM, _HIGHEST_CM = Fraction(23), Fraction(15)
_PT_PER_CM = Fraction(7200, 254)
_ROW_CM = Fraction(45, 100)
_SMALLEST_PT, _LARGEST_PT = Fraction(6), Fraction(11)
_PT_PER_LETTER = Fraction(9)  # widths of lines are shares of a letter of this size
_FAINT = Fraction(7, 100)
_MOST_SERIES = 255  # that spreadsheet programs draw in one chart; the table holds all words
_MARGIN = Fraction(1)  # heights of letters
_FORMS = {"in": "0.00", "mm": "0"}
_SIDES: dict[Anchor, Side] = {"start": "right", "middle": "middle", "end": "left"}


def write_drawing(draft: Draft) -> Sheet:
    """Write the sheet: pictures first, then the same in words, then the points."""
    sheet = draft.sheet(NAME, WIDTHS, language=draft.language)
    draft.heading(sheet, NAME, _ADVICE)
    made = draw(draft.bid.survey, draft.bid.books.shop.practice, draft.language)
    rows = [_room_for(sheet, view, first=not at) for at, view in enumerate(made.elevations)]
    _in_words(sheet, made)
    sheet.printed_to = sheet.next_row - 1
    for at, (view, row) in enumerate(zip(made.elevations, rows, strict=True), start=1):
        sheet.drawings.append(_points(draft, sheet, view, (at, row)))
    return sheet


def _room_for(sheet: Sheet, view: Elevation, *, first: bool) -> int:
    """Leave room for a picture under its heading; gives the row it begins at."""
    (sheet.section if first else sheet.page)(view.title)
    row = sheet.next_row
    sheet.skip(ceil(_size_cm(view)[0] / _ROW_CM) + 1)
    return row


def _in_words(sheet: Sheet, made: Drawing) -> None:
    drawn = [(view.title, text) for view in made.elevations for text in view.said]
    drawn += [(_NOT_DRAWN, text) for text in made.remarks]
    sheet.page(said("The same in words"))
    rows = enumerate(drawn, start=1)
    sheet.table(
        "Drawn",
        SAID_HEADERS,
        ([line_number(at), words(view), words(text)] for at, (view, text) in rows),
    )
    sheet.section(said("How to read the lines"))
    keys = enumerate(key_of(made), start=1)
    sheet.table(
        "Line_key",
        KEY_HEADERS,
        ([line_number(at), words(key.what), words(key.how)] for at, key in keys),
    )


def _points(draft: Draft, sheet: Sheet, view: Elevation, place: tuple[int, int]) -> LinePicture:
    """Write the points of one view, and make its picture from them."""
    number_of_view, row = place
    unit = "mm" if draft.is_metric else "in"
    headers = (
        said("Point"),
        said("Part"),
        said("What"),
        said("From the left, {unit}", unit=unit),
        said("Height, {unit}", unit=unit),
    )
    table = _Points(sheet, unit, _pt_per_in(view))
    sheet.section(said("Points of: {view}", view=view.title))
    groups = tuple(groups_of(view))
    sheet.table(f"Points_{number_of_view}", headers, table.rows(groups, view.labels))
    low, high = _bounds(view)
    return LinePicture(
        title=draft.say(view.title),
        said=draft.say(listed(view.said, " ")),
        traces=tuple(table.traces),
        words=tuple(table.texts)[: _MOST_SERIES - len(table.traces)],
        low=table.at(low),
        high=table.at(high),
        size_cm=_size_cm(view),
        text_pt=min(max(view.text_in * table.pt_per_in, _SMALLEST_PT), _LARGEST_PT),
        row=row,
    )


class _Points:
    """Writes rows of points, and remembers which rows each line of the picture is drawn from."""

    def __init__(self, sheet: Sheet, unit: str, pt_per_in: Fraction) -> None:
        self._sheet, self._unit, self.pt_per_in = sheet, unit, pt_per_in
        self._number = 0
        self.traces: list[Trace] = []
        self.texts: list[Word] = []

    def at(self, point: Point) -> Point:
        """A point in the job's unit."""
        x, y = point
        return (x, y) if self._unit == "in" else (in_to_mm(x), in_to_mm(y))

    def rows(self, groups: tuple[Group, ...], labels: tuple[Label, ...]) -> Iterator[Row]:
        """A row for each point, and one without figures where the pen is lifted."""
        for group in groups:
            first, points = self._sheet.next_row, list[Point | None]()
            for at, shape in enumerate(group.shapes):
                if at:
                    points.append(None)
                    yield self._row(shape.kind, _PEN_UP, None)
                for point in shape.points:
                    points.append(self.at(point))
                    yield self._row(shape.kind, shape.name, points[-1])
            self._trace(group, first, points)
        for label in labels:
            row, at_point = self._sheet.next_row, self.at(label.at)
            yield self._row(_TEXT, label.text, at_point)
            cell, across, up = (self._sheet.ref(column, row) for column in "CDE")
            side = _SIDES[label.anchor]
            self.texts.append(Word(label.text, cell, across, up, at_point, side))

    def _row(self, part: str, what: str, point: Point | None) -> Row:
        self._number += 1
        look = looks.figure(_FORMS[self._unit])
        figures = [blank(), blank()] if point is None else [number(each, look) for each in point]
        return [line_number(self._number), words(part), words(what), *figures]

    def _trace(self, group: Group, first: int, points: list[Point | None]) -> None:
        wide_pt = group.stroke.wide * _PT_PER_LETTER
        if group.wide_in is not None:
            wide_pt = group.wide_in * self.pt_per_in
        self.traces.append(
            Trace(
                name=self._sheet.language.say(_called(group.shapes)),
                across=self._sheet.span("D", first, first + len(points) - 1),
                up=self._sheet.span("E", first, first + len(points) - 1),
                points=tuple(points),
                wide_pt=wide_pt,
                dash="solid" if group.wide_in is not None else group.stroke.dash,
                grey=_grey(group),
            )
        )


def _grey(group: Group) -> Literal["black", "dark", "pale"]:
    """Hairlines are pale, so that what matters stands out."""
    if group.fill == "dark":
        return "dark"
    return "pale" if group.stroke.wide < _FAINT else "black"


def _called(shapes: tuple[Shape, ...]) -> str:
    """The kinds of shape in a group, each once."""
    return listed(dict.fromkeys(shape.kind for shape in shapes))


def _bounds(view: Elevation) -> tuple[Point, Point]:
    (left, bottom), (right, top) = view.bounds
    edge = _MARGIN * view.text_in
    return (left - edge, bottom - edge), (right + edge, top + edge)


def _size_cm(view: Elevation) -> tuple[Fraction, Fraction]:
    """Height and width of a picture: as wide as the sheet, unless it would be too high."""
    (left, bottom), (right, top) = _bounds(view)
    share = (top - bottom) / (right - left)
    high = min(_WIDE_CM * share, _HIGHEST_CM)
    return high, high / share


def _pt_per_in(view: Elevation) -> Fraction:
    """Points of paper for an inch of wall."""
    (left, _), (right, _) = _bounds(view)
    return _size_cm(view)[1] * _PT_PER_CM / (right - left)
