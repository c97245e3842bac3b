"""What was measured in the house: frozen records, and the readers that make them."""

from __future__ import annotations
