"""How a record becomes JSON: one reading of its fields gives both the writer and the schema.

Fields are read from the record's type hints, so what is written and what is documented cannot
differ. Amounts are text with plain digits ("225.00"), never binary floats. A measure (an exact
fraction of an inch, square inch or cubic inch) becomes an object: its exact figure, the unit
of the job's system, and the way it is shown to people; `path_in` becomes "path_length".
"""

from __future__ import annotations

import inspect
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, fields, is_dataclass
from datetime import date
from decimal import Decimal
from fractions import Fraction
from functools import cache
from types import NoneType, UnionType
from typing import Any, Literal, NamedTuple, Union, get_args, get_origin, get_type_hints

from estimator.measures import MM_PER_IN, System, show_area, show_length, show_volume

Json = None | bool | int | str | list["Json"] | dict[str, "Json"]
Writer = Callable[[Any, System], Json]

AMOUNT_PATTERN = r"^-?[0-9]+(\.[0-9]+)?$"
MOST_PLACES = 12
EXACT_PATTERN = r"^-?[0-9]+(\.[0-9]+|/[0-9]+)?$"


class _Dimension(NamedTuple):
    """What a suffix of a field name says about its measure; `power` is 1 for a length."""

    what: str
    power: int
    show: Callable[[Fraction, System], str]


_DIMENSIONS = {
    "in": _Dimension("length", 1, show_length),
    "in2": _Dimension("area", 2, show_area),
    "in3": _Dimension("volume", 3, show_volume),
}


@dataclass(frozen=True, slots=True)
class Shape:
    """One kind of value: its name in JSON, how it is written, and its JSON Schema."""

    name: str
    write: Writer
    schema: dict[str, Any]


def write_amount(amount: Decimal) -> str:
    """Write a Decimal in plain digits, with the places it carries and no exponent.

    >>> write_amount(Decimal("1E+2"))
    '100'
    """
    return f"{amount:f}"


