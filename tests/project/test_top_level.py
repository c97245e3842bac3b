"""The top level of the repository is fixed."""

from __future__ import annotations

import subprocess
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
ALLOWED = {
    "README.md", "DEVELOPERS.md", "pyproject.toml", "LICENSE", "estimator", "catalogs", "tests",
    "samples",
}  # fmt: skip


def test_nothing_else_stands_at_the_top() -> None:
    if not (ROOT / ".git").exists():
        pytest.skip("not a git checkout")
    git = ["git", "-C", str(ROOT), "ls-files", "--cached", "--others", "--exclude-standard"]
    listed = subprocess.run(git, capture_output=True, text=True, check=True).stdout
    tops = {line.split("/")[0] for line in listed.splitlines()}
    assert {top for top in tops if not top.startswith(".")} <= ALLOWED
