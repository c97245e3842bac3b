"""Every sentence and every word has its translation, with the same places and figures."""

from __future__ import annotations

import re
from string import Formatter

import pytest
from babel.messages.catalog import Message
from babel.messages.checkers import num_plurals

from tests.words.collected import LIST, OTHERS, catalog, rows, sentences, words

LONGEST_TAB = 31  # characters of a sheet's name: ECMA-376 part 1, 18.2.19, and spreadsheet programs
TABS = ("Bid", "Shopping list", "Wall drawing", "Change order", "Crew")


def forms(message: Message) -> tuple[str, ...]:
    return message.string if isinstance(message.string, tuple) else (message.string,)


def ids(message: Message) -> tuple[str, ...]:
    return tuple(message.id) if isinstance(message.id, list | tuple) else (message.id,)


def places(text: str) -> list[str]:
    return sorted(name for _, name, _, _ in Formatter().parse(text) if name is not None)


@pytest.mark.parametrize("code", OTHERS)
def test_every_sentence_of_the_code_is_told(code: str) -> None:
    known = catalog(code)
    untold = []
    for said in sentences():
        found = known.get(said.id) if said.id else None
        if said.id and (found is None or found.fuzzy or not all(forms(found))):
            untold.append(ids(said)[0])
    assert untold == []


@pytest.mark.parametrize("code", OTHERS)
def test_nothing_is_told_that_nothing_says(code: str) -> None:
    said = {ids(each)[0] for each in sentences() if each.id}
    assert [ids(each)[0] for each in catalog(code) if each.id and ids(each)[0] not in said] == []


@pytest.mark.parametrize("code", OTHERS)
def test_places_stay_as_they_are(code: str) -> None:
    for each in catalog(code):
        if each.id:
            for english, other in zip(ids(each), forms(each), strict=True):
                assert places(other) == places(english), other


@pytest.mark.parametrize("code", OTHERS)
def test_babel_counts_the_plurals_that_the_language_has(code: str) -> None:
    known = catalog(code)
    for each in known:
        num_plurals(known, each)


@pytest.mark.parametrize("code", OTHERS)
def test_every_word_of_the_books_is_in_the_list(code: str) -> None:
    told = {row["english"] for row in rows(LIST) if row[code]}
    assert [word for word in words() if word not in told] == []


def test_the_list_holds_each_word_once() -> None:
    english = [row["english"] for row in rows(LIST)]
    assert len(english) == len(set(english))


@pytest.mark.parametrize("code", OTHERS)
def test_figures_of_words_stay_as_they_are(code: str) -> None:
    for row in rows(LIST):
        assert re.findall(r"\d+", row[code]) == re.findall(r"\d+", row["english"])


@pytest.mark.parametrize("code", OTHERS)
@pytest.mark.parametrize("tab", TABS)
def test_names_of_sheets_are_names_that_programs_take(code: str, tab: str) -> None:
    found = catalog(code).get(tab)
    assert found is not None
    told = forms(found)[0]
    assert 0 < len(told) <= LONGEST_TAB
    assert not set(told) & set("[]:*?/\\")
    assert told.strip("'") == told


@pytest.mark.parametrize("code", OTHERS)
def test_names_of_sheets_differ(code: str) -> None:
    told = {forms(catalog(code).get(tab))[0].lower() for tab in TABS}  # type: ignore[arg-type]
    assert len(told) == len(TABS)
