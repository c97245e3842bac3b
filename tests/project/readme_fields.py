"""The tables of fields in the README, of job files and close-out files, made from the models.

`python -m tests.project.readme_fields` writes them anew; a test holds that they are current.
"""

from __future__ import annotations

import re
from datetime import date
from decimal import Decimal
from pathlib import Path
from types import NoneType
from typing import Any, Literal, get_args, get_origin, get_type_hints

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from estimator.ledger.records import CloseOutRecord
from estimator.survey.fields import (
    Length,
    MaybeArea,
    MaybeInt,
    MaybeLength,
    MaybeNumber,
    MaybeText,
    MaybeVolume,
)
from estimator.survey.records import Survey
from tests.project.readme_words import WORDS

README = Path(__file__).parents[2] / "README.md"
FILES: dict[str, type[BaseModel]] = {"job file": Survey, "close-out file": CloseOutRecord}
HEADER = ("| field | write | left out | meaning |", "|---|---|---|---|")
KINDS: tuple[tuple[Any, str], ...] = (
    (Length, "length"),
    (MaybeLength, "length or unknown"),
    (MaybeVolume, "volume or unknown"),
    (MaybeArea, "area or unknown"),
    (MaybeInt, "whole number or unknown"),
    (MaybeNumber, "number or unknown"),
    (MaybeText, "text or unknown"),
    (str, "text"),
    (bool, "true or false"),
    (int, "whole number"),
    (Decimal, "number"),
    (date, "date"),
    (Any, "any"),
)


def marks(file: str) -> tuple[str, str]:
    """The lines between which the tables of one kind of file stand."""
    return f"<!-- {file} fields -->", f"<!-- end of {file} fields -->"


def tables(file: str = "job file") -> str:
    """All tables of one kind of file, in its order."""
    done: dict[type[BaseModel], str] = {}
    fields = hints(FILES[file]).items()
    parts = [part for name, hint in fields for part in _section(name, hint, done)]
    begin, end = marks(file)
    return "\n".join([begin, "", *parts, end])


def hints(model: type[BaseModel]) -> dict[str, Any]:
    """The type of each field of a model, by its name in the job file."""
    found = get_type_hints(model, include_extras=True)
    return {key(name, field): found[name] for name, field in model.model_fields.items()}


def key(name: str, field: FieldInfo) -> str:
    """The name of a field in the job file."""
    return field.alias or name


def _section(name: str, hint: Any, done: dict[type[BaseModel], str]) -> list[str]:
    """The table of one part of the job file; parts inside it follow."""
    model, is_list = _model(hint)
    if model is None:
        return []
    title = f"[[{name}]]" if is_list else f"[{name}]"
    if model in done:
        return [f"#### `{title}`", "", f"The same fields as `{done[model]}`.", ""]
    done[model] = title
    rows = [row(each, field, model) for each, field in model.model_fields.items()]
    inner = [
        part for sub, each in hints(model).items() for part in _section(f"{name}.{sub}", each, done)
    ]
    about = (model.__doc__ or "").strip()
    return [f"#### `{title}`", "", about, "", *HEADER, *rows, "", *inner]


def _model(hint: Any) -> tuple[type[BaseModel] | None, bool]:
    """The model that a field holds, and whether it holds many of them."""
    many = get_origin(hint) is tuple
    known = [each for each in get_args(hint) if each is not NoneType]
    inner = known[0] if many or len(known) == 1 else hint
    is_model = isinstance(inner, type) and issubclass(inner, BaseModel)
    return (inner if is_model else None), many


def row(name: str, field: FieldInfo, model: type[BaseModel]) -> str:
    """One row of a table."""
    shown = key(name, field)
    write = kind(hints(model)[shown])
    meaning = field.description or WORDS.get(f"{model.__name__}.{shown}", "")
    cells = (f"`{shown}`", write, default(field), meaning)
    return f"| {' | '.join(cell.replace('|', '/') for cell in cells)} |"


def kind(hint: Any) -> str:
    """What to write in a field, in words."""
    for known, words in KINDS:
        if hint == known:
            return words
    origin, inside = get_origin(hint), get_args(hint)
    if origin is Literal:
        return ", ".join(f"`{each}`" for each in inside)
    if origin is tuple:
        return f"list: {kind(inside[0])}"
    if origin is dict:
        return f"table: {kind(inside[1])} by name"
    if isinstance(hint, type) and issubclass(hint, BaseModel):
        return "see below"
    return kind(next(each for each in inside if each is not NoneType))


def default(field: FieldInfo) -> str:
    """What holds where a field is left out."""
    if field.is_required():
        return "**needed**"
    value = field.get_default(call_default_factory=True)
    if isinstance(value, bool):
        return str(value).lower()
    return "" if value in (None, (), {}, "") or isinstance(value, BaseModel) else f"{value}"


def current(text: str, file: str = "job file") -> str:
    """The part of a README between the marks of one kind of file."""
    return between(text, *marks(file))


def between(text: str, begin: str, end: str) -> str:
    """The part of a text from one mark to another, both with it; empty where there is none."""
    found = re.search(rf"{begin}.*{end}", text, re.DOTALL)
    return found[0] if found else ""


if __name__ == "__main__":
    page = README.read_text(encoding="utf-8")
    for each in FILES:
        page = page.replace(current(page, each), tables(each))
    README.write_text(page, encoding="utf-8")
