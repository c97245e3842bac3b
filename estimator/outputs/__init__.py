"""What people and programs read: the workbook, lists for the terminal, and JSON."""

from __future__ import annotations
