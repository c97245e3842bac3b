"""Cells changed in a CSV text: read back with the csv module, and all else as it was."""

from __future__ import annotations

import csv
import io

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator.catalog.cell_edits import change_cells

CELLS = st.text(st.characters(blacklist_categories=("Cs",), blacklist_characters="\0"), max_size=6)
TABLES = st.lists(st.lists(CELLS, min_size=3, max_size=3), min_size=1, max_size=5)


def written(rows: list[list[str]], delimiter: str) -> str:
    file = io.StringIO(newline="")
    csv.writer(file, delimiter=delimiter).writerows(rows)
    return file.getvalue()


def read(text: str, delimiter: str) -> list[list[str]]:
    return list(csv.reader(io.StringIO(text, newline=""), delimiter=delimiter, strict=True))


@given(TABLES, CELLS, st.sampled_from(",;\t|"), st.data())
def test_one_cell_changes_and_no_other(
    rows: list[list[str]], new: str, delimiter: str, data: st.DataObject
) -> None:
    row = data.draw(st.integers(1, len(rows)))
    column = data.draw(st.integers(0, 2))
    text = change_cells(written(rows, delimiter), delimiter, {(row, column): new})
    rows[row - 1][column] = new
    assert read(text, delimiter) == rows


@given(TABLES, st.sampled_from(",;"))
def test_no_change_leaves_the_text(rows: list[list[str]], delimiter: str) -> None:
    text = written(rows, delimiter)
    assert change_cells(text, delimiter, {}) == text


def test_blank_rows_count_and_stay() -> None:
    assert change_cells("a,b\n\nc,d", ",", {(3, 1): "e"}) == "a,b\n\nc,e"


def test_a_last_row_without_an_end() -> None:
    assert change_cells("a,b\nc,", ",", {(2, 1): "d"}) == "a,b\nc,d"


def test_a_quote_out_of_place_is_not_guessed_at() -> None:
    with pytest.raises(ValueError, match="a quote is out of place at character 2"):
        change_cells('a,"b"c\n', ",", {(1, 0): "d"})


def test_what_must_be_quoted_is() -> None:
    assert change_cells("a,b\n", ",", {(1, 0): 'c,"d"'}) == '"c,""d""",b\n'
    assert change_cells('"a",b\n', ",", {(1, 0): "c"}) == '"c",b\n'
