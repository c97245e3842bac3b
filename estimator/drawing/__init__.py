"""Views of the walls that a job touches: lines, rectangles and labels in exact inches."""

from __future__ import annotations
