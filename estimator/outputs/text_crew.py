"""The crew sheet for the terminal, in one language or in two side by side."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Sequence
from itertools import zip_longest

from estimator.outputs.crew_records import CrewGroup, CrewLine, CrewSheet
from estimator.outputs.text_layout import COLUMNS, printable

_BETWEEN = " | "
_TICK, _PLAIN, _RULE = "[ ] ", "    ", "_"


def crew_text(sheets: Sequence[CrewSheet]) -> list[str]:
    """Lines of at most 79 characters; two languages stand side by side, line by line."""
    lines = [*_beside([sheet.title for sheet in sheets])]
    for heads in zip(*(sheet.head for sheet in sheets), strict=True):
        lines += _beside(heads)
    for parts in zip(*(sheet.parts for sheet in sheets), strict=True):
        lines += ["", *_beside([part.title for part in parts]), "-" * (COLUMNS - 1)]
        for groups in zip(*(part.groups for part in parts), strict=True):
            lines += _group(groups)
    return lines


def _group(groups: Sequence[CrewGroup]) -> Iterator[str]:
    if groups[0].title:
        yield from _beside([group.title for group in groups])
    for lines in zip(*(group.lines for group in groups), strict=True):
        yield from _line(lines)
    if groups[0].headers:
        yield from _table(groups)


def _line(lines: Sequence[CrewLine]) -> Iterator[str]:
    mark = _TICK if lines[0].tick else _PLAIN
    yield from _beside([line.text for line in lines], mark)
    if lines[0].write:
        yield _PLAIN + _RULE * (COLUMNS - 1 - len(_PLAIN))


def _table(groups: Sequence[CrewGroup]) -> Iterator[str]:
    """Headers, and a line to write on for each row, with what stands in the row already."""
    yield from _beside([", ".join(group.headers) for group in groups], _PLAIN)
    for rows in zip(*(group.rows for group in groups), strict=True):
        said = ["; ".join(cell for cell in row.cells if cell) for row in rows]
        if any(said):
            yield from _beside(said, _PLAIN)
        yield _PLAIN + _RULE * (COLUMNS - 1 - len(_PLAIN))


def _beside(texts: Sequence[str], mark: str = "") -> Iterator[str]:
    """Wrapped texts in columns of one width; once where they are the same."""
    if len(set(texts)) == 1:
        yield from _wrapped(texts[0], COLUMNS - 1, mark)
        return
    width = (COLUMNS - 1 - len(_BETWEEN)) // 2
    columns = [_wrapped(text, width, mark if at == 0 else "") for at, text in enumerate(texts)]
    for left, right in zip_longest(*columns, fillvalue=""):
        yield f"{left:<{width}}{_BETWEEN}{right}".rstrip()


def _wrapped(text: str, width: int, mark: str) -> list[str]:
    return textwrap.wrap(
        printable(text),
        width,
        initial_indent=mark,
        subsequent_indent=" " * len(mark),
        break_on_hyphens=False,
    )
