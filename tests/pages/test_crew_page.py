"""The crew's page: twins beside each other or under each other, few pages of paper, no script."""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import cache

import pytest

from estimator.language import ENGLISH
from estimator.outputs.crew_page import crew_page
from estimator.outputs.drawing_svg import elevation_svg
from tests.drawing.made_view import SAMPLES, drawing_of
from tests.outputs.bid_factory import NAMES, bid_of, full_bid, sample_bid
from tests.outputs.crew_made import BOTH, english, lines_of
from tests.pages.browsing import Opened

Browse = Callable[..., Opened]


@cache
def page(sample: str, *, both: bool = False) -> str:
    return crew_page(sample_bid(sample), BOTH if both else (ENGLISH,))


def twins(opened: Opened) -> tuple[dict[str, float], dict[str, float]]:
    """Where a line and its twin stand."""
    pair = opened.page.locator("li .twins").first.locator("> span")
    first, second = (pair.nth(at).bounding_box() for at in (0, 1))
    return first, second


@pytest.mark.parametrize("sample", NAMES)
def test_every_line_is_on_the_page_once(browse: Browse, sample: str) -> None:
    shown = [" ".join(each.split()) for each in
             browse(page(sample)).page.locator("li").all_inner_texts()]  # fmt: skip
    assert shown == [" ".join(line.text.split()) for line in lines_of(english(sample_bid(sample)))]


def test_twins_stand_beside_each_other_on_a_laptop(browse: Browse) -> None:
    first, second = twins(browse(page("nightstand", both=True), "laptop"))
    assert first["y"] == second["y"]
    assert second["x"] > first["x"] + first["width"] - 1


def test_a_twin_stands_under_its_line_on_a_phone(browse: Browse) -> None:
    first, second = twins(browse(page("nightstand", both=True), "phone"))
    assert second["y"] >= first["y"] + first["height"]


def test_each_part_names_its_language() -> None:
    made = page("nightstand", both=True)
    assert '<html lang="en">' in made
    pairs = re.findall(r'<span class="twins"><span lang="(\w+)">[^<]*</span><span lang="(\w+)">',
                       made)  # fmt: skip
    assert set(pairs) == {("en", "es")}
    assert len(pairs) == made.count('class="twins"') > 70


def test_a_sheet_in_spanish_alone_says_so() -> None:
    made = crew_page(sample_bid("nightstand"), BOTH[1:])
    assert '<html lang="es">' in made
    assert "twins" not in made.partition("</style>")[2]


def test_tables_have_headers_and_a_name(browse: Browse) -> None:
    tables = browse(page("nightstand")).page.locator("table")
    assert tables.count() == 2
    for table in tables.all():
        assert table.locator("th[scope=col]").count() == 5
        named = table.get_attribute("aria-labelledby")
        assert table.page.locator(f"#{named}").inner_text() != ""


@pytest.mark.parametrize("paper", ["A4", "Letter"])
@pytest.mark.parametrize("sample", ["nightstand", "printer-corner", "lounge"])
def test_it_prints_on_two_pages(browse: Browse, sample: str, paper: str) -> None:
    pdf = browse(page(sample), "laptop").page.pdf(format=paper)
    assert pdf.count(b"/Type /Page\n") <= 2


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_two_languages_print_on_few_pages(browse: Browse, paper: str) -> None:
    pdf = browse(page("nightstand", both=True), "laptop").page.pdf(format=paper)
    assert pdf.count(b"/Type /Page\n") <= 3


@pytest.mark.parametrize("sample", SAMPLES)
def test_the_walls_are_in_it(sample: str) -> None:
    for at, view in enumerate(drawing_of(sample_bid(sample)).elevations, start=1):
        assert elevation_svg(view, f"wall{at}") in page(sample)


def test_there_is_no_script_in_it() -> None:
    assert "<script" not in page("nightstand")
    assert "script-src" not in page("nightstand")


def test_names_that_look_like_markup_stay_text(browse: Browse) -> None:
    bid = bid_of("nightstand", {'id = "strip"': 'id = "<img src=x onerror=alert(1)>"'})
    opened = browse(crew_page(bid, BOTH))
    assert (opened.page.locator("img").count(), opened.errors) == (0, [])
    assert "Opening <img src=x onerror=alert(1)>:" in opened.text("main")


def test_no_rate_and_no_total_is_told() -> None:
    made = crew_page(full_bid(), (ENGLISH,)).partition("</style>")[2]
    assert f"{full_bid().price.total:.2f}" not in made
    assert not re.search(r"[$\u00a3\u20ac]", made)
