"""How the sheets are made up: order, titles, tables, frozen rows, paper, footers, words."""

from __future__ import annotations

import re
import zipfile
from functools import cache
from io import BytesIO
from itertools import groupby
from xml.etree import ElementTree

import pytest
from openpyxl.utils import range_boundaries
from openpyxl.worksheet.worksheet import Worksheet

from estimator.outputs.workbook import bid_workbook
from tests.outputs.bid_factory import NAMES, bid_of, full_bid, full_file, sample_file
from tests.outputs.spreadsheet import cells, opened

SHEETS = [
    "Bid", "Takeoff", "Shopping list", "Labor", "Price build-up", "Range",
    "Checks", "Compare", "Books", "Wall drawing", "Assumptions and sources",
]  # fmt: skip
# The functions that every spreadsheet program has, as agreed for this workbook.
ALLOWED = {
    "SUM", "SUMPRODUCT", "ROUND", "ROUNDUP", "MAX", "MIN", "IF", "IFERROR", "INDEX", "MATCH",
    "SUMIFS", "COUNTIFS", "ABS", "ROUNDDOWN",
}  # fmt: skip


@cache
def pages(name: str) -> tuple[Worksheet, ...]:
    data = full_file() if name == "everything" else sample_file(name)
    return tuple(opened(data, values=True).worksheets)


def texts(sheet: Worksheet) -> list[str]:
    return [cell.value for row in sheet.iter_rows() for cell in row if isinstance(cell.value, str)]


EVERY = pytest.mark.parametrize("name", [*NAMES, "everything"])


@EVERY
def test_ten_sheets_in_reading_order(name: str) -> None:
    assert [sheet.title for sheet in pages(name)] == SHEETS


@EVERY
def test_each_sheet_begins_with_its_title(name: str) -> None:
    for sheet in pages(name):
        assert str(sheet["A1"].value).startswith(sheet.title)
        assert sheet["A1"].font.b


@EVERY
def test_every_sheet_repeats_the_caution(name: str) -> None:
    for sheet in pages(name):
        said = " ".join(texts(sheet)).lower()
        assert "proved dead" in said or "prove it dead" in said
        assert "local code and licensed practice decide" in said


@EVERY
def test_no_cells_are_merged_and_nothing_is_locked(name: str) -> None:
    for sheet in pages(name):
        assert not sheet.merged_cells.ranges
        assert not sheet.protection.sheet


@EVERY
def test_table_headers_are_unique_texts_equal_to_their_cells(name: str) -> None:
    names = [table for sheet in pages(name) for table in sheet.tables]
    assert len(names) == len(set(names)) > 15
    for sheet in pages(name):
        for table in sheet.tables.values():
            shown = [cell.value for cell in sheet[table.ref][0]]
            assert [column.name for column in table.tableColumns] == shown
            assert len(set(shown)) == len(shown)


@EVERY
def test_paper_titles_and_footers(name: str) -> None:
    for sheet in pages(name):
        assert sheet.sheet_properties.pageSetUpPr.fitToPage
        assert sheet.page_setup.fitToWidth == 1
        _, _, last_column, last_row = range_boundaries(sheet.print_area.split("!")[1])
        assert last_column == sheet.max_column
        points = sheet.title == "Wall drawing"  # its points are there to be drawn, not printed
        assert last_row >= (_first_point(sheet) - 2 if points else sheet.max_row)
        assert sheet.oddFooter.left.text.startswith("Job ")
        assert sheet.oddFooter.right.text == "Page &P of &N"


def _first_point(sheet: Worksheet) -> int:
    return min(cell.row for cell in sheet["A"] if str(cell.value).startswith("Points of: "))


@EVERY
def test_titles_stay_in_sight_and_are_repeated_on_every_page(name: str) -> None:
    for sheet in pages(name)[1:]:
        assert sheet.freeze_panes == "A4"
        assert sheet.print_title_rows == "$1:$3"


def test_paper_is_letter_in_the_united_states_and_a4_in_britain() -> None:
    assert {sheet.page_setup.paperSize for sheet in pages("nightstand")} == {1}
    assert {sheet.page_setup.paperSize for sheet in pages("lounge")} == {9}


def test_wide_sheets_lie_and_the_bid_stands_on_one_page() -> None:
    sides = {sheet.title: sheet.page_setup.orientation for sheet in pages("nightstand")}
    assert sides["Bid"] == sides["Price build-up"] == "portrait"
    assert sides["Takeoff"] == sides["Shopping list"] == "landscape"
    assert pages("nightstand")[0].page_setup.fitToHeight == 1


@EVERY
def test_only_functions_that_every_program_has(name: str) -> None:
    data = full_file() if name == "everything" else sample_file(name)
    used = {word for cell in cells(data).values()
            for word in re.findall(r"([A-Z]+)\(", cell.formula)}  # fmt: skip
    assert used <= ALLOWED
    assert {"ROUND", "SUMPRODUCT", "IF"} <= used


