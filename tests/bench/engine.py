"""Prints how many jobs a second the engine prices in one process, and the memory it takes.

Run from the checkout: `python -m tests.bench.engine`. Reading files is not in the time: survey
records and books in, priced bid out.
"""

from __future__ import annotations

import resource
import time
from pathlib import Path
from statistics import median

from estimator.catalog.records import Books
from estimator.pricing.books_for import books_for
from estimator.pricing.engine import estimate
from estimator.survey.reader import read_job
from estimator.survey.records import Survey

ROOT = Path(__file__).parents[2]
ROUNDS = 9
SECONDS_A_ROUND = 0.5


def jobs_per_second(path: Path) -> float:
    """Price one sample over and over; the median of the rounds."""
    job = read_job(path)
    books = books_for(job)
    return median(_round(job.survey, books) for _ in range(ROUNDS))


def _round(survey: Survey, books: Books) -> float:
    count, begin = 0, time.perf_counter()
    while time.perf_counter() - begin < SECONDS_A_ROUND:
        estimate(survey, books)
        count += 1
    return count / (time.perf_counter() - begin)


if __name__ == "__main__":
    for sample in sorted((ROOT / "samples").glob("*.toml")):
        print(f"{sample.stem}: {jobs_per_second(sample):,.0f} jobs per second")
    peak_mib = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    print(f"peak memory: {peak_mib:.0f} MiB")
