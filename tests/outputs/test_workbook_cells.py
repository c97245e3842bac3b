"""Cells, sheets, styles and charts one by one, against the file format as published."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from fractions import Fraction
from xml.etree import ElementTree

import pytest
from openpyxl.utils.datetime import to_excel

from estimator.outputs import looks
from estimator.outputs.cells import Cell, Sheet, blank, formula, number, words
from estimator.outputs.charts import Bars, Picture, chart_xml, drawing_xml
from estimator.outputs.looks import Looks
from estimator.outputs.xlsx_styles import styles_xml
from estimator.outputs.xlsx_values import day_number, formula_cell, plain_number, text_cell

CHART = "{http://schemas.openxmlformats.org/drawingml/2006/chart}"


def sheet() -> Sheet:
    return Sheet("A sheet", {"A": 10.0, "B": 20.0, "C": 12.0}, Looks())


@pytest.mark.parametrize(
    ("value", "want"),
    [
        (3, "3"), (Decimal("1.50"), "1.50"), (Decimal("1E+3"), "1000"),
        (Decimal("1E-7"), "0.0000001"),
        (Fraction(1, 8), "0.125"), (Fraction(2, 3), "0.666666666666667"), (Fraction(6, 2), "3"),
        (Decimal("-0.05"), "-0.05"),
    ],
)  # fmt: skip
def test_numbers_are_written_in_full(value: int | Decimal | Fraction, want: str) -> None:
    assert plain_number(value) == want


@pytest.mark.parametrize("day", [date(1900, 3, 1), date(2024, 2, 29), date(2026, 11, 4)])
def test_days_are_counted_as_openpyxl_counts_them(day: date) -> None:
    assert day_number(day) == to_excel(day)


def test_a_formula_has_its_value_beside_it() -> None:
    assert formula_cell("B2", 7, "A1*2", Decimal("3.10")) == (
        '<c r="B2" s="7"><f>A1*2</f><v>3.10</v></c>'
    )


def test_a_formula_that_gives_words_says_so() -> None:
    assert formula_cell("B2", 7, 'IF(A1<2,"a","b")', "a & b") == (
        '<c r="B2" s="7" t="str"><f>IF(A1&lt;2,"a","b")</f><v>a &amp; b</v></c>'
    )


def test_text_is_an_inline_string_that_keeps_its_spaces() -> None:
    assert text_cell("A1", 2, " <b> ") == (
        '<c r="A1" s="2" t="inlineStr"><is><t xml:space="preserve"> &lt;b&gt; </t></is></c>'
    )


def test_a_row_is_as_tall_as_its_longest_text_needs() -> None:
    page = sheet()
    page.put([words("short"), words("several words that need more than one line here")])
    assert 'ht="39.25"' in page.data_xml()  # three lines of 12.75 and 1 beside


def test_a_very_long_text_stops_at_the_tallest_row_there_is() -> None:
    page = sheet()
    page.put([words("word " * 2_000)])
    assert 'ht="409"' in page.data_xml()


def test_a_long_amount_widens_its_column() -> None:
    page = sheet()
    page.put([number(Decimal("12345678.90"), looks.entry(looks.MONEY))])
    assert page.widths == {"A": 18.0, "B": 20.0, "C": 12.0}


def test_cells_left_out_leave_no_trace() -> None:
    page = sheet()
    page.put([None, blank(), None])
    assert page.data_xml().count("<c ") == 1
    assert '<c r="B1"' in page.data_xml()


def test_a_table_without_rows_is_not_named() -> None:
    page = sheet()
    page.table("Empty", ("A", "B"), [])
    made = page.table("Full", ("A", "B"), [[words("a"), words("b")]])
    assert [table.name for table in page.tables] == ["Full"]
    assert (made.first_row, made.last_row) == (2, 3)


def test_rows_of_a_table_know_their_number() -> None:
    page = sheet()
    rows = ([formula(f"A{page.next_row}", at)] for at in range(3))
    page.table("Numbered", ("A",), rows)
    assert [f"<f>A{row}</f>" in page.data_xml() for row in (2, 3, 4)] == [True] * 3


def test_places_are_named_so_that_any_sheet_can_use_them() -> None:
    assert sheet().ref("C", 7) == "'A sheet'!$C$7"
    assert sheet().span("C", 7, 9) == "'A sheet'!$C$7:$C$9"


@pytest.mark.parametrize("text", ["=1", "+1", "-1", "@a", "\ta", " =1", "＝1", "＠a"])
def test_text_that_begins_like_a_formula_gets_a_style_of_its_own(text: str) -> None:
    page = sheet()
    page.put([words("plain"), words(text)])
    used = page.looks.used()
    assert [look.quoted for look in used] == [False, True]


def test_the_same_look_is_one_style() -> None:
    numbers = Looks()
    first = numbers.number(looks.figure(looks.MONEY))
    assert first == numbers.number(looks.figure(looks.MONEY)) == 1
    assert numbers.number(looks.TEXT) == 2


def test_styles_count_what_they_hold() -> None:
    used = (looks.TITLE, looks.HEAD, looks.entry(looks.MONEY), looks.TEXT_DATE)
    root = ElementTree.fromstring(styles_xml(used, {"money": "0.00", "date": "yyyy"}))
    for group in root:
        assert int(group.get("count", "0")) == len(group)
    assert len(root.findall("./{*}cellXfs/{*}xf")) == len(used) + 1


def picture(*bars: Bars, lying: bool = False) -> Picture:
    labels = ("'A sheet'!$A$2:$A$3", ("one & two", "three"))
    return Picture("A picture", labels, bars, '0.0" h"', (8, 20), row=12, lying=lying)


LOW = Bars("Low", "'A sheet'!$B$2:$B$3", (Decimal("1.5"), Decimal(2)))


def test_a_chart_holds_the_values_it_is_drawn_from() -> None:
    root = ElementTree.fromstring(chart_xml(picture(LOW)))
    assert [each.text for each in root.iterfind(f".//{CHART}numCache//{CHART}v")] == ["1.5", "2"]
    assert [each.text for each in root.iterfind(f".//{CHART}strCache//{CHART}v")] == [
        "one & two", "three",
    ]  # fmt: skip
    assert root.findtext(f".//{CHART}numRef/{CHART}f") == "'A sheet'!$B$2:$B$3"


@pytest.mark.parametrize(("bars", "legends"), [((LOW,), 0), ((LOW, LOW), 1)])
def test_only_several_rows_of_bars_need_a_legend(bars: tuple[Bars, ...], legends: int) -> None:
    root = ElementTree.fromstring(chart_xml(picture(*bars)))
    assert len(root.findall(f".//{CHART}legend")) == legends


@pytest.mark.parametrize(("lying", "direction"), [(True, "bar"), (False, "col")])
def test_bars_stand_or_lie(lying: bool, direction: str) -> None:
    root = ElementTree.fromstring(chart_xml(picture(LOW, lying=lying)))
    found = root.find(f".//{CHART}barDir")
    assert found is not None
    assert found.get("val") == direction


def test_rows_of_bars_differ_in_their_grey() -> None:
    xml = chart_xml(picture(LOW, LOW, LOW))
    assert len({grey for grey in ("D0D0D0", "8C8C8C", "404040") if grey in xml}) == 3


def test_a_chart_stands_where_it_was_put() -> None:
    # Row 12 is the 11th from the top when the first is 0; a centimetre is 360,000 EMU.
    xml = drawing_xml(picture(LOW))
    assert "<xdr:row>11</xdr:row>" in xml
    assert 'cx="7200000" cy="2880000"' in xml


def test_a_cell_is_text_or_a_figure_never_both() -> None:
    page = sheet()
    page.put([Cell(looks.TEXT, text="=1+1", value=2, formula="1+1")])
    assert "<f>" not in page.data_xml()
