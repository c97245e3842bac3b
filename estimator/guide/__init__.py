"""The questions of a survey: as data, as a dialogue, and as the job file that they fill."""

from __future__ import annotations
