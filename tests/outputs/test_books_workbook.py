"""The workbooks of the books and of a closed job: live formulas, read back by two programs."""

from __future__ import annotations

from decimal import Decimal
from functools import cache
from io import BytesIO

import pandas
import pytest

from estimator.ledger.account_map import read_map
from estimator.ledger.compare import compare
from estimator.ledger.entries import entries_of
from estimator.outputs.close_out_workbook import close_out_workbook
from estimator.outputs.ledger_workbook import books_workbook
from tests.ledger.made_close_out import DOUBLE_ENTRY, S19, changed, closed, sample
from tests.outputs.spreadsheet import cells, differences, reckoned

EVIL = '=HYPERLINK("http://x","y")'
ODD = changed(S19, ('"Hand tool"', f"'{EVIL}'"), ("supply house", "<& house"),
              ('title = "Worked close-out"', "title = '+1+1'"))  # fmt: skip
MAP = read_map("schedule-c-2024")
ENTRIES = entries_of([closed(ODD), closed(DOUBLE_ENTRY, "b.toml"), sample()])
SHEETS = ["Entries", "By account", "By month", "By job"]


@cache
def written() -> dict[str, bytes]:
    return {
        "books": books_workbook(ENTRIES, "en_US"),
        "mapped": books_workbook(ENTRIES, "de_DE", MAP),
        "s19": close_out_workbook(compare(closed(ODD))),
        "example": close_out_workbook(compare(closed(DOUBLE_ENTRY))),
        "sample": close_out_workbook(compare(sample())),
    }


@cache
def again() -> dict[str, bytes]:
    """Reckoned by LibreOffice from nothing, in one start."""
    return reckoned(written())


@pytest.mark.parametrize(
    ("name", "least"),
    [("books", 100), ("mapped", 120), ("s19", 25), ("example", 15), ("sample", 60)],
)
def test_every_formula_gives_its_stored_value_in_libreoffice(name: str, least: int) -> None:
    formulas = [cell for cell in cells(written()[name]).values() if cell.formula]
    assert len(formulas) > least
    assert differences(written()[name], again()[name]) == []


@pytest.mark.parametrize("who", ["stored", "libreoffice"])
def test_pandas_reads_the_same_amounts_from_both(who: str) -> None:
    """The file as written, and as LibreOffice saved it."""
    data = written()["books"] if who == "stored" else again()["books"]
    frame = pandas.read_excel(BytesIO(data), sheet_name="Entries", header=4)
    for name in ("amount_net", "tax_amount", "amount_gross", "debit", "credit"):
        found = [round(Decimal(str(each)), 2) for each in frame[name]]
        assert found == [getattr(each, name) for each in ENTRIES]


def test_the_sheets_of_the_books() -> None:
    assert [*dict.fromkeys(sheet for sheet, _ in cells(written()["books"]))] == SHEETS
    names = [*dict.fromkeys(sheet for sheet, _ in cells(written()["mapped"]))]
    assert names == [*SHEETS, "By map"]


def test_the_check_says_that_debits_equal_credits() -> None:
    found = cells(written()["books"])["Entries", "H3"]
    assert (found.value, "SUM(" in found.formula) == ("debits equal credits", True)


def test_a_changed_amount_shows_in_the_check() -> None:
    """One debit of 120.00 made 121.00 in the sheet: LibreOffice says that the sums differ."""
    data = written()["books"]
    debits = (place for (sheet, place), cell in cells(data).items()
              if sheet == "Entries" and place[0] == "W" and cell.value == 120)  # fmt: skip
    found = cells(reckoned({"x": with_value(data, next(debits), 121)})["x"])
    assert found["Entries", "H3"].value == "debits and credits differ"


def with_value(data: bytes, place: str, value: int) -> bytes:
    """The workbook with one number of its first sheet changed, as a person would."""
    from openpyxl import load_workbook

    book = load_workbook(BytesIO(data))
    book["Entries"][place].value = value
    file = BytesIO()
    book.save(file)
    return file.getvalue()


@pytest.mark.parametrize("name", ["books", "mapped", "s19"])
def test_no_text_becomes_a_formula(name: str) -> None:
    found = cells(again()[name])
    texts = [cell for cell in found.values() if cell.value in (EVIL, "+1+1")]
    assert texts and not any(cell.formula for cell in texts)


def test_the_same_entries_give_the_same_bytes() -> None:
    assert books_workbook(ENTRIES, "en_US") == written()["books"]


def test_the_close_out_follows_what_is_typed() -> None:
    """S19 with 8.25 h: labor 8.25 x 38.00 = 313.50; margin 640.00 - 77.20 - 313.50 = 249.30."""
    from openpyxl import load_workbook

    book = load_workbook(BytesIO(close_out_workbook(compare(closed()))))
    hours = next(row for row in book["Hours"].iter_rows() if row[4].value == 7.25)
    hours[4].value = 8.25
    file = BytesIO()
    book.save(file)
    found = {cell.value for cell in cells(reckoned({"x": file.getvalue()})["x"]).values()}
    assert {313.5, 249.3} <= {round(each, 2) for each in found if isinstance(each, float)}


def test_s19_stands_in_its_workbook() -> None:
    found = [cell.value for cell in cells(written()["s19"]).values() if cell.formula]
    shown = {round(each, 4) for each in found if isinstance(each, float)}
    assert {77.2, -6.8, 275.5, 66.5, 347.0, 287.3, 0.5422, 0.4489, -0.081, 0.3182} <= shown
    assert "over the cap you set" in found
