"""The list of questions: keys, kinds, choices, conditions and stand-ins that fit together."""

from __future__ import annotations

import pytest

from estimator.guide.defaults import LISTS, WORKED, choices_of, default_of, is_asked, stand_in
from estimator.guide.questions import UNKNOWN, Question, by_key, listed, questions
from estimator.guide.typed import AnswerRefused, read_answer

ALL = pytest.mark.parametrize("question", questions(), ids=lambda each: each.key)


def test_keys_are_single_and_short() -> None:
    assert len(by_key()) == len(questions())
    assert all(key.isidentifier() and len(key) <= 16 for key in by_key())


@ALL
def test_it_is_a_question_with_help_that_says_more(question: Question) -> None:
    assert "?" in question.ask or question.ask.endswith(".")
    assert question.help.endswith((".", "yes")) and question.help != question.ask


@ALL
def test_conditions_name_earlier_questions_and_their_words(question: Question) -> None:
    for condition in filter(None, question.when.split(" & ")):
        key, _, wanted = condition.partition("=")
        other = by_key()[key.removesuffix("!")]
        words = {*listed(other.choices), "yes", "no", "0", UNKNOWN}
        assert set(wanted.split("|")) <= words
        assert questions().index(other) < questions().index(question)


@ALL
def test_usual_answers_are_answers(question: Question) -> None:
    usual = default_of(question, {})
    if usual:
        assert read_answer(question, usual, {}).value


@ALL
def test_unknown_is_taken_only_where_the_list_says_so(question: Question) -> None:
    if question.may_be_unknown:
        assert read_answer(question, UNKNOWN, {}).value == UNKNOWN
    elif question.kind != "text":
        with pytest.raises(AnswerRefused):
            read_answer(question, UNKNOWN, {})


@ALL
def test_names_of_lists_and_worked_answers_are_there(question: Question) -> None:
    for name in (question.low, question.high):
        assert not name.startswith("=") or name[1:] in WORKED
    assert not question.choices.startswith("=") or question.choices[1:] in LISTS
    named = question.default.removeprefix("=")
    assert not question.default.startswith("=") or named in {*WORKED, *by_key()}


@ALL
def test_choices_are_words_of_the_job_file(question: Question) -> None:
    if question.kind == "choice":
        assert len(choices_of(question, {})) > 1
        assert UNKNOWN not in choices_of(question, {})


@ALL
def test_stand_ins_of_the_first_questions_can_be_read(question: Question) -> None:
    known = {"wall_length": "12 ft", "source_height": "15 in"}
    if question.first and is_asked(question, known):
        for guess in (question.low, question.high):
            assert read_answer(question, stand_in(question, known, guess), known).value
