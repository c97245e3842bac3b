"""The command line: options in, exit code out; it computes nothing."""

from __future__ import annotations

from estimator.cli.entry import main

__all__ = ["main"]
