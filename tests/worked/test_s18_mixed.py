"""S18, one run typed in four notations; worked by hand."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

from estimator.pricing.books_for import books_for
from estimator.pricing.engine import estimate
from estimator.survey.reader import job_from_text

JOB = """
[job]
id = "S18"
title = "Mixed notation"

[circuit]
breaker = 15
wire = "14"

[[boxes]]
id = "source"
existing = true
volume = "18 in3"
cables = ["14-2"]

[[boxes]]
id = "new"

[[runs]]
id = "1"
from = "source"
to = "new"
cable = "14-2"
method = "exposed"
legs = [
  { go = "along", length = "12' 6-1/2\\"" },
  { go = "across", length = "12.5 ft" },
  { go = "along", length = "150 in" },
  { go = "across", length = "3.8 m" },
]

[settings.practice]
tail = "6 in"
allowance_pct = 0
"""


def test_four_notations_add_up_exactly() -> None:
    job = job_from_text(JOB, Path("mixed.toml"))
    cut = estimate(job.survey, books_for(job)).takeoff.cable[0].cuts[0]
    assert cut.path_in == Fraction("150.5") + 150 + 150 + Fraction(3800) / Fraction("25.4")
    assert round(float(cut.path_in), 3) == 600.106


def test_fifty_one_whole_feet_without_tails() -> None:
    job = job_from_text(JOB, Path("mixed.toml"))
    order = estimate(job.survey, books_for(job)).takeoff.cable[0]
    assert -((cut := order.cuts[0].path_in) // -12) == 51
    assert round(float(cut / 12), 3) == 50.009
    assert order.order == 52  # with the least tail of 6 in at each end: 612.106 in
