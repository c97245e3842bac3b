"""Field types of a close-out file: money, hours and rates, each refused in plain words."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Any

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field
from pydantic_core import PydanticCustomError

LARGEST = 1_000_000_000
MOST_PLACES = 6
MOST_PCT = 100
MOST_HOURS = 1000


class Record(BaseModel):
    """What every record of a close-out obeys: nobody changes it, unknown keys are errors."""

    model_config = ConfigDict(frozen=True, extra="forbid", defer_build=True)


def refusal(reason: str, hint: str) -> PydanticCustomError:
    """Make the error for a record whose parts do not fit each other."""
    return PydanticCustomError("record", "{reason}|{hint}", {"reason": reason, "hint": hint})


def _no_yes(value: Any) -> Any:  # noqa: ANN401 - reads whatever the file holds
    """True and false are not numbers."""
    if isinstance(value, bool):
        raise PydanticCustomError(
            "measure",
            "{reason}|{hint}",
            {"reason": "this is not a number", "hint": "Write a number, such as 62.10."},
        )
    return value


_NUMBER = BeforeValidator(_no_yes)
Amount = Annotated[Decimal, Field(ge=0, le=LARGEST, decimal_places=MOST_PLACES), _NUMBER]
AboveZero = Annotated[Decimal, Field(gt=0, le=LARGEST, decimal_places=MOST_PLACES), _NUMBER]
Percent = Annotated[Decimal, Field(ge=0, le=MOST_PCT, decimal_places=MOST_PLACES), _NUMBER]
Hours = Annotated[Decimal, Field(gt=0, le=MOST_HOURS, decimal_places=MOST_PLACES), _NUMBER]
