"""Changes to a job file that keep the person's comments, order and everything not asked about."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from typing import Any

import tomlkit
from tomlkit.items import Array, Table

from estimator.guide.defaults import read_in
from estimator.guide.from_job import text_of
from estimator.guide.places import Facts, find, place_in, put, take_out
from estimator.problems import InputError, Problem
from estimator.toml_files import toml_place
from estimator.toml_lines import TomlPath
from estimator.units import LengthUnit

START = """\
# A job file. It was begun with estimator survey, which keeps your notes where they stand.
# Lengths are written as on the tape; "unknown" is what nobody measured.
format = 1

[job]

[circuit]

[[boxes]]
id = "source"
existing = true

[[boxes]]
id = "new"

[[runs]]
id = "1"
from = "source"
to = "new"
"""


EMPTY_LINES = re.compile(r"\n{3,}\[")


def changed_text(text: str, before: Facts, after: Facts, name: str) -> str:
    """The text of a job file after a change of some facts.

    Args:
        text: the file as it stands.
        before: what the answers made until now.
        after: what they make now. Only what differs between the two is touched.
        name: what to call the file in problems.

    Raises:
        InputError: the file says otherwise than the answers where a change would go.
    """
    document = tomlkit.parse(text)
    changes = {
        path: after.get(path) for path in {**before, **after} if _differs(before, after, path)
    }
    raw = document.unwrap()
    problems = [
        _problem(text, name, place_in(raw, path) or (path,))
        for path in _overruled(raw, before, changes)
    ]
    if problems:
        raise InputError(problems)
    for path in sorted(changes, key=lambda each: each not in _FIRST):
        if changes[path] is None:
            take_out(document, path)
        else:
            put(document, path, _item(changes[path]), MAKE)
    if "guide.answered" in changes:
        document["guide"] = document.pop("guide")  # what is the survey's own stands last
    return EMPTY_LINES.sub("\n\n[", tomlkit.dumps(document))


# Names by which the tables of the other facts are found.
_FIRST = ("source.wall", "new.wall", "wall.id", "new.room", "room.id", "opening.id")


def _row() -> Table:
    """A row of a list, with an empty line before it."""
    made = tomlkit.table()
    made.trivia.indent = "\n"
    return made


MAKE = (tomlkit.table, _row, tomlkit.aot)


def _differs(before: Facts, after: Facts, path: str) -> bool:
    return path not in before or path not in after or before[path] != after[path]


def _problem(text: str, name: str, place: TomlPath) -> Problem:
    read = f'"{place[-1]}" holds more in the file than the questions can say'
    write = "Change this line in the file, with a text editor; the answer was not changed."
    return Problem(toml_place(name, text, place), read, write)


def _overruled(raw: Mapping[str, Any], before: Facts, changes: Facts) -> Iterator[str]:
    """Facts to change that somebody wrote into the file in another way."""
    for path in changes:
        stands = find(raw, path)
        if stands is None or path not in before or _same(stands, before[path], raw):
            continue
        if path.endswith((".id", ".room", ".wall")) or stands == changes[path]:
            continue
        yield path


def _same(stands: object, made: object, raw: Mapping[str, Any]) -> bool:
    """True for one value in two ways of writing it."""
    if isinstance(stands, list) and isinstance(made, list):
        pairs = zip(stands, made, strict=False)
        return len(stands) == len(made) and all(_same(one, two, raw) for one, two in pairs)
    if isinstance(stands, Mapping) and isinstance(made, Mapping):
        keys = stands.keys() == made.keys()
        return keys and all(_same(stands[key], made[key], raw) for key in stands)
    unit: LengthUnit = "mm" if find(raw, "job.units") == "metric" else "in"
    return _value(stands, unit) == _value(made, unit)


def _value(value: object, unit: LengthUnit) -> object:
    text = text_of(value)
    inches = read_in(text or "", unit)
    return text if inches is None else inches


def _item(value: object) -> object:
    """A value as TOML: legs one on a line, other lists on one."""
    if not isinstance(value, list):
        return value
    made: Array = tomlkit.array()
    for each in value:
        made.append(_inline(each) if isinstance(each, Mapping) else each)
    return made.multiline(any(isinstance(each, Mapping) for each in value))


def _inline(table: Mapping[str, Any]) -> object:
    made = tomlkit.inline_table()
    made.update(table)
    return made
