"""Prints how long a cold start takes, against importing the packages it cannot do without.

Run from the checkout: `python -m tests.bench.cold_start`. Medians of 9, taken turn about so that
a slow moment of the machine falls on both sides. Compiled files are kept, as an installed tool
has them.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
import time
from pathlib import Path
from statistics import median

ROOT = Path(__file__).parents[2]
ROUNDS = 9
PACKAGES = "import typer, pydantic, openpyxl, babel.numbers"
JOB = str(ROOT / "samples" / "nightstand.toml")


def seconds(arguments: list[str], folder: str) -> float:
    """Wall time of one fresh Python."""
    env = {**os.environ, "PYTHONPATH": str(ROOT), "PYTHONDONTWRITEBYTECODE": ""}
    begin = time.perf_counter()
    subprocess.run(
        [sys.executable, *arguments], cwd=folder, env=env, check=True, stdout=subprocess.DEVNULL
    )
    return time.perf_counter() - begin


def compare(name: str, ours: list[str], bare: list[str]) -> None:
    """Print the medians of two commands and their ratio."""
    with tempfile.TemporaryDirectory() as folder:
        pairs = [(seconds(ours, folder), seconds(bare, folder)) for _ in range(ROUNDS + 1)][1:]
    mine, base = (median(each) * 1000 for each in zip(*pairs, strict=True))
    print(f"{name}: {mine:.0f} ms, bare {base:.0f} ms, ratio {mine / base:.2f}")


if __name__ == "__main__":
    compare("--help", ["-m", "estimator", "--help"], ["-c", "import typer"])
    compare("bid", ["-m", "estimator", "bid", JOB], ["-c", PACKAGES])
