"""Answers laid into the text of a job file: comments, order and all else stay."""

from __future__ import annotations

import difflib
import tomllib

import pytest

from estimator.guide.changing import change_of, new_answers
from estimator.guide.defaults import value_of
from estimator.guide.job_text import JobText, answered, job_text, new_job
from estimator.guide.places import job_name
from estimator.guide.session import to_ask
from estimator.guide.typed import AnswerRefused
from estimator.problems import InputError
from estimator.survey.reader import survey_from
from tests.cli.run import NIGHTSTAND, ROOT
from tests.guide.made_answers import DRAWN, QUICK

SAMPLE = NIGHTSTAND.read_text(encoding="utf-8")
LOUNGE = (ROOT / "samples" / "lounge.toml").read_text(encoding="utf-8")


def edited(text: str, change: str) -> str:
    job = job_text(text, "job.toml")
    key, value = change_of(job.answers, change)
    return answered(job, new_answers(job.answers, key, value or "").answers).text


def changed_lines(old: str, new: str) -> list[str]:
    lines = difflib.unified_diff(old.splitlines(), new.splitlines(), lineterm="", n=0)
    return [line for line in lines if line[:1] in "+-" and line[:3] not in ("+++", "---")]


@pytest.mark.parametrize(
    ("change", "lines"),
    [
        ("source_volume=22.5", ['-volume = "18.0 in3"', '+volume = "22.5 in3"']),
        ("bearing=yes", ['-bearing = "no"', '+bearing = "yes"']),
        ("year_built=unknown", ["-year_built = 1996", '+year_built = "unknown"']),
        ("hidden_lines=yes", None),
        ("finish=plaster", ['-finish = "gypsum board"', '+finish = "plaster"']),
        ("finish=unknown", ['-finish = "gypsum board"', '+finish = "unknown"']),
        ("customer=A \"B\" = 'C'", None),
        ("date=2026-04-01", ["-date = 2026-03-02", "+date = 2026-04-01"]),
        ("source_cables=1", ['-cables = ["14-2", "14-2"]', '+cables = ["14-2"]']),
        ("protection=gfci", ['+protection = ["gfci"]']),
    ],
)
def test_one_answer_is_one_line(change: str, lines: list[str] | None) -> None:
    found = changed_lines(SAMPLE, edited(SAMPLE, change))
    assert len(found) <= 2 if lines is None else found == lines


@pytest.mark.parametrize(
    ("path", "number"),
    [("smith.toml", "smith"), ("jobs/smith 2.toml", "smith 2"), ("a\x07b.toml", "ab"),
     (" .toml", "1"), ("\x07.toml", "1"), ("x" * 201 + ".toml", "x" * 200), ("", "1")],
)  # fmt: skip
def test_the_job_number_of_a_file_is_its_name(path: str, number: str) -> None:
    assert job_name(path) == number


def test_a_comment_behind_a_changed_value_stays() -> None:
    assert '"yes"         # looked from both sides' in edited(SAMPLE, "hidden_lines=yes")


@pytest.mark.parametrize("change", ["source_x=40", "new_x=8' 1", "way=wall", "cable=12-2"])
def test_an_edited_file_is_read_and_says_so(change: str) -> None:
    key, _, _ = change.partition("=")
    text = edited(SAMPLE, change)
    survey_from(tomllib.loads(text))
    before, after = job_text(SAMPLE, "a").answers, job_text(text, "a").answers
    assert before[key] != after[key]
    assert SAMPLE.count("#") == text.count("#")


def test_the_same_answer_changes_nothing() -> None:
    assert edited(SAMPLE, "source_volume=18.0 in3") == SAMPLE


def test_what_the_questions_cannot_say_is_not_overwritten() -> None:
    """The strip of the lounge goes past both boxes of its run: more than the questions know."""
    with pytest.raises(InputError) as refused:
        edited(LOUNGE, "opening_width=3000 mm")
    assert "with a text editor" in refused.value.problems[0].write


def filled(answers: dict[str, str]) -> JobText:
    job = new_job("job.toml")
    for count in range(1, len(answers) + 1):
        job = answered(job, dict(list(answers.items())[:count]))
    return job


@pytest.mark.parametrize("answers", [DRAWN, QUICK], ids=["drawn", "typed"])
def test_each_answer_is_found_again_in_the_text(answers: dict[str, str]) -> None:
    job = new_job("job.toml")
    for count in range(1, len(answers) + 1):
        some = dict(list(answers.items())[:count])
        job = answered(job, some)
        assert dict(job_text(job.text, "job.toml").answers) == some


def test_a_note_written_in_between_stays() -> None:
    job = answered(new_job("job.toml"), {"customer": "Ann"})
    noted = job.text.replace("[job]", "[job]  # dog in the yard\n# ring twice")
    again = answered(job_text(noted, "job.toml"), {"customer": "Ann", "country": "CA"})
    assert "# dog in the yard" in again.text and "# ring twice" in again.text


def test_a_value_changed_by_hand_is_an_answer() -> None:
    every = {each.key: value_of(each.key, DRAWN) for each in to_ask(DRAWN)}
    text = filled(every).text.replace('paint = "none"', 'paint = "wall"')
    assert job_text(text, "job.toml").answers.get("paint") == "wall"


@pytest.mark.parametrize(
    ("typed", "instead"),
    [
        ("source_volum=20", "Did you mean source_volume?"),
        ("999=1", "Write a number from 1 to"),
        ("distance=3 ft", "It hangs on: wall_length=unknown"),
    ],
)
def test_a_change_of_nothing_there_is_refused(typed: str, instead: str) -> None:
    with pytest.raises(AnswerRefused) as refused:
        change_of(job_text(SAMPLE, "a").answers, typed)
    assert instead in refused.value.write


@pytest.mark.parametrize("text", ["a = 1\n", "", "format = 2\n"])
def test_a_file_that_is_no_job_is_refused(text: str) -> None:
    with pytest.raises(InputError):
        job_text(text, "job.toml")


def test_a_change_is_told_before_and_after() -> None:
    told = new_answers(job_text(SAMPLE, "a").answers, "breaker", "20").lines
    assert told[1:] == ("  before: 15 A", "  after:  20 A")
