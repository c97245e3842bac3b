"""Charts, colors and typefaces of every workbook, held to published points.

The sources are those that test_sheets_508.py names.
"""

from __future__ import annotations

import re
from itertools import pairwise

import pytest

from tests.outputs.colors import contrast, ground_of, ink_of
from tests.outputs.every_book import (
    BOOKS,
    book,
    charts,
    drawings,
    formulas,
    said,
    shown,
    under_charts,
)

EVERY = pytest.mark.parametrize("name", list(BOOKS))


@EVERY
def test_every_chart_has_a_name_and_a_description(name: str) -> None:
    """AED 6: images and other objects have alternative text. HHS 1.9."""
    frames = b"".join(drawings(name).values()).decode()
    props = re.findall(r"<(?:xdr:)?cNvPr ([^>]*)/>", frames)
    assert len(props) == len(charts(name))
    for each in props:
        told = dict(re.findall(r'(\w+)="([^"]*)"', each))
        assert len(told["descr"].split()) > 5
        assert told["name"] and not re.fullmatch(r"Chart \d+", told["name"])


@EVERY
def test_what_a_chart_shows_stands_in_cells_as_well(name: str) -> None:
    """HHS 1.10: complex images have descriptive text near them: here the cells they draw from."""
    for part in charts(name).values():
        places = re.findall(r"<(?:c:)?f>'([^']+)'!\$?([A-Z]+)\$?(\d+)", part.decode())
        assert places
        for sheet, column, row in places:
            assert book(name)[sheet][f"{column}{row}"].value is not None


@EVERY
def test_a_chart_covers_nothing(name: str) -> None:
    """GSA, layout: a clear and predictable reading order, with nothing behind anything."""
    for sheet in shown(name):
        assert not {cell.row for cell in said(sheet)} & set(under_charts(sheet))


@EVERY
def test_text_stands_out_from_what_is_behind_it(name: str) -> None:
    """GSA, visual design: sufficient contrast. WCAG 1.4.3, HHS 1.16: 4.5 to 1."""
    looks = {(ink_of(cell), ground_of(cell)) for sheet in book(name) for cell in said(sheet)}
    assert looks
    assert min(contrast(ink, ground) for ink, ground in looks) >= 4.5


@EVERY
def test_bars_side_by_side_and_lines_stand_out(name: str) -> None:
    """WCAG 1.4.11: parts of a graphic, 3 to 1. GSA, visual design: labels in charts."""
    for part in charts(name).values():
        text = part.decode()
        fills = re.findall(r"<ser>.*?<spPr><a:solidFill><a:srgbClr val=\"(\w+)\"", text, re.DOTALL)
        if "<barChart>" in text:
            assert all(contrast(*pair) >= 3 for pair in pairwise(fills))
            assert text.count('<showVal val="1"') >= len(fills) > 0
            assert len(fills) == 1 or "<legend>" in text
        lines = set(re.findall(r"<a:ln[^>]*><a:solidFill><a:srgbClr val=\"(\w+)\"", text))
        assert all(contrast(line, "FFFFFF") >= 3 for line in lines)


@EVERY
def test_nothing_is_said_by_color_alone(name: str) -> None:
    """GSA, visual design; AED 7: what a color tells has another mark and words too.

    No text is colored, no cell changes color with its value, and a tinted cell is bold, framed
    or hatched besides.
    """
    for sheet in book(name).worksheets:
        assert not list(sheet.conditional_formatting)
        assert {ink_of(cell) for cell in said(sheet)} <= {"000000"}
        for cell in (cell for row in sheet.iter_rows() for cell in row):
            assert not re.search(r"(?i)\[(red|blue|green|color)", cell.number_format)
            if cell.fill.patternType == "solid":
                assert cell.font.b or cell.border.left or cell.border.bottom


@EVERY
def test_what_may_be_changed_is_no_formula_and_words_say_how_to_know_it(name: str) -> None:
    """AED 7: visual characteristics are described in text."""
    framed = [cell for sheet in formulas(name).worksheets for cell in said(sheet)
              if cell.border.left and cell.border.left.style == "dashed"]  # fmt: skip
    assert not [cell for cell in framed if cell.data_type == "f"]
    words = " ".join(str(cell.value) for sheet in shown(name) for cell in said(sheet))
    live = any(cell.data_type == "f" for sheet in formulas(name) for cell in said(sheet))
    assert not (framed and live) or "dashed frame" in words or "they follow the sheet" in words


@EVERY
def test_the_typeface_is_one_that_is_easy_to_read(name: str) -> None:
    """HHS 1.4: Times New Roman, Verdana, Arial, Tahoma, Helvetica or Calibri."""
    assert {cell.font.name for sheet in book(name) for cell in said(sheet)} == {"Arial"}


@EVERY
def test_a_list_to_choose_from_says_what_is_wrong_in_words(name: str) -> None:
    """AED 7: what a drop-down refuses is told in words, not by its look."""
    for sheet in shown(name):
        for rule in sheet.data_validations.dataValidation:
            assert len(str(rule.error).split()) > 4
            assert rule.showErrorMessage


@pytest.mark.parametrize(
    ("ink", "ground", "want"),
    # Black on white is 21 to 1 by definition; the others worked by hand from W3C's definition.
    # 255/255 is 1; 0x76/255 = 0.46275, ((0.46275 + 0.055) / 1.055)^2.4 = 0.18116, so 1.05/0.23116.
    # Pure red has the luminance 0.2126: (0.2126 + 0.05) / 0.05.
    [("000000", "FFFFFF", 21), ("767676", "FFFFFF", 4.542), ("FF0000", "000000", 5.252)],
)
def test_contrast_is_reckoned_as_it_is_defined(ink: str, ground: str, want: float) -> None:
    assert contrast(ink, ground) == pytest.approx(want, abs=0.001)
    assert contrast(ground, ink) == contrast(ink, ground)
