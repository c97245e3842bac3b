"""Holes and notches in wood, sealed holes, rated walls."""

from __future__ import annotations
