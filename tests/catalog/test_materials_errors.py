"""Each fault of a materials book is one clear message with its row and column."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest

from estimator.catalog.cells import Habits
from estimator.catalog.materials import MaterialsRead, read_materials

HEAD = "item,description,unit,pack_size,pack_price,supplier,sold_as,volume_in3,holds,priced_on"
GOOD = "staple,Staple,ea,25,3.10,Sample supply house,,,,2026-11-02"


def read(tmp_path: Path, *rows: str, head: str = HEAD, **habits: object) -> MaterialsRead:
    path = tmp_path / "materials.csv"
    path.write_text("\n".join((head, *rows)) + "\n", encoding="utf-8")
    return read_materials(path, expected=Habits(**habits))  # type: ignore[arg-type]


# one row, the column, what was read, what to write
FAULTS = [
    ("staple,,ea,25,abc,S,,,,", "pack_price", '"abc" is not a price', "Write"),
    ('staple,,ea,25,"3,10",S,,,,', "pack_price", '"3,10"', "3.10"),
    ("staple,,ea,25,-3.10,S,,,,", "pack_price", '"-3.10" is negative', "Write"),
    ("staple,,ea,twenty,3.10,S,,,,", "pack_size", '"twenty" is not a pack size', "digits only"),
    ('staple,,ea,"2,5",3.10,S,,,,', "pack_size", '"2,5" has a "," where "."', "Write 2.5, or"),
    ("staple,,ea,0,3.10,S,,,,", "pack_size", '"0" is zero', "Write a pack size above zero."),
    ("staple,,ea,0.00,3.10,S,,,,", "pack_size", '"0.00" is zero', "above zero"),
    ("staple,,ea,-25,3.10,S,,,,", "pack_size", '"-25" is below zero', "without a sign"),
    ("staple,,ea,,3.10,S,,,,", "pack_size", "is empty where a pack size is needed", "Write 1.25."),
    (",Staple,ea,25,3.10,S,,,,", "item", "is empty", "Fill it in, or delete the row."),
    ("staple,,box,25,3.10,S,,,,", "unit", '"box" is not a unit', "Write one of ea, ft, m, ft2"),
    ("staple,,,25,3.10,S,,,,", "unit", "is empty where a unit is needed", "Write one of"),
    (
        "staple,,ea,25,3.10,S,,,,soon",
        "priced_on",
        '"soon" is not a date',
        "Write it as 2026-11-30.",
    ),
    ("box,,ea,1,3.10,S,,big,,", "volume_in3", '"big" is not a number', "digits only"),
    (
        "connector,,ea,1,3.10,S,,,14,",
        "holds",
        '"14" does not say how many',
        "Write size:least-most",
    ),
    (
        "cable-14-2,,ft,1,0.62,S,by the foot,,,",
        "sold_as",
        '"by the foot" is not one of',
        "Write coil",
    ),
    ("cable-14-2,,ft,1,0.62,S,,,,", "sold_as", "cable-14-2 is sold as a coil or cut", "Write coil"),
]


@pytest.mark.parametrize(("row", "column", "says", "write"), FAULTS)
def test_one_wrong_cell(tmp_path: Path, row: str, column: str, says: str, write: str) -> None:
    (problem,) = read(tmp_path, GOOD, row).problems
    assert problem.where == f"materials.csv: row 3, column {column}"
    assert problem.read.startswith(says)
    assert write in problem.write


def test_a_wrong_row_is_left_out_and_the_others_serve(tmp_path: Path) -> None:
    result = read(tmp_path, GOOD, "staple,,ea,100,abc,S,,,,")
    assert [one.pack_size for one in result.materials["staple"]] == [25]


def test_all_faults_come_at_once_in_row_order(tmp_path: Path) -> None:
    rows = [row for row, *_ in FAULTS]
    found = [problem.where for problem in read(tmp_path, *rows).problems]
    columns = [column for _, column, *_ in FAULTS]
    assert found == [
        f"materials.csv: row {row}, column {one}" for row, one in enumerate(columns, 2)
    ]


@pytest.mark.parametrize(
    "again",
    [
        "staple,Other,ea,25.0,9.99,Sample supply house,,,,",
        "STAPLE,,ea,25,3.10,Sample supply house,,,,",
    ],
)
def test_a_duplicate_names_both_rows(tmp_path: Path, again: str) -> None:
    (problem,) = read(tmp_path, GOOD, "", again).problems
    assert problem.where == "materials.csv: row 4, column item"
    assert problem.read.endswith("from this supplier, stands already in row 2.")


@pytest.mark.parametrize(
    "other",
    [
        "staple,,ea,25,3.10,Corner hardware (sample),,,,",
        "staple,,ea,25,3.10,Sample supply house,pack,,,",
    ],
)
def test_another_supplier_or_another_way_is_no_duplicate(tmp_path: Path, other: str) -> None:
    assert read(tmp_path, GOOD, other).problems == ()


def test_an_item_has_one_unit(tmp_path: Path) -> None:
    (problem,) = read(tmp_path, GOOD, "staple,,ft,25,3.10,S,,,,").problems
    assert problem.where == "materials.csv: row 3, column unit"
    assert problem.read == "staple is in ft here and in ea in row 2."


def test_a_row_with_too_many_cells(tmp_path: Path) -> None:
    (problem,) = read(tmp_path, GOOD, "staple,Staple, small,ea,100,9.10,S,,,,2026-11-02").problems
    assert problem.where == "materials.csv: row 3"
    assert "more cells than there are headings" in problem.read


def test_rows_of_other_items_are_not_looked_at(tmp_path: Path) -> None:
    path = tmp_path / "materials.csv"
    path.write_text(f"{HEAD}\n{GOOD}\nnail,,ea,oops,1,S,,,,\n")
    result = read_materials(path, {"staple"})
    assert (list(result.materials), result.problems) == (["staple"], ())


def test_a_price_that_nobody_knows_is_none_and_not_zero(tmp_path: Path) -> None:
    result = read(tmp_path, "staple,,ea,25,,S,,,,", "nail,,ea,25,0,S,,,,")
    prices = [result.materials[item][0].pack_price for item in ("staple", "nail")]
    assert prices == [None, Decimal(0)]


def test_every_cell_reaches_the_record(tmp_path: Path) -> None:
    head = "Shelf;ITEM;Unit;Pack Size;pack price;volume_in3;Priced on;Supplier;aisle;tax class"
    row = '=B7;Box-X;Each;1;"2,85";20,0;2.11.2026;S;boxes;exempt'
    (one,) = read(tmp_path, f"{row};-list", head=f"{head};source").materials["box-x"]
    assert (one.item, one.description, one.unit, one.row) == ("box-x", "box-x", "ea", 2)
    assert (one.pack_size, one.pack_price, one.priced_on) == (1, Decimal("2.85"), date(2026, 11, 2))
    assert (one.supplier, one.aisle, one.tax_class, one.source) == ("S", "boxes", "exempt", "-list")
    assert one.properties == {"shelf": "=B7", "volume_in3": "20.0"}


def test_a_shop_with_decimal_commas_reads_quoted_commas(tmp_path: Path) -> None:
    result = read(tmp_path, 'staple,,ea,25,"3,10",S,,,,', decimal_comma=True)
    assert result.materials["staple"][0].pack_price == Decimal("3.10")
