"""A sheet while it is written: rows of cells from the top, named tables, widths and heights."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date
from typing import NamedTuple

from estimator.language import ENGLISH, Language
from estimator.measures import Exact
from estimator.outputs import looks
from estimator.outputs.charts import Picture
from estimator.outputs.line_charts import LinePicture
from estimator.outputs.looks import Look
from estimator.outputs.paging import LINE_PT, ROW_PADDING_PT, lines_needed
from estimator.outputs.xlsx_values import clean_text, day_number, plain_number

TALLEST_PT = 409
TITLE_PT, SECTION_PT = 21, 19
_ROOM = {looks.MONEY: 10, looks.HOURS: 6, looks.PERCENT: 6, looks.DATE: 0}
"""Characters that a figure takes beside its whole digits: point, decimals, sign, separators."""
_LONGEST_PLAIN = 11
_FORMULA_LIKE = re.compile("\\s*[=+\\-@\t\r\n\uff1d\uff0b\uff0d\uff20]")


class Cell(NamedTuple):
    """One cell: its look and either text, a number, or a formula with the value it must give."""

    look: Look
    text: str | None = None
    value: Exact | str | None = None
    formula: str = ""


Row = list[Cell | None]


class Placed(NamedTuple):
    """A cell in its place, ready to be written.

    Attributes:
        value: clean text, a number, or None for an empty cell; with a formula, its value.
    """

    row: int
    column: int
    look: Look
    value: Exact | str | None
    formula: str = ""


def words(text: str, look: Look = looks.TEXT) -> Cell:
    """Text, whatever it begins with."""
    return Cell(look, text=text)


def number(value: Exact, look: Look | None = None) -> Cell:
    """A figure that stands on its own, framed as one that may be changed unless told otherwise."""
    return Cell(look or looks.entry(), value=value)


def middle(text: str) -> Cell:
    """Text in the middle of its column, such as a unit."""
    return Cell(looks.MIDDLE, text=text)


def line_number(at: int) -> Cell:
    """The number of a line, for people to point at."""
    return Cell(looks.MIDDLE, value=at)


def figure_only(value: Exact) -> Cell:
    """A figure for information: nothing is worked out from it."""
    return Cell(looks.figure(), value=value)


def formula(text: str, value: Exact | str, look: Look | None = None) -> Cell:
    """A formula, without its equals sign, and the value found without it."""
    return Cell(look or looks.figure(), value=value, formula=text)


def day(value: date, look: Look) -> Cell:
    """A date that programs can reckon with."""
    return Cell(look, value=day_number(value))


def blank(look: Look = looks.TEXT) -> Cell:
    """An empty cell with a look, such as a line to sign on."""
    return Cell(look)


@dataclass(frozen=True, slots=True)
class Table:
    """A named table: its header row, and its last row."""

    name: str
    headers: tuple[str, ...]
    first_row: int
    last_row: int


@dataclass(slots=True)
class Sheet:
    """One sheet, written row by row from the top.

    Attributes:
        widths: column letter to width in characters; a long figure may widen its column.
        language: what its sayings are told in.
        wide: printed across the paper's long side.
        one_page: printed on one page whatever its length.
        frozen_rows: rows that stay in sight and are repeated on every printed page, and
            frozen_pt their height.
        choices: cells that hold one of a few words, and these, parted by commas.
        sections: the row in which each section begins, and how far down the sheet that is.
        own_pages: of these rows, those that begin a new page wherever the last one ended.
        printed_to: last row that is printed; 0 for all of them.
        placed: every cell written so far. heights_pt: of each row that holds any.
    """

    name: str
    widths: dict[str, float]
    language: Language = ENGLISH
    wide: bool = True
    one_page: bool = False
    frozen_rows: int = 0
    tables: list[Table] = field(default_factory=list)
    picture: Picture | None = None
    drawings: list[LinePicture] = field(default_factory=list)
    choices: list[tuple[str, str]] = field(default_factory=list)
    sections: list[tuple[int, float]] = field(default_factory=list)
    own_pages: list[int] = field(default_factory=list)
    printed_to: int = 0
    frozen_pt: float = 0
    height_pt: float = 0
    placed: list[Placed] = field(default_factory=list)
    heights_pt: dict[int, float] = field(default_factory=dict)
    _next: int = 1

    @property
    def next_row(self) -> int:
        """Number of the row that `put` writes next."""
        return self._next

    @property
    def used(self) -> str:
        """The range that is printed: everything written, unless it was told to end before."""
        return f"A1:{list(self.widths)[-1]}{self.printed_to or max(self._next - 1, 1)}"

    def ref(self, column: str, row: int) -> str:
        """Name a cell of this sheet so that any sheet's formula can use it."""
        return f"{self._quoted}!${column}${row}"

    def span(self, column: str, first: int, last: int) -> str:
        """Name a piece of a column so that any sheet's formula can use it."""
        return f"{self._quoted}!${column}${first}:${column}${last}"

    @property
    def _quoted(self) -> str:
        """The name as formulas write it; an apostrophe in it is doubled."""
        return "'" + self.name.replace("'", "''") + "'"

    def title(self, text: str) -> None:
        """Write the sheet's title in A1."""
        self.put([words(text, looks.TITLE)], height_pt=TITLE_PT)

    def note(self, text: str) -> None:
        """Write a line under the title or a table; it runs on over the empty cells beside it."""
        self.put([words(text, looks.NOTE)])

    def freeze(self) -> None:
        """Keep what is written so far in sight, and repeat it on every page."""
        self.frozen_rows, self.frozen_pt = self._next - 1, self.height_pt

    def begin_block(self) -> None:
        """Begin what should not be parted by the end of a page, as far as it fits on one."""
        self.sections.append((self._next, self.height_pt))

    def section(self, text: str) -> None:
        """Leave a row free and write a heading with a rule across the sheet."""
        self.begin_block()
        self.skip()
        rest = [blank(looks.RULE) for _ in list(self.widths)[1:]]
        self.put([words(text, looks.SECTION), *rest], height_pt=SECTION_PT)

    def page(self, text: str) -> None:
        """Begin a section on a page of its own."""
        self.own_pages.append(self._next)
        self.section(text)

    def skip(self, rows: int = 1) -> None:
        """Leave rows free."""
        self._next += rows
        self.height_pt += rows * LINE_PT

    def put(self, cells: Sequence[Cell | None], height_pt: float = 0) -> int:
        """Write the next row from column A on; None leaves a cell out. Gives the row's number.

        A row is as tall as its longest wrapped text needs, or as asked.
        """
        row, lines = self._next, 1
        for at, (column, cell) in enumerate(zip(self.widths, cells, strict=False), start=1):
            if cell is None:
                continue
            made = self.placed_at(row, at, self._told(cell))
            self.placed.append(made)
            if not isinstance(made.value, str):
                self._widen(column, made)
            elif made.look.wrap:
                width, bold = self.widths[column], made.look.bold
                lines = max(lines, lines_needed(made.value, width, bold=bold))
        tall = min(height_pt or lines * LINE_PT + ROW_PADDING_PT, TALLEST_PT)
        self.heights_pt[row] = tall
        self._next += 1
        self.height_pt += tall
        return row

    def _told(self, cell: Cell) -> Cell:
        """The cell in the sheet's language."""
        if cell.text is not None:
            return cell._replace(text=self.language.say(cell.text))
        return (
            cell._replace(value=self.language.say(cell.value))
            if isinstance(cell.value, str)
            else cell
        )

    @staticmethod
    def placed_at(row: int, column: int, cell: Cell) -> Placed:
        """Clean the text; text that begins like a formula is marked as text."""
        if cell.text is not None:
            text = clean_text(cell.text)
            look = looks.quoted(cell.look) if _FORMULA_LIKE.match(text) else cell.look
            return Placed(row, column, look, text)
        value = clean_text(cell.value) if isinstance(cell.value, str) else cell.value
        return Placed(row, column, cell.look, value, cell.formula)

    def _widen(self, column: str, made: Placed) -> None:
        """See that the column is wide enough for a figure."""
        if made.value is None or isinstance(made.value, str):
            return
        shown = plain_number(made.value)
        whole = len(shown.partition(".")[0])
        room = whole + _ROOM.get(made.look.form, len(shown[whole:_LONGEST_PLAIN]) + 1)
        self.widths[column] = max(self.widths[column], room)

    def table(
        self, name: str, headers: Sequence[str], rows: Iterable[Sequence[Cell | None]]
    ) -> Table:
        """Write a named table. Rows are made while they are written, so they may ask `next_row`."""
        told = _distinct([self.language.say(header) for header in headers])
        first = self.put([words(header, looks.HEAD) for header in told])
        for row in rows:
            self.put(row)
        made = Table(name, told, first, self._next - 1)
        if made.last_row > first:
            self.tables.append(made)
        return made


def _distinct(headers: Sequence[str]) -> tuple[str, ...]:
    """Number what two columns are both called: no table may have two columns of one name."""
    seen: dict[str, int] = {}
    made = []
    for header in headers:
        count = seen[header.casefold()] = seen.get(header.casefold(), 0) + 1
        made.append(header if count == 1 else f"{header} {count}")
    return tuple(made)


def joined(parts: Mapping[str, str]) -> str:
    """Join what is filled in, each with its name before it."""
    return "; ".join(f"{name} {text}".strip() for name, text in parts.items() if text)
