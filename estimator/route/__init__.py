"""Geometry of the runs: lengths of legs, members crossed, corners, levels."""

from __future__ import annotations
