"""Whatever a job file holds, the answer is a survey or problems in plain words."""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal
from pathlib import Path
from typing import Any

from hypothesis import example, given, settings
from hypothesis import strategies as st

from estimator.problems import InputError
from estimator.survey.reader import job_from_text, survey_from
from estimator.survey.records import Survey
from tests.survey.made_job import TEXT, values
from tests.survey.odd_jobs import SAMPLES, mutants, shapes

LIBRARY_WORDS = ("Input should", "alidation error", "pydantic", "Value error", "Traceback", "type=")


def is_survey_or_plain_problems(read: Callable[[], object]) -> None:
    try:
        assert isinstance(read(), Survey)
    except InputError as error:
        assert error.problems
        for problem in error.problems:
            assert not any(word in str(problem) for word in LIBRARY_WORDS), problem
            assert problem.read and problem.write, problem
            assert "\n" not in problem.read + problem.write, problem
            assert "\0" not in problem.read + problem.write, problem


@settings(max_examples=300, deadline=None)
@given(raw=shapes)
@example(raw={"x[y": 1})
@example(raw={"walls": [{"length": 10**5000}]})
@example(raw={"boxes": [{"id": "\0"}], "job": Decimal(1)})
def test_any_shape_of_values(raw: dict[str, Any]) -> None:
    is_survey_or_plain_problems(lambda: survey_from(raw))


@settings(max_examples=500, deadline=None)
@given(raw=mutants())
@example(raw=values(TEXT.replace('stud = "2x4"', 'stud = "\\n"')))
@example(raw=values(TEXT.replace('id = "north"', 'id = "nor\\nth"')))
def test_a_sound_job_with_a_few_odd_values(raw: dict[str, Any]) -> None:
    is_survey_or_plain_problems(lambda: survey_from(raw))


@settings(max_examples=200, deadline=None)
@given(data=st.data())
def test_a_sound_text_with_a_few_odd_characters(data: st.DataObject) -> None:
    text = data.draw(st.sampled_from([TEXT, *SAMPLES]))
    for _ in range(data.draw(st.integers(1, 3))):
        at = data.draw(st.integers(0, len(text)))
        cut = data.draw(st.integers(0, 5))
        text = text[:at] + data.draw(st.text(max_size=4)) + text[at + cut :]
    is_survey_or_plain_problems(lambda: job_from_text(text, Path("job.toml")).survey)
