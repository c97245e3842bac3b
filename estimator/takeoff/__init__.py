"""Parts and tasks with quantities, each with its reason."""

from __future__ import annotations
