"""The customer's page: all that the Bid sheet says, the walls, and nothing of what things cost."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from pathlib import Path

import pytest

from estimator.outputs.bid_page import bid_page
from estimator.outputs.drawing_svg import elevation_svg
from estimator.pricing.records import Bid
from tests.cli.run import estimator
from tests.drawing.made_view import SAMPLES, drawing_of
from tests.outputs.bid_factory import bid_of, full_bid, in_currency, sample_bid, sample_file
from tests.outputs.spreadsheet import opened
from tests.pages.browsing import Opened

Browse = Callable[..., Opened]


@cache
def sheet_texts(sample: str) -> list[str]:
    """Every text on the Bid sheet as its reader sees it; the heading is another on the page."""
    sheet = opened(sample_file(sample), values=True)["Bid"]
    found = [cell.value for row in sheet.iter_rows() for cell in row]
    return [text for text in found if isinstance(text, str) and not text.endswith(". ")][1:]


@cache
def page(sample: str) -> str:
    return bid_page(sample_bid(sample))


@pytest.mark.parametrize("sample", SAMPLES)
def test_it_says_what_the_bid_sheet_says(browse: Browse, sample: str) -> None:
    said = " ".join(str(browse(page(sample)).page.locator("body").text_content()).split())
    for text in sheet_texts(sample):
        for line in text.split("\n"):
            assert " ".join(line.split()) in said


def test_amounts_stand_beside_their_names(browse: Browse) -> None:
    """S3, worked by hand: the minimum of $225.00 is the total."""
    rows = browse(page("closet-charger")).page.locator("dl > div")
    shown = {
        row.locator("dt").inner_text(): row.locator(".amount").inner_text()
        for row in rows.all()
        if row.locator(".amount").count()
    }
    assert shown["Price before tax"] == shown["Total"] == "$225.00"
    assert (shown["Deposit"], shown["Balance"]) == ("$67.50", "$157.50")


def costs(bid: Bid) -> set[str]:
    """What the firm pays for things, and its rate for an hour."""
    packs = [pack for line in bid.shopping for pack in line.packs]
    return {f"{pack.price_each}" for pack in packs} | {f"{bid.price.labor_rate_per_hour:.2f}"}


def test_no_unit_cost_and_no_rate_is_told(browse: Browse) -> None:
    told = browse(bid_page(full_bid())).text("body")
    assert [cost for cost in costs(full_bid()) if f"${cost}" in told] == []


def test_dates_and_money_are_those_of_the_locale(browse: Browse) -> None:
    told = browse(bid_page(in_currency("lounge", "EUR", "de_DE"))).text("body")
    assert "6. M\u00e4rz 2026" in told
    assert "\u00a0\u20ac" in told


@pytest.mark.parametrize("sample", SAMPLES)
def test_the_walls_are_in_it(sample: str) -> None:
    for at, view in enumerate(drawing_of(sample_bid(sample)).elevations, start=1):
        assert elevation_svg(view, f"wall{at}") in page(sample)


def test_a_wide_drawing_scrolls_by_itself_and_by_keyboard(browse: Browse) -> None:
    opened_page = browse(page("nightstand"))
    wide = opened_page.page.locator(".wide").first
    assert wide.evaluate("(box) => box.scrollWidth > box.clientWidth")
    wide.focus()
    opened_page.page.keyboard.press("ArrowRight")
    opened_page.page.wait_for_timeout(1000)
    assert wide.evaluate("(box) => box.scrollLeft") > 0


def test_what_was_found_and_left_goes_on_counting(browse: Browse) -> None:
    accepted = """
[[acceptances]]
finding = "afci-extension:circuit"
decision = "decline remedy"
reason = "The owner asks an electrician."
"""
    told = browse(bid_page(bid_of("nightstand", more=accepted)))
    starts = [int(each) for each in told.page.locator("ol").evaluate_all(
        "(lists) => lists.map((list) => list.start)")]  # fmt: skip
    assert starts[0] == 1


@pytest.mark.parametrize(("paper", "most"), [("A4", 4), ("Letter", 4)])
def test_it_prints_on_few_pages(browse: Browse, paper: str, most: int) -> None:
    pdf = browse(page("printer-corner"), "laptop").page.pdf(format=paper)
    assert 2 <= pdf.count(b"/Type /Page\n") <= most


def test_there_is_no_script_in_it() -> None:
    assert "<script" not in page("nightstand")
    assert "script-src" not in page("nightstand")


def test_the_command_writes_workbook_and_page(tmp_path: Path) -> None:
    done = estimator("bid", "sample:nightstand", "--page", "bid.html", folder=tmp_path)
    assert done.returncode == 0
    assert done.stdout.endswith("Workbook: nightstand.bid.xlsx\nPage: bid.html\n")
    assert (tmp_path / "bid.html").read_text(encoding="utf-8") == page_with_one_more()


def page_with_one_more() -> str:
    from estimator.cli.jobs import price_job

    return bid_page(price_job("sample:nightstand", None, one_more=True).bid)


def test_somebodys_own_page_is_kept_and_no_workbook_written(tmp_path: Path) -> None:
    (tmp_path / "bid.html").write_text("my page")
    done = estimator("bid", "sample:nightstand", "--page", "bid.html", folder=tmp_path)
    assert (done.returncode, [each.name for each in tmp_path.iterdir()]) == (1, ["bid.html"])


def test_a_bid_that_is_stopped_gives_no_page(tmp_path: Path) -> None:
    sample = Path(__file__).parents[2] / "samples" / "nightstand.toml"
    text = sample.read_text(encoding="utf-8").replace('always_live = "yes"', 'always_live = "no"')
    (tmp_path / "job.toml").write_text(text, encoding="utf-8")
    done = estimator("bid", "job.toml", "--page", "bid.html", folder=tmp_path)
    assert (done.returncode, (tmp_path / "bid.html").exists()) == (1, False)
