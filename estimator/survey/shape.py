"""The shape of a file, read off its records: which record stands at a place, and its keys."""

from __future__ import annotations

from typing import get_args

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from estimator.survey.records import Survey
from estimator.toml_lines import TomlPath


def keys_at(place: TomlPath, root: type[BaseModel] = Survey) -> list[str]:
    """The keys that a table of a file may have, at a place such as ("walls", 0)."""
    return list(fields_of(record_at(place, root)))


def record_at(place: TomlPath, root: type[BaseModel] = Survey) -> type[BaseModel] | None:
    """The record that a table of a file becomes; None where names are free."""
    record: type[BaseModel] | None = root
    for name in place:
        if isinstance(name, str):
            field = fields_of(record).get(name)
            record = None if field is None else first_record(field.annotation)
    return record


def fields_of(record: type[BaseModel] | None) -> dict[str, FieldInfo]:
    """The fields of a record by the key that the file uses."""
    fields = {} if record is None else record.model_fields
    return {field.alias or name: field for name, field in fields.items()}


def first_record(annotation: object) -> type[BaseModel] | None:
    """The record inside a type such as tuple[Wall, ...]; None where there is none."""
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    found = (first_record(inner) for inner in get_args(annotation))
    return next((record for record in found if record is not None), None)
