"""Typed readers of the tables; every other module asks here and opens no data file itself."""

from __future__ import annotations

import csv
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from functools import cache
from importlib.resources import files

Row = Mapping[str, str]
_MM_PER_IN = Fraction("25.4")


class NotOnFile(LookupError):
    """A key that no row of a table has; the message lists those on file."""

    def __init__(self, table: str, key: str, on_file: tuple[str, ...]) -> None:
        self.table = table
        self.key = key
        self.on_file = on_file
        super().__init__(f"{table}: {key!r} is not on file; on file are {', '.join(on_file)}")


@cache
def rows(table: str) -> tuple[Row, ...]:
    """All rows of one table, as text by column."""
    text = files("estimator.tables").joinpath(f"data/{table}.csv").read_text(encoding="utf-8")
    return tuple(csv.DictReader(text.splitlines()))


@dataclass(frozen=True, slots=True)
class CableKind:
    """A kind of cable: wire size, insulated conductors, and the materials key it is bought by."""

    kind: str
    units: str
    wire: str
    insulated_count: int
    item: str
    description: str


@cache
def cable_kinds() -> Mapping[str, CableKind]:
    """Every cable kind on file, by the name a survey uses."""
    return {
        row["kind"]: CableKind(
            row["kind"],
            row["units"],
            row["wire"],
            int(row["insulated_count"]),
            row["item"],
            row["description"],
        )
        for row in rows("cable_kinds")
    }


@cache
def lumber_depths_in() -> Mapping[str, Fraction]:
    """Actual depth of each nominal stud size, inches (ps20)."""
    return {row["stud"]: Fraction(row["depth_in"]) for row in rows("lumber")}


@dataclass(frozen=True, slots=True)
class StudDefault:
    """What is taken where nobody measured the studs."""

    depth_in: Fraction
    spacing_in: Fraction
    wall_height_in: Fraction


@cache
def stud_default(units: str) -> StudDefault:
    """Usual stud depth and spacing for a job's unit system, inches."""
    row = _one("stud_defaults", {"units": units})
    return StudDefault(
        Fraction(row["depth_mm"]) / _MM_PER_IN,
        Fraction(row["spacing_mm"]) / _MM_PER_IN,
        Fraction(row["wall_height_mm"]) / _MM_PER_IN,
    )


@cache
def board_item(units: str, thickness_in: Fraction | None) -> tuple[str, str]:
    """Materials key and description of the board for a patch; the usual one if not on file."""
    usual = ("", "")
    for row in rows("boards"):
        if row["units"] == units:
            if thickness_in is not None and Fraction(row["thickness_mm"]) == (
                thickness_in * _MM_PER_IN
            ):
                return row["item"], row["description"]
            if row["thickness_mm"] == "0":
                usual = (row["item"], row["description"])
    return usual


@cache
def editions() -> Mapping[str, Row]:
    """Every edition on file: country and the name it is cited by."""
    return {row["edition"]: row for row in rows("editions")}


@dataclass(frozen=True, slots=True)
class DeviceKind:
    """What a device is bought as, what covers it, and the task that mounts it."""

    item: str
    plate_item: str
    task: str


@cache
def device_kind(device: str, units: str, rating_a: int | None) -> DeviceKind:
    """Find a device; without a rating the smallest on file is taken.

    Raises:
        NotOnFile: no such device or rating in this unit system.
    """
    found = [row for row in rows("devices") if (row["device"], row["units"]) == (device, units)]
    fitting = [row for row in found if rating_a in (None, int(row["rating_a"]))]
    if not fitting and all(row["rating_a"] in ("0", "15") for row in found) and found:
        fitting = found  # sold in one rating only: a switch on a 20 A circuit
    if not fitting:
        raise NotOnFile("devices", f"{device} {rating_a}", _keys("devices", "device"))
    row = min(fitting, key=lambda each: int(each["rating_a"]))
    return DeviceKind(row["item"], row["plate_item"], row["task"])


def devices(units: str) -> tuple[str, ...]:
    """Every device on file in a unit system."""
    return tuple(sorted({row["device"] for row in rows("devices") if row["units"] == units}))


def device_ratings_a(device: str, units: str) -> tuple[int, ...]:
    """Ratings on file of a device, amperes, rising; empty where it is not on file."""
    found = (row for row in rows("devices") if (row["device"], row["units"]) == (device, units))
    return tuple(sorted(int(row["rating_a"]) for row in found))


@cache
def box_cutout_in2(mount: str, gangs_count: int) -> Fraction:
    """Area cut out of the finish for one new box, square inches; 0 where there is no row."""
    for row in rows("box_cutouts"):
        if row["mount"] == mount and row["gangs_count"] == str(gangs_count):
            return Fraction(row["area_in2"])
    return Fraction(0)


@cache
def visit_plan(compound: str, scope: str) -> tuple[tuple[str, Decimal], ...]:
    """What is done on each visit and the hours to wait after it; empty where one visit does."""
    return tuple(
        (row["what"], Decimal(row["wait_after_h"]))
        for row in rows("visits")
        if (row["compound"], row["scope"]) == (compound, scope)
    )


@cache
def sources() -> Mapping[str, Row]:
    """Every source by its key."""
    return {row["key"]: row for row in rows("sources")}


def _one(table: str, wanted: Mapping[str, str]) -> Row:
    for row in rows(table):
        if all(row[column] == value for column, value in wanted.items()):
            return row
    column = next(iter(wanted))
    raise NotOnFile(table, " ".join(wanted.values()), _keys(table, column))


def _keys(table: str, column: str) -> tuple[str, ...]:
    return tuple(sorted({row[column] for row in rows(table)}))
