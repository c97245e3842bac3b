"""Words that the code looks up one by one: names of devices, rooms, fields and the like."""

from __future__ import annotations

import ast
import csv
from collections.abc import Iterator
from pathlib import Path
from typing import get_args

from estimator.catalog.shipped import shipped_catalogs
from estimator.drawing.kind_words import ROOMS
from estimator.outputs.bid_words import DEVICES, SOCKETS
from estimator.pricing.assumed import SUBJECTS
from estimator.survey.field_words import choices, keys
from estimator.takeoff.records import Phase

_STANDING = ("door", "window")
PACKAGE = Path(__file__).parents[2] / "estimator"
_PLACES = ("whole job", "patches", "walls painted", "do the whole job", "corner stud", "corner")
_NOTED = ("(from memory: check)", "(worked out)")
_SOLD = ("pack", "length", "coil", "remnant", "other")


def said_words() -> Iterator[str]:
    """Each of them, singular and plural."""
    for table in (DEVICES, SOCKETS):
        for one, several in table.values():
            yield from (one, several)
    yield from (*ROOMS, *SUBJECTS, *_STANDING, *_SOLD, *_PLACES, *_NOTED, *get_args(Phase))
    yield from _written_out()
    yield from sorted(key.replace("_", " ") for key in keys())
    yield from sorted(choices())
    yield from _cables()


def _written_out() -> Iterator[str]:
    """Words that stand in the code where they are looked up."""
    for path in sorted(PACKAGE.rglob("*.py")):
        for each in ast.walk(ast.parse(path.read_text("utf-8"))):
            if not isinstance(each, ast.Call) or ast.unparse(each.func) != "word":
                continue
            if isinstance(each.args[0], ast.Constant):
                yield str(each.args[0].value)


def _cables() -> Iterator[str]:
    """Kinds of cable, without the way they are sold in."""
    for units in ("us", "metric"):
        path = shipped_catalogs(units) / "materials.csv"  # type: ignore[arg-type]
        with path.open(encoding="utf-8", newline="") as file:
            for row in csv.DictReader(file):
                if row["sold_as"] == "length":
                    yield row["description"].rsplit(", ", 1)[0]
