"""Field types of the survey: measures as people type them, and `unknown` where nobody knows."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from decimal import Decimal
from fractions import Fraction
from typing import Annotated, Any, Literal

from pydantic import (
    BaseModel,
    BeforeValidator,
    ConfigDict,
    Field,
    ValidationInfo,
    WithJsonSchema,
)
from pydantic_core import PydanticCustomError

from estimator.measures import to_decimal
from estimator.survey.locales import country_code, locale_name
from estimator.units import LengthReading, MeasureError, read_area, read_length, read_volume

UNKNOWN = "unknown"
_VOLUME_PLACES = 6
_TENTH = Decimal("0.1")
_MOST_GANGS = 4
LARGEST = 1_000_000_000
_FIRST_DAY, _LAST_DAY = date(1900, 1, 1), date(2999, 12, 31)


def _yes_no(value: Any) -> Any:
    """TOML's true and false say yes and no too."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    return value


YesNo = Annotated[Literal["yes", "no", "unknown"], BeforeValidator(_yes_no)]


class Record(BaseModel):
    """What every survey record obeys: nobody changes it, and an unknown key is an error."""

    model_config = ConfigDict(
        frozen=True, extra="forbid", defer_build=True, arbitrary_types_allowed=True
    )


def _refuse(error: MeasureError) -> PydanticCustomError:
    words = {"reason": error.reason, "hint": error.hint}
    return PydanticCustomError("measure", "{reason}|{hint}", words)


def _length(value: Any, info: ValidationInfo) -> Fraction | None:
    """Read a length with the job's bare unit; keep its notes for the echo."""
    if value is None or value == UNKNOWN:
        return None
    if isinstance(value, Fraction):
        return value
    if not _is_typed(value):
        raise PydanticCustomError("measure", "{reason}|{hint}", _NOT_A_LENGTH)
    context = info.context or {}
    try:
        reading = read_length(
            value,
            bare_unit=context.get("bare_unit", "in"),
            decimal_comma=context.get("decimal_comma", False),
        )
    except MeasureError as error:
        raise _refuse(error) from None
    _echo(context.get("echo"), value, reading, info)
    return reading.inches


def _is_typed(value: Any) -> bool:
    """True for what a measure may come as: text or an exact number."""
    return isinstance(value, str | int | Decimal) and not isinstance(value, bool)


def _habits(info: ValidationInfo) -> tuple[bool, bool]:
    """Whether bare numbers are metric, and whether a comma stands before decimals."""
    context = info.context or {}
    metric = context.get("bare_unit") in ("mm", "cm", "m")
    return metric, bool(context.get("decimal_comma", False))


def _echo(
    echo: Callable[[str, str, LengthReading], None] | None,
    typed: str | int | Decimal,
    reading: LengthReading,
    info: ValidationInfo,
) -> None:
    if echo is not None:
        echo(info.field_name or "", str(typed), reading)


def _volume(value: Any, info: ValidationInfo) -> Decimal | None:
    """Read a box volume as stamped; in3 exactly as Decimal, other units to six places."""
    if value is None or value == UNKNOWN:
        return None
    if not _is_typed(value):
        raise PydanticCustomError("measure", "{reason}|{hint}", _NOT_A_VOLUME)
    metric, comma = _habits(info)
    try:
        exact = read_volume(value, bare_unit="cm3" if metric else "in3", decimal_comma=comma)
    except MeasureError as error:
        raise _refuse(error) from None
    volume = to_decimal(exact, _VOLUME_PLACES)
    return volume.quantize(_TENTH) if volume == volume.quantize(_TENTH) else volume.normalize()


def _area(value: Any, info: ValidationInfo) -> Fraction | None:
    """Read an area, square inches exactly."""
    if value is None or value == UNKNOWN:
        return None
    if not _is_typed(value):
        raise PydanticCustomError("measure", "{reason}|{hint}", _NOT_AN_AREA)
    metric, comma = _habits(info)
    try:
        return read_area(value, bare_unit="m2" if metric else "ft2", decimal_comma=comma)
    except MeasureError as error:
        raise _refuse(error) from None


