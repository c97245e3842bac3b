"""No text of a user or a book becomes a formula, a footer code or broken XML."""

from __future__ import annotations

import re
import zipfile
from functools import cache
from io import BytesIO
from xml.etree import ElementTree

import pytest

from estimator.outputs.workbook import bid_workbook
from estimator.outputs.xlsx_values import LONGEST_TEXT, clean_text
from tests.outputs.bid_factory import full_bid, full_file
from tests.outputs.spreadsheet import cells, opened, reckoned
from tests.outputs.text_fields import with_text

# The characters that the OWASP page on CSV injection names, their full-width twins, and
# the strings its examples and DDE attacks are made of.
ATTACKS = {
    "equals": "=1+1", "plus": "+1+1", "minus": "-1+1", "at": "@SUM(1,1)", "tab": "\t=1+1",
    "carriage return": "\r=1+1", "line feed": "\n=1+1", "wide equals": "＝1+1",
    "wide plus": "＋1+1", "wide minus": "－1+1", "wide at": "＠SUM(1,1)",
    "dde": "=cmd|' /C calc'!A0", "dde plus": "+cmd|' /C calc'!A0", "link": '=HYPERLINK("http://x","y")',
    "quotes": '=1+2";=1+2', "quoted": "'=1+2\"\";=1+2", "array": "{=1+1}", "space": " =1+1",
}  # fmt: skip
CELLS = re.compile(r"'[A-Za-z -]+'!\$[A-Z]\$[0-9]+(:\$[A-Z]\$[0-9]+)?")
MARKUP = "<c><f>1+1</f></c>]]>&amp;\"'</t></is></c>"


@cache
def written(text: str) -> bytes:
    return bid_workbook(with_text(full_bid(), text))


def formula_count(data: bytes) -> int:
    return sum(bool(cell.formula) for cell in cells(data).values())


@pytest.mark.parametrize("attack", ATTACKS.values(), ids=ATTACKS)
def test_no_text_becomes_a_formula(attack: str) -> None:
    book = opened(written(attack))
    shown = attack.replace("\r", "\n")
    found = [cell for sheet in book for row in sheet.iter_rows() for cell in row
             if isinstance(cell.value, str) and shown in cell.value]  # fmt: skip
    assert len(found) > 300
    assert {cell.data_type for cell in found} == {"s"}


@pytest.mark.parametrize("attack", ATTACKS.values(), ids=ATTACKS)
def test_formulas_hold_nothing_but_the_programs_own_words(attack: str) -> None:
    assert not any(attack.strip() in cell.formula for cell in cells(written(attack)).values())


@pytest.mark.parametrize("attack", ["=1+1", "@SUM(1,1)", "\t=1+1", "＝1+1", "=cmd|' /C calc'!A0"])
def test_text_that_begins_like_a_formula_stays_text_when_it_is_edited(attack: str) -> None:
    cell = opened(written(attack))["Bid"]["B3"]
    assert cell.value == attack.strip()
    assert cell.quotePrefix


def test_the_spreadsheet_program_takes_them_for_text_too() -> None:
    attacked = bid_workbook(with_text(full_bid(), *ATTACKS.values()))
    shown = {cell.value for cell in cells(attacked).values() if not cell.formula}
    assert {attack.replace("\r", "\n") for attack in ATTACKS.values()} <= shown
    assert formula_count(reckoned({"attacked": attacked})["attacked"]) == formula_count(attacked)


@pytest.mark.parametrize("text", [MARKUP, "a\x00b\x1f\x0b", "\ud800", "\ufffe\uffff", "_x0041_"])
def test_any_text_gives_parts_that_are_whole_xml(text: str) -> None:
    with zipfile.ZipFile(BytesIO(written(text))) as archive:
        for name in archive.namelist():
            ElementTree.fromstring(archive.read(name))


def test_markup_comes_back_as_it_was_typed() -> None:
    assert opened(written(MARKUP))["Bid"]["B3"].value == MARKUP


def test_a_text_that_looks_like_an_escape_is_not_decoded() -> None:
    # ECMA-376 22.4.2.4: _x0041_ stands for "A"; a typed one has its own underscore escaped.
    assert b"_x005F_x0041_" in zipfile.ZipFile(BytesIO(written("_x0041_"))).read(
        "xl/worksheets/sheet1.xml"
    )


@pytest.mark.parametrize(
    ("text", "want"),
    [
        ("plain", "plain"), ("two\nlines", "two\nlines"), ("a\r\nb\rc", "a\nb\nc"),
        ("a\x00b", "a\ufffdb"), ("tab\tkept", "tab\tkept"), ("\ud83d\ude00"[:1], "\ufffd"),
        ("\uffff", "\ufffd"), ("naïve 中 😀", "naïve 中 😀"),
    ],
)  # fmt: skip
def test_clean_text(text: str, want: str) -> None:
    assert clean_text(text) == want


@pytest.mark.parametrize("letter", ["x", "中", "😀"])
def test_a_text_longer_than_a_cell_is_cut_and_says_so(letter: str) -> None:
    cut = clean_text(letter * 40_000)
    assert len(cut.encode("utf-16-le")) // 2 <= LONGEST_TEXT
    assert cut.startswith(letter * 10_000)
    assert cut.endswith("[cut: longer than a cell holds]")


def test_a_text_as_long_as_a_cell_stays_whole() -> None:
    assert clean_text("x" * LONGEST_TEXT) == "x" * LONGEST_TEXT


def test_a_very_long_text_in_every_field_still_gives_a_workbook() -> None:
    book = opened(written("long words " * 4_000))
    assert len(book["Bid"]["B3"].value) == LONGEST_TEXT


def test_a_footer_shows_an_ampersand_and_takes_no_code_from_the_job() -> None:
    footer = opened(written("&P &D & Sons"))["Takeoff"].oddFooter
    assert footer.left.text == "Job &&P &&D && Sons"


def test_a_long_job_id_leaves_the_footer_within_its_255_characters() -> None:
    with zipfile.ZipFile(BytesIO(written("&" * 400))) as archive:
        xml = ElementTree.fromstring(archive.read("xl/worksheets/sheet2.xml"))
    footer = next(part.text or "" for part in xml.iter() if part.tag.endswith("oddFooter"))
    assert len(footer) <= 255


def test_properties_are_the_jobs_and_clean() -> None:
    properties = opened(written("=1+1\x07")).properties
    assert properties.title == "Bid =1+1\ufffd"
    assert properties.creator == "=1+1\ufffd"


def test_defined_names_point_at_cells_only() -> None:
    names = opened(written("=1+1")).defined_names
    assert set(names) == set(opened(full_file()).defined_names)
    assert all(CELLS.fullmatch(names[name].attr_text) for name in names)
