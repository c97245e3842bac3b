"""Answers become a job file, drawn or typed, and come back from it."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest

from estimator.guide.facts import job_from, pruned, with_defaults
from estimator.guide.from_job import answers_from
from estimator.guide.questions import by_key
from estimator.guide.typed import said
from estimator.survey.reader import survey_from
from tests.cli.run import SAMPLES
from tests.guide.made_answers import DRAWN, FIRST, QUICK, WANTED, bid_for, parts, source_room

BOTH = pytest.mark.parametrize("answers", [DRAWN, QUICK], ids=["drawn", "typed"])
WAYS = ("trim", "wall", "attic", "basement", "crawlspace", "through")


@BOTH
def test_s1_comes_to_the_figures_worked_by_hand(answers: dict[str, str]) -> None:
    bid = bid_for(answers)
    found = parts(bid)
    assert {item: found[item] for item in WANTED} == WANTED
    assert "plate-steel" not in " ".join(found)
    assert bid.takeoff.runs[0].studs == 4
    assert "18.0" in source_room(bid)


@BOTH
def test_answers_come_back_from_the_job_file(answers: dict[str, str]) -> None:
    known = with_defaults(pruned(answers))
    back = answers_from(job_from(answers))
    for key, value in known.items():
        assert said(by_key()[key], back[key], known) == said(by_key()[key], value, known), key


@BOTH
def test_there_and_back_again_is_the_same_job(answers: dict[str, str]) -> None:
    once = job_from(answers)
    assert survey_from(job_from(answers_from(once))) == survey_from(once)


@pytest.mark.parametrize("way", WAYS)
@BOTH
def test_every_way_makes_a_job_that_is_read_and_comes_back(
    answers: dict[str, str], way: str
) -> None:
    raw = job_from(answers | {"way": way})
    assert survey_from(raw).runs
    assert answers_from(raw)["way"] == way


@pytest.mark.parametrize(
    ("way", "path_in"),
    # Worked by hand from heights of 15 in: up 100 - 15 and down again; 10 in below the floor.
    [("attic", 85 + 71 + 85), ("crawlspace", 25 + 71 + 25), ("wall", 71), ("trim", 12 + 71 + 12)],
)
@BOTH
def test_ways_are_as_long_as_by_hand(answers: dict[str, str], way: str, path_in: int) -> None:
    bid = bid_for(answers | {"way": way})
    assert bid.takeoff.runs[0].path_in == path_in


def test_studs_that_nobody_counted_are_assumed_and_said() -> None:
    """71 in at 16 in: a part bay counts as one stud, so 5."""
    bid = bid_for(QUICK | {"studs": "unknown"})
    assert bid.takeoff.runs[0].studs == 5
    assert any("how many studs" in each.about for each in bid.takeoff.assumptions)


@pytest.mark.parametrize("finish", ["gypsum board", "plaster", "unknown"])
def test_the_finish_of_the_wall_is_kept_and_comes_back(finish: str) -> None:
    raw = job_from(DRAWN | {"finish": finish})
    assert survey_from(raw).walls[0].finish == raw["walls"][0]["finish"] == finish
    assert answers_from(raw)["finish"] == finish


def test_what_is_not_asked_is_not_in_the_file() -> None:
    raw = job_from(DRAWN | {"distance": "3 ft", "studs": "9"})
    assert "legs" not in raw["runs"][0]


def test_unknown_cables_are_told_to_the_file() -> None:
    raw = job_from(QUICK | {"source_cables": "unknown"})
    assert raw["boxes"][0]["unknown_cables"] is True
    assert answers_from(raw)["source_cables"] == "unknown"


@pytest.mark.parametrize("sample", SAMPLES, ids=lambda path: path.stem)
def test_the_samples_answer_most_first_questions(sample: Path) -> None:
    found = answers_from(tomllib.loads(sample.read_text(encoding="utf-8")))
    assert {"room", "year_built", "breaker", "wire", "source_cables"} <= set(found)


def test_nothing_is_answered_by_an_empty_file() -> None:
    assert not answers_from({"format": 1})


def test_metric_houses_take_metric_cable_and_measures() -> None:
    answers = QUICK | {"country": "GB", "wire": "2.5", "breaker": "20", "distance": "1.8 m"}
    raw = job_from({**answers, "source_height": "300 mm"})
    assert raw["job"]["units"] == "metric" and raw["job"]["locale"] == "en_GB"
    assert raw["runs"][0]["cable"] == "2.5 mm2 2-core and earth"
    assert survey_from(raw).runs[0].legs[0].length_in


def test_the_first_answers_alone_are_no_whole_job() -> None:
    assert "legs" not in job_from(FIRST)["runs"][0]