_NOT_AN_AREA = {
    "reason": "this is not an area",
    "hint": 'Write an area such as "156 ft2" or "10.08 m2".',
}
_NOT_A_LENGTH = {
    "reason": "this is not a length",
    "hint": 'Write it as on the tape, in quotes: "12\' 6-1/2\\"" or "3.8 m".',
}
_NOT_A_VOLUME = {
    "reason": "this is not a volume",
    "hint": 'Write the volume stamped in the box, such as "18 in3", or "unknown".',
}

_LENGTH_SCHEMA = {
    "type": ["string", "number"],
    "description": "a length as typed (12' 6-1/2\", 150 in, 3.8 m), or a bare number in the "
    "job's bare unit",
}
_MAYBE_LENGTH_SCHEMA = {**_LENGTH_SCHEMA, "description": _LENGTH_SCHEMA["description"]}
_MAYBE_LENGTH_SCHEMA["description"] = f'{_LENGTH_SCHEMA["description"]}, or "unknown"'


def _known(value: Fraction | None) -> Fraction:
    if value is None:
        raise PydanticCustomError(
            "measure",
            "{reason}|{hint}",
            {"reason": "this length cannot be left unknown", "hint": "Measure it, or estimate it."},
        )
    return value


def _needed_length(value: Any, info: ValidationInfo) -> Fraction:
    return _known(_length(value, info))


Length = Annotated[Fraction, BeforeValidator(_needed_length), WithJsonSchema(_LENGTH_SCHEMA)]
MaybeLength = Annotated[
    Fraction | None, BeforeValidator(_length), WithJsonSchema(_MAYBE_LENGTH_SCHEMA)
]
MaybeVolume = Annotated[
    Decimal | None,
    BeforeValidator(_volume),
    WithJsonSchema(
        {"type": ["string", "number"], "description": 'a volume such as "18 in3", or "unknown"'}
    ),
]
MaybeArea = Annotated[
    Fraction | None,
    BeforeValidator(_area),
    WithJsonSchema({"type": ["string", "number"], "description": 'an area such as "156 ft2"'}),
]


def _if_known(value: Any) -> Any:
    return None if value == UNKNOWN else value


def _no_yes(value: Any) -> Any:
    """True and false are not numbers."""
    if isinstance(value, bool):
        raise PydanticCustomError("number", "not a number")
    return value


def _country(value: Any) -> Any:
    return country_code(value) if isinstance(value, str) else value


def _locale(value: Any) -> Any:
    return locale_name(value) if isinstance(value, str) else value


# Limits stand before the check, so that the schema has them too.
Whole = Annotated[int, Field(ge=0), BeforeValidator(_no_yes)]
NotNegative = Annotated[Decimal, Field(ge=0), BeforeValidator(_no_yes)]
Trips = Annotated[int, Field(ge=0, le=LARGEST), BeforeValidator(_no_yes)]
Amount = Annotated[Decimal, Field(ge=0, le=LARGEST), BeforeValidator(_no_yes)]
Positive = Annotated[Decimal, Field(gt=0, le=LARGEST), BeforeValidator(_no_yes)]
# Years that a workbook can hold, with room for the work after it.
Day = Annotated[date, Field(ge=_FIRST_DAY, le=_LAST_DAY)]
Gangs = Annotated[int, Field(ge=1, le=_MOST_GANGS), BeforeValidator(_no_yes)]
Country = Annotated[str, BeforeValidator(_country)]
LocaleName = Annotated[str, BeforeValidator(_locale)]
MaybeInt = Annotated[
    Whole | None,
    BeforeValidator(_if_known),
    WithJsonSchema(
        {"type": ["integer", "string"], "minimum": 0, "description": 'a whole number, or "unknown"'}
    ),
]
MaybeNumber = Annotated[
    Amount | None,
    BeforeValidator(_if_known),
    WithJsonSchema({"type": ["number", "string"], "description": 'a number, or "unknown"'}),
]
MaybeText = Annotated[
    str | None,
    BeforeValidator(_if_known),
    WithJsonSchema({"type": "string", "description": 'text, or "unknown"'}),
]
