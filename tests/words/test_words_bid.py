"""The Bid sheet and the customer's page: whatever is not the job's own is told in a language."""

from __future__ import annotations

import re
from datetime import timedelta
from functools import cache
from html import unescape

import pytest
from babel.dates import format_date

from estimator.language import ENGLISH, Language, OtherWord
from estimator.outputs.bid_page import bid_page
from estimator.outputs.bid_sheet import write_bid_sheet
from estimator.outputs.cells import Sheet
from estimator.outputs.draft import Draft
from estimator.outputs.formats import date_form
from estimator.pricing.records import Bid
from tests.outputs.bid_factory import NAMES, bid_of, full_bid, sample_bid
from tests.words.marked import OPEN, Marked, bare, in_language, own_words

EVERY_LINE = """
[settings.terms]
insurance_line = "Our own words on insurance"
finish_line = "Our own words on the end"
payment_steps = [{ when = "our day of signing", pct = 40 }, { when = "our last day", pct = 60 }]

[[allowances]]
name = "Our own allowance"
amount = 50
"""
OURS = (
    "Our own words on insurance", "Our own words on the end", "our day of signing",
    "our last day", "Our own allowance",
)  # fmt: skip
BIDS = (*NAMES, "everything", "our own words")
_FORMULA_TEXT = re.compile(r'"((?:[^"]|"")*)"')
_MARKUP = re.compile(r"<style>.*?</style>|<svg.*?</svg>|<[^>]*>", re.DOTALL)
LONGEST_TEXT = 255  # of a text in a formula, ECMA-376 part 1, 18.17 and spreadsheet programs


@cache
def bid(name: str) -> Bid:
    if name == "our own words":
        return bid_of("nightstand", None, EVERY_LINE)
    return full_bid() if name == "everything" else sample_bid(name)


def dates(of: Bid) -> list[str]:
    """Days on the page: of the bid, and until when it holds; Babel writes them."""
    job, days = of.survey.job, of.books.shop.terms.validity_days
    if job.bid_date is None:
        return []
    until = job.bid_date + timedelta(days=days)
    place = Marked().dates(job.locale)
    return [format_date(day, "long", locale=place) for day in (job.bid_date, until)]


def sheet_in(name: str, language: Language) -> Sheet:
    told = in_language(bid(name), language)
    return write_bid_sheet(Draft.of(told))


@pytest.mark.parametrize("name", BIDS)
def test_nothing_on_the_bid_sheet_stays_untold(name: str) -> None:
    own = (*own_words(bid(name)), *OURS)
    texts = [cell.value for cell in sheet_in(name, Marked()).placed if isinstance(cell.value, str)]
    assert sum(OPEN in text for text in texts) > len(texts) / 2
    assert [text for text in texts if bare(text, own)] == []


@pytest.mark.parametrize("name", BIDS)
def test_nothing_in_its_formulas_stays_untold(name: str) -> None:
    formulas = [cell.formula for cell in sheet_in(name, Marked()).placed if cell.formula]
    pieces = [piece for text in formulas for piece in _FORMULA_TEXT.findall(text)]
    said = [piece for piece in pieces if " " in piece.strip()]
    assert said
    assert [piece for piece in said if OPEN not in piece and bare(f"{OPEN}{piece}")] == []


@pytest.mark.parametrize("name", BIDS)
def test_nothing_on_the_page_stays_untold(name: str) -> None:
    own = (*own_words(bid(name)), *OURS)
    page = bid_page(in_language(bid(name), Marked()))
    own = (*own, *dates(bid(name)))
    texts = [unescape(text).strip() for text in _MARKUP.split(page)]
    assert [text for text in texts if bare(text, own)] == []


@pytest.mark.parametrize("code", ["en", "es", "fr"])
@pytest.mark.parametrize("name", BIDS)
def test_no_text_in_a_formula_is_too_long(name: str, code: str) -> None:
    formulas = [cell.formula for cell in sheet_in(name, Language(code)).placed if cell.formula]
    pieces = [piece for text in formulas for piece in _FORMULA_TEXT.findall(text)]
    assert max(map(len, pieces)) <= LONGEST_TEXT


@pytest.mark.parametrize("name", BIDS)
def test_figures_never_change_with_the_language(name: str) -> None:
    marked, plain = sheet_in(name, Marked()), sheet_in(name, ENGLISH)
    assert len(marked.placed) == len(plain.placed)
    for one, other in zip(marked.placed, plain.placed, strict=True):
        if isinstance(other.value, str):
            assert _figures(str(one.value)) == _figures(other.value)
        else:
            assert one.value == other.value


def _figures(text: str) -> list[str]:
    return re.findall(r"\d+", text)


@pytest.mark.parametrize(
    ("code", "want"),
    [
        ("en", "[$-409]mmmm d, yyyy"),
        ("es", "[$-80A]d de mmmm de yyyy"),
        ("fr", "[$-40C]d mmmm yyyy"),
    ],
)
def test_months_are_in_the_language(code: str, want: str) -> None:
    """Long dates of en-US, es-US and fr: Unicode CLDR; the numbers of locales: from memory."""
    made = date_form("USD", bid("nightstand").survey.job, Language(code))
    assert made.replace("\\", "").replace('"', "") == want


def test_a_long_sentence_of_the_users_is_parted_in_formulas() -> None:
    """More than 255 characters in one text would make a program refuse the workbook."""
    long = "a " * LONGEST_TEXT
    language = Language("es", {"{pct} % of the total": OtherWord(f"{{pct}} {long}")})
    formulas = [each.formula for each in sheet_in("nightstand", language).placed if each.formula]
    pieces = [piece for text in formulas for piece in _FORMULA_TEXT.findall(text)]
    assert max(map(len, pieces)) == LONGEST_TEXT
    assert any(long in "".join(_FORMULA_TEXT.findall(text)) for text in formulas)
