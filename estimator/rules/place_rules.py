"""Places: which circuit may serve them, and the protection they need."""

from __future__ import annotations