@EVERY
def test_no_formula_reaches_outside_the_file(name: str) -> None:
    data = full_file() if name == "everything" else sample_file(name)
    assert not [cell for cell in cells(data).values() if "[" in cell.formula]
    with zipfile.ZipFile(BytesIO(data)) as archive:
        assert not [part for part in archive.namelist() if "external" in part.lower()]
        assert b"TargetMode" not in b"".join(map(archive.read, archive.namelist()))


def test_there_are_five_charts_with_values_to_draw_from() -> None:
    with zipfile.ZipFile(BytesIO(sample_file("nightstand"))) as archive:
        names = [name for name in archive.namelist() if name.startswith("xl/charts/")]
        points = [len(re.findall(rb"<(?:c:)?pt ", archive.read(name))) for name in names]
    assert len(points) == 5
    assert min(points) >= 8


def test_every_part_is_declared_and_every_relation_leads_to_a_part() -> None:
    with zipfile.ZipFile(BytesIO(full_file())) as archive:
        names = set(archive.namelist())
        types = ElementTree.fromstring(archive.read("[Content_Types].xml"))
        declared = {part.get("PartName", "")[1:] for part in types if part.get("PartName")}
        relations = [name for name in names if name.endswith(".rels")]
        assert declared == names - {"[Content_Types].xml", *relations}
        for name in relations:
            assert targets(archive, name) <= names


def targets(archive: zipfile.ZipFile, name: str) -> set[str]:
    """Parts that a relations part names, as full names."""
    folder = name.replace("_rels/", "").rsplit("/", 1)[0] if "/" in name[6:] else ""
    found = set()
    for relation in ElementTree.fromstring(archive.read(name)):
        target = relation.get("Target", "")
        path = [] if target.startswith("/") else [part for part in folder.split("/") if part]
        for step in target.strip("/").split("/"):
            path = path[:-1] if step == ".." else [*path, step]
        found.add("/".join(path))
    return found


def test_the_bid_shows_no_unit_costs_and_no_rates_of_the_shop() -> None:
    said = " ".join(texts(pages("everything")[0])).lower()
    for word in ("markup", "overhead", "profit", "per hour", "margin", "supplier"):
        assert word not in said
    prices = {pack.price_each for line in full_bid().shopping for pack in line.packs}
    shown = {cell.value for row in pages("everything")[0].iter_rows() for cell in row}
    assert not {float(price) for price in prices} & shown


def test_the_bid_says_in_words_what_is_bid() -> None:
    said = texts(pages("everything")[0])
    assert "2 new receptacles: A (office), B (office)." in said
    assert "2 openings in walls or ceilings, closed, taped, smoothed and painted." in said
    assert said[said.index("Allowances") + 1] == "none"
    assert "Second coat. Then about 24 h to dry." in said
    for label in ("From", "For", "Valid until", "Total", "Second total", "Deposit", "Balance",
                  "Permit", "Workmanship", "Changes", "Cautions", "Customer, date"):  # fmt: skip
        assert label in said


def test_what_nobody_filled_in_is_not_stated() -> None:
    bid = bid_of("nightstand", {'address = "1 Example Street, Sampletown"\n': "",
                                "date = 2026-03-02\n": ""})  # fmt: skip
    sheet = opened(bid_workbook(bid), values=True)["Bid"]
    said = {row[0].value: row[1].value for row in sheet.iter_rows(max_col=2)}
    assert [said[label] for label in ("Address", "Date", "Valid until", "Cancellation")] == [
        "not stated"
    ] * 4


def test_findings_stand_worst_first_with_their_verdict_as_a_word() -> None:
    rows = opened(full_file(), values=True)["Checks"]
    verdicts = [row[1].value for row in rows.iter_rows(min_row=6, max_col=3) if row[2].value]
    assert [verdict for verdict, _ in groupby(verdicts)] == ["Verdict", "UNKNOWN", "NOTE", "PASS"]
    assert len(verdicts) == 1 + len(full_bid().findings)


def test_a_finding_that_stops_the_bid_says_so_and_comes_first() -> None:
    # 14 AWG copper on a 20 A breaker: NEC 240.4(D) ends at 15 A.
    bid = bid_of("nightstand", {"breaker = 15": "breaker = 20"})
    checks = opened(bid_workbook(bid), values=True)["Checks"]
    assert checks["B7"].value == "FAIL, stops the bid"
    assert checks["D7"].value == "breaker-wire"


def test_a_metric_job_abroad_shows_no_us_rules_and_no_us_units() -> None:
    said = [text for sheet in pages("lounge") for text in texts(sheet)]
    assert len(said) > 500
    assert not [
        text for text in said if re.search(r"\bin3\b|\bAWG\b|\bNEC\b|\bgal\b|\bft2?\b", text)
    ]


def test_every_setting_stands_in_the_sources_with_where_it_came_from() -> None:
    bid = full_bid()
    rows = opened(full_file(), values=True)["Assumptions and sources"].iter_rows(max_col=4)
    shown = {row[1].value: (row[2].value, row[3].value) for row in rows}
    for key, written in bid.books.shop.shown.items():
        assert shown[key] == (written, bid.books.shop.origin[key])
