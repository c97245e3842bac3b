"""A job file as a workbook to fill in: which cell holds which fact, and how it is read."""

from __future__ import annotations
