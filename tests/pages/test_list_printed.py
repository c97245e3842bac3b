"""The shopping list on paper: empty boxes whatever was ticked, room for prices, no buttons."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from estimator.outputs.shopping_page import shopping_page
from tests.outputs.bid_factory import full_bid, sample_bid
from tests.pages.browsing import Opened

Browse = Callable[..., Opened]


def printed(browse: Browse) -> Opened:
    opened = browse(shopping_page(sample_bid("nightstand")), "laptop")
    opened.page.locator(".got").first.check()
    opened.page.emulate_media(media="print")
    return opened


def looks(opened: Opened, media: str) -> tuple[bytes, bytes]:
    """One box as it looks ticked, and not ticked."""
    opened.page.emulate_media(media="screen")
    box = opened.page.locator(".got").first
    pictures = []
    for ticked in (True, False):
        opened.page.emulate_media(media="screen")
        box.set_checked(ticked)
        opened.page.evaluate("document.activeElement.blur()")
        opened.page.emulate_media(media=media)
        pictures.append(box.screenshot())
    return pictures[0], pictures[1]


def test_a_ticked_box_prints_like_an_empty_one(browse: Browse) -> None:
    ticked, empty = looks(printed(browse), "print")
    assert ticked == empty


def test_on_the_screen_they_differ(browse: Browse) -> None:
    ticked, empty = looks(printed(browse), "screen")
    assert ticked != empty


@pytest.mark.parametrize("selector", [".price", "button", "#out", ".bar", "summary", ".skip"])
def test_what_only_works_on_a_screen_is_not_printed(browse: Browse, selector: str) -> None:
    assert not printed(browse).page.locator(selector).first.is_visible()


def test_there_is_room_to_write_what_was_paid(browse: Browse) -> None:
    places = printed(browse).page.locator(".on-paper")
    assert places.count() == 14
    assert all(place.is_visible() for place in places.all())


def test_it_prints_on_few_pages(browse: Browse) -> None:
    """26 things of a job with everything in it fit on three sheets of paper."""
    opened = browse(shopping_page(full_bid()), "laptop")
    pdf = opened.page.pdf(format="Letter")
    assert 1 <= pdf.count(b"/Type /Page\n") <= 3
