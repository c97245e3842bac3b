"""S1 with what its owner wrote down to compare, as in S21; worked by hand."""

from __future__ import annotations

from estimator.pricing.books_for import books_for
from estimator.pricing.compare import compare
from estimator.pricing.compare_records import Against, CompareColumn, Comparison
from estimator.pricing.engine import estimate
from estimator.pricing.records import Bid
from estimator.survey.reader import job_from_text
from tests.worked.job import PERMIT_ASKED, SAMPLES

S21 = """
[compare]
own_hour = 18.00
own_hours = 9.5
materials = 41.30
consumables = 9.60
permit = 65.00
rework_chance_pct = 15
rework_cost = 350.00

[[compare.tools]]
name = "Saw that cuts flush"
price = 87.00
keep_pct = 50

[[compare.hire]]
name = "Sample electrician"
quote = 365.00
includes = ["materials", "wiring", "permit", "clean-up"]
excludes = ["patch and paint"]
prices = { "patch and paint" = 180.00 }
own_hours = 1.5
"""


def with_compare(text: str, *changes: tuple[str, str], sample: str = "nightstand") -> Bid:
    """The bid of a sample, its permit not known, with a text at its end and pieces replaced."""
    path = SAMPLES / f"{sample}.toml"
    whole = path.read_text(encoding="utf-8").replace(PERMIT_ASKED, "") + text
    for old, new in changes:
        assert old in whole, f"{old!r} is not there"
        whole = whole.replace(old, new)
    job = job_from_text(whole, path)
    return estimate(job.survey, books_for(job))


def s21(*changes: tuple[str, str]) -> Comparison:
    """The comparison of S21 with pieces of its text replaced."""
    return compare(with_compare(S21, *changes))


def own(made: Comparison) -> CompareColumn:
    """The column of doing it yourself."""
    assert made.own_column is not None
    return made.own_column


def only(made: Comparison) -> Against:
    """What is said against the one hire bid."""
    (against,) = made.against
    return against
