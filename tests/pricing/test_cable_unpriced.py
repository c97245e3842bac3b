"""Cable that the book has no price for, with pieces in the truck; worked by hand."""

from __future__ import annotations

from pathlib import Path

import pytest

from estimator.pricing.books_for import books_for
from estimator.pricing.engine import estimate
from estimator.pricing.records import ShoppingLine
from estimator.survey.reader import job_from_text

SAMPLE = Path(__file__).parents[2] / "samples" / "nightstand.toml"
HEADINGS = "item,description,unit,pack_size,pack_price,supplier,aisle,tax_class,sold_as\n"
ROW = "cable-14-2,Cable 14-2,ft,1,,Sample supply house,wire and cable,goods,length\n"


def cable(tmp_path: Path, length: str) -> ShoppingLine:
    """The cable line of a job that needs one cut of 119 in, with one piece in the truck."""
    (tmp_path / "materials.csv").write_text(HEADINGS + ROW, encoding="utf-8")
    stock = f'\n[[truck_stock]]\nitem = "cable-14-2"\nlength = "{length}"\n'
    books = '\n[books]\nmaterials = "materials.csv"\n'
    text = SAMPLE.read_text(encoding="utf-8") + stock + books
    job = job_from_text(text, tmp_path / "job.toml")
    lines = estimate(job.survey, books_for(job)).shopping
    return next(line for line in lines if line.item == "cable-14-2")


@pytest.mark.parametrize("length", ["9 ft", "118 in", "10 ft"])
def test_a_piece_too_short_leaves_the_price_unknown(tmp_path: Path, length: str) -> None:
    # 10 ft holds the cut of 119 in, but not the 11 ft of the order with its allowance
    line = cable(tmp_path, length)
    assert (line.cost, line.packs) == (None, ())
    assert line.why == "in the materials book without a price"


def test_a_piece_long_enough_is_drawn_at_a_price_nobody_knows(tmp_path: Path) -> None:
    line = cable(tmp_path, "11 ft")
    assert [drawn.unit_cost for drawn in line.stock] == [None]
    assert (line.to_buy, line.cost) == (0, None)
