"""The JSON Schema of a job file, held against every sample by an independent validator."""

from __future__ import annotations

import json
import tomllib
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from estimator.survey.reader import job_schema
from tests.survey.made_job import TEXT, changed

SAMPLES = sorted((Path(__file__).parents[2] / "samples").glob("*.toml"))
SCHEMA = job_schema()
VALIDATOR = Draft202012Validator(SCHEMA)


def as_json(text: str) -> Any:
    """TOML as a program would send it in JSON: dates as text, decimals as numbers."""
    shown = json.dumps(tomllib.loads(text), default=str)
    return json.loads(shown)


def faults(text: str) -> list[str]:
    return [error.message for error in VALIDATOR.iter_errors(as_json(text))]


def test_the_schema_is_a_schema() -> None:
    Draft202012Validator.check_schema(SCHEMA)
    assert json.loads(json.dumps(SCHEMA)) == SCHEMA


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_every_sample_holds(path: Path) -> None:
    assert faults(path.read_text(encoding="utf-8")) == []


def test_there_are_samples() -> None:
    assert len(SAMPLES) >= 3
    assert faults(TEXT) == []


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("[job]", "tree = 1\n[job]"),
        ('length = "12 ft"', 'lenght = "12 ft"'),
        ('title = "One more outlet"', ""),
        ('scope = "painted"', 'scope = "red"'),
        ("existing = true", "gangs = 5"),
        ("existing = true", "gangs = 0"),
        ("breaker = 15", "breaker = -1"),
        ('length = "10 ft"', 'length = "10 ft"\ntop_plates = 5'),
        ("[finish]", '[[truck_stock]]\nitem = "a"\nquantity = 0\n[finish]'),
        ('walls = ["north", "east"]', 'walls = ["north"]'),
        ('cables = ["14-2"]', "cables = [3]"),
        ("[finish]", "[overrides]\nlabor_hours = -1\n[finish]"),
    ],
)
def test_the_schema_refuses_what_the_reader_refuses(old: str, new: str) -> None:
    assert faults(changed((old, new)))


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("breaker = 15", 'breaker = "unknown"'),
        ('spacing = "16 in"', 'spacing = "unknown"'),
        ('spacing = "16 in"', "spacing = 16.5"),
        ('volume = "18 in3"', 'volume = "unknown"'),
        ('stud = "2x4"', 'stud = "unknown"'),
        ('clamps = "no"', 'clamps = "unknown"'),
        ("[finish]", '[finish]\npaint_area = "156 ft2"'),
        ("[finish]", "[overrides]\nlabor_hours = 1.75\n[finish]"),
        ("[circuit]", "date = 2026-03-09\n[circuit]"),
    ],
)
def test_the_schema_takes_what_the_reader_takes(old: str, new: str) -> None:
    assert faults(changed((old, new))) == []
