"""The file itself: the same bytes each time, replaced only where it may be, never half-written."""

from __future__ import annotations

import os
import re
import subprocess
import sys
import zipfile
from datetime import date
from io import BytesIO
from pathlib import Path

import pytest

from estimator.outputs.own_file import MARK_PART, is_own_file
from estimator.outputs.workbook import bid_workbook, write_bid
from estimator.problems import InputError
from tests.outputs.bid_factory import bid_of, sample_bid, sample_file
from tests.outputs.spreadsheet import opened

BID = sample_bid("nightstand")


def edited(data: bytes) -> bytes:
    """The workbook after somebody typed into it and saved it elsewhere."""
    book, saved = opened(data), BytesIO()
    book["Takeoff"]["E7"] = 96
    book.save(saved)
    return saved.getvalue()


def rewritten(data: bytes, name: str, change: bytes) -> bytes:
    """The same zip with one part replaced."""
    made = BytesIO()
    with zipfile.ZipFile(BytesIO(data)) as old, zipfile.ZipFile(made, "w") as new:
        for part in old.namelist():
            new.writestr(part, change if part == name else old.read(part))
    return made.getvalue()


def test_the_same_bid_gives_the_same_bytes_in_another_process() -> None:
    code = (
        "from tests.outputs.bid_factory import sample_file; import sys;"
        "sys.stdout.buffer.write(sample_file('nightstand'))"
    )
    env = {**os.environ, "PYTHONHASHSEED": "77"}
    root = Path(__file__).parents[2]
    run = subprocess.run(
        [sys.executable, "-c", code], env=env, cwd=root, capture_output=True, check=True
    )
    assert run.stdout == sample_file("nightstand")


def test_no_clock_is_in_the_file() -> None:
    with zipfile.ZipFile(BytesIO(sample_file("nightstand"))) as archive:
        assert {part.date_time for part in archive.infolist()} == {(1980, 1, 1, 0, 0, 0)}
    assert opened(sample_file("nightstand")).properties.created.date() == date(2026, 3, 2)


def test_a_job_without_a_date_has_the_same_date_in_its_properties_always() -> None:
    data = bid_workbook(bid_of("nightstand", {"date = 2026-03-02\n": ""}))
    with zipfile.ZipFile(BytesIO(data)) as archive:
        dates = re.findall(rb"W3CDTF\">([^<]*)<", archive.read(MARK_PART))
    assert dates == [b"1980-01-01T00:00:00Z"] * 2


def test_a_new_file_is_written(tmp_path: Path) -> None:
    write_bid(BID, tmp_path / "bid.xlsx", replace=False)
    assert (tmp_path / "bid.xlsx").read_bytes() == sample_file("nightstand")


def test_an_earlier_bid_of_this_tool_is_replaced(tmp_path: Path) -> None:
    path = tmp_path / "bid.xlsx"
    path.write_bytes(sample_file("lounge"))
    write_bid(BID, path, replace=False)
    assert path.read_bytes() == sample_file("nightstand")


NOT_OURS = {
    "text": b"my notes",
    "empty": b"",
    "a zip of something else": rewritten(sample_file("nightstand"), MARK_PART, b"<a/>"),
    "edited since": edited(sample_file("nightstand")),
    "cut off": sample_file("nightstand")[:9_000],
    "a part of it swapped": rewritten(
        sample_file("nightstand"), "xl/worksheets/sheet2.xml", b"<worksheet/>"
    ),
    "a mark too large to read": rewritten(
        sample_file("nightstand"), MARK_PART, b"<x>" + b" " * 1_000_000 + b"</x>"
    ),
}


@pytest.mark.parametrize("old", NOT_OURS.values(), ids=NOT_OURS)
def test_any_other_file_is_kept_unless_asked(tmp_path: Path, old: bytes) -> None:
    path = tmp_path / "bid.xlsx"
    path.write_bytes(old)
    with pytest.raises(InputError, match="is not a workbook as this tool wrote it"):
        write_bid(BID, path, replace=False)
    assert path.read_bytes() == old


@pytest.mark.parametrize("old", NOT_OURS.values(), ids=NOT_OURS)
def test_any_file_is_replaced_when_asked(tmp_path: Path, old: bytes) -> None:
    path = tmp_path / "bid.xlsx"
    path.write_bytes(old)
    write_bid(BID, path, replace=True)
    assert path.read_bytes() == sample_file("nightstand")


def test_a_folder_is_refused_in_one_line(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="this is a folder, not a file"):
        write_bid(BID, tmp_path, replace=True)


def test_a_missing_folder_is_refused_in_one_line(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="the folder does not exist"):
        write_bid(BID, tmp_path / "no" / "bid.xlsx", replace=False)


def test_nothing_else_is_left_in_the_folder(tmp_path: Path) -> None:
    write_bid(BID, tmp_path / "bid.xlsx", replace=False)
    assert [path.name for path in tmp_path.iterdir()] == ["bid.xlsx"]


def test_a_file_that_is_not_there_is_nobodys(tmp_path: Path) -> None:
    assert not is_own_file(tmp_path / "none.xlsx")


def test_openpyxl_reads_the_file_without_a_warning(recwarn: pytest.WarningsRecorder) -> None:
    opened(sample_file("nightstand"))
    assert not recwarn.list


def test_what_a_program_saves_again_keeps_tables_names_and_charts() -> None:
    again = opened(edited(sample_file("nightstand")))
    before = opened(sample_file("nightstand"))
    assert set(again.defined_names) == set(before.defined_names)
    tables = {sheet.title: sorted(sheet.tables) for sheet in again}
    assert tables == {sheet.title: sorted(sheet.tables) for sheet in before}
