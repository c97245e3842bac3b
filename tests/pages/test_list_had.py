"""What was there already is marked where the price would be typed."""

from __future__ import annotations

from collections.abc import Callable

from estimator.outputs.shopping_page import shopping_page
from tests.outputs.bid_factory import full_bid, sample_bid
from tests.pages.browsing import Opened

Browse = Callable[..., Opened]


def test_it_is_seen_beside_the_price_without_unfolding_anything(browse: Browse) -> None:
    opened = browse(shopping_page(sample_bid("nightstand")))
    box, price = opened.page.locator(".had").first, opened.page.locator(".price").first
    assert (box.is_visible(), opened.page.locator("details[open]").count()) == (True, 0)
    assert abs(box.bounding_box()["y"] - price.bounding_box()["y"]) < 100
    box.check()
    assert opened.text("#sum").startswith("Got 1 of 14.")


def test_only_what_is_bought_can_have_been_there(browse: Browse) -> None:
    opened = browse(shopping_page(full_bid()))
    bought = opened.page.locator("li[data-kind=buy]").count()
    assert opened.page.locator(".had").count() == bought
    assert opened.page.locator("li[data-kind=truck] .had").count() == 0
