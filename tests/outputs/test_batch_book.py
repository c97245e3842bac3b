"""The summary of a batch: sums by hand, live formulas, text that stays text, rows kept on disk."""

from __future__ import annotations

from decimal import Decimal
from io import BytesIO
from zipfile import ZipFile

import pytest
from openpyxl import load_workbook

from estimator.outputs.batch import BatchRow
from estimator.outputs.batch_book import COLUMNS, Spool, batch_workbook
from estimator.outputs.batch_totals import BatchTotals
from estimator.outputs.own_file import is_own_file
from tests.outputs.spreadsheet import reckoned

HEAD_ROW = 4
ROWS = (
    BatchRow("a.toml", "priced", "A", "=1+1", "USD", Decimal("10.10"), Decimal("12.00"),
             Decimal("1.5"), 1, 0),
    BatchRow("b.toml", "priced", "B", "<b>&", "USD", Decimal("20.20"), None, Decimal("2.25"), 2, 3),
    BatchRow("c.toml", "priced", "C", "Lounge", "GBP", Decimal("5.05"), None, Decimal(1), 1, 0),
    BatchRow("d.toml", "stopped by a finding", "D", "x", "USD", Decimal(1000), None, Decimal(9), 1,
             1, stops=1, problem="Breaker against wire"),
    BatchRow("e.toml", "not priced", problem="e.toml: line 3: nonsense", problems=2),
    BatchRow("shop.toml", "no job"),
)  # fmt: skip


def made(rows: tuple[BatchRow, ...] = ROWS) -> bytes:
    totals, spool = BatchTotals(), Spool()
    for row in rows:
        totals.add(row)
        spool.add(row)
    data = batch_workbook(spool.rows(), totals)
    spool.close()
    return data


def cells(data: bytes, sheet: str) -> list[tuple[object, ...]]:
    book = load_workbook(BytesIO(data), data_only=True)
    return [tuple(row) for row in book[sheet].iter_rows(values_only=True)]


@pytest.mark.parametrize(
    "data", [made(), reckoned({"batch": made()})["batch"]], ids=["stored", "live"]
)
def test_sums_are_of_priced_jobs_by_currency(data: bytes) -> None:
    """10.10 + 20.20 = 30.30; 12.00 + 20.20 = 32.20; 1.5 + 2.25 = 3.75; three visits."""
    rows = cells(data, "Summary")
    assert [row[:2] for row in rows if row[0] in {row.status for row in ROWS}] == [
        ("priced", 3), ("stopped by a finding", 1), ("not priced", 1),
    ]  # fmt: skip
    sums = {row[0]: row[1:] for row in rows if row[0] in ("USD", "GBP")}
    assert sums["USD"] == pytest.approx((2, 30.30, 32.20, 3.75, 3))
    assert sums["GBP"] == pytest.approx((1, 5.05, 5.05, 1, 1))


def test_every_job_has_its_row_and_the_failures_say_why() -> None:
    rows = cells(made(), "Jobs")
    assert rows[HEAD_ROW - 1] == tuple(COLUMNS)
    assert [(row[0], row[3], row[10]) for row in rows[HEAD_ROW:]] == [
        ("a.toml", "priced", None),
        ("b.toml", "priced", None),
        ("c.toml", "priced", None),
        ("d.toml", "stopped by a finding", "Breaker against wire"),
        ("e.toml", "not priced", "e.toml: line 3: nonsense"),
    ]
    assert rows[-1][5] is None  # a price that nobody knows is never zero


def test_text_of_a_job_is_never_a_formula() -> None:
    cell = load_workbook(BytesIO(made()))["Jobs"]["C5"]
    assert (cell.value, cell.data_type, cell.quotePrefix) == ("=1+1", "s", True)


def test_title_first_and_named_tables_with_their_headers() -> None:
    book = load_workbook(BytesIO(made()))
    assert book["Summary"]["A1"].value == "Jobs priced together"
    assert book["Jobs"]["A1"].value == "Jobs"
    table = book["Jobs"].tables["Batch_jobs"]
    assert (table.ref, table.column_names) == ("A4:K9", list(COLUMNS))
    assert set(book["Summary"].tables) == {"Batch_counts", "Batch_sums"}


def test_no_job_at_all_makes_a_workbook_too() -> None:
    assert cells(made(ROWS[4:]), "Summary")[-1][0] == "None."


def test_the_summary_is_known_as_our_own_file(tmp_path) -> None:
    path = tmp_path / "summary.xlsx"
    path.write_bytes(made())
    assert is_own_file(path)
    assert ZipFile(path).testzip() is None


def test_a_row_comes_back_from_the_disk_as_it_was() -> None:
    spool = Spool()
    odd = BatchRow("a\udcff.toml", "priced", "Ä", "\n", "USD", Decimal("0.10"), None, Decimal(1))
    spool.add(odd)
    assert list(spool.rows()) == [odd]
    spool.close()
