"""How many were bought, where it is not what the list says."""

from __future__ import annotations

import tomllib
from collections.abc import Callable
from csv import DictReader
from io import StringIO

import pytest

from estimator.outputs.shopping_items import items_of
from estimator.outputs.shopping_page import shopping_page
from tests.outputs.bid_factory import in_currency, sample_bid
from tests.pages.browsing import Opened

Browse = Callable[..., Opened]
CABLE = next(
    at for at, each in enumerate(items_of(sample_bid("nightstand"))) if each.item == "cable-14-2"
)


def bought(opened: Opened, many: str, price: str = "16.25") -> None:
    """Cable bought; the field of how many is in the fold."""
    opened.page.locator(".price").nth(CABLE).fill(price)
    opened.page.locator("summary").nth(CABLE).click()
    opened.page.locator(".many").nth(CABLE).fill(many)


def page() -> str:
    return shopping_page(sample_bid("nightstand"))


def lines(opened: Opened) -> list[tuple[str, str]]:
    """Item and quantity of what the lines have, each as written."""
    (receipt,) = tomllib.loads(opened.value("#out"), parse_float=str).get("receipts", [{}])
    return [(line["item"], str(line["quantity"])) for line in receipt.get("lines", ())]


def test_the_field_begins_with_what_the_list_says(browse: Browse) -> None:
    fields = browse(page()).page.locator(".many").evaluate_all("all => all.map(x => x.value)")
    assert fields == [f"{each.quantity:f}" for each in items_of(sample_bid("nightstand"))]


@pytest.mark.parametrize(
    ("typed", "written"), [("25", "25"), ("12,5", "12.5"), (".5", "0.5"), ("025", "25")]
)
def test_how_many_were_bought_is_in_the_lines_and_in_the_table(
    browse: Browse, typed: str, written: str
) -> None:
    opened = browse(page())
    bought(opened, typed)
    assert lines(opened) == [("cable-14-2", written)]
    opened.page.locator("#as-csv").check()
    rows = {row["item"]: row["quantity"] for row in DictReader(StringIO(opened.value("#out")))}
    assert (rows["cable-14-2"], rows["pigtail-14"]) == (written, "5")


def test_the_name_tells_what_was_bought_in_place_of_what_the_list_has(browse: Browse) -> None:
    opened, item = browse(page()), items_of(sample_bid("nightstand"))[CABLE]
    bought(opened, "25")
    assert f'"{item.what} (bought: 25 ft)"' in opened.value("#out")
    opened.page.locator(".many").nth(CABLE).fill(f"{item.quantity:f}")
    assert f'"{item.what}"' in opened.value("#out")


def test_it_survives_a_reload_and_an_empty_field_means_the_list(browse: Browse) -> None:
    opened = browse(page())
    bought(opened, "25")
    opened.page.reload()
    assert opened.page.locator(".many").nth(CABLE).input_value() == "25"
    opened.page.locator("summary").nth(CABLE).click()
    opened.page.locator(".many").nth(CABLE).fill("")
    listed = items_of(sample_bid("nightstand"))[CABLE].quantity
    assert lines(opened) == [("cable-14-2", f"{listed:f}")]


@pytest.mark.parametrize("typed", ["0", "-1", "x", "1,000", "1.2.3", ".", "0.0000001"])
def test_what_is_no_quantity_is_told_and_never_written(browse: Browse, typed: str) -> None:
    opened = browse(page())
    bought(opened, typed)
    assert opened.page.locator(".many").nth(CABLE).get_attribute("aria-invalid") == "true"
    assert "Typed, but cannot be read, left out: 1." in opened.text("#held")
    assert lines(opened) == []


def test_a_decimal_comma_where_the_locale_writes_one(browse: Browse) -> None:
    """1,125 is a little more than one there, and 1.125 could be a thousand."""
    opened = browse(shopping_page(in_currency("nightstand", "EUR", "de_DE")))
    bought(opened, "1,125", "2,50")
    assert lines(opened) == [("cable-14-2", "1.125")]
    opened.page.locator(".many").nth(CABLE).fill("1.125")
    assert lines(opened) == []
