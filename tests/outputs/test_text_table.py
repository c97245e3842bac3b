"""Tables for the terminal: aligned, never wider than it, and harmless."""

from __future__ import annotations

import pytest

from estimator.outputs.text_table import table

COLUMNS = 80


def test_names_stand_left_and_figures_right() -> None:
    assert table(("Line", "Cost"), [("labor", "9.00"), ("a", "10.00")]) == [
        "Line    Cost", "labor   9.00", "a      10.00"
    ]  # fmt: skip


@pytest.mark.parametrize("length", [60, 66, 67, 68, 200])
def test_a_long_name_is_cut_and_says_so(length: int) -> None:
    """79 columns less two gaps and 4 + 5 for the figures leave 66 for the name."""
    rows = [("x" * length, "1.00", "10.00")]
    line = table(("", "Net", "Gross"), rows)[1]
    assert len(line) < COLUMNS
    assert ("..." in line) is (length > 66)


def test_of_several_names_the_longest_is_cut() -> None:
    line = table(("", "", ""), [("4010", "y" * 90, "1.00")], 2)[1]
    assert line.startswith("4010  yyy") and line.endswith("...  1.00")


def test_what_does_not_print_is_a_question_mark() -> None:
    assert table(("a",), [("b\x1b[2J",)])[1] == "b?[2J"
