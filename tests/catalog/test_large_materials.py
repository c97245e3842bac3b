"""The way of large files against the way of small ones, on the same files."""

from __future__ import annotations

from collections.abc import Collection
from pathlib import Path

import pytest

from estimator.catalog import large, large_columns, materials
from estimator.catalog.cells import Habits
from estimator.catalog.materials import MaterialsRead, read_materials
from estimator.catalog.shipped import shipped_catalogs
from estimator.problems import InputError

HEAD = "item,description,unit,pack_size,pack_price,supplier,sold_as,priced_on"
MIXED = "\n".join(
    (
        "staple,One,ea,25,3.10,S,,3/9/2026",
        " Staple ,Two,Each,25.0,3.20,S,,13/9/2026",
        "",
        ",,,,,,,",
        "cable-14-2,Three,ft,1,0.62,S,length,",
        "cable-14-2,Four,m,1,0.62,S,length,",
        "cable-14-2,Five,ft,50,30,S,,",
        "cable-clamp,Six,ea,1,0.62,S,,",
        ",Seven,ea,1,0.62,S,,",
        "nail,Eight,ea,0,-1,S,,soon",
        'nail,"Nine\nlines",ea,100,"4.10",S,,',
        "nail,Ten,ea,100,4.10,S,,",
        "nail,Eleven,ea,100,4.10,T,,",
        "nail,Twelve,ea,100",
        "screw,Thirteen,ea,100,,S,,",
    )
)


@pytest.fixture(autouse=True)
def _short_chunks(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(large_columns, "CHUNK_ROWS", 4)


def both(path: Path, wanted: Collection[str] | None = None) -> tuple[MaterialsRead, MaterialsRead]:
    return read_materials(path, wanted), large.read_large(path, path.name, wanted, Habits())


def write(tmp_path: Path, body: str, head: str = HEAD) -> Path:
    path = tmp_path / "supplier.csv"
    path.write_text(f"{head}\n{body}\n", encoding="utf-8")
    return path


@pytest.mark.parametrize(
    "wanted", [None, {"staple", "nail"}, {"nothing"}], ids=["all", "two", "none"]
)
def test_a_file_with_faults_reads_the_same_both_ways(
    tmp_path: Path, wanted: set[str] | None
) -> None:
    plain, big = both(write(tmp_path, MIXED), wanted)
    assert big.problems == plain.problems
    assert dict(big.materials) == plain.materials
    assert list(big.materials) == list(plain.materials)


def test_problems_of_the_large_way_name_rows_as_counted_by_hand(tmp_path: Path) -> None:
    _, big = both(write(tmp_path, MIXED))
    rows = [problem.where.removeprefix("supplier.csv: row ") for problem in big.problems]
    assert rows == [
        "3, column item",
        "7, column unit",
        "8, column sold_as",
        "10, column item",
        "11, column pack_size",
        "11, column pack_price",
        "11, column priced_on",
        "13, column item",
    ]


@pytest.mark.parametrize("units", ["us", "metric"])
def test_the_shipped_books_read_the_same_both_ways(units: str) -> None:
    plain, big = both(shipped_catalogs(units) / "materials.csv")  # type: ignore[arg-type]
    assert list(big.materials) == list(plain.materials)
    assert dict(big.materials) == plain.materials
    assert (big.problems, big.large, len(big.materials)) == ((), True, len(plain.materials))


def test_semicolons_and_decimal_commas_read_the_same_both_ways(tmp_path: Path) -> None:
    body = 'cable-14-2;"a;b";ft;1;0,62;S;length;2.11.2026\ncable-14-2;c;ft;50;34,8;S;coil;'
    plain, big = both(write(tmp_path, body, f"\ufeffsep=;\n{HEAD.replace(',', ';')}"))
    assert str(plain.materials["cable-14-2"][0].pack_price) == "0.62"
    assert dict(big.materials) == plain.materials


@pytest.mark.parametrize(
    ("body", "message"),
    [
        ("a,b,ea,1,1,S,,,extra", "supplier.csv: row 2: has more cells"),
        ("a,b,ea,1,1,S,,\na,b,ea,1,1,S,,,x,y,z", "supplier.csv: row 3: has more cells"),
        ('a,b,ea,1,1,S,,\na,"b,ea,1,1,S,,', "supplier.csv: row 3: a quote begins a cell here"),
    ],
    ids=["one cell more", "many cells more", "open quote"],
)
def test_a_large_file_that_is_no_table(tmp_path: Path, body: str, message: str) -> None:
    path = write(tmp_path, body)
    with pytest.raises(InputError) as caught:
        large.read_large(path, path.name, None, Habits())
    assert str(caught.value).startswith(message)


def test_a_large_file_that_is_not_utf8_names_the_line(tmp_path: Path) -> None:
    path = tmp_path / "supplier.csv"
    path.write_bytes(f"{HEAD}\na,b,ea,1,1,S,,\na,caf\xe9,ea,5,1,S,,\n".encode("latin-1"))
    with pytest.raises(InputError, match="line 3: holds a character that is not UTF-8"):
        large.read_large(path, path.name, None, Habits())


def test_beyond_the_most_problems_only_their_number_is_told(tmp_path: Path) -> None:
    path = write(tmp_path, "\n".join(f"i{row},,ea,0,1,S,," for row in range(250)))
    problems = large.read_large(path, path.name, None, Habits()).problems
    assert len(problems) == 201
    assert problems[-1].read == "50 more problems like these."


def test_a_file_above_the_limit_is_read_the_large_way(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = write(tmp_path, "staple,,ea,25,3.10,S,,\nnail,,ea,0,3.10,S,,")
    assert not read_materials(path).large
    monkeypatch.setattr(materials, "LARGE_BYTES", 10)
    result = read_materials(path, name="book")
    assert (result.large, list(result.materials), len(result.problems)) == (True, ["staple"], 1)
