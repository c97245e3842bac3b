"""A CSV book as rows of text: any spreadsheet program's export, rows counted as it shows them."""

from __future__ import annotations

import csv
import io
from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass
from difflib import get_close_matches

from estimator.problems import InputError, Problem

DELIMITERS = (",", ";", "\t", "|")
_SEPARATOR_LINE = "sep="
_QUOTES = 'Close each quote at the end of its cell, and double a quote inside one: "1/2"" board".'


@dataclass(frozen=True, slots=True)
class Heading:
    """The heading row of a table.

    Attributes:
        delimiter: what stands between cells.
        texts: headings as the file has them, stripped.
        keys: the same in lower case with _ for spaces, by which columns are known.
        row: row of the headings as a spreadsheet counts it. lines: lines of the file up to
            and with it.
    """

    delimiter: str
    texts: tuple[str, ...]
    keys: tuple[str, ...]
    row: int
    lines: int

    def text(self, key: str) -> str:
        """Give the heading as the file has it; the key where it has none."""
        return self.texts[self.keys.index(key)] if key in self.keys else key


@dataclass(frozen=True, slots=True)
class Table:
    """What stands below the heading.

    Attributes:
        rows: row number and cells, stripped, as many as there are headings; no blank rows.
        wide: numbers of the rows that have more cells than that; they are not in `rows`.
    """

    name: str
    heading: Heading
    rows: tuple[tuple[int, tuple[str, ...]], ...]
    wide: tuple[int, ...] = ()

    def column(self, key: str) -> Iterator[str]:
        """Give the texts of one column; none where there is no such column."""
        if key in self.heading.keys:
            place = self.heading.keys.index(key)
            yield from (cells[place] for _, cells in self.rows)


def read_table(text: str, name: str, known: Collection[str], needed: Sequence[str]) -> Table:
    """Split a CSV text into rows.

    Rows count as a spreadsheet shows them: the first is 1, blank rows count, and a cell with
    line breaks in it belongs to one row. Blank rows are left out.

    Args:
        text: the whole file.
        name: what to call it in problems.
        known: column keys that may be expected; they tell which delimiter the file uses.
        needed: column keys that must be there.

    Raises:
        InputError: no heading row, needed columns missing, two columns alike, or a quote that
            is never closed.
    """
    body = _without_separator_line(text)
    heading = read_heading(text, name, known, needed)
    rows: list[tuple[int, tuple[str, ...]]] = []
    wide: list[int] = []
    width = len(heading.keys)
    for row, cells in _numbered(io.StringIO(body, newline=""), heading.delimiter, name):
        if row <= heading.row or not any(cells):
            continue
        if any(cells[width:]):
            wide.append(row)
        else:
            rows.append((row, (*cells[:width], *[""] * (width - len(cells)))))
    return Table(name, heading, tuple(rows), tuple(wide))


def read_heading(start: str, name: str, known: Collection[str], needed: Sequence[str]) -> Heading:
    """Find the delimiter and the heading row at the start of a CSV text.

    Raises:
        InputError: as `read_table`.
    """
    body = _without_separator_line(start)
    hidden = 1 if body is not start else 0
    given = [start[len(_SEPARATOR_LINE)]] if hidden else DELIMITERS
    found = [_heading(body, delimiter, hidden) for delimiter in given]
    headings = [heading for heading in found if heading is not None]
    if not headings and body.strip():
        raise InputError([_stray_quote(name, 1)])
    if not headings:
        raise InputError([Problem(name, "is empty.", f"Write the headings: {', '.join(needed)}.")])
    best = max(headings, key=lambda one: (len({*one.keys} & {*known}), len(one.keys)))
    problems = [*_twice(best, name), *_without(best, name, needed)]
    if problems:
        raise InputError(problems)
    return best


def _without_separator_line(text: str) -> str:
    """Drop a first line like sep=; which a spreadsheet program hides."""
    first, _, rest = text.partition("\n")
    is_one = (
        first.lower().startswith(_SEPARATOR_LINE)
        and len(first.strip("\r")) == len(_SEPARATOR_LINE) + 1
    )
    return rest if is_one else text


def _heading(body: str, delimiter: str, hidden: int) -> Heading | None:
    """Read the first row that is not blank, split at one delimiter, after the hidden lines."""
    reader = csv.reader(io.StringIO(body, newline=""), delimiter=delimiter, strict=True)
    try:
        for row, cells in enumerate(reader, start=1):
            texts = tuple(cell.strip() for cell in cells)
            if any(texts):
                keys = tuple(map(column_key, texts))
                return Heading(delimiter, texts, keys, row, reader.line_num + hidden)
    except csv.Error:
        return None
    return None


def column_key(text: str) -> str:
    """Turn a heading into the key its column is known by: lower case, _ for spaces."""
    return "_".join(text.lower().replace("-", " ").split())


def _numbered(lines: Iterable[str], delimiter: str, name: str) -> Iterator[tuple[int, list[str]]]:
    """Number the records and strip their cells; a quote out of place stops the reading."""
    row = 0
    try:
        for row, cells in enumerate(csv.reader(lines, delimiter=delimiter, strict=True), start=1):
            yield row, [cell.strip() for cell in cells]
    except csv.Error:
        raise InputError([_stray_quote(name, row + 1)]) from None


def _stray_quote(name: str, row: int) -> Problem:
    """Say that a quote is out of place."""
    read = "a quote begins a cell here and does not end it properly."
    return Problem(f"{name}: row {row}", read, _QUOTES)


def wide_rows(lines: Iterable[str], name: str, heading: Heading) -> Iterator[int]:
    """Find the rows of a large file that have more cells than there are headings.

    Raises:
        InputError: a quote that is never closed.
    """
    width = len(heading.keys)
    for row, cells in _numbered(lines, heading.delimiter, name):
        if any(cells[width:]):
            yield row


def _twice(heading: Heading, name: str) -> Iterator[Problem]:
    """Name the headings that stand twice."""
    for place, key in enumerate(heading.keys):
        if key and key in heading.keys[:place]:
            read = f'the column "{heading.texts[place]}" stands twice.'
            yield Problem(f"{name}: row {heading.row}", read, "Rename or delete one of them.")


def _without(heading: Heading, name: str, needed: Sequence[str]) -> Iterator[Problem]:
    """Name the columns that are needed and missing, with the heading that is nearest."""
    for key in needed:
        if key in heading.keys:
            continue
        near = get_close_matches(key, heading.keys, n=1)
        write = (
            f'Rename "{heading.text(near[0])}", or' if near else "Give a column that heading, or"
        )
        write += " copy the headings of the shipped book."
        yield Problem(f"{name}: row {heading.row}", f"the column {key} is missing.", write)
