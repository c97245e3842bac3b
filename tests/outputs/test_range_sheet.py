"""The Range sheet: figures of the draws stored, sums in closed form live, plain words."""

from __future__ import annotations

from decimal import Decimal
from functools import cache
from io import BytesIO

import pytest
from openpyxl.worksheet.worksheet import Worksheet

from estimator.outputs.workbook import bid_workbook
from estimator.pricing.risk import price_range
from estimator.pricing.risk_records import PriceRange
from tests.outputs.bid_factory import bid_of, full_bid, full_file, sample_bid, sample_file
from tests.outputs.spreadsheet import cells, opened, reckoned

PLAIN = '\n[settings.risk]\nusual = []\nshape = "pert"\ndraws = 2000\n'


@cache
def page(name: str) -> Worksheet:
    data = {"full": full_file, "plain": plain_file}.get(name, lambda: sample_file(name))()
    return opened(data, values=True)["Range"]


@cache
def plain_file() -> bytes:
    """No risks, another shape, few draws."""
    return bid_workbook(bid_of("nightstand", more=PLAIN))


@cache
def spread_of(name: str) -> PriceRange:
    return price_range(full_bid() if name == "full" else sample_bid(name))


def rows(name: str, table: str) -> list[list[object]]:
    """The rows of a table, without its headers."""
    sheet = page(name)
    return [[cell.value for cell in row] for row in sheet[sheet.tables[table].ref][1:]]


def said(name: str) -> str:
    return " ".join(
        str(cell.value) for row in page(name).iter_rows() for cell in row if cell.value is not None
    )


@pytest.mark.parametrize("name", ["nightstand", "full"])
def test_percentiles_are_those_of_the_range(name: str) -> None:
    spread = spread_of(name)
    for row, level in zip(rows(name, "Range_levels"), spread.levels, strict=True):
        above = level.total - spread.bid_total
        assert row[0] == f"P{level.pct}"
        assert [Decimal(repr(figure)) for figure in row[2:]] == [level.hours, level.total, above]


def test_drivers_stand_with_their_part_and_what_they_move() -> None:
    spread = spread_of("nightstand")
    for row, driver in zip(rows("nightstand", "Range_drivers"), spread.drivers, strict=True):
        assert row[1] == driver.name
        assert [Decimal(repr(row[3])) * 100, Decimal(repr(row[4]))] == [
            driver.share_pct, driver.swing
        ]  # fmt: skip


def test_every_input_of_the_range_has_its_row() -> None:
    spread = spread_of("full")
    named = [row[1] for table in ("tasks", "risks", "materials")
             for row in rows("full", f"Range_{table}")]  # fmt: skip
    assert named == [each.name for each in spread.inputs]


@pytest.mark.parametrize(
    "want",
    [
        "P80 is the figure that 80 of 100 such jobs would not exceed; P50 is the middle.",
        "Likely values added up: at about P",
        "The middle is P50.",
        "100,000 times by chance (seed 1)",
        "Percentiles, shares and figures of the draws are stored: run the tool again",
        "What is enough in 80 of 100 jobs",
    ],
)
def test_the_sheet_says_in_plain_words(want: str) -> None:
    assert want in said("nightstand")


def test_the_likely_sum_is_never_called_the_middle() -> None:
    assert "the middle" not in said("nightstand").replace("P50 is the middle", "")


def test_notes_of_the_range_are_told() -> None:
    assert "The job states its hours" in said("closet-charger")
    assert "The minimum charge stands in for the price in" in said("closet-charger")
    assert "Only 2000 draws" in said("plain")


def test_figures_of_the_draws_are_numbers_and_the_rest_formulas() -> None:
    sheet = {place: cell for place, cell in cells(sample_file("nightstand")).items()
             if place[0] == "Range"}  # fmt: skip
    stored = [row[2].coordinate for row in page("nightstand")["A1:C40"] if row[0].value == "P80"]
    assert not sheet["Range", stored[0]].formula
    assert sheet["Range", stored[0].replace("C", "E")].formula.endswith("-bid_total")
    assert sum(bool(cell.formula) for cell in sheet.values()) > 100


def test_without_risks_there_is_no_table_of_them() -> None:
    assert "Range_risks" not in page("plain").tables
    assert "Range_risks" in page("nightstand").tables


@cache
def again() -> dict[str, dict[tuple[str, str], object]]:
    """Three files as LibreOffice finds them anew, the last with a task and a chance changed."""
    changed = without_chance(sample_file("nightstand"))
    files = {"plain": plain_file(), "full": full_file(), "changed": changed}
    return {
        name: {place: cell.value for place, cell in cells(data).items()}
        for name, data in reckoned(files).items()
    }


def without_chance(data: bytes) -> bytes:
    """The workbook with every chance of a risk set to nothing, and nothing run together."""
    book = opened(data)
    sheet = book["Range"]
    for row in sheet[sheet.tables["Range_risks"].ref][1:]:
        row[2].value = 0
    rule = next(row for row in sheet.iter_rows() if row[1].value == "Hours of tasks run together")
    rule[2].value = 0
    made = BytesIO()
    book.save(made)
    return made.getvalue()


@pytest.mark.parametrize("name", ["plain", "full"])
def test_every_formula_gives_its_stored_value(name: str) -> None:
    written = plain_file() if name == "plain" else full_file()
    wrong = [
        (place, cell.value, again()[name][place])
        for place, cell in cells(written).items()
        if place[0] == "Range" and cell.formula
        and not (cell.value == again()[name][place]
                 or abs(float(str(cell.value)) - float(str(again()[name][place]))) <= 5e-7)
    ]  # fmt: skip
    assert not wrong


def test_the_closed_form_follows_what_is_typed_anew() -> None:
    """No risk and no correlation: means and variances of the tasks alone, added up here."""
    tasks = [each for each in spread_of("nightstand").inputs if each.kind == "hours"]
    mean = sum(each.mean for each in tasks)
    variance = sum((each.sd**2 for each in tasks), Decimal(0))
    sheet = page("nightstand")
    row = next(row for row in sheet.iter_rows() if row[1].value == "All hours")
    found = [again()["changed"]["Range", row[at].coordinate] for at in (9, 10)]
    assert found == pytest.approx([float(mean), float(variance.sqrt())], abs=1e-5)


def test_prices_of_the_range_are_in_the_currency_of_the_job() -> None:

    (cell,) = [row[3] for row in page("lounge")["A1:D60"] if row[0].value == "P50"]
    assert "£" in cell.number_format
