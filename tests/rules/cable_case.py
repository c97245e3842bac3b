"""A short job for the cable rules: one wall, a plastic source box, one new outlet."""

from __future__ import annotations

from copy import deepcopy
from pathlib import Path
from typing import Any

from estimator.catalog.books import read_books
from estimator.pricing.stock import stock_of
from estimator.route.paths import run_paths
from estimator.rules.facts import Facts
from estimator.rules.records import Finding
from estimator.rules.registry import FUNCTIONS
from estimator.rules.screen import screen
from estimator.survey.reader import survey_from
from estimator.takeoff.take_off import take_off

BOOKS = read_books(Path(__file__).parents[2] / "catalogs")
JOB: dict[str, Any] = {
    "job": {"id": "1", "title": "Cable rules"},
    "circuit": {"breaker": 20, "wire": "12", "existing_length": "50 ft", "load": 16},
    "boxes": [
        {
            "id": "old",
            "existing": True,
            "volume": "22.5 in3",
            "clamps": "no",
            "metal": "no",
            "cables": ["12-2"],
        },
        {"id": "new"},
    ],
    "runs": [
        {
            "id": "1",
            "from": "old",
            "to": "new",
            "cable": "12-2",
            "stud_depth": "3.5 in",
            "legs": [{"go": "along", "length": "10 ft"}],
        }
    ],
}


def job(
    *,
    run: dict[str, Any] | None = None,
    old: dict[str, Any] | None = None,
    **tables: dict[str, Any],
) -> dict[str, Any]:
    """The job with some keys of its run, its old box or its tables set anew."""
    raw = deepcopy(JOB)
    raw["runs"][0] |= run or {}
    raw["boxes"][0] |= old or {}
    for table, values in tables.items():
        raw[table] |= values
    return raw


def facts(raw: dict[str, Any]) -> Facts:
    """The facts of a job, with the shipped books."""
    survey = survey_from(raw)
    paths = run_paths(survey)
    practice = BOOKS.shop.practice
    return Facts(survey, paths, take_off(survey, paths, practice, stock_of(BOOKS)), practice)


def findings(rule: str, raw: dict[str, Any]) -> list[Finding]:
    """What one rule says of a job."""
    return list(FUNCTIONS[rule](facts(raw)))


def one(rule: str, raw: dict[str, Any]) -> Finding:
    """The only finding of one rule."""
    (found,) = findings(rule, raw)
    return found


def screened(raw: dict[str, Any]) -> tuple[Finding, ...]:
    """All findings of a job."""
    return screen(facts(raw))
