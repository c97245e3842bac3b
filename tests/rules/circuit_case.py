"""A short job for the circuit and source rules: everything stated, nothing amiss."""

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
from estimator.survey.records import Survey
from estimator.takeoff.take_off import take_off

BOOKS = read_books(Path(__file__).parents[2] / "catalogs")
JOB: dict[str, Any] = {
    "job": {"id": "1", "title": "Circuit rules", "year_built": 1990},
    "circuit": {
        "breaker": 20,
        "wire": "12",
        "material": "copper",
        "kind": "general",
        "grounded": "yes",
        "ground_wire": "12",
        "multiwire": "no",
    },
    "boxes": [
        {
            "id": "old",
            "existing": True,
            "volume": "34 in3",
            "clamps": "no",
            "metal": "no",
            "cables": ["12-2", "12-2"],
            "contents": {
                "wires_per_screw": 1,
                "push_in_terminals": "no",
                "tab_removed": "no",
                "half_switched": "no",
                "always_live": "yes",
            },
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
    edition: str = "nec-2023",
    old: dict[str, Any] | None = None,
    new: dict[str, Any] | None = None,
    run: dict[str, Any] | None = None,
    found: dict[str, Any] | None = None,
    **circuit: Any,
) -> dict[str, Any]:
    """The job with some keys of its boxes, run, circuit or old box's contents set anew."""
    raw = deepcopy(JOB)
    raw["job"]["edition"] = edition
    raw["boxes"][0] |= old or {}
    raw["boxes"][0]["contents"] |= found or {}
    raw["boxes"][1] |= new or {}
    raw["runs"][0] |= run or {}
    raw["circuit"] |= circuit
    return raw


def facts(raw: dict[str, Any]) -> Facts:
    """The facts of a job, with the shipped books."""
    return facts_of(survey_from(raw))


def facts_of(survey: Survey) -> Facts:
    """The facts of a survey, with the shipped books."""
    paths = run_paths(survey)
    practice = BOOKS.shop.practice
    return Facts(survey, paths, take_off(survey, paths, practice, stock_of(BOOKS)), practice)


def findings(rule: str, raw: dict[str, Any]) -> dict[str, Finding]:
    """What one rule says of a job, by subject."""
    return {found.subject: found for found in FUNCTIONS[rule](facts(raw))}


def one(rule: str, raw: dict[str, Any], subject: str = "circuit") -> Finding:
    """What one rule says of one subject."""
    return findings(rule, raw)[subject]


def verdict(rule: str, raw: dict[str, Any], subject: str = "circuit") -> str:
    """The verdict of one rule on one subject."""
    return one(rule, raw, subject).verdict


def screened(raw: dict[str, Any]) -> tuple[Finding, ...]:
    """All findings of a job."""
    return screen(facts(raw))
