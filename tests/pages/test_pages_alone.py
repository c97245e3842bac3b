"""Pages need nothing and tell nobody: no request, a strict policy, text that stays text."""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import cache, partial, update_wrapper
from itertools import pairwise

import pytest

from estimator.language import ENGLISH
from estimator.outputs.bid_page import bid_page
from estimator.outputs.crew_page import crew_page
from estimator.outputs.shopping_page import shopping_page
from tests.outputs.bid_factory import bid_of, full_bid
from tests.outputs.crew_made import BOTH
from tests.pages.browsing import Opened

Browse = Callable[..., Opened]
HOSTILE = "<img src=x onerror=alert(1)><script>alert(2)</script>\" onload='alert(3)'"
PAGES = {
    "shopping list": shopping_page,
    "bid": bid_page,
    "crew": update_wrapper(partial(crew_page, languages=(ENGLISH,)), crew_page),
    "crew in two languages": update_wrapper(partial(crew_page, languages=BOTH), crew_page),
}


@cache
def made(name: str) -> str:
    return PAGES[name](full_bid())


EVERY = pytest.mark.parametrize("name", PAGES)
SIZES = pytest.mark.parametrize("size", ["phone", "laptop"])


@EVERY
def test_one_request_for_the_file_and_no_more(browse: Browse, name: str) -> None:
    opened = browse(made(name))
    for box in opened.page.locator("input[type=checkbox]:visible").all()[:2]:
        box.check()
    asked = opened.page.evaluate("performance.getEntriesByType('resource').length")
    assert (opened.requests, asked, opened.errors) == ([opened.path.as_uri()], 0, [])


@EVERY
@pytest.mark.parametrize(
    "attempt",
    ["fetch('https://example.invalid/')",
     "new Promise((yes, no) => { const i = new Image(); i.onerror = no; i.onload = yes;"
     " i.src = 'https://example.invalid/i.png'; })",
     "new Promise((yes, no) => { const s = document.createElement('script'); s.onerror = no;"
     " s.onload = yes; s.src = 'https://example.invalid/s.js'; document.body.append(s); })"],
    ids=["fetch", "image", "script"],
)  # fmt: skip
def test_the_policy_lets_no_request_out(browse: Browse, name: str, attempt: str) -> None:
    opened = browse(made(name))
    opened.page.evaluate("addEventListener('securitypolicyviolation',"
                         " (e) => { window.refused = e.effectiveDirective; })")  # fmt: skip
    failed = opened.page.evaluate(f"{attempt}.then(() => false, () => true)")
    assert failed
    assert opened.page.evaluate("window.refused") in ("connect-src", "img-src", "script-src-elem")


@EVERY
def test_nothing_in_the_file_names_another_place(name: str) -> None:
    text = re.sub(r'xmlns="http://www\.w3\.org/2000/svg"', "", made(name))
    assert re.findall(r"(?:https?:)?//[a-z]", text) == []
    assert re.findall(r'(?:src|href)="(?!#)', text) == []


@EVERY
def test_what_a_user_typed_stays_text(browse: Browse, name: str) -> None:
    typed = HOSTILE.replace('"', '\\"')
    bid = bid_of("nightstand", {
        'title = "Nightstand outlet"': f'title = "{typed}"',
        'customer = "Sample customer"': f'customer = "{typed}"',
        'id = "strip"': f'id = "{typed}"',
    })  # fmt: skip
    opened = browse(PAGES[name](bid))
    assert opened.page.locator("h1").inner_text().endswith(HOSTILE)
    assert HOSTILE in opened.page.locator("header").inner_text()
    assert (opened.errors, opened.page.locator("img, h1 script").count()) == ([], 0)


@EVERY
@SIZES
def test_axe_core_finds_nothing(browse: Browse, name: str, size: str) -> None:
    opened = browse(made(name), size)
    assert opened.broken_rules() == []
    opened.page.evaluate("document.querySelectorAll('details').forEach((d) => { d.open = true; })")
    for price in opened.page.locator(".price").all()[:2]:
        price.fill("no amount")
    assert opened.broken_rules() == []


@EVERY
@pytest.mark.parametrize("size", ["phone", "laptop", "narrowest"])
def test_nothing_needs_scrolling_sideways(browse: Browse, name: str, size: str) -> None:
    assert not browse(made(name), size).scrolls_sideways()


@EVERY
@SIZES
def test_the_focus_is_always_in_sight(browse: Browse, name: str, size: str) -> None:
    opened = browse(made(name), size)
    count = opened.page.locator("a, input, button, textarea, summary").count()
    assert opened.hidden_when_focused(count) == []


@EVERY
def test_the_language_and_one_main_heading_are_named(name: str) -> None:
    assert '<html lang="en">' in made(name)
    assert made(name).count("<h1") == 1


@EVERY
def test_headings_go_down_one_step_at_a_time(name: str) -> None:
    levels = [int(level) for level in re.findall(r"<h([1-6])", made(name))]
    assert levels[0] == 1
    assert all(later - earlier <= 1 for earlier, later in pairwise(levels))


@EVERY
def test_the_same_job_gives_the_same_page(name: str) -> None:
    assert PAGES[name](full_bid()) == made(name)
