"""A supplier's file merged into the materials book: figures worked by hand, files byte for byte."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest

from estimator.catalog.supplier_map import SupplierMap, laid_over, map_text, read_map
from estimator.catalog.update import MaterialsUpdate, materials_update
from estimator.problems import InputError

DAY = date(2026, 11, 25)
BOOK = (
    "description;item;my note;unit;pack_size;pack_price;supplier;priced_on\r\n"
    '"Caulk; white";caulk;"keep ""me""";ft;50;4,30;Sample yard;2026-01-02\r\n'
    ";;;;;;;\r\n"
    "Caulk, gray;caulk;;ft;50;4,00;Other yard;2026-01-02\r\n"
    "Nails;nail-finish;;ea;100;;Sample yard;\r\n"
)
MAP = SupplierMap(
    columns={"Art.-No": "number", "Text": "description", "Net price": "pack_price"},
    items={"A-1": "caulk", "Finish  NAILS": "nail-finish"},
    supplier="Sample yard",
    priced_on=DAY,
)
ROWS = "Art.-No,Text,Net price\nA-1,Caulk white,4.73\nA-2,finish nails,5.10\nA-9,Spade,19.00\n"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "materials.csv").write_bytes(BOOK.encode())
    return tmp_path


def update(
    folder: Path, rows: str = ROWS, made: SupplierMap = MAP, encoding: str = "utf-8"
) -> MaterialsUpdate:
    (folder / "theirs.csv").write_bytes(rows.encode(encoding))
    return materials_update(folder / "theirs.csv", made, folder)


def faults(folder: Path, rows: str = ROWS, made: SupplierMap = MAP) -> list[str]:
    with pytest.raises(InputError) as caught:
        update(folder, rows, made)
    assert (folder / "materials.csv").read_bytes() == BOOK.encode()
    return [str(each).replace(f"{folder}/", "").split("\n")[0] for each in caught.value.problems]


def test_old_and_new_price_and_percent(folder: Path) -> None:
    """0.43 of 4.30 is 10 %; a price that nobody knew has no percent."""
    changed = update(folder).changed
    places = [(one.row, one.supplier_row, one.item) for one in changed]
    assert places == [(2, 2, "caulk"), (5, 3, "nail-finish")]
    assert [(one.old, one.new, one.change_pct) for one in changed] == [
        (Decimal("4.30"), Decimal("4.73"), Decimal("10.0")),
        (None, Decimal("5.10"), None),
    ]


def test_only_prices_and_dates_change_in_the_file(folder: Path) -> None:
    want = BOOK.replace("4,30;Sample yard;2026-01-02", "4,73;Sample yard;2026-11-25")
    want = want.replace("100;;Sample yard;", "100;5,10;Sample yard;2026-11-25")
    assert update(folder).data == want.encode()


def test_a_byte_order_mark_stays(folder: Path) -> None:
    (folder / "materials.csv").write_bytes(b"\xef\xbb\xbf" + BOOK.encode())
    assert update(folder).data.startswith(b"\xef\xbb\xbfdescription;")


def test_rows_without_an_item_or_a_price_are_left_and_told(folder: Path) -> None:
    left = update(folder, ROWS + "A-1,Caulk,\n").left
    assert [(one.row, one.number, one.why) for one in left] == [
        (4, "A-9", "the map names no item of ours for it"),
        (5, "A-1", "it has no price"),
    ]


@pytest.mark.parametrize("encoding", ["utf-8-sig", "utf-16", "cp1252"])
def test_other_encodings_semicolons_and_decimal_commas(folder: Path, encoding: str) -> None:
    rows = "Art.-No;Text;Net price\nA-1;Füller weiß;1.004,73\n"
    (one,) = update(folder, rows, encoding=encoding).changed
    assert one.new == Decimal("1004.73")


def test_a_comma_in_quotes_before_two_digits_is_a_decimal_comma(tmp_path: Path) -> None:
    book = "item,unit,pack_size,pack_price,supplier\ncaulk,ft,50,4.30,Sample yard\n"
    (tmp_path / "materials.csv").write_text(book)
    (one,) = update(tmp_path, 'Art.-No,Text,Net price\nA-1,x,"4,73"\n').changed
    assert one.new == Decimal("4.73")


NEW = laid_over(MAP, SupplierMap(fixed={"pack_size": "60"}, supplier="New yard"))


