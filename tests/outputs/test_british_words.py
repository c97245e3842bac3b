"""Everything that is shown of a British job, by its parts: no trade word or measure of the US."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest

from estimator.outputs.text_bid import bid_summary
from estimator.outputs.text_check import check_text
from estimator.outputs.text_shopping import shopping_text
from estimator.outputs.text_takeoff import takeoff_text
from estimator.pricing.records import Bid
from estimator.rules.safety_list import safety_list
from tests.outputs.bid_factory import sample_bid
from tests.outputs.crew_made import english, texts_of
from tests.words.marked import Marked, bare
from tests.worked.job import changed

US_WORDS = re.compile(
    r"(?i)\b(receptacles?|grounds?|grounded|hots?|baseboards?|drywall|gypsum board|pigtails?|"
    r"licenses?|foot|feet|inch(es)?|gallons?|gal|quarts?|AWG|NEC|IRC)\b"
)
US_MEASURE = re.compile(r"\d (in3?|ft2?|gal|qt)\b|\d'-\d|\$")
# Titles of what was read stand as they were printed.
TITLES = re.compile(r"\[[^\]]*\]", re.DOTALL)
METRIC = pytest.mark.parametrize("sample", ["lounge", "terrace-bedroom"])


@METRIC
@pytest.mark.parametrize(
    "text", [takeoff_text, shopping_text, check_text, bid_summary], ids=lambda text: text.__name__
)
def test_no_us_word_in_a_list(sample: str, text: Callable[[Bid], list[str]]) -> None:
    shown = TITLES.sub("", "\n".join(text(sample_bid(sample))))
    assert [found[0] for found in US_WORDS.finditer(shown)] == []
    assert [found[0] for found in US_MEASURE.finditer(shown)] == []


@METRIC
def test_no_us_word_in_the_list_of_tests(sample: str) -> None:
    bid = sample_bid(sample)
    lines = [line for _, lines in safety_list(bid.survey, bid.findings) for line in lines]
    assert "Test line to neutral, line to earth and neutral to earth." in lines
    assert not US_WORDS.search(" ".join(lines))


@METRIC
def test_no_us_word_on_the_crew_sheet(sample: str) -> None:
    shown = "\n".join(texts_of(english(sample_bid(sample))))
    assert [found[0] for found in US_WORDS.finditer(shown)] == []
    assert "Test line to neutral, line to earth and neutral to earth." in shown


def test_british_words_give_way_to_another_language() -> None:
    """An assumption that was put into British English is told by its sentence."""
    lines = sample_bid("lounge").takeoff.assumptions
    assert [each.about for each in lines if bare(Marked().say(each.about), ("long",))] == []


def test_reasons_are_said_in_british() -> None:
    said = {line.reason for line in sample_bid("terrace-bedroom").takeoff.tasks}
    assert "polarity, earth and trip test after the work" in said


def test_a_box_that_is_called_receptacle_keeps_its_name() -> None:
    bid = changed("terrace-bedroom", ('"by the door"', '"receptacle by the door"'))
    (cut,) = [line for line in bid.takeoff.runs if line.run_id == "1"]
    assert cut.path_in
    assert any("receptacle by the door" in line.where for line in bid.takeoff.parts)


def test_screws_are_counted_by_the_metre() -> None:
    """8 for the first 300 mm and 7 for each metre of the other 2200 mm: 15.4, so 16 more."""
    bid = sample_bid("terrace-bedroom")
    (screws,) = [line for line in bid.takeoff.parts if line.item == "screw-drywall"]
    assert screws.quantity == 24
    assert screws.reason == "8 for the first 300 mm, 7 for each metre beyond"


def test_us_jobs_keep_their_words() -> None:
    bid = sample_bid("printer-corner")
    said = " ".join(line.reason for line in (*bid.takeoff.parts, *bid.takeoff.tasks))
    assert "receptacle" in said and "ground" in said
    assert "8 for the first 12 in, 2 for each foot beyond" in said
