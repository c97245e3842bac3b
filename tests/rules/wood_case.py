"""A short job for the rules of wood and house: one wall of 2x4, four studs to cross.

Studs stand at 0, 16, 32 ...; from x = 20 to x = 92 the run meets 32, 48, 64 and 80
(building.md section 8, row 18).
"""

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
from estimator.settings import Practice
from estimator.survey.reader import survey_from
from estimator.survey.records import Survey
from estimator.takeoff.take_off import take_off

BOOKS = read_books(Path(__file__).parents[2] / "catalogs")
PRACTICE = BOOKS.shop.practice
HOURS = {task: row.hours_likely for task, row in BOOKS.labor.items()}
IRC_2021 = "IRC 2021 R602.6 (from memory: check)"
JOB: dict[str, Any] = {
    "job": {"id": "1", "title": "Wood rules", "year_built": 1990},
    "circuit": {"breaker": 15, "wire": "14", "grounded": "yes"},
    "walls": [
        {
            "id": "w",
            "room": "den",
            "length": "12 ft",
            "height": "8 ft",
            "stud": "2x4",
            "spacing": "16 in",
            "layout_from": "0 in",
            "bearing": "no",
        }
    ],
    "boxes": [
        {"id": "old", "existing": True, "wall": "w", "x": "20 in", "height": "16 in"},
        {"id": "new", "wall": "w", "x": "92 in", "height": "16 in"},
    ],
    "runs": [
        {
            "id": "1",
            "from": "old",
            "to": "new",
            "cable": "14-2",
            "way": "wall",
            "method": "bored",
        }
    ],
}
# The same way typed as legs: nobody drew the wall.
TYPED = {"way": None, "legs": [{"go": "along", "length": "6 ft", "studs": 4}]}
BORED = {"method": "bored"}
NOTCHED = {"method": "notched"}
_ONE_TABLE = ("job", "circuit", "house", "finish")


def job(**changes: Any) -> dict[str, Any]:
    """The job with keys of its only wall, its run or its tables set anew.

    `wall`, `run` and `new` change the one record; `job`, `house` ... change a table; any
    other name sets a list of records. A value None takes a key out.
    """
    raw = deepcopy(JOB)
    places = {"wall": raw["walls"][0], "run": raw["runs"][0], "new": raw["boxes"][1]}
    for name, values in changes.items():
        if name in places or name in _ONE_TABLE:
            place = places[name] if name in places else raw.setdefault(name, {})
            place |= values
            for key in [key for key, value in place.items() if value is None]:
                del place[key]
        else:
            raw[name] = values
    return raw


def hole(size: str, **changes: Any) -> dict[str, Any]:
    """The job with holes of a size."""
    run = {**BORED, "hole": size, **changes.pop("run", {})}
    return job(run=run, **changes)


def notch(depth: str, **changes: Any) -> dict[str, Any]:
    """The job with notches of a depth."""
    return job(run={**NOTCHED, "notch_depth": depth}, **changes)


def facts(raw: dict[str, Any], practice: Practice = PRACTICE) -> Facts:
    """The facts of a job, with the shipped books."""
    return facts_of(survey_from(raw), practice)


def facts_of(survey: Survey, practice: Practice = PRACTICE) -> Facts:
    """The facts of a survey, with the shipped books."""
    paths = run_paths(survey)
    return Facts(survey, paths, take_off(survey, paths, practice, stock_of(BOOKS)), practice, HOURS)


def findings(rule: str, raw: dict[str, Any], practice: Practice = PRACTICE) -> list[Finding]:
    """What one rule says of a job."""
    return list(FUNCTIONS[rule](facts(raw, practice)))


def one(rule: str, raw: dict[str, Any], practice: Practice = PRACTICE) -> Finding:
    """The only finding of one rule."""
    (found,) = findings(rule, raw, practice)
    return found


def by_subject(rule: str, raw: dict[str, Any]) -> dict[str, str]:
    """Verdict by subject of one rule."""
    return {each.subject: each.verdict for each in findings(rule, raw)}


def screened(raw: dict[str, Any]) -> dict[str, Finding]:
    """All findings of a job, by id."""
    return {each.finding_id: each for each in screen(facts(raw))}
