"""The table of the phone page: the shop as typed, and the paper that each thing stands on."""

from __future__ import annotations

import csv
from collections.abc import Callable
from io import StringIO
from pathlib import Path

from estimator.ledger.paid import read_paid
from estimator.outputs.shopping_page import shopping_page
from tests.outputs.bid_factory import sample_bid
from tests.pages.browsing import Opened

Browse = Callable[..., Opened]
PAPER = ("shop", "receipt", "date", "tax of the receipt")
TYPED = {"shop": "=Corner shop", "number": "R-9", "date": "2026-03-09", "tax": ".48"}


def table(browse: Browse) -> str:
    """Box and staples of S1 bought on one paper; its other 12 things not."""
    opened = browse(shopping_page(sample_bid("nightstand")))
    for at, price in enumerate(("3.00", "2.95")):
        opened.page.locator(".price").nth(at).fill(price)
    for field, text in TYPED.items():
        opened.page.locator(f"#r0{field}").fill(text)
    opened.page.locator("#as-csv").check()
    return opened.value("#out")


def test_each_thing_bought_names_its_paper_and_the_tax_stands_once(browse: Browse) -> None:
    rows = [tuple(row[name] for name in PAPER) for row in csv.DictReader(StringIO(table(browse)))]
    assert rows[:2] == [
        ("'=Corner shop", "R-9", "2026-03-09", "0.48"), ("'=Corner shop", "R-9", "2026-03-09", ""),
    ]  # fmt: skip
    assert {row[1:] for row in rows[2:]} == {("", "", "")}
    assert "'=Corner shop" not in {row[0] for row in rows[2:]}


def test_the_table_is_read_with_the_shop_as_typed(browse: Browse, tmp_path: Path) -> None:
    (tmp_path / "paid.csv").write_text(table(browse), encoding="utf-8")
    found = read_paid(tmp_path / "paid.csv", sample_bid("nightstand"))
    assert [(line.item, line.supplier) for line in found.lines] == [
        ("box-old-work-1g-20", "=Corner shop"), ("cable-staple", "=Corner shop"),
    ]  # fmt: skip


def test_a_name_that_looks_like_a_formula_is_guarded_in_the_table(browse: Browse) -> None:
    hostile = (
        shopping_page(sample_bid("nightstand"))
        .replace("1 x Old-work box", "=1+1 Old-work box")
        .replace('<meta http-equiv="Content-Security-Policy"', "<meta")
    )
    opened = browse(hostile)
    opened.page.locator("#as-csv").check()
    assert list(csv.reader(StringIO(opened.value("#out"))))[1][0].startswith("'=1+1 Old-work")
