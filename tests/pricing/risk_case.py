"""A bid of a sample with settings and overrides of its own, for the tests of its range."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from estimator.pricing.books_for import books_for
from estimator.pricing.engine import estimate
from estimator.pricing.records import Bid
from estimator.survey.reader import job_from_text

SAMPLES = Path(__file__).parents[2] / "samples"


@cache
def bid_with(more: str = "", sample: str = "nightstand") -> Bid:
    """The bid of a sample with more text at the end of its job file."""
    path = SAMPLES / f"{sample}.toml"
    job = job_from_text(path.read_text(encoding="utf-8") + more, path)
    return estimate(job.survey, books_for(job))
