"""Every sheet of every workbook, held to published points for spreadsheets that all can use.

The points are from these, each read as far as it is cited:

- GSA: Section508.gov, Accessibility Bytes, "Accessible Spreadsheet Design Checklist"
  (section508.gov/blog/accessibility-bytes/accessible-spreadsheets/).
- AED: Accessible Electronic Document Community of Practice, basic authoring and testing guide for
  spreadsheets, October 2018; its questions by number, the first two with their tests as the
  Social Security Administration prints them.
- HHS: Section 508 master requirements for all documents, "per HHS guidance"; by number.
- WCAG 2.2: 1.4.3 and 1.4.11, with W3C's definition of relative luminance.
- RNIB: "Structure" of accessible spreadsheets; for tables that share a sheet.
"""

from __future__ import annotations

import ast
import re
from collections import Counter
from itertools import pairwise
from pathlib import Path

import pytest
from openpyxl.cell.cell import Cell

import estimator.outputs
from tests.outputs.every_book import (
    BOOKS,
    WRITERS,
    book,
    edges,
    parts,
    said,
    shown,
    tables,
    under_charts,
)

EVERY = pytest.mark.parametrize("name", list(BOOKS))
FORMS = ("form, empty", "form, filled")
TO_DRAW_ON = "Sketch"
"""The form's sheet of squares: no table, and an example drawn with the edges of cells."""
LONGEST_NAME = 31  # letters that the file format allows a sheet's name


def test_every_writer_of_workbooks_is_held_to_the_points() -> None:
    folder = Path(estimator.outputs.__file__).parent
    found = {
        node.name
        for path in folder.glob("*.py")
        for node in ast.parse(path.read_text(encoding="utf-8")).body
        if isinstance(node, ast.FunctionDef) and node.name.endswith("_workbook")
    }
    assert found == {writer.__name__ for writer in WRITERS.values()}
    assert [kind for kind in WRITERS if any(name.startswith(kind) for name in BOOKS)] == [*WRITERS]


@EVERY
def test_each_sheet_has_a_name_of_its_own_that_says_what_it_holds(name: str) -> None:
    """GSA, naming and labeling: descriptive sheet names instead of generic ones."""
    names = [sheet.title for sheet in book(name).worksheets]
    assert len({each.lower() for each in names}) == len(names)
    assert not [each for each in names if re.fullmatch(r"(?i)(sheet|table)[ _]?\d*", each)]
    assert max(map(len, names)) <= LONGEST_NAME


@EVERY
def test_each_sheet_begins_with_its_title_in_the_first_cell(name: str) -> None:
    """GSA, naming and labeling: a title at the top."""
    for sheet in shown(name):
        assert isinstance(sheet["A1"].value, str)
        assert sheet["A1"].font.b
        assert sheet["A1"].font.sz >= max(cell.font.sz for cell in said(sheet)[1:])


@EVERY
def test_words_say_what_a_sheet_is_for_before_its_first_table(name: str) -> None:
    """GSA, naming and labeling: purpose, and how it should be interpreted, at the top."""
    for sheet in shown(name):
        if tables(sheet):
            _, top, _, _ = edges(tables(sheet)[0])
            told = [cell for cell in said(sheet) if cell.row < top and isinstance(cell.value, str)]
            assert sum(len(str(cell.value).split()) for cell in told) > 5


@EVERY
def test_what_looks_like_a_heading_of_columns_heads_a_named_table(name: str) -> None:
    """GSA, structure: data as formal tables, with headers that programs know. AED 5."""
    for sheet in shown(name):
        heads = {
            (row, column)
            for each in tables(sheet)
            for left, row, right, _ in [edges(each)]
            for column in range(left, right + 1)
        }
        greys = {(cell.row, cell.column) for cell in said(sheet) if looks_like_a_heading(cell)}
        assert heads <= greys or sheet.title == TO_DRAW_ON
        rows = {row for row, _ in greys - heads if sheet.title != TO_DRAW_ON}
        assert not rows & {cell.row - 1 for cell in said(sheet)}  # a heading above nothing


def looks_like_a_heading(cell: Cell) -> bool:
    """Bold words on a tint."""
    return bool(cell.font.b and cell.fill.patternType == "solid")


@EVERY
def test_table_headers_are_words_each_once_and_stand_in_their_cells(name: str) -> None:
    """GSA, structure: clear visible and programmatic column headers."""
    for sheet in shown(name):
        for table in tables(sheet):
            seen = [cell.value for cell in sheet[table.ref][0]]
            assert [column.name for column in table.tableColumns] == seen
            assert all(isinstance(each, str) and each.strip() for each in seen)
            assert len({each.lower() for each in seen}) == len(seen)
            assert table.headerRowCount != 0


@EVERY
def test_each_table_has_a_name_of_its_own_that_says_what_it_holds(name: str) -> None:
    """GSA, naming and labeling: a meaningful table name."""
    names = [table.name for sheet in book(name).worksheets for table in tables(sheet)]
    assert len({each.lower() for each in names}) == len(names)
    assert not [each for each in names if re.fullmatch(r"(?i)table_?\d*", each)]


@EVERY
def test_every_workbook_has_its_figures_in_tables(name: str) -> None:
    """GSA, structure: only the page to sign and the sheet to draw on are no tables."""
    without = {sheet.title for sheet in shown(name) if not tables(sheet)}
    empty = {"Jobs"} if name == "batch of nothing" else set()
    empty |= {"Hours", "For others"} if name == "close-out without lines" else set()
    assert without <= {"Bid", "Change order", TO_DRAW_ON} | empty


@EVERY
def test_no_cells_are_merged(name: str) -> None:
    """GSA, structure: avoid merged cells. HHS 2.1."""
    assert not [sheet for sheet in book(name).worksheets if sheet.merged_cells.ranges]


