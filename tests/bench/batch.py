"""Prints what one job of a batch costs, for 100, 1,000 and 10,000 generated jobs.

Run from the checkout: `python -m tests.bench.batch [COUNT ...]`. The whole command is measured, its
start and the summary workbook with it. Memory is that of its largest process. What counts is the
ratio to the smallest batch: time and memory should hardly grow.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
import time
from pathlib import Path
from typing import NamedTuple

ROOT = Path(__file__).parents[2]
COUNTS = (100, 1_000, 10_000)
IN_A_FOLDER = 100


class Figures(NamedTuple):
    """Of one batch: milliseconds a job, and the memory of the largest process."""

    job_ms: float
    peak_mib: float


def generated(folder: Path, count: int) -> None:
    """Write job files, a hundred to a folder: samples in turn, each with its own number."""
    samples = [path.read_text("utf-8") for path in sorted((ROOT / "samples").glob("*.toml"))]
    for at in range(count):
        here = folder / f"{at // IN_A_FOLDER:04}"
        here.mkdir(exist_ok=True)
        text = samples[at % len(samples)]
        own = text.replace('\nid = "', f'\nid = "{at}-', 1)  # no two jobs are alike
        (here / f"job-{at:05}.toml").write_text(own, "utf-8")


def measured(count: int) -> Figures:
    """Run the command over so many jobs."""
    with tempfile.TemporaryDirectory() as folder:
        jobs = Path(folder, "jobs")
        jobs.mkdir()
        generated(jobs, count)
        command = [sys.executable, "-m", "estimator", "--no-user-books", "batch", str(jobs)]
        begin = time.perf_counter()
        process = subprocess.Popen(
            command, cwd=folder, stdout=subprocess.DEVNULL,
            env={**os.environ, "PYTHONPATH": str(ROOT)},
        )  # fmt: skip
        _, status, used = os.wait4(process.pid, 0)
        seconds = time.perf_counter() - begin
        assert status == 0, status
        return Figures(seconds * 1000 / count, used.ru_maxrss / 1024)


if __name__ == "__main__":
    first: Figures | None = None
    for count in map(int, sys.argv[1:] or COUNTS):
        now = measured(count)
        first = first or now
        print(
            f"{count:,} jobs: {now.job_ms:.1f} ms a job (x {now.job_ms / first.job_ms:.2f}), "
            f"peak {now.peak_mib:.0f} MiB (x {now.peak_mib / first.peak_mib:.2f})",
            flush=True,
        )