def write_exact(amount: Fraction) -> str:
    """Write a fraction exactly: as a decimal where one ends, else as "19000/127".

    >>> write_exact(Fraction(657, 2)), write_exact(Fraction(19000, 127))
    ('328.5', '19000/127')
    """
    for places in range(MOST_PLACES + 1):
        if 10**places % amount.denominator == 0:
            digits = amount.numerator * (10**places // amount.denominator)
            return f"{Decimal(f'{digits}E-{places}'):f}"
    return f"{amount.numerator}/{amount.denominator}"


def shape_of(hint: Any, name: str) -> Shape:
    """Find the shape of a field from its type hint; its name tells the unit of a measure.

    Raises:
        TypeError: a type this module has no way to write.
    """
    origin, inside = get_origin(hint), get_args(hint)
    if origin is Literal:
        return Shape(name, _as_is, {"enum": list(inside)})
    if origin in (Union, UnionType):
        return _maybe(inside, name) if NoneType in inside else _one_of(inside, name)
    if origin is tuple:
        return _many(inside, name)
    if origin in (Mapping, dict):
        return _by_name(inside[1], name, pairs=False)
    if is_dataclass(hint) and isinstance(hint, type):
        return _record(hint, name)
    return _plain(hint, name)


def _as_is(value: Json, _system: System) -> Json:
    """Pass on text, whole numbers and yes or no: they are JSON already."""
    return value


def _plain(hint: Any, name: str) -> Shape:
    """Shape a single value."""
    if hint is Fraction:
        return _measure(name)
    if hint is Decimal:
        schema = {"type": "string", "pattern": AMOUNT_PATTERN}
        return Shape(name, lambda value, _system: write_amount(value), schema)
    if hint is date:
        schema = {"type": "string", "format": "date"}
        return Shape(name, lambda value, _system: value.isoformat(), schema)
    types = {str: "string", int: "integer", bool: "boolean"}
    if hint not in types:
        raise TypeError(f"{name}: no JSON is defined for {hint}")
    return Shape(name, _as_is, {"type": types[hint]})


def _measure(name: str) -> Shape:
    """Shape a length, area or volume, by the suffix of its name."""
    stem, _, suffix = name.rpartition("_")
    what, power, show = _DIMENSIONS[suffix]

    def write(value: Fraction, system: System) -> Json:
        metric = system == "metric"
        amount = value * MM_PER_IN**power if metric else value
        unit = suffix.replace("in", "mm") if metric else suffix
        return {"exact": write_exact(amount), "unit": unit, "shown": show(value, system)}

    return Shape(f"{stem}_{what}", write, {"$ref": f"#/$defs/{what}"})


def _maybe(inside: tuple[Any, ...], name: str) -> Shape:
    """Shape a value that may be unknown, written as null."""
    known = shape_of(next(kind for kind in inside if kind is not NoneType), name)

    def write(value: Any, system: System) -> Json:
        return None if value is None else known.write(value, system)

    return Shape(known.name, write, {"anyOf": [known.schema, {"type": "null"}]})


def _one_of(records: tuple[type, ...], name: str) -> Shape:
    """Shape a value that is one of several records, told apart by their fields."""
    shapes = {record: shape_of(record, name) for record in records}

    def write(value: Any, system: System) -> Json:
        return shapes[type(value)].write(value, system)

    return Shape(name, write, {"anyOf": [shape.schema for shape in shapes.values()]})


def _many(inside: tuple[Any, ...], name: str) -> Shape:
    """Shape a list; pairs of a name and a value become an object."""
    element = inside[0]
    if get_origin(element) is tuple and get_args(element)[0] is str:
        return _by_name(get_args(element)[1], name, pairs=True)
    one = shape_of(element, name)

    def write(value: tuple[Any, ...], system: System) -> Json:
        return [one.write(each, system) for each in value]

    return Shape(one.name, write, {"type": "array", "items": one.schema})


def _by_name(hint: Any, name: str, *, pairs: bool) -> Shape:
    """Shape values by name."""
    one = shape_of(hint, name)

    def write(value: Any, system: System) -> Json:
        items = value if pairs else value.items()
        return {key: one.write(each, system) for key, each in items}

    return Shape(one.name, write, {"type": "object", "additionalProperties": one.schema})


@cache
def fields_of(record: type) -> tuple[tuple[str, Shape], ...]:
    """Each field of a record with its shape, in the order of the record."""
    hints = get_type_hints(record)
    return tuple((field.name, shape_of(hints[field.name], field.name)) for field in fields(record))


def _record(record: type, name: str) -> Shape:
    """Shape a record: its fields by name."""

    def write(value: Any, system: System) -> Json:
        return {
            shape.name: shape.write(getattr(value, field), system)
            for field, shape in fields_of(record)
        }

    return Shape(name, write, {"$ref": f"#/$defs/{record.__name__}"})


def record_schema(record: type) -> dict[str, Any]:
    """Describe one record: every field is always there, and no other; text from its docs."""
    about, each_about = _docs(record)
    properties = {
        shape.name: {**shape.schema, **each_about.get(field, {})}
        for field, shape in fields_of(record)
    }
    return {
        "type": "object",
        "description": about,
        "properties": properties,
        "required": list(properties),
        "additionalProperties": False,
    }


def _docs(record: type) -> tuple[str, dict[str, dict[str, str]]]:
    """Split a record's docstring: what it is, and what its "Attributes" say of each field."""
    about, _, attributes = (inspect.getdoc(record) or "").partition("Attributes:")
    name = "|".join(field.name for field in fields(record))
    parts = re.split(rf"((?:{name})(?:, (?:{name}))*): ", " ".join(attributes.split()))
    said = {
        each: {"description": text.strip().replace("None", "null")}
        for names, text in zip(parts[1::2], parts[2::2], strict=True)
        for each in names.split(", ")
    }
    return " ".join(about.split()).replace("None", "null"), said


def records_within(record: type) -> dict[str, type]:
    """Collect the record and every record its fields lead to, by name."""
    found: dict[str, type] = {}
    waiting: list[Any] = [record]
    while waiting:
        hint = waiting.pop()
        if is_dataclass(hint) and isinstance(hint, type) and hint.__name__ not in found:
            found[hint.__name__] = hint
            waiting.extend(get_type_hints(hint).values())
        waiting.extend(get_args(hint))
    return found


def measure_schemas() -> dict[str, Any]:
    """Describe the three kinds of measure."""
    return {
        each.what: _measure_schema(each.what, [suffix, suffix.replace("in", "mm")])
        for suffix, each in _DIMENSIONS.items()
    }


def _measure_schema(what: str, units: list[str]) -> dict[str, Any]:
    properties = {
        "exact": {"type": "string", "pattern": EXACT_PATTERN},
        "unit": {"enum": units},
        "shown": {"type": "string"},
    }
    return {
        "type": "object",
        "description": f"One {what}: exact (a decimal, or top/bottom where none ends), as shown.",
        "properties": properties,
        "required": list(properties),
        "additionalProperties": False,
    }
