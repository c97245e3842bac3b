"""What may be found once the wall of this job is open, as the job file states it."""

from __future__ import annotations

from decimal import Decimal
from typing import Self

from pydantic import Field, model_validator
from pydantic_core import PydanticCustomError

from estimator.survey.fields import Amount, NotNegative, Record

_NONE = Decimal(0)
_MOST_PCT = 100


class Risk(Record):
    """Something that may be found behind the finish, and what it would take."""

    name: str = Field(min_length=1, description="what may be found, in plain words")
    chance_pct: NotNegative = Field(
        le=_MOST_PCT, description="in a hundred jobs like this one, how many have it"
    )
    hours_low: Amount = Field(default=_NONE, description="more hours where it happens, least")
    hours_likely: Amount = Field(default=_NONE, description="most likely")
    hours_high: Amount = Field(default=_NONE, description="most")
    parts_low: Amount = Field(default=_NONE, description="more cost of parts, least")
    parts_likely: Amount = Field(default=_NONE, description="most likely")
    parts_high: Amount = Field(default=_NONE, description="most")
    source: str = Field(default="the job", description="who says so, such as judgement")

    @model_validator(mode="after")
    def _in_order(self) -> Self:
        hours = (self.hours_low, self.hours_likely, self.hours_high)
        parts = (self.parts_low, self.parts_likely, self.parts_high)
        if list(hours) != sorted(hours) or list(parts) != sorted(parts):
            raise PydanticCustomError(
                "record",
                "{reason}|{hint}",
                {
                    "reason": f'low, likely and high of "{self.name}" are not in order',
                    "hint": "Low is the least of the three and high the most.",
                },
            )
        return self
