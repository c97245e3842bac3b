"""The books as CSV: RFC 4180, guarded text, plain numbers, the same bytes again."""

from __future__ import annotations

import csv
import io
import subprocess
from dataclasses import fields, replace
from datetime import date
from decimal import Decimal
from pathlib import Path

import pandas
import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator.ledger.account_map import read_map
from estimator.ledger.entries import Entry, entries_of
from estimator.outputs.ledger_csv import books_csv, cell, write_csv
from estimator.problems import InputError
from tests.ledger.made_close_out import DOUBLE_ENTRY, S19, changed, closed, sample
from tests.outside import need_program

ENTRIES = entries_of([closed(S19), closed(DOUBLE_ENTRY, "b.toml"), sample()])
DATA = books_csv(ENTRIES)
WANTED = """
    txn_id date doc_type doc_no party party_type job_no job_name phase account_code
    account_name line_no description qty unit unit_cost amount_net tax_code tax_rate tax_amount
    amount_gross currency debit credit billable markup_pct memo source_line_id
"""
SECONDS = 300
AMOUNTS = ("amount_net", "tax_amount", "amount_gross", "debit", "credit")


def rows(data: bytes) -> list[list[str]]:
    return list(csv.reader(io.StringIO(data.decode(), newline=""), strict=True))


def test_the_fields_a_bookkeeper_wants_come_first_in_their_order() -> None:
    assert rows(DATA)[0] == [*WANTED.split(), "line_kind", "group"]


def test_records_end_with_cr_lf_and_have_the_same_cells() -> None:
    assert DATA.endswith(b"\r\n") and DATA.count(b"\n") == DATA.count(b"\r\n")
    assert {len(row) for row in rows(DATA)} == {len(fields(Entry))}
    assert len(rows(DATA)) == len(ENTRIES) + 1


@pytest.mark.parametrize(
    ("text", "want"),
    [
        ('=1+2";=1+2', '"\'=1+2"";=1+2"'),  # OWASP, CSV Injection: as printed there
        ("=1+2", "'=1+2"),
        ("+1", "'+1"),
        ("-1", "'-1"),
        ("@SUM(A1)", "'@SUM(A1)"),
        ("\t=1", '"\'\t=1"'),
        ("\r=1", '"\'\n=1"'),  # a lone CR becomes a line end
        ("\n=1", '"\'\n=1"'),
        ("  =1", "'  =1"),
        ("＝1", "'＝1"),
        ("plain", "plain"),
        ("a, b", '"a, b"'),
        ('1/2" board', '"1/2"" board"'),
        ("a;b", '"a;b"'),
        ("two\nlines", '"two\nlines"'),
        (" edge ", '" edge "'),
        ("", ""),
    ],
)
def test_text_is_guarded_and_quoted(text: str, want: str) -> None:
    assert cell(text) == want


@pytest.mark.parametrize(
    ("value", "want"),
    [
        (Decimal("-12.50"), "-12.50"),
        (Decimal("1E+3"), "1000"),
        (Decimal("1234567.89"), "1234567.89"),
        (date(2026, 3, 9), "2026-03-09"),
        (3, "3"),
        (None, ""),
    ],
)
def test_numbers_and_dates_stand_plain(value: Decimal | date | int | None, want: str) -> None:
    assert cell(value) == want


@given(st.text(max_size=20))
def test_any_text_comes_back_from_one_cell(text: str) -> None:
    """One cell, read by the csv module, that begins like no formula."""
    (row,) = rows(f"{cell(text)},x\r\n".encode())
    assert row[1:] == ["x"]
    assert not row[0].lstrip().startswith(("=", "+", "-", "@"))


def test_the_same_files_give_the_same_bytes() -> None:
    again = entries_of([sample(), closed(DOUBLE_ENTRY, "b.toml"), closed(S19)])
    assert books_csv(again) == DATA


def test_pandas_reads_every_amount_as_it_was() -> None:
    frame = pandas.read_csv(io.BytesIO(DATA), dtype=str, keep_default_na=False)
    for name in AMOUNTS:
        assert list(frame[name].map(Decimal)) == [getattr(each, name) for each in ENTRIES]
    assert list(frame["account_code"]) == [each.account_code for each in ENTRIES]


def test_pandas_takes_amounts_for_numbers_and_debits_for_credits() -> None:
    frame = pandas.read_csv(io.BytesIO(DATA))
    assert all(frame[name].dtype == float for name in AMOUNTS)
    sums = frame.groupby("txn_id")[["debit", "credit"]].sum().round(2)
    assert (sums["debit"] == sums["credit"]).all()


def test_a_formula_in_a_file_stays_text() -> None:
    text = changed(S19, ('"Hand tool"', "'=HYPERLINK(\"http://x\")'"))
    data = books_csv(entries_of([closed(text)]))
    assert b'"\'=HYPERLINK(""http://x"")"' in data


def test_a_map_adds_its_columns() -> None:
    found = rows(books_csv(ENTRIES, read_map("schedule-c-2024")))
    assert found[0][-4:] == ["map_name", "map_year", "map_line", "map_confidence"]
    assert {row[-3] for row in found[1:]} == {"2024"}


def test_an_export_is_written_again_only_if_it_is_the_same(tmp_path: Path) -> None:
    path = tmp_path / "books.csv"
    write_csv(path, DATA, replace=False)
    write_csv(path, DATA, replace=False)
    with pytest.raises(InputError, match="holds something else"):
        write_csv(path, DATA + b"x", replace=False)
    write_csv(path, DATA + b"x", replace=True)
    assert path.read_bytes() == DATA + b"x"


def test_markup_stands_where_a_line_is_billed() -> None:
    entry = replace(ENTRIES[0], billable="Y", markup_pct=Decimal("30"))
    row = dict(zip(*rows(books_csv([entry])), strict=True))
    assert (row["billable"], row["markup_pct"]) == ("Y", "30")


def test_libreoffice_and_pandas_read_the_same_amounts(tmp_path: Path) -> None:
    """The CSV opened in LibreOffice and saved as a workbook, against pandas on the CSV itself."""
    text = changed(S19, ('"Hand tool"', "'=1+1'"))
    data = books_csv(entries_of([closed(text), sample()]))
    (tmp_path / "books.csv").write_bytes(data)
    profile = f"-env:UserInstallation={(tmp_path / 'profile').as_uri()}"
    command = [need_program("soffice"), profile, "--headless", "--infilter=CSV:44,34,76,1"]
    command += ["--convert-to", "xlsx", "--outdir", str(tmp_path), str(tmp_path / "books.csv")]
    subprocess.run(command, check=True, capture_output=True, timeout=SECONDS)
    saved = pandas.read_excel(tmp_path / "books.xlsx")
    plain = pandas.read_csv(io.BytesIO(data))
    for name in AMOUNTS:
        assert list(saved[name].round(2)) == list(plain[name].round(2))
    assert "'=1+1" in set(saved["description"])
