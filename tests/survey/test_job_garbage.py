"""Whatever a job file holds, the answer is a survey or problems in plain words."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, datetime, time
from decimal import Decimal
from pathlib import Path
from typing import Any

from hypothesis import example, given, settings
from hypothesis import strategies as st

from estimator.problems import InputError
from estimator.survey.reader import job_from_text, survey_from
from estimator.survey.records import Survey
from tests.survey.made_job import TEXT, values

SAMPLES = [
    path.read_text(encoding="utf-8")
    for path in sorted((Path(__file__).parents[2] / "samples").glob("*.toml"))
]
LIBRARY_WORDS = ("Input should", "alidation error", "pydantic", "Value error", "Traceback", "type=")

numbers = st.one_of(
    st.integers(),
    st.decimals(allow_nan=False, allow_infinity=False, places=2, min_value=-99, max_value=9999),
)
dates = st.one_of(st.just(date(2026, 3, 9)), st.just(datetime(2026, 3, 9, 1)), st.just(time(1)))
words = st.one_of(
    st.text(max_size=12),
    st.sampled_from(["unknown", "north", "source", "14-2", "wall", "12' 6\"", "2x4", "yes", "\0"]),
)
scalars = st.one_of(numbers, st.booleans(), words, dates)
SOME_KEYS = ("job", "walls", "boxes", "runs", "legs", "id", "wall", "length", "x", "from", "to")
KEYS = st.one_of(st.text(max_size=6), st.sampled_from(SOME_KEYS))
anything = st.recursive(
    scalars,
    lambda inner: st.one_of(st.lists(inner, max_size=3), st.dictionaries(KEYS, inner, max_size=3)),
    max_leaves=8,
)
shapes = st.dictionaries(st.one_of(KEYS, st.sampled_from(list(Survey.model_fields))), anything)


def places(value: object, here: tuple[Any, ...] = ()) -> list[tuple[Any, ...]]:
    """Every place in nested values."""
    found = [here]
    if isinstance(value, dict | list):
        keys = value if isinstance(value, dict) else range(len(value))
        for key in keys:
            found += places(value[key], (*here, key))
    return found


def put(raw: dict[str, Any], place: tuple[Any, ...], new: object) -> None:
    """Set one place."""
    inner: Any = raw
    for key in place[:-1]:
        inner = inner[key]
    inner[place[-1]] = new


@st.composite
def mutants(draw: Callable[..., Any]) -> dict[str, Any]:
    """A sound job in which up to three places hold something else."""
    raw = values(draw(st.sampled_from([TEXT, *SAMPLES])))
    for _ in range(draw(st.integers(1, 3))):
        place = draw(st.sampled_from(places(raw)[1:]))
        put(raw, place, draw(anything))
    return raw


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
