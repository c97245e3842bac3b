"""Labor and accounts books: what is read, and each fault with its row and column."""

from __future__ import annotations

from decimal import Decimal

import pytest

from estimator.catalog.cells import Habits
from estimator.catalog.labor import LaborRead, read_accounts, read_labor

HEAD = "task,unit,hours_low,hours_likely,hours_high,conditions,source"
CONDITIONS = ("plaster", "upper-storey")


def labor(*rows: str, head: str = HEAD) -> LaborRead:
    return read_labor("\n".join((head, *rows)), "labor.csv", Habits(), CONDITIONS)


def test_a_row_of_the_labor_book() -> None:
    one = labor("Fit-Box,each,0.10,0.20,0.30,plaster upper-storey,judgement").labor["fit-box"]
    assert (one.unit, one.hours_low, one.hours_high) == ("ea", Decimal("0.10"), Decimal("0.30"))
    assert (one.conditions, one.source, one.row) == (CONDITIONS, "judgement", 2)
    assert (one.description, one.includes) == ("", "")


def test_decimal_commas_in_a_file_with_semicolons() -> None:
    read = labor("open-strip;ft;0,033;0,05;1;;", head=HEAD.replace(",", ";"))
    assert read.problems == ()
    assert read.labor["open-strip"].hours_low == Decimal("0.033")


@pytest.mark.parametrize(
    ("row", "column", "says"),
    [
        (",ea,1,1,1,,", "task", "is empty"),
        ("a,gal,1,1,1,,", "unit", '"gal" is not a unit of this book'),
        ("a,ea,,1,1,,", "hours_low", "is empty where a number of hours is needed"),
        ("a,ea,1,-1,1,,", "hours_likely", '"-1" is below zero'),
        ("a,ea,1,1,1h,,", "hours_high", '"1h" is not a number of hours'),
        ("a,ea,2,1,3,,", "hours_likely", "hours low 2, likely 1, high 3 do not rise."),
        ("a,ea,1,3,2,,", "hours_likely", "hours low 1, likely 3, high 2 do not rise."),
        ("a,ea,1,1,1,plastr,", "conditions", '"plastr" is not a condition in shop.toml.'),
        ("b,ea,1,1,1,,", "task", "b stands already in row 2."),
    ],
)
def test_one_wrong_cell_of_the_labor_book(row: str, column: str, says: str) -> None:
    (problem,) = labor("b,ea,1,1,1,,", row).problems
    assert problem.where == f"labor.csv: row 3, column {column}"
    assert problem.read.startswith(says)


def test_the_nearest_condition_is_named() -> None:
    (problem,) = labor("a,ea,1,1,1,plastr,").problems
    assert problem.write == "Did you mean plaster?"


def test_a_row_of_the_accounts_book() -> None:
    text = "note;Line Kind;account_code;account_name\nas sold;Materials;4010;Sales, materials\n"
    read = read_accounts(text, "accounts.csv")
    one = read.accounts["materials"]
    assert (one.account_code, one.account_name) == ("4010", "Sales, materials")
    assert (one.note, one.row, read.problems) == ("as sold", 2, ())


@pytest.mark.parametrize(
    ("row", "column", "says"),
    [
        (",4010,Sales", "line_kind", "is empty"),
        ("labor,,Sales", "account_code", "is empty"),
        ("labor,4010,", "account_name", "is empty"),
        ("TAX,4010,Sales", "line_kind", "tax stands already in row 2."),
    ],
)
def test_one_wrong_cell_of_the_accounts_book(row: str, column: str, says: str) -> None:
    text = f"line_kind,account_code,account_name\ntax,2200,Tax\n{row}\n"
    (problem,) = read_accounts(text, "accounts.csv").problems
    assert problem.where == f"accounts.csv: row 3, column {column}"
    assert problem.read.startswith(says)
