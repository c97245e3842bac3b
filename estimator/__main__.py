"""Runs the command line as `python -m estimator`."""

from __future__ import annotations

from estimator.cli import main

if __name__ == "__main__":
    main()
