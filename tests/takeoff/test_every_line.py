"""Every line of a takeoff says how much, of what, where and why."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from estimator.pricing.ways import on_route, routes_of
from estimator.survey.reader import read_job
from estimator.takeoff.records import PartLine, Takeoff, TaskLine
from tests.takeoff.made_takeoff import taken

SAMPLES = sorted((Path(__file__).parents[2] / "samples").glob("*.toml"))
US_UNITS = {"ea", "ft", "ft2", "gal", "application", "job"}
METRIC_UNITS = {"ea", "m", "m2", "L", "application", "job"}


def of_samples() -> list[tuple[str, Takeoff]]:
    """The takeoff of each way of each sample."""
    found = []
    for path in SAMPLES:
        survey = read_job(path).survey
        for route in routes_of(survey):
            made = taken(on_route(survey, route))
            found.append((f"{path.stem} {route or ''} {survey.job.units}", made))
    return found


TAKEN = of_samples()
IDS = [name for name, _ in TAKEN]


def lines(made: Takeoff) -> list[PartLine | TaskLine]:
    """Parts, then tasks."""
    return [*made.parts, *made.tasks]


@pytest.fixture(name="made", params=[made for _, made in TAKEN], ids=IDS)
def _made(request: pytest.FixtureRequest) -> Takeoff:
    made = request.param
    assert isinstance(made, Takeoff)
    return made


def test_every_way_of_every_sample_is_taken_off() -> None:
    assert len(TAKEN) == len(SAMPLES) + 2  # one of them has three ways


def test_every_part_has_its_reason(made: Takeoff) -> None:
    assert made.parts
    for line in made.parts:
        assert line.where and line.reason and line.source and line.description, line
        assert line.quantity > 0, line


def test_every_task_has_its_reason(made: Takeoff) -> None:
    assert made.tasks
    for line in made.tasks:
        assert line.where and line.reason and line.source, line
        assert line.quantity > 0, line


def test_lines_are_numbered_without_a_gap(made: Takeoff) -> None:
    assert [line.line_id for line in made.parts] == [
        f"P{number:02d}" for number in range(1, len(made.parts) + 1)
    ]
    assert [line.line_id for line in made.tasks] == [
        f"W{number:02d}" for number in range(1, len(made.tasks) + 1)
    ]


@pytest.mark.parametrize(("name", "made"), TAKEN, ids=IDS)
def test_units_are_those_of_the_job(name: str, made: Takeoff) -> None:
    units = METRIC_UNITS if name.endswith("metric") else US_UNITS
    assert {line.unit for line in lines(made)} <= units


def test_no_reason_shows_a_fraction_of_the_program(made: Takeoff) -> None:
    """No "Fraction(", no exponent and no endless digits reach a reader."""
    for line in lines(made):
        assert "Fraction" not in line.reason
        assert "E+" not in line.reason + str(line.quantity)
        assert "E-" not in line.reason + str(line.quantity)


def test_a_metric_job_names_no_us_rule_or_unit() -> None:
    """S10: no in3, no AWG, no US code line may appear."""
    metric = [made for name, made in TAKEN if name.endswith("metric")]
    assert metric
    lines = [line for made in metric for line in (*made.parts, *made.tasks, *made.assumptions)]
    said = " ".join(map(str, lines))
    assert not re.search(r"\d (in|ft|gal)\b|in3|AWG|NEC|nec-", said)
