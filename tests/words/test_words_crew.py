"""The crew sheet in another language: whatever it says can be told."""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import partial
from html.parser import HTMLParser
from io import BytesIO

import pytest
from openpyxl import load_workbook

from estimator.outputs.crew_book import crew_workbook
from estimator.outputs.crew_page import crew_page
from estimator.outputs.crew_sheet import crew_sheets
from estimator.pricing.records import Bid
from tests.outputs.bid_factory import NAMES, RandomJobs, bid_of, full_bid, sample_bid
from tests.outputs.crew_made import texts_of
from tests.words.marked import Marked, bare

UNITS = ("in", "ft", "mm", "m")
RANDOM = 10
PUT_RIGHT = {'kind = "general"\nmultiwire': 'kind = "general"\nprotection = []\nmultiwire'}
DEEP_AND_SMALL = {'volume = "18.0 in3"': 'volume = "14 in3"',
                  'setback = "1/16 in"': 'setback = "3/4 in"'}  # fmt: skip
OTHER_WAYS = {'fill = "re-set"': 'fill = "new board"', 'breaker = 15': 'breaker = "unknown"',
              'method = "bored"': 'method = "notched"', 'spacing = "16 in"\n': "",
              'top = "4-1/2 in"': 'top = "9 in"',
              'scope = "painted"': 'scope = "closed"'}  # fmt: skip
INSPECTED = {"\n[house]\n": '\n[house]\ninspection_before_closing = "yes"\n'}


MADE: dict[str, Callable[[], Bid]] = {
    **{name: partial(sample_bid, name) for name in NAMES},
    "everything": full_bid,
    "put right": partial(bid_of, "nightstand", PUT_RIGHT),
    "deep and small": partial(bid_of, "nightstand", DEEP_AND_SMALL),
    "other ways": partial(bid_of, "nightstand", OTHER_WAYS),
    "inspected": partial(bid_of, "printer-corner", INSPECTED),
}


def own_words(bid: Bid) -> tuple[str, ...]:
    """The job's own words: names, ids, kinds of cable, units of measures, and its date."""
    survey, job = bid.survey, bid.survey.job
    named = [
        job.id, job.title, job.customer, job.address, job.scope, *survey.circuit.serves,
        *(box.id for box in survey.boxes), *(box.room or "" for box in survey.boxes),
        *(wall.id for wall in survey.walls), *(wall.room for wall in survey.walls),
        *(run.id for run in survey.runs), *(run.cable for run in survey.runs),
        *(opening.id for opening in survey.openings),
        *(opening.room or "" for opening in survey.openings),
        *(room.id for room in survey.rooms), "room",
    ]  # fmt: skip
    return tuple(each for each in named if each)


def left(text: str, bid: Bid) -> str:
    """What is bare in a text; the job's date and units of measures apart."""
    text = re.sub(r"\b(?:\w+ \d{1,2}, \d{4}|\d{1,2} \w+ \d{4})\b", "", text)
    text = re.sub(rf"(?<=[\d\"]) (?:{'|'.join(UNITS)})\b", "", text)
    return bare(text, own_words(bid))


def bare_texts(bid: Bid) -> list[str]:
    (sheet,) = crew_sheets(bid, (Marked(),))
    return [found for text in texts_of(sheet) if (found := left(text, bid))]


@pytest.mark.parametrize("name", MADE)
def test_every_text_of_the_sheet_can_be_told(name: str) -> None:
    assert bare_texts(MADE[name]()) == []


def test_every_text_of_random_jobs_can_be_told() -> None:
    jobs = RandomJobs(44)
    assert [bare_texts(jobs.bid()) for _ in range(RANDOM)] == [[]] * RANDOM


class Texts(HTMLParser):
    """Collects the text of a page; its style apart."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[str] = []
        self.inside: list[str] = []

    def handle_starttag(self, tag: str, attrs: object) -> None:
        if tag == "style":
            self.inside.append(tag)

    def handle_endtag(self, tag: str) -> None:
        if self.inside and tag == self.inside[-1]:
            self.inside.pop()

    def handle_data(self, data: str) -> None:
        if not self.inside and data.strip():
            self.found.append(data)


def test_every_text_of_the_page_can_be_told() -> None:
    bid, texts = full_bid(), Texts()
    texts.feed(crew_page(bid, (Marked(),)))
    assert [each for text in texts.found if (each := left(text, bid))] == []


def test_every_text_of_the_workbook_can_be_told() -> None:
    book = load_workbook(BytesIO(crew_workbook(full_bid(), (Marked(),))))
    cells = [cell.value for sheet in book for row in sheet.iter_rows() for cell in row]
    found = [left(text, full_bid()) for text in cells if isinstance(text, str)]
    assert [text for text in found if text and text != "English"] == []
    assert [left(name, full_bid()) for name in book.sheetnames] == ["", ""]


def test_trade_words_are_asked_of_the_list() -> None:
    """So that the English stands in brackets where people on site may say it otherwise."""
    marked = Marked()
    for made in MADE.values():
        crew_sheets(made(), (marked,))
    wanted = {"stud", "corner stud", "wall plate", "protection plate", "staple", "pigtail",
              "wire connector", "receptacle", "drywall", "joint tape", "ea", "ft", "rough-in",
              "Old-work box, plastic, single gang, 20 in3"}  # fmt: skip
    assert wanted - marked.asked_words == set()
