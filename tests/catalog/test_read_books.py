"""The four books together: layers, other files, all problems at once, the check and the copy."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest

from estimator.catalog import materials
from estimator.catalog.books import read_books
from estimator.catalog.check import check_books, price_dates
from estimator.catalog.shipped import BOOK_FILES, copy_books, shipped_catalogs, shipped_samples
from estimator.catalog.shop import Layer
from estimator.problems import InputError

TODAY = date(2026, 12, 1)


@pytest.fixture
def folder(tmp_path: Path) -> Iterator[Path]:
    copy_books(tmp_path / "mine")
    yield tmp_path / "mine"
    shutil.rmtree(tmp_path / "mine", ignore_errors=True)


def wheres(folder: Path) -> list[str]:
    with pytest.raises(InputError) as caught:
        read_books(folder)
    return [problem.where for problem in caught.value.problems]


def test_a_shop_file_may_hold_only_what_differs(folder: Path) -> None:
    (folder / "shop.toml").write_text("[price]\nlabor_rate_per_hour = 95\n")
    shop = read_books(folder).shop
    assert (shop.price.labor_rate_per_hour, shop.price.trip_charge) == (95, 45)
    assert shop.origin["price.labor_rate_per_hour"] == "mine/shop.toml"
    assert shop.origin["price.trip_charge"] == "shipped shop.toml"


def test_a_metric_shop_file_lies_over_the_metric_settings(folder: Path) -> None:
    (folder / "shop.toml").write_text('[shop]\nunits = "metric"\n')
    shop = read_books(folder).shop
    assert (shop.currency, shop.shown["practice.tail"]) == ("GBP", "200 mm")


def test_layers_lie_over_the_shop_file(folder: Path) -> None:
    job = Layer("job.toml", {"practice": {"tail": "9 in"}, "shop": {"stale_after_days": 3}})
    shop = read_books(folder, layers=[job]).shop
    assert (shop.practice.tail_in, shop.stale_after_days) == (9, 3)
    assert shop.origin["practice.tail"] == "job.toml"


def test_another_file_may_take_the_place_of_a_book(folder: Path, tmp_path: Path) -> None:
    other = tmp_path / "supplier.csv"
    other.write_text("item;unit;pack_size;pack_price\nnail-finish;ea;100;4,10\n")
    books = read_books(folder, files={"materials": other})
    assert list(books.materials) == ["nail-finish"]
    assert books.materials["nail-finish"][0].pack_price == Decimal("4.10")
    assert books.files["materials"].endswith("/supplier.csv")


def test_problems_of_all_books_come_at_once(folder: Path) -> None:
    (folder / "shop.toml").write_text('[tax]\nmode = "all"\n')
    (folder / "materials.csv").write_text("item,unit,pack_size,pack_price\na,ea,0,x\n")
    (folder / "labor.csv").write_text("task\na\n")
    (folder / "accounts.csv").unlink()
    assert wheres(folder) == [
        "mine/shop.toml: line 2, tax.mode",
        "mine/materials.csv: row 2, column pack_size",
        "mine/materials.csv: row 2, column pack_price",
        *["mine/labor.csv: row 1"] * 4,
        "mine/accounts.csv",
    ]


def test_a_shop_file_that_is_no_toml(folder: Path) -> None:
    (folder / "shop.toml").write_text("[tax\n")
    assert wheres(folder) == ["mine/shop.toml: line 1, column 5"]


def test_a_workbook_saved_under_the_name_of_a_book(folder: Path) -> None:
    (folder / "materials.csv").write_bytes(b"PK\x03\x04...")
    with pytest.raises(InputError, match="is a workbook or a zip archive") as caught:
        read_books(folder)
    assert "CSV UTF-8" in caught.value.problems[0].write


def test_wrong_rows_of_a_large_file_are_left_out_and_kept(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(materials, "LARGE_BYTES", 10)
    with (folder / "materials.csv").open("a") as file:
        file.write("odd,Odd,ea,0,1,S,,,,,,,,,,,,\n")
    last = len((folder / "materials.csv").read_text("utf-8").splitlines())
    books = read_books(folder)
    assert [problem.where for problem in books.left_out] == [
        f"mine/materials.csv: row {last}, column pack_size"
    ]
    assert check_books(folder, TODAY).errors == books.left_out


@pytest.mark.parametrize(
    ("priced_on", "today", "says"),
    [
        ("2026-11-02", "2027-11-02", None),
        ("2026-11-02", "2027-11-03", "from 2026-11-02, more than 365 days ago."),
        ("2026-11-02", "2026-11-02", None),
        ("2026-11-02", "2026-11-01", "from 2026-11-02, which is still to come."),
        ("", "2040-01-01", None),
    ],
)
def test_dates_of_prices(folder: Path, priced_on: str, today: str, says: str | None) -> None:
    """365 days after 2 November 2026 is 2 November 2027: no 29 February lies between."""
    row = f"item,unit,pack_size,pack_price,priced_on\nnail-finish,ea,100,4.10,{priced_on}\n"
    (folder / "materials.csv").write_text(row)
    found = list(price_dates(read_books(folder), date.fromisoformat(today)))
    assert [one.where for one in found] == ["mine/materials.csv: row 2, column priced_on"] * bool(
        says
    )
    assert all(says and says in one.read for one in found)


def test_a_price_that_nobody_knows_is_never_stale(folder: Path) -> None:
    row = "item,unit,pack_size,pack_price,priced_on\nnail-finish,ea,100,,2001-01-01\n"
    (folder / "materials.csv").write_text(row)
    assert list(price_dates(read_books(folder), TODAY)) == []


def test_the_check_names_other_units_and_missing_rows(folder: Path) -> None:
    (folder / "materials.csv").write_text("item,unit,pack_size,pack_price\ncaulk,ea,1,4.30\n")
    (folder / "labor.csv").write_text(
        "task,unit,hours_low,hours_likely,hours_high\nfit-box,ft,1,1,1\n"
    )
    (folder / "shop.toml").write_text(
        '[[practice.consumables]]\nitem="rag"\nquantity=1\nper="job"\n'
    )
    errors, warnings = check_books(folder, TODAY)
    assert [one.read for one in errors] == [
        "caulk is in ea, and the takeoff counts it in ft.",
        "fit-box is in ft, and the takeoff counts it in ea.",
    ]
    assert [one.read.split(",")[0] for one in warnings] == [
        "there is no row for cable-14-2",
        "there is no row for set-up",
        "there is no row for rag",
    ]


def test_a_check_of_books_that_cannot_be_read(tmp_path: Path) -> None:
    found = check_books(tmp_path, TODAY)
    assert len(found.errors) == len(BOOK_FILES)
    assert all("there is no such file" in one.read for one in found.errors)


@pytest.mark.parametrize("units", ["us", "metric"])
def test_a_copy_is_the_shipped_books_byte_for_byte(tmp_path: Path, units: str) -> None:
    copied = copy_books(tmp_path / "a" / "b", units)  # type: ignore[arg-type]
    assert [path.name for path in copied] == [*BOOK_FILES.values(), "words.csv"]
    for path in copied:
        here = shipped_catalogs() if path.name == "words.csv" else shipped_catalogs(units)  # type: ignore[arg-type]
        assert path.read_bytes() == (here / path.name).read_bytes()


def test_a_copy_never_overwrites_and_then_writes_nothing(tmp_path: Path) -> None:
    (tmp_path / "labor.csv").write_text("mine")
    with pytest.raises(InputError, match="is there already and was left as it is"):
        copy_books(tmp_path)
    assert [path.name for path in tmp_path.iterdir()] == ["labor.csv"]
    assert (tmp_path / "labor.csv").read_text() == "mine"


def test_a_copy_into_a_place_that_is_a_file(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("x")
    with pytest.raises(InputError, match="this folder cannot be made"):
        copy_books(tmp_path / "file" / "books")


def test_samples_lie_beside_the_books() -> None:
    assert shipped_samples().parent == shipped_catalogs().parent
