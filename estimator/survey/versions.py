"""Versions of a bid, as a job file lists them."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from estimator.survey.fields import Day, Record


class Version(Record):
    """One version of this bid; the last one is the job file itself."""

    number: Annotated[int, Field(ge=1)]
    dated: Day | None = Field(default=None, alias="date")
    why: str = Field(min_length=1, description="why there is a new version")
    file: str | None = Field(
        default=None, description="job file of that version; none for the one at hand"
    )
