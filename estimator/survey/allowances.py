"""Sums that a job sets aside for what is not chosen yet."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from estimator.survey.fields import Amount, Record


class Allowance(Record):
    """A sum in the price for something not chosen yet; settled up or down at what it costs."""

    name: str = Field(min_length=1, description='what it is for, such as "light of your choice"')
    amount: Amount = Field(description="in the price, markup included")
    kind: Literal["materials", "labor", "other"] = Field(
        default="materials", description="what it counts as where materials or labor are taxed"
    )
