"""The source box: is it what it seems."""

from __future__ import annotations