@EVERY
def test_no_row_of_a_table_is_blank(name: str) -> None:
    """GSA, structure: one continuous range without blank rows; a form's last rows are to fill."""
    for sheet in shown(name):
        filled = {cell.row for cell in said(sheet)}
        for _, top, _, bottom in map(edges, tables(sheet)):
            last = max(row for row in filled if row <= bottom) if name in FORMS else bottom
            assert filled >= set(range(top, last + 1))


@EVERY
def test_tables_of_one_sheet_stand_apart_with_a_label_each(name: str) -> None:
    """GSA, structure: clearly separate and label each one. RNIB: all at the left-hand edge."""
    for sheet in shown(name):
        places = [edges(table) for table in tables(sheet)]
        assert {left for left, *_ in places} <= {1}
        for (*_, bottom), (_, top, *_) in pairwise(places):
            between = [cell for cell in said(sheet) if bottom < cell.row < top]
            assert [cell for cell in between if cell.font.b and cell.column == 1]


@EVERY
def test_space_is_not_made_with_blank_rows(name: str) -> None:
    """GSA, layout: formatting instead of blank rows. RNIB: one blank row between, not more.

    Where a chart lies over them, rows are not blank; a form has rows to fill, and squares.
    """
    for sheet in shown(name):
        drawn = set(under_charts(sheet))  # by rows of the least height: it may reach one further
        rows = sorted({cell.row for cell in said(sheet)} | drawn)
        gaps = [row for row, later in pairwise(rows) if later - row > 2 + (row in drawn)]
        assert not gaps or (name in FORMS and sheet.title == TO_DRAW_ON)


@EVERY
def test_a_line_says_what_it_is_before_its_figures(name: str) -> None:
    """GSA, layout: top to bottom and left to right. AED 2: a logical reading order."""
    for sheet in shown(name):
        inside = {row for _, top, _, bottom in map(edges, tables(sheet))
                  for row in range(top, bottom + 1)}  # fmt: skip
        first = {cell.row: cell for cell in reversed(said(sheet)) if cell.row not in inside}
        assert {type(cell.value) for cell in first.values()} == {str}


@EVERY
def test_the_document_names_its_title_and_its_language(name: str) -> None:
    """HHS 1.3: document properties for title, author, subject, language."""
    properties = book(name).properties
    assert len((properties.title or "").strip()) > 3
    assert properties.language == "en"


@EVERY
def test_it_opens_on_the_first_sheet_at_its_beginning(name: str) -> None:
    """GSA, layout: a predictable order begins where a screen reader does, at A1."""
    assert book(name).active == book(name).worksheets[0]
    for sheet in book(name).worksheets:
        assert {each.activeCell for each in sheet.sheet_view.selection} <= {"A1"}
        assert sheet.sheet_view.topLeftCell in (None, "A1")


@EVERY
def test_nothing_is_hidden_that_anybody_needs(name: str) -> None:
    """AED 2: all can be reached by the arrow keys. The words of drop-downs alone are put away."""
    hidden = [sheet for sheet in book(name).worksheets if sheet.sheet_state != "visible"]
    assert [sheet.title for sheet in hidden] == (["Lists"] if name in FORMS else [])
    for sheet in book(name).worksheets:
        assert not [row for row, size in sheet.row_dimensions.items() if size.hidden]
        assert not [column for column, size in sheet.column_dimensions.items() if size.hidden]
    offered = {
        rule.formula1 for sheet in shown(name) for rule in sheet.data_validations.dataValidation
    }
    for sheet in hidden:
        last = Counter(cell.column_letter for cell in said(sheet))
        assert {f"Lists!${column}$1:${column}${row}" for column, row in last.items()} <= offered


@EVERY
def test_nothing_is_locked_against_other_programs(name: str) -> None:
    """AED 2: a sheet can be walked through; a locked one keeps some screen readers out."""
    assert not [sheet for sheet in book(name).worksheets if sheet.protection.sheet]
    assert not (book(name).security and book(name).security.lockStructure)


@EVERY
def test_what_the_foot_of_a_page_says_stands_on_the_sheets_too(name: str) -> None:
    """AED 4: vital information in headers and footers is in the worksheet as well."""
    words = " ".join(str(cell.value) for sheet in shown(name) for cell in said(sheet))
    words += " ".join([book(name).properties.title, *book(name).sheetnames])
    for sheet in shown(name):
        foot = sheet.oddFooter
        for text in (foot.left.text, foot.center.text, foot.right.text):
            told = re.sub(r"&[A-Z]|^Job |Page|of", "", text or "").strip()
            assert told in words
        assert not any(part.text for part in (sheet.oddHeader.left, sheet.oddHeader.center))


@EVERY
def test_there_are_no_links_pictures_sounds_macros_or_moving_things(name: str) -> None:
    """AED 1, 3, 9, 10: a plain .xlsx without links to name, and nothing that plays or flashes."""
    kinds = {part.rsplit(".", 1)[-1] for part in parts(name, "")}
    assert kinds <= {"xml", "rels"}
    assert b"hyperlink" not in b"".join(parts(name, ".xml").values()).lower().replace(
        b"=hyperlink(", b""
    )
    assert b"macroEnabled" not in parts(name, "")["[Content_Types].xml"]


@EVERY
def test_headings_stay_in_sight_and_are_printed_on_every_page(name: str) -> None:
    """GSA, structure: clear visible headers, also on a sheet that is longer than the screen."""
    for sheet in shown(name):
        if tables(sheet) and sheet.title != "Summary":
            assert sheet.freeze_panes
            assert sheet.print_title_rows
