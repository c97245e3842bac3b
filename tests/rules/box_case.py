"""A short job for the box rules: one wall, an old box and a new one, one run between them."""

from __future__ import annotations

from copy import deepcopy
from dataclasses import replace
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

ROOT = Path(__file__).parents[2]
BOOKS = read_books(ROOT / "catalogs")
METRIC = read_books(ROOT / "catalogs" / "metric")
STOCK = stock_of(BOOKS)
PRACTICE = BOOKS.shop.practice
LEGS = [{"go": "along", "length": "5 ft"}]
JOB: dict[str, Any] = {
    "job": {"id": "1", "title": "Box rules"},
    "walls": [{"id": "w", "room": "hall", "length": "20 ft", "stud": "2x4"}],
    "boxes": [
        {
            "id": "old",
            "existing": True,
            "wall": "w",
            "x": "50 in",
            "height": "14 in",
            "volume": "18 in3",
            "clamps": "no",
            "metal": "no",
            "cables": ["14-2"],
        },
        {"id": "new", "wall": "w", "x": "100 in", "height": "14 in"},
    ],
    "runs": [{"id": "1", "from": "old", "to": "new", "cable": "14-2", "legs": LEGS}],
}


def job(
    *,
    old: dict[str, Any] | None = None,
    new: dict[str, Any] | None = None,
    wall: dict[str, Any] | None = None,
    cable: str = "14-2",
    **tables: Any,
) -> dict[str, Any]:
    """The job with some keys of its boxes, its wall, its cable or its tables set anew."""
    raw = deepcopy(JOB)
    raw["boxes"][0] |= old or {}
    raw["boxes"][1] |= new or {}
    raw["walls"][0] |= wall or {}
    raw["runs"][0]["cable"] = cable
    for table, values in tables.items():
        raw[table] = raw[table] | values if table == "job" else values
    return raw


def with_box(raw: dict[str, Any], box: dict[str, Any]) -> dict[str, Any]:
    """The job with one more box."""
    return raw | {"boxes": [*raw["boxes"], box]}


def survey(raw: dict[str, Any]) -> Survey:
    """The survey of a job."""
    return survey_from(raw)


def facts(raw: dict[str, Any], **practice: Any) -> Facts:
    """The facts of a job, with the shipped books and some settings of its shop set anew."""
    return facts_of(survey_from(raw), **practice)


def facts_of(read: Survey, **practice: Any) -> Facts:
    """The facts of a survey."""
    books = METRIC if read.job.units == "metric" else BOOKS
    shop: Practice = replace(books.shop.practice, **practice)
    paths = run_paths(read)
    return Facts(read, paths, take_off(read, paths, shop, stock_of(books)), shop)


def by_subject(rule: str, raw: dict[str, Any], **practice: Any) -> dict[str, Finding]:
    """What one rule says of a job, by subject; no subject twice."""
    found = list(FUNCTIONS[rule](facts(raw, **practice)))
    assert len({each.subject for each in found}) == len(found)
    return {each.subject: each for each in found}


def of(rule: str, subject: str, raw: dict[str, Any], **practice: Any) -> Finding:
    """What one rule says of one subject."""
    return by_subject(rule, raw, **practice)[subject]


def screened(raw: dict[str, Any]) -> tuple[Finding, ...]:
    """All findings of a job."""
    return screen(facts(raw))