def test_a_new_row_takes_what_all_rows_of_its_item_say(folder: Path) -> None:
    made = update(folder, "Art.-No,Text,Net price\nA-1,Caulk 60,5.5\n", NEW)
    want = BOOK + "Caulk 60;caulk;;ft;60;5,5;New yard;2026-11-25\r\n"
    assert made.data.decode() == want
    assert [(one.row, one.old, one.new) for one in made.added] == [(6, None, Decimal("5.5"))]


@pytest.mark.parametrize("text", ["=1+1", "+x", "-x", "@x", " =x"])
def test_text_of_a_supplier_never_becomes_a_formula(folder: Path, text: str) -> None:
    data = update(folder, f'Art.-No,Text,Net price\nA-1,"{text}",5.5\n', NEW).data.decode()
    assert data.endswith(f"\r\n'{text.strip()};caulk;;ft;60;5,5;New yard;2026-11-25\r\n")


def test_all_faults_at_once_with_file_row_and_column(folder: Path) -> None:
    rows = "Art.-No,Text,Net price\nA-1,Caulk,cheap\nA-2,finish nails,-4\nA-9,Spade,none\n"
    assert [one.split(":")[:2] for one in faults(folder, rows)] == [
        ["theirs.csv", " row 2, column Net price"],
        ["theirs.csv", " row 3, column Net price"],
    ]


def test_an_item_twice_is_refused_at_their_number(folder: Path) -> None:
    rows = ROWS + "A-1,Caulk again,4.80\n"
    assert faults(folder, rows) == [
        "theirs.csv: row 5, column Art.-No: caulk in this pack stands already in row 2."
    ]


@pytest.mark.parametrize(
    ("change", "says"),
    [
        ({"unit": "ea", "pack_size": "50"}, "caulk is in ea here and in ft in your book."),
        ({"supplier": "Third yard"}, "caulk is new, and nothing says how much one pack holds."),
    ],
)
def test_what_would_not_fit_the_book(folder: Path, change: dict[str, str], says: str) -> None:
    fixed = {key: text for key, text in change.items() if key != "supplier"}
    made = laid_over(MAP, SupplierMap(fixed=fixed, supplier=change.get("supplier", "")))
    assert any(says in one for one in faults(folder, made=made))


def test_a_row_that_would_be_wrong_in_the_book_is_refused(folder: Path) -> None:
    """A new cable must say whether it is one piece."""
    made = laid_over(NEW, SupplierMap(items={"A-1": "cable-14-2"}, fixed={"unit": "ft"}))
    (said,) = faults(folder, "Art.-No,Text,Net price\nA-1,Cable,5\n", made)
    assert said.startswith("materials.csv as it would be: row 6")
    assert "sold_as" in said


@pytest.mark.parametrize(
    ("text", "where"),
    [
        ('[columns]\n"Net price" = "pack_price"\n', "map.toml: the supplier is missing."),
        ('supplier = "S"\n[columns]\n"Text" = "description"\n', "map.toml: no column holds"),
        ('supplier = "S"\n[columns]\n"P" = "pack_price"\n', "map.toml: no column tells which"),
        ('supplier = "S"\n[columns]\nP = "pack_price"\nT = "item"\nX = "color"\n',
         'map.toml: line 5, columns.X: "color" is no column of ours.'),
        ('supplier = "S"\n[columns]\nP = "pack_price"\nT = "item"\nQ = "item"\n',
         "map.toml: line 4, columns.T: our column item is given more than once."),
        ("supplier = 3\npriced_on = 'now'\nodd = 1\n", "map.toml: line 1, supplier: is no text."),
        ('supplier = "S"\n[columns]\nP = "pack_price"\nText = "item"\n',
         "map.toml: line 3, columns.P: theirs.csv has no column"),
    ],
)  # fmt: skip
def test_faults_of_a_map_are_told_by_line(folder: Path, text: str, where: str) -> None:
    path = folder / "map.toml"
    path.write_text(text)
    with pytest.raises(InputError) as caught:
        update(folder, made=read_map(path))
    assert where in str(caught.value).replace(f"{folder}/", "")


def test_a_map_is_read_as_it_was_written(tmp_path: Path) -> None:
    odd = SupplierMap(
        {'"Preis" \\ €': "pack_price"}, {"unit": "ft"}, {"a\x7f=b": "caulk"}, "Ä", DAY
    )
    (tmp_path / "m.toml").write_text(map_text(odd), encoding="utf-8")
    assert map_text(read_map(tmp_path / "m.toml")) == map_text(odd)


def test_without_a_book_it_says_how_to_get_one(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="estimator catalog copy"):
        materials_update(tmp_path / "theirs.csv", MAP, tmp_path)
