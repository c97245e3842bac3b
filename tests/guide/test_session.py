"""The dialogue without a terminal: a state and a line in, a state and lines out."""

from __future__ import annotations

from functools import reduce

import pytest

from estimator.guide.questions import by_key, questions
from estimator.guide.session import (
    State,
    asking,
    begin,
    explained,
    first_are_done,
    prompt,
    reply,
    to_ask,
)
from tests.guide.made_answers import DRAWN, QUICK

WIDE = 80
HIGH = 24


def typed(*lines: str, start: State | None = None) -> State:
    return reduce(lambda state, line: reply(state, line)[0], lines, start or begin({}))


def test_it_begins_with_the_first_question_and_its_usual_answer() -> None:
    state = begin({})
    assert state.key == "customer"
    assert prompt(state) == "[Sample customer] > "


def test_enter_takes_what_stands_in_brackets() -> None:
    assert typed("").answers == {"customer": "Sample customer"}


def test_it_goes_on_at_the_first_question_without_an_answer() -> None:
    assert begin({"customer": "Ann", "room": "hall"}).key == "country"


def test_back_asks_the_last_question_again_with_its_answer() -> None:
    state = typed("Ann", "back")
    assert state.key == "customer" and prompt(state) == "[Ann] > "
    assert typed("", start=state).answers == {"customer": "Ann"}


def test_after_back_it_goes_on_where_it_was() -> None:
    state = typed("Ann", "CA", "kitchen", "back", "back", "GB")
    assert state.answers["country"] == "GB" and state.key == "year_built"


def test_undo_takes_answers_away_one_by_one() -> None:
    state = typed("Ann", "CA", "undo")
    assert state.answers == {"customer": "Ann"} and state.key == "country"
    assert typed("undo", start=state).answers == {}


def test_undo_of_a_change_brings_the_old_answer_back() -> None:
    assert typed("Ann", "back", "Bob", "undo").answers == {"customer": "Ann"}


def test_undo_in_a_new_sitting_takes_the_last_answer_away() -> None:
    assert typed("undo", start=begin({"customer": "Ann", "country": "CA"})).key == "country"


@pytest.mark.parametrize("word", ["back", "undo"])
def test_before_the_first_answer_there_is_nothing_to_go_back_to(word: str) -> None:
    state, lines = reply(begin({}), word)
    assert state == begin({}) and lines


def test_a_refused_answer_changes_nothing_and_says_what_to_write() -> None:
    before = typed("", "", "")
    state, lines = reply(before, "long ago")
    assert state == before and "whole number" in " ".join(lines)


def test_an_answer_that_does_not_go_with_the_others_is_refused() -> None:
    """A box at 13 ft does not stand on a wall of 12 ft."""
    known = {key: value for key, value in DRAWN.items() if key in ("wall_length", "way")}
    state = State(known, "source_x")
    after, lines = reply(state, "13 ft")
    assert after == state and "beyond the end" in " ".join(lines)
    assert reply(state, "11 ft")[0].answers["source_x"] == "11 ft"


def test_another_way_drops_answers_that_are_no_longer_asked() -> None:
    state = reply(State(DRAWN, "way"), "crawlspace")[0]
    assert "first_stud" not in state.answers and state.key is not None


def test_enter_takes_the_name_of_the_job_as_its_number() -> None:
    state = begin(DRAWN | {"customer": "Ann", "room": "hall", "country": "US"}, "smith")
    numbered = State(state.answers, "job_number", job=state.job)
    assert prompt(numbered) == "[smith] > "
    assert reply(numbered, "")[0].answers["job_number"] == "smith"


@pytest.mark.parametrize("word", ["stop", "QUIT"])
def test_stop_ends_and_keeps_the_answers(word: str) -> None:
    state = typed("Ann", word)
    assert state.stopped and state.answers == {"customer": "Ann"}


@pytest.mark.parametrize("answers", [DRAWN, QUICK], ids=["drawn", "typed"])
def test_the_first_questions_are_20_at_most(answers: dict[str, str]) -> None:
    asked = list(to_ask(answers | {"more": "no"}))
    assert len(asked) <= 20
    assert asked[-1].key == "more"


def test_the_rest_is_asked_only_where_it_is_wanted() -> None:
    every = {each.key: "" for each in to_ask(DRAWN)} | DRAWN
    assert first_are_done(every) and begin(every).key is None
    assert begin(every | {"more": "yes"}).key == "job_number"


@pytest.mark.parametrize("question", questions(), ids=lambda each: each.key)
def test_each_question_with_its_help_fits_a_screen(question: object) -> None:
    key = getattr(question, "key", "")
    state = State({**(DRAWN if by_key()[key].when != "wall_length=unknown" else QUICK)}, key)
    if by_key()[key] in list(to_ask({**state.answers, "more": "yes"})):
        state = State({**state.answers, "more": "yes"}, key)
        lines = [*asking(state), prompt(state), *explained(state)]
        assert len(lines) <= HIGH and max(map(len, lines)) <= WIDE
