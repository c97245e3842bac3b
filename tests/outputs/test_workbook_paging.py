"""Room for text, and where pages end: small cases worked by hand."""

from __future__ import annotations

from dataclasses import dataclass, field

import pytest

from estimator.outputs.paging import lines_needed, page_breaks

LETTER, A4 = 1, 9
# A column of 20 holds 20 x 525 - 375 = 10,125 thousandths of a letter's size. By Helvetica's
# published widths "i" is 222, "a" 556, "W" 944, a space 278; anything Chinese is a full 1,000.
ROOM = 20


@pytest.mark.parametrize(
    ("text", "lines"),
    [
        ("", 1),
        ("a" * 18, 1),  # 10,008
        ("a" * 19, 2),  # 10,564
        ("i" * 45, 1),  # 9,990
        ("i" * 46, 2),  # 10,212
        ("W" * 10, 1),  # 9,440
        ("W" * 11, 2),  # 10,384
        ("中" * 10, 1),  # 10,000
        ("中" * 11, 2),
        ("one\ntwo\nthree", 3),
        ("aaaaaaaaaa aaaaaaa", 1),  # 17 x 556 + 278 = 9,730
        ("aaaaaaaaaa aaaaaaaa", 2),  # 10,286: the second word goes to a line of its own
    ],
)
def test_lines_of_a_wrapped_text(text: str, lines: int) -> None:
    assert lines_needed(text, ROOM) == lines


def test_bold_text_takes_more_room() -> None:
    assert lines_needed("a" * 17, ROOM, bold=True) == 2
    assert lines_needed("a" * 16, ROOM, bold=True) == 1


def test_a_text_never_takes_fewer_lines_in_a_narrower_column() -> None:
    text = "Steel protection plate, 1/16 in thick, 1-1/2 x 3 in"
    lines = [lines_needed(text, width) for width in range(60, 5, -1)]
    assert lines == sorted(lines)


@dataclass
class Sheet:
    """A sheet of 100 columns' worth of width: it fits a standing page at 468 / 528.75."""

    sections: list[tuple[int, float]]
    height_pt: float
    wide: bool = False
    one_page: bool = False
    frozen_pt: float = 0
    own_pages: list[int] = field(default_factory=list)
    widths: dict[str, float] = field(default_factory=lambda: {"A": 100.0})


# Letter, standing: (792 - 87) / (540 / 528.75, at most 1) = 705 points a page.
CASES = {
    "all on one page": ([(5, 50.0), (30, 400.0)], 700, []),
    "a small section that would be split": ([(5, 50.0), (40, 600.0)], 800, [40]),
    "a long section may be split": ([(5, 50.0), (20, 300.0)], 1_500, []),
    "a long section at the foot of a page": ([(5, 50.0), (45, 690.0)], 2_000, [45]),
    "each page counts from the break before": (
        [(5, 50.0), (40, 600.0), (80, 1_250.0)], 1_400, [40, 80],
    ),
}  # fmt: skip


@pytest.mark.parametrize("case", CASES)
def test_page_breaks(case: str) -> None:
    sections, height, want = CASES[case]
    assert list(page_breaks(Sheet(sections, height), LETTER)) == want


def test_a_section_with_a_page_of_its_own_begins_one_though_it_would_fit() -> None:
    sheet = Sheet([(5, 50.0), (30, 400.0)], 700, own_pages=[30])
    assert list(page_breaks(sheet, LETTER)) == [30]


def test_a_sheet_that_is_made_to_fit_one_page_is_never_broken() -> None:
    sheet = Sheet([(5, 50.0), (40, 600.0)], 900, one_page=True)
    assert list(page_breaks(sheet, A4)) == []
