"""Random books written by Python's csv module in odd shapes come back as they were."""

from __future__ import annotations

import csv
import io
import tempfile
from datetime import date
from decimal import Decimal
from pathlib import Path
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from estimator.catalog.cells import MATERIAL_UNITS, Habits
from estimator.catalog.large import read_large
from estimator.catalog.materials import read_materials

TEXT = st.text(
    st.characters(codec="utf-8", exclude_categories=("Cc", "Cs")) | st.sampled_from(",;\"'|=+-@\n"),
    max_size=12,
).map(str.strip)
AMOUNT = st.decimals("0.001", "99999", places=3, allow_nan=False)
COLUMNS = {
    "item": st.just(""),
    "description": TEXT,
    "unit": st.just("ea"),
    "pack_size": AMOUNT,
    "pack_price": st.none() | AMOUNT,
    "supplier": TEXT,
    "priced_on": st.none() | st.dates(date(1900, 1, 1), date(2100, 1, 1)),
    "my own column": TEXT,
}
ROW = st.fixed_dictionaries(COLUMNS)
SHAPE = st.fixed_dictionaries(
    {
        "delimiter": st.sampled_from(",;\t|"),
        "quoting": st.sampled_from([csv.QUOTE_MINIMAL, csv.QUOTE_ALL]),
        "lineterminator": st.sampled_from(["\n", "\r\n"]),
        "bom": st.booleans(),
        "blank": st.integers(0, 2),
        "order": st.permutations(list(COLUMNS)),
    }
)


def as_written(value: Any, comma: bool) -> str:
    """Write a value as a spreadsheet program would."""
    if isinstance(value, Decimal):
        return str(value).replace(".", "," if comma else ".")
    return "" if value is None else str(value)


def write(rows: list[dict[str, Any]], shape: dict[str, Any]) -> bytes:
    """Write rows in a shape; decimals have a comma where the cells have a semicolon."""
    comma = shape["delimiter"] == ";"
    out = io.StringIO()
    out.write(shape["lineterminator"] * shape["blank"])
    dialect = {key: shape[key] for key in ("delimiter", "quoting", "lineterminator")}
    writer = csv.writer(out, **dialect)
    writer.writerow(key.title() for key in shape["order"])
    for row in rows:
        writer.writerow(as_written(row[key], comma) for key in shape["order"])
    return out.getvalue().encode("utf-8-sig" if shape["bom"] else "utf-8")


@settings(max_examples=150, deadline=None)
@given(st.lists(ROW, min_size=1, max_size=6), SHAPE)
def test_what_was_written_is_read(rows: list[dict[str, Any]], shape: dict[str, Any]) -> None:
    """Each row is an item of its own; its row number counts blank rows before the heading."""
    rows = [row | {"item": f"item-{place}"} for place, row in enumerate(rows)]
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "materials.csv"
        path.write_bytes(write(rows, shape))
        plain = read_materials(path)
        big = read_large(path, path.name, None, Habits())
    assert plain.problems == big.problems == ()
    assert dict(big.materials) == plain.materials
    first = shape["blank"] + 2
    got = [ways[0] for ways in plain.materials.values()]
    assert [one.row for one in got] == list(range(first, first + len(rows)))
    for one, row in zip(got, rows, strict=True):
        assert (one.pack_size, one.pack_price) == (row["pack_size"], row["pack_price"])
        assert (one.supplier, one.priced_on) == (row["supplier"], row["priced_on"])
        assert one.description == (row["description"] or row["item"])
        assert one.properties.get("my_own_column", "") == row["my own column"]


def test_the_units_are_words_that_no_one_mistakes() -> None:
    assert len({unit.lower() for unit in MATERIAL_UNITS}) == len(MATERIAL_UNITS)
