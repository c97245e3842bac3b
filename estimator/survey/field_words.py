"""The words of job files: what fields are called, and the words to choose from in them."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from typing import Literal, get_args, get_origin

from pydantic import BaseModel

from estimator.saying import word
from estimator.survey.records import Survey
from estimator.survey.shape import fields_of


def key_said(key: str) -> str:
    """A key of a job file as words; one that somebody made up stays as typed."""
    text = key.replace("_", " ")
    return word(text) if key in keys() else text


def choice_said(text: str) -> str:
    """A value as typed; where it is one of the words to choose from, it can be told."""
    return word(text) if text in choices() else text


@cache
def keys() -> frozenset[str]:
    """Every key that a job file may have."""
    return frozenset(key for record in _records(Survey) for key in fields_of(record))


@cache
def choices() -> frozenset[str]:
    """Every word that some field of a job file offers."""
    annotations = (
        field.annotation for record in _records(Survey) for field in fields_of(record).values()
    )
    return frozenset(each for annotation in annotations for each in _literals(annotation))


def _records(root: type[BaseModel]) -> tuple[type[BaseModel], ...]:
    """A record and all that it holds, each once."""
    found: dict[type[BaseModel], None] = {}
    waiting = [root]
    while waiting:
        record = waiting.pop()
        if record not in found:
            found[record] = None
            for field in fields_of(record).values():
                waiting += _inside(field.annotation)
    return tuple(found)


def _inside(annotation: object) -> Iterator[type[BaseModel]]:
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        yield annotation
    for inner in get_args(annotation):
        yield from _inside(inner)


def _literals(annotation: object) -> Iterator[str]:
    if get_origin(annotation) is Literal:
        yield from (each for each in get_args(annotation) if isinstance(each, str))
    else:
        for inner in get_args(annotation):
            yield from _literals(inner)
