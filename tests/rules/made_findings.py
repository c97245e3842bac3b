"""Findings of every rule for small houses."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from estimator.route.paths import run_paths
from estimator.rules.facts import Facts
from estimator.rules.records import Finding
from estimator.rules.screen import screen
from estimator.survey.records import Survey
from estimator.takeoff.stock import Stock
from estimator.takeoff.take_off import take_off
from tests.takeoff.made_takeoff import shipped_practice, shipped_stock

EDITIONS = ("nec-2017", "nec-2020", "nec-2023")


def findings(survey: Survey, book: Stock | None = None, **practice: Any) -> tuple[Finding, ...]:
    """Everything the rules say; `practice` changes the shipped conventions."""
    own = replace(shipped_practice(survey.job.units), **practice)
    paths = run_paths(survey)
    takeoff = take_off(survey, paths, own, book or shipped_stock(survey.job.units))
    return screen(Facts(survey, paths, takeoff, own))


def finding(survey: Survey, finding_id: str, book: Stock | None = None, **practice: Any) -> Finding:
    """The one finding with this id."""
    (only,) = (each for each in findings(survey, book, **practice) if each.finding_id == finding_id)
    return only
