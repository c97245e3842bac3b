"""Code tables and trade constants, one CSV a table, each row with the key of its source."""

from __future__ import annotations
