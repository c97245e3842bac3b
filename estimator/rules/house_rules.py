"""The house: lead, asbestos, dust, ladders, hidden lines, permit, tests after."""

from __future__ import annotations
