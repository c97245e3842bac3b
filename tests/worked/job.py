"""The worked jobs, carried through the engine with the shipped books."""

from __future__ import annotations

from collections import Counter
from decimal import Decimal
from fractions import Fraction
from functools import cache
from pathlib import Path

from estimator.pricing.books_for import books_for
from estimator.pricing.engine import estimate
from estimator.pricing.records import Bid
from estimator.survey.reader import job_from_text, read_job
from estimator.takeoff.records import BoxCount, RunCount

SAMPLES = Path(__file__).parents[2] / "samples"
MM_PER_IN = Fraction("25.4")
PERMIT_ASKED = '[house]\npermit = "not needed"       # asked at the electrical office\n'
"""What some samples know of their permit; taken out where a test asks what happens without."""


@cache
def worked(sample: str) -> Bid:
    """The bid of a sample as shipped."""
    job = read_job(SAMPLES / f"{sample}.toml")
    return estimate(job.survey, books_for(job))


def changed(sample: str, *changes: tuple[str, str]) -> Bid:
    """The bid of a sample with pieces of its text replaced; each must be there to replace."""
    path = SAMPLES / f"{sample}.toml"
    text = path.read_text(encoding="utf-8")
    for old, new in changes:
        assert old in text, f"{old!r} is not in {path.name}"
        text = text.replace(old, new)
    job = job_from_text(text, path)
    return estimate(job.survey, books_for(job))


def parts(bid: Bid) -> Counter[str]:
    """How much of each item the takeoff asks for."""
    found: Counter[str] = Counter()
    for line in bid.takeoff.parts:
        found[line.item] += line.quantity  # type: ignore[assignment]
    return found


def tasks(bid: Bid) -> Counter[str]:
    """How much of each task the takeoff asks for."""
    found: Counter[str] = Counter()
    for line in bid.takeoff.tasks:
        found[line.task] += line.quantity  # type: ignore[assignment]
    return found


def run(bid: Bid, run_id: str) -> RunCount:
    """The counts of one run."""
    return next(each for each in bid.takeoff.runs if each.run_id == run_id)


def box(bid: Bid, box_id: str) -> BoxCount:
    """The counts of one box."""
    return next(each for each in bid.takeoff.boxes if each.box_id == box_id)


def cut_in(bid: Bid, run_id: str) -> Fraction:
    """The cut of one run, inches."""
    cuts = [cut for order in bid.takeoff.cable for cut in order.cuts]
    return next(cut.cut_in for cut in cuts if cut.run_id == run_id)


def verdicts(bid: Bid) -> dict[str, str]:
    """Verdict by finding id."""
    return {each.finding_id: each.verdict for each in bid.findings}


def ft2(area_in2: Fraction) -> Fraction:
    """Square inches as square feet."""
    return area_in2 / 144


def places(amount: Fraction, digits: int) -> Decimal:
    """A fraction rounded for comparison with a printed figure."""
    return round(Decimal(amount.numerator) / Decimal(amount.denominator), digits)
