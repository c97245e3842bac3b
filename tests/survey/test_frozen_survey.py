"""Nobody changes a survey: every record of it is frozen and holds no list."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from pydantic import BaseModel, ValidationError

from estimator.survey.fields import Record
from estimator.survey.reader import read_job
from tests.survey.made_job import TEXT, survey

SAMPLES = sorted((Path(__file__).parents[2] / "samples").glob("*.toml"))


def records(value: object) -> Iterator[BaseModel]:
    """A record and every record in it."""
    if isinstance(value, BaseModel):
        yield value
        for name in type(value).model_fields:
            yield from records(getattr(value, name))
    elif isinstance(value, tuple):
        for each in value:
            yield from records(each)


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_no_field_of_a_sample_can_be_set(path: Path) -> None:
    for record in records(read_job(path).survey):
        for name in type(record).model_fields:
            with pytest.raises(ValidationError, match="frozen"):
                setattr(record, name, None)


def test_every_record_refuses_keys_it_does_not_know() -> None:
    kinds = {type(record) for record in records(survey(TEXT))}
    assert len(kinds) > 12
    assert all(issubclass(kind, Record) for kind in kinds)
    assert {kind.model_config["extra"] for kind in kinds} == {"forbid"}


def test_lists_of_the_file_become_tuples() -> None:
    job = survey(TEXT)
    assert isinstance(job.boxes, tuple)
    assert job.boxes[0].cables == ("14-2",)
