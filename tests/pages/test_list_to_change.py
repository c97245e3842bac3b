"""From the phone to the change order: what the page really gives is what the command counts."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest

from estimator.outputs.shopping_page import shopping_page
from tests.cli.run import NIGHTSTAND, changed, estimator
from tests.outputs.bid_factory import sample_bid
from tests.pages.browsing import Opened

Browse = Callable[..., Opened]
PRICES = ("3.00", "2.95", "2,90")
"""Typed for the first three things of S1: its box, staples and pigtails, of two shops."""
PARTS = {
    ("box-old-work-1g-20", "1", "3.00"),
    ("cable-staple", "25", "2.95"),
    ("pigtail-14", "5", "2.90"),
}


def saved(opened: Opened, folder: Path) -> str:
    """The file as the page's button saves it; gives its name."""
    with opened.page.expect_download() as download:
        opened.page.locator("#save").click()
    name = str(download.value.suggested_filename)
    download.value.save_as(folder / name)
    return name


def order(folder: Path, paid: str) -> dict[str, object]:
    """The change to plaster by what the file says, as `--json` gives it."""
    job = changed(folder, 'finish = "gypsum board"', 'finish = "plaster"')
    ran = estimator("change", str(NIGHTSTAND), str(job), "--bought", paid, "--json", folder=folder)
    assert (ran.returncode, ran.stderr) == (0, "")
    return dict(json.loads(ran.stdout))


@pytest.mark.parametrize("form", ["toml", "csv"])
def test_what_was_typed_on_the_phone_counts_as_bought(
    browse: Browse, tmp_path: Path, form: str
) -> None:
    """S1: plaster takes a blade at 11.90 that no list had; what is bought or not moves nothing."""
    opened = browse(shopping_page(sample_bid("nightstand")), accept_downloads=True)
    for at, price in enumerate(PRICES):
        opened.page.locator(".price").nth(at).fill(price)
    opened.page.locator(f"#as-{form}").check()
    name = saved(opened, tmp_path)
    assert name == f"paid-S1.{form}"
    found = order(tmp_path, name)
    bought, price = found["bought"], found["price"]
    assert isinstance(bought, dict)
    assert isinstance(price, dict)
    assert bought["file"] == name
    assert {(part["item"], f"{float(part['pack_size']):g}", part["price_each"])
            for part in bought["parts"]} == PARTS  # fmt: skip
    assert price["added"]["listed"] == "11.90"


def test_ticks_without_a_price_and_what_was_had_are_in_the_table(
    browse: Browse, tmp_path: Path
) -> None:
    opened = browse(shopping_page(sample_bid("nightstand")), accept_downloads=True)
    opened.page.locator(".got").first.check()
    opened.page.locator(".had").nth(1).check()
    opened.page.locator("#as-csv").check()
    bought = order(tmp_path, saved(opened, tmp_path))["bought"]
    assert isinstance(bought, dict)
    assert [(part["item"], part["had"], part["price_from"]) for part in bought["parts"]] == [
        ("cable-staple", True, "list"), ("box-old-work-1g-20", False, "list"),
    ]  # fmt: skip
