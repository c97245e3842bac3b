"""Changes single cells of a CSV text and leaves every other character as it is."""

from __future__ import annotations

import re
from collections.abc import Mapping

_MUST_QUOTE = '"\r\n'
_SEPARATOR = re.compile(r"sep=[^\r\n]\r?\n", re.IGNORECASE)


def change_cells(text: str, delimiter: str, cells: Mapping[tuple[int, int], str]) -> str:
    """Write new texts into cells.

    Order, columns, blank rows, line ends and the quotes of other cells stay as they were.

    Args:
        text: the whole file.
        delimiter: what stands between its cells.
        cells: new text by row (as a spreadsheet counts, from 1) and column (from 0); a column
            past the end of a short row adds the cells between.
    """
    hidden = _SEPARATOR.match(text)
    start = hidden.end() if hidden else 0
    body, made, end = text[start:], [text[:start]], 0
    for row, spans in enumerate(_rows(body, delimiter), start=1):
        for column in sorted(at for here, at in cells if here == row):
            new = cells[row, column]
            if column < len(spans):
                first, last = spans[column]
                made += [body[end:first], _written(new, body[first:last], delimiter)]
                end = last
            else:
                last = spans[-1][1]
                gap = delimiter * (column - len(spans) + 1)
                made += [body[end:last], gap, _written(new, "", delimiter)]
                end = last
    return "".join([*made, body[end:]])


def _rows(body: str, delimiter: str) -> list[list[tuple[int, int]]]:
    """Where each cell of each record begins and ends, quotes included."""
    mark = re.escape(delimiter)
    cell = re.compile(rf'("(?:[^"]|"")*"|(?!")[^{mark}\r\n]*)({mark}|\r\n|\n|\r|\Z)')
    rows: list[list[tuple[int, int]]] = []
    at, begins = 0, True
    while at < len(body) or not begins:
        found = cell.match(body, at)
        if found is None:
            raise ValueError(f"a quote is out of place at character {at}")
        if begins:
            rows.append([])
        rows[-1].append(found.span(1))
        begins, at = found[2] != delimiter, found.end()
    return rows


def _written(new: str, old: str, delimiter: str) -> str:
    """The new text, in quotes where the old one had them or it cannot do without."""
    quoted = old.startswith('"') or any(mark in new for mark in (delimiter, *_MUST_QUOTE))
    return '"' + new.replace('"', '""') + '"' if quoted else new
