"""Cells, sheets, styles and charts one by one, against the file format as published."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from fractions import Fraction
from xml.etree import ElementTree

import pytest
from openpyxl import Workbook
from openpyxl.utils.datetime import to_excel
from openpyxl.xml.functions import tostring

from estimator.outputs import looks
from estimator.outputs.book_chart import bar_chart
from estimator.outputs.book_parts import NoPlaceForResult, with_results
from estimator.outputs.book_styles import Styles
from estimator.outputs.cells import Cell, Placed, Sheet, blank, formula, number, words
from estimator.outputs.charts import Bars, Picture
from estimator.outputs.xlsx_values import as_text, day_number, plain_number

CHART = "{http://schemas.openxmlformats.org/drawingml/2006/chart}"


def sheet() -> Sheet:
    return Sheet("A sheet", {"A": 10.0, "B": 20.0, "C": 12.0})


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


@pytest.mark.parametrize("empty", ["<v />", "<v/>", "<v></v>"])
def test_a_formula_gets_its_value_beside_it(empty: str) -> None:
    written = f'<c r="B2" s="7"><f>A1*2</f>{empty}</c>'
    assert with_results(written, {"B2": Decimal("3.10")}) == (
        '<c r="B2" s="7"><f>A1*2</f><v>3.10</v></c>'
    )


def test_a_formula_that_gives_words_says_so() -> None:
    written = '<c r="B2" s="7"><f>IF(A1&lt;2,"a","b")</f><v /></c>'
    assert with_results(written, {"B2": "a & b"}) == (
        '<c r="B2" s="7" t="str"><f>IF(A1&lt;2,"a","b")</f><v>a &amp; b</v></c>'
    )


def test_a_formula_that_got_no_value_is_never_passed_over() -> None:
    with pytest.raises(NoPlaceForResult, match="0 of 1 formulas"):
        with_results('<c r="B2"><f t="shared">A1</f><v /></c>', {"B2": Decimal(1)})


def test_an_underscore_that_would_begin_an_escape_is_escaped() -> None:
    assert as_text("_x0041_") == "_x005F_x0041_"
    assert as_text("cable_x") == "cable_x"


def test_a_row_is_as_tall_as_its_longest_text_needs() -> None:
    page = sheet()
    page.put([words("short"), words("several words that need more than one line here")])
    assert page.heights_pt == {1: 39.25}  # three lines of 12.75 and 1 beside


def test_a_very_long_text_stops_at_the_tallest_row_there_is() -> None:
    page = sheet()
    page.put([words("word " * 2_000)])
    assert page.heights_pt == {1: 409}


def test_a_long_amount_widens_its_column() -> None:
    page = sheet()
    page.put([number(Decimal("12345678.90"), looks.entry(looks.MONEY))])
    assert page.widths == {"A": 18.0, "B": 20.0, "C": 12.0}


def test_cells_left_out_leave_no_trace() -> None:
    page = sheet()
    page.put([None, blank(), None])
    assert page.placed == [Placed(1, 2, looks.TEXT, None)]


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
    found = [(each.row, each.formula) for each in page.placed if each.formula]
    assert found == [(2, "A2"), (3, "A3"), (4, "A4")]


def test_places_are_named_so_that_any_sheet_can_use_them() -> None:
    assert sheet().ref("C", 7) == "'A sheet'!$C$7"
    assert sheet().span("C", 7, 9) == "'A sheet'!$C$7:$C$9"


@pytest.mark.parametrize("text", ["=1", "+1", "-1", "@a", "\ta", " =1", "＝1", "＠a"])
def test_text_that_begins_like_a_formula_is_marked_as_text(text: str) -> None:
    page = sheet()
    page.put([words("plain"), words(text)])
    assert [each.look.quoted for each in page.placed] == [False, True]


def test_each_look_is_made_once_a_workbook() -> None:
    page = Workbook().worksheets[0]
    styles = Styles(page, {looks.MONEY: "0.00"})
    for row in (1, 2):
        styles.put_on(page.cell(row, 1), looks.figure(looks.MONEY))
    styles.put_on(page.cell(3, 1), looks.quoted(looks.TEXT))
    assert page["A1"].style_id == page["A2"].style_id != page["A3"].style_id
    assert (page["A1"].number_format, page["A1"].font.name) == ("0.00_)", "Arial")
    assert (page["A1"].quotePrefix, page["A3"].quotePrefix) == (False, True)


def picture(*bars: Bars, lying: bool = False) -> Picture:
    labels = ("'A sheet'!$A$2:$A$3", ("one & two", "three"))
    return Picture("A picture", labels, bars, '0.0" h"', (8, 20), row=12, lying=lying)


def drawn(asked: Picture) -> ElementTree.Element:
    """The chart as the library writes it."""
    return ElementTree.fromstring(tostring(bar_chart(asked)._write()))


LOW = Bars("Low", "'A sheet'!$B$2:$B$3", (Decimal("1.5"), Decimal(2)))


def test_a_chart_holds_the_values_it_is_drawn_from() -> None:
    root = drawn(picture(LOW))
    assert [each.text for each in root.iterfind(f".//{CHART}numCache//{CHART}v")] == ["1.5", "2"]
    assert [each.text for each in root.iterfind(f".//{CHART}strCache//{CHART}v")] == [
        "one & two", "three",
    ]  # fmt: skip
    assert root.findtext(f".//{CHART}numRef/{CHART}f") == "'A sheet'!$B$2:$B$3"


@pytest.mark.parametrize(("bars", "legends"), [((LOW,), 0), ((LOW, LOW), 1)])
def test_only_several_rows_of_bars_need_a_legend(bars: tuple[Bars, ...], legends: int) -> None:
    root = drawn(picture(*bars))
    assert len(root.findall(f".//{CHART}legend")) == legends


@pytest.mark.parametrize(("lying", "direction"), [(True, "bar"), (False, "col")])
def test_bars_stand_or_lie(lying: bool, direction: str) -> None:
    root = drawn(picture(LOW, lying=lying))
    found = root.find(f".//{CHART}barDir")
    assert found is not None
    assert found.get("val") == direction


def test_rows_of_bars_differ_in_their_grey() -> None:
    xml = ElementTree.tostring(drawn(picture(LOW, LOW, LOW)), "unicode")
    assert len({grey for grey in ("FFFFFF", "8C8C8C", "404040") if grey in xml}) == 3


def test_a_chart_is_as_large_as_asked() -> None:
    chart = bar_chart(picture(LOW))
    assert (chart.height, chart.width) == (8, 20)


def test_a_cell_is_text_or_a_figure_never_both() -> None:
    page = sheet()
    page.put([Cell(looks.TEXT, text="=1+1", value=2, formula="1+1")])
    assert page.placed == [Placed(1, 1, looks.quoted(looks.TEXT), "=1+1")]
