"""How much room text and sheets take: lines in a cell, and where a printed page should end."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Protocol

LINE_PT, ROW_PADDING_PT = 12.75, 1.0
# Widths of Helvetica's letters in thousandths of their size, which Arial shares (Adobe's font
# metrics); any other letter counts as a wide capital, a Chinese one as a full square.
_WIDTHS = {
    191: "'", 222: "ijl", 260: "|", 278: " !,./:;[\\]Ift", 333: "()-`r", 334: "{}", 355: '"',
    389: "*", 469: "^", 500: "Jckvsxyz", 556: "#$0123456789?L_abdeghnopqu", 584: "+<=>~",
    611: "FTZ", 667: "&ABEKPSVXY", 722: "CDHNRUw", 778: "GOQ", 833: "Mm", 889: "%", 944: "W",
    1015: "@",
}  # fmt: skip
_OTHER, _SQUARE, _WIDE_FROM = 778, 1000, "\u1100"


class _Letters(dict[str, int]):
    """Width of each letter; one that is not listed is looked at once."""

    def __missing__(self, letter: str) -> int:
        self[letter] = width = _SQUARE if letter >= _WIDE_FROM else _OTHER
        return width


_WIDTH = _Letters({letter: width for width, letters in _WIDTHS.items() for letter in letters})
_SPACE = _WIDTH[" "]
_EM_PER_WIDTH, _EM_BESIDE = 525, 375  # a digit of 7 pixels, 5 beside; letters of 13.3 pixels
_BOLD = 1.08
_WIDEST = max(_WIDTH.values())
_width_of = _WIDTH.__getitem__
_PT_PER_WIDTH, _PT_PER_COLUMN = 5.25, 3.75  # a digit of 7 pixels; 5 pixels beside it
_PAPER_PT = {1: (612, 792), 9: (595, 842)}
_SIDES_PT, _TOP_AND_BOTTOM_PT = 72, 87
_SMALL_BLOCK, _SHORT_REST = 0.4, 0.2


class Paged(Protocol):
    """What of a sheet decides where its pages end."""

    wide: bool
    one_page: bool
    frozen_pt: float
    height_pt: float
    widths: dict[str, float]
    sections: list[tuple[int, float]]
    own_pages: list[int]


def lines_needed(text: str, width: float, *, bold: bool = False) -> int:
    """How many lines a text takes when it is wrapped in a column; rather one too many."""
    room = max((width * _EM_PER_WIDTH - _EM_BESIDE) / (_BOLD if bold else 1), _SQUARE)
    if len(text) * _WIDEST <= room and "\n" not in text:
        return 1
    return sum(_wrapped(line, room) for line in text.split("\n"))


def _wrapped(line: str, room: float) -> int:
    """Fill lines word by word; a word longer than a line is broken."""
    if sum(map(_width_of, line)) <= room:
        return 1
    lines, at = 1, 0.0
    for word in line.split(" "):
        length = sum(map(_width_of, word))
        if at and at + _SPACE + length > room:
            lines, at = lines + 1, 0.0
        at += length + (_SPACE if at else 0)
        while at > room:
            lines, at = lines + 1, at - room + _SQUARE
    return lines


def page_breaks(sheet: Paged, paper: int) -> Sequence[int]:
    """Rows that should begin a new page, so that no section begins at the foot of one.

    A section moves to the next page if it is to have a page of its own, if it does not fit into
    the rest of this one and is small, or if little of it would stand here.
    """
    if sheet.one_page:
        return ()
    page_pt = _page_pt(sheet, paper)
    room, start, breaks = page_pt, 0.0, []
    ends = [top for _, top in sheet.sections[1:]] + [sheet.height_pt]
    for (row, top), end in zip(sheet.sections, ends, strict=True):
        while top - start >= room:
            start, room = start + room, page_pt - sheet.frozen_pt
        rest, block = room - (top - start), end - top
        small = block <= _SMALL_BLOCK * page_pt or rest < _SHORT_REST * page_pt
        moves = block > rest and small and rest < room
        if moves or row in sheet.own_pages:
            breaks.append(row)
            start, room = top, page_pt - sheet.frozen_pt
    return breaks


def _page_pt(sheet: Paged, paper: int) -> float:
    """Height of sheet that one page holds when all columns are made to fit its width."""
    short, long = _PAPER_PT.get(paper, _PAPER_PT[1])
    across, down = (long, short) if sheet.wide else (short, long)
    width = sum(width * _PT_PER_WIDTH + _PT_PER_COLUMN for width in sheet.widths.values())
    scale = min(1.0, (across - _SIDES_PT) / width)
    return (down - _TOP_AND_BOTTOM_PT) / scale
