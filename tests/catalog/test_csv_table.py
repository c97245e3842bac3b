"""Spreadsheet exports of every shape; the rows were counted by hand in a spreadsheet."""

from __future__ import annotations

import pytest

from estimator.catalog.csv_table import Table, read_table
from estimator.problems import InputError

KNOWN = ("item", "unit", "pack_size", "note")
ROWS = (("a", "ea", "1"), ("b", "ft", "25"))


def table(text: str) -> Table:
    return read_table(text, "book.csv", KNOWN, ("item", "unit"))


@pytest.mark.parametrize(
    "text",
    [
        "item,unit,pack_size\na,ea,1\nb,ft,25\n",
        "item;unit;pack_size\na;ea;1\nb;ft;25\n",
        "item\tunit\tpack_size\r\na\tea\t1\r\nb\tft\t25",
        "item|unit|pack_size\ra|ea|1\rb|ft|25\r",
        " ITEM , Unit ,Pack Size\n a , ea ,1\n\u00a0b,ft , 25\n",
        'sep=;\nitem;unit;"pack-size"\na;ea;1\nb;ft;25\n',
        '"item","unit","pack_size"\n"a","ea","1"\n"b","ft","25"\n',
        "item,unit,pack_size,,\na,ea,1,,\nb,ft,25,,\n",
        "item,unit,pack_size\na,ea,1,,\nb,ft,25,\n",
    ],
    ids=range(1, 10),
)
def test_every_export_gives_the_same_cells(text: str) -> None:
    read = table(text)
    assert read.heading.keys[:3] == ("item", "unit", "pack_size")
    assert tuple(cells[:3] for _, cells in read.rows) == ROWS


def test_columns_may_stand_in_any_order() -> None:
    read = table("pack_size,unit,item\n1,ea,a\n25,ft,b\n")
    assert tuple(zip(*(read.column(key) for key in KNOWN[:3]), strict=True)) == ROWS


def test_rows_count_as_a_spreadsheet_shows_them() -> None:
    """Blank rows count; a cell with line breaks is one row; the heading may come later."""
    read = table('\nitem,unit,note\n\na,ea,"two\nlines"\n,,\nb,ft,\n')
    assert read.heading.row == 2
    assert [row for row, _ in read.rows] == [4, 6]
    assert next(iter(read.column("note"))) == "two\nlines"


def test_a_short_row_is_filled_with_empty_cells() -> None:
    assert table("item,unit,note\na,ea\n").rows == ((2, ("a", "ea", "")),)


def test_text_like_a_formula_is_text() -> None:
    read = table("item,unit,note\na,ea,=1+2\nb,ea,@x\nc,ea,-y\n")
    assert list(read.column("note")) == ["=1+2", "@x", "-y"]


def test_a_row_with_more_cells_than_headings_is_set_apart() -> None:
    read = table("item,unit\na,ea\nb,two, words\n")
    assert (read.wide, len(read.rows)) == ((3,), 1)


@pytest.mark.parametrize(
    ("text", "where", "read"),
    [
        ("", "book.csv", "is empty."),
        ("\n \n", "book.csv", "is empty."),
        ('item,unit\na,"ea\nb,ft\n', "book.csv: row 2", "a quote begins a cell here"),
        ('item,unit\na,"1/2" board"\n', "book.csv: row 2", "a quote begins a cell here"),
        ('"item,unit\na,ea\n', "book.csv: row 1", "a quote begins a cell here"),
        ("item,unit,Item\n", "book.csv: row 1", 'the column "Item" stands twice.'),
        ("\nitem,units\n", "book.csv: row 2", "the column unit is missing."),
    ],
)
def test_a_table_that_cannot_be_read(text: str, where: str, read: str) -> None:
    with pytest.raises(InputError) as caught:
        table(text)
    (problem,) = caught.value.problems
    assert problem.where == where
    assert problem.read.startswith(read)


def test_all_missing_columns_come_at_once_with_the_nearest_heading() -> None:
    with pytest.raises(InputError) as caught:
        table("itme,pack\na,1\n")
    assert [problem.read for problem in caught.value.problems] == [
        "the column item is missing.",
        "the column unit is missing.",
    ]
    assert caught.value.problems[0].write.startswith('Rename "itme", or')
