"""What the phone page copies and saves, and that it says what is not in it."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from estimator.outputs.shopping_page import shopping_page
from tests.outputs.bid_factory import sample_bid
from tests.pages.browsing import Opened

Browse = Callable[..., Opened]
NOTHING = "Nothing to copy or save yet: no price has been typed."


def at_the_shop(browse: Browse, *prices: str) -> Opened:
    """Three things ticked, and prices typed for the first ones of the list."""
    opened = browse(
        shopping_page(sample_bid("nightstand")), permissions=["clipboard-read", "clipboard-write"]
    )
    for at in range(3):
        opened.page.locator(".got").nth(at).check()
    for at, price in enumerate(prices):
        opened.page.locator(".price").nth(at).fill(price)
    return opened


@pytest.mark.parametrize(
    ("prices", "held"),
    [
        ((), f"{NOTHING} Ticked without a price, left out: 3."),
        ((".65",), "Things in the text: 1. Ticked without a price, left out: 2."),
        ((".65", "x"), "Things in the text: 1. Ticked without a price, left out: 1."
         " Typed, but cannot be read, left out: 1."),
        (("1", "2", "3"), "Things in the text: 3."),
    ],
    ids=["no price", "one price", "one unreadable", "all"],
)  # fmt: skip
def test_what_is_left_out_stands_beside_the_text_and_in_the_status(
    browse: Browse, prices: tuple[str, ...], held: str
) -> None:
    opened = at_the_shop(browse, *prices)
    assert opened.text("#held") == held
    opened.page.locator("#copy").click()
    opened.page.wait_for_function("document.getElementById('status').textContent")
    assert opened.text("#status") == (f"Copied. {held}" if prices else held)


def test_with_nothing_to_copy_the_clipboard_is_left_alone(browse: Browse) -> None:
    opened = at_the_shop(browse)
    opened.page.evaluate("navigator.clipboard.writeText('mine')")
    opened.page.locator("#copy").click()
    opened.page.locator("#save").click()
    assert opened.text("#status").startswith(NOTHING)
    assert opened.page.evaluate("navigator.clipboard.readText()") == "mine"


def test_the_table_leaves_nothing_out_that_is_ticked(browse: Browse) -> None:
    """S1 has 14 things to get; each is a row."""
    opened = at_the_shop(browse, "1")
    opened.page.locator("#as-csv").check()
    assert opened.text("#held") == "Things in the text: 14."


def test_a_tax_that_cannot_be_read_is_not_dropped_in_silence(browse: Browse) -> None:
    opened = at_the_shop(browse, "1", "2", "3")
    opened.page.locator("#r0tax").fill("0.4x")
    assert opened.text("#held") == "Things in the text: 3. Typed, but cannot be read, left out: 1."
