"""Estimator: from a survey of a finished house to a priced bid for extending a branch circuit."""

from __future__ import annotations

__all__ = ["__version__"]
__version__ = "0.1.0"
