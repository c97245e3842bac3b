"""Every word that a page, a sheet or a list looks up is in the list, or is the job's own."""

from __future__ import annotations

import pytest

from estimator.outputs.bid_page import bid_page
from estimator.outputs.crew_page import crew_page
from estimator.outputs.draft import Draft
from estimator.outputs.drawing_sheet import write_drawing
from estimator.outputs.shopping_page import shopping_page
from estimator.outputs.shopping_sheet import write_shopping
from estimator.outputs.takeoff_sheet import write_takeoff
from estimator.outputs.text_shopping import shopping_text
from estimator.pricing.records import Bid
from tests.outputs.bid_factory import NAMES, RandomJobs, full_bid, sample_bid
from tests.words.collected import sentences, words
from tests.words.marked import Marked, in_language, own_words

SEEDS = (3, 17, 41, 58, 73, 90)


def asked(bid: Bid) -> Marked:
    """Everything that is told, on every page and sheet."""
    language = Marked()
    told = in_language(bid, language)
    draft = Draft.of(told)
    write_takeoff(draft)
    for write in (write_shopping, write_drawing):
        write(draft)
    for page in (bid_page, shopping_page, shopping_text):
        page(told)
    crew_page(told, [language])
    return language


def texts_of(value: object) -> set[str]:
    if isinstance(value, dict):
        return {text for each in value.values() for text in texts_of(each)}
    if isinstance(value, list | tuple):
        return {text for each in value for text in texts_of(each)}
    return {str(value)}


def untold(bid: Bid) -> list[str]:
    """Words without a row; the job's own settings are its own words too."""
    own = {*own_words(bid), *texts_of(dict(bid.survey.settings))}
    own |= {step.when for step in bid.books.shop.terms.payment_steps}
    known = words()
    return sorted(word for word in asked(bid).asked_words if word not in known and word not in own)


@pytest.mark.parametrize("name", [*NAMES, "everything"])
def test_every_word_has_a_row(name: str) -> None:
    assert untold(full_bid() if name == "everything" else sample_bid(name)) == []


@pytest.mark.parametrize("seed", SEEDS)
def test_every_word_of_a_random_job_has_a_row(seed: int) -> None:
    assert untold(RandomJobs(seed).bid()) == []


def test_every_sentence_that_is_told_was_collected() -> None:
    known = {each.id[0] if isinstance(each.id, tuple) else each.id for each in sentences()}
    told = asked(full_bid()).asked_sentences
    assert len(told) > 100
    assert [english for english, _ in told if english not in known] == []
