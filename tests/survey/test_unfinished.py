"""A file that `estimator survey` has begun and not ended says how to go on, and nothing else."""

from __future__ import annotations

from pathlib import Path

import pytest

from estimator.guide.job_text import answered, new_job
from estimator.problems import InputError, Problem
from estimator.survey.reader import job_from_text
from tests.cli.run import estimator
from tests.guide.made_answers import DRAWN, FIRST

FOUR = dict(list(FIRST.items())[:4])
WITH_LEGS = 'to = "new"\nway = "trim"\nlegs = [{ go = "up", length = "1 ft" }]'


def text_of(answers: dict[str, str]) -> str:
    return answered(new_job("job.toml"), answers).text


def problems_of(text: str, name: str = "job.toml") -> tuple[Problem, ...]:
    with pytest.raises(InputError) as caught:
        job_from_text(text, Path(name))
    return caught.value.problems


@pytest.mark.parametrize(
    ("answers", "count"),
    [({"year_built": "1996"}, 1), (FOUR, 4), (FIRST, 7), ({**FIRST, "way": "attic"}, 7)],
    ids=["one", "four", "all but the wall", "by the attic"],
)
def test_one_problem_says_what_to_type(answers: dict[str, str], count: int) -> None:
    (only,) = problems_of(text_of(answers), "my job.toml")
    assert only.where.startswith("my job.toml: line ")
    assert only.read == f"the questions are not all answered yet ({count} answered so far)"
    assert only.write == "Go on with: estimator survey 'my job.toml'"


def test_other_faults_are_still_told() -> None:
    text = text_of(FOUR).replace("year_built = 1996", 'year_built = "old"')
    assert [each.write[:5] for each in problems_of(text)] == ["Go on", "Write"]
    both = problems_of(text_of(FOUR).replace('to = "new"', WITH_LEGS))
    assert any("not both" in each.read for each in both)


def test_where_the_questions_are_done_the_missing_facts_are_named() -> None:
    text = text_of(DRAWN).replace('id = "source"\n', "")
    assert any('the key "id" is missing' in each.read for each in problems_of(text))


def test_a_file_that_nobody_was_asked_for_keeps_its_problems() -> None:
    text = text_of(FOUR).split("[guide]")[0]
    assert not any("estimator survey" in each.write for each in problems_of(text))


@pytest.mark.parametrize("command", ["bid", "takeoff", "check"])
def test_commands_say_it(command: str, tmp_path: Path) -> None:
    (tmp_path / "job.toml").write_text(text_of(FOUR))
    done = estimator(command, "job.toml", folder=tmp_path)
    assert done.returncode == 1
    assert "  Go on with: estimator survey job.toml\n" in done.stderr
