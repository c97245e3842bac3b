"""Every fact of a job file that may be unknown, with values that it may have, from the models.

A field that is added to the survey turns up here by itself.
"""

from __future__ import annotations

from collections.abc import Iterator
from copy import deepcopy
from pathlib import Path
from typing import Any, Literal, NamedTuple, get_args, get_origin

from pydantic.fields import FieldInfo

from estimator.catalog.books import read_books
from estimator.pricing.stock import stock_of
from estimator.route.paths import run_paths
from estimator.rules.facts import Facts
from estimator.rules.records import Finding
from estimator.rules.screen import screen
from estimator.survey.electrical import Box, Circuit, Contents, Run, Spot
from estimator.survey.fields import MaybeArea, MaybeInt, MaybeLength, MaybeNumber, MaybeVolume
from estimator.survey.place import Member, Room, Wall
from estimator.survey.reader import survey_from
from estimator.survey.records import House, Job
from estimator.takeoff.take_off import take_off

ROOT = Path(__file__).parents[2]
US, METRIC = read_books(ROOT / "catalogs"), read_books(ROOT / "catalogs" / "metric")
Raw = dict[str, Any]
UNKNOWN = "unknown"
VALUES: tuple[tuple[Any, tuple[Any, ...]], ...] = (
    (MaybeLength, ("0 in", "1/4 in", "5/8 in", "1-1/2 in", "6 in", "5 ft", "20 ft")),
    (MaybeVolume, ("7.5 in3", "18 in3", "42 in3")),
    (MaybeArea, ("0 ft2", "5 ft2", "30 ft2")),
    (MaybeNumber, (0, 8, 60, 200)),
    (MaybeInt, (0, 1, 2, 10, 15, 20, 50, 1950, 1990)),
)
WIRES = ("16", "14", "12", "10")
TEXTS: dict[str, tuple[str, ...]] = {
    "wire": WIRES, "ground_wire": WIRES, "device_wire": WIRES, "through_wire": WIRES,
    "sheath_to_face": ("0 in", "1 in", "2 in"), "stud": ("2x3", "2x4", "2x6"),
    "table_box": ("DEV-15", "SQ4-2125"),
}  # fmt: skip
# Not facts that a survey can leave open: they say how the job file is read.
LEFT_OUT = {"country", "edition", "building_edition", "units", "bare_unit", "locale", "route"}


class Fact(NamedTuple):
    """One fact: the way to it in a job file, and values that it may have besides unknown."""

    path: tuple[str | int, ...]
    values: tuple[Any, ...]

    @property
    def name(self) -> str:
        return ".".join(map(str, self.path))


def _values(name: str, field: FieldInfo) -> tuple[Any, ...]:
    """Values of a field that may be unknown; empty for one that may not."""
    if name in TEXTS:
        return TEXTS[name]
    if get_origin(field.annotation) is Literal:
        given = get_args(field.annotation)
        return tuple(each for each in given if each != UNKNOWN) if UNKNOWN in given else ()
    for kind, values in VALUES:
        if get_args(kind)[0] == field.annotation and _same(kind, field):
            return values
    return ()


def _same(kind: Any, field: FieldInfo) -> bool:
    return set(map(repr, get_args(kind)[1:])) <= set(map(repr, field.metadata))


def _of(model: Any, path: tuple[str | int, ...]) -> Iterator[Fact]:
    for name, field in model.model_fields.items():
        alias = field.alias or name
        values = () if alias in LEFT_OUT else _values(alias, field)
        if values:
            yield Fact((*path, alias), values)


def facts_of(raw: Raw) -> tuple[Fact, ...]:
    """Every fact of a job: of the job, house, circuit, its rooms, walls, members, boxes, runs."""
    found = [*_of(Job, ("job",)), *_of(House, ("house",)), *_of(Circuit, ("circuit",))]
    tables = (("rooms", Room), ("walls", Wall), ("members", Member), ("boxes", Box), ("runs", Run))
    for table, model in tables:
        for number in range(len(raw.get(table, []))):
            found += _of(model, (table, number))
    for number in range(len(raw["boxes"])):
        found += _of(Contents, ("boxes", number, "contents"))
        found += _of(Spot, ("boxes", number, "spot"))
    return tuple(found)


def with_fact(raw: Raw, path: tuple[str | int, ...], value: Any) -> Raw:
    """The job with one fact set."""
    changed = deepcopy(raw)
    at: Any = changed
    for step in path[:-1]:
        at = at.setdefault(step, {}) if isinstance(step, str) else at[step]
    at[path[-1]] = value
    return changed


def found_in(raw: Raw) -> tuple[Finding, ...]:
    """Every finding of the job's only way, with the shipped books.

    Raises:
        InputError: the job cannot be read, or no cable can go that way.
    """
    survey = survey_from(raw)
    books = METRIC if survey.job.units == "metric" else US
    paths, practice = run_paths(survey), books.shop.practice
    takeoff = take_off(survey, paths, practice, stock_of(books))
    return screen(Facts(survey, paths, takeoff, practice))


def verdicts_of(raw: Raw) -> dict[str, str]:
    """The verdict of every finding by its id; what the plan puts right is within its limit."""
    return {each.finding_id: "pass" if each.remedied else each.verdict for each in found_in(raw)}
