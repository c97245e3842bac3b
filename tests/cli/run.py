"""Runs a command the way a person does: in a folder of its own, with both streams kept apart."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]
SAMPLES = sorted((ROOT / "samples").glob("*.toml"))
NIGHTSTAND = ROOT / "samples" / "nightstand.toml"
ENVIRONMENT = {**os.environ, "PYTHONPATH": str(ROOT), "NO_COLOR": "1"}


def estimator(*arguments: str, folder: Path) -> subprocess.CompletedProcess[str]:
    """Run one command and wait for its end."""
    return subprocess.run(
        [sys.executable, "-m", "estimator", *arguments],
        cwd=folder,
        env=ENVIRONMENT,
        capture_output=True,
        text=True,
        check=False,
    )


def changed(folder: Path, old: str, new: str) -> Path:
    """A copy of the first sample with one piece of its text changed."""
    text = NIGHTSTAND.read_text(encoding="utf-8")
    assert old in text
    path = folder / "job.toml"
    path.write_text(text.replace(old, new), encoding="utf-8")
    return path
