"""Words that the code looks up one by one: names of devices, rooms, fields and the like."""

from __future__ import annotations

import csv
from collections.abc import Iterator

from estimator.catalog.shipped import shipped_catalogs
from estimator.drawing.kind_words import ROOMS
from estimator.outputs.bid_words import DEVICES, SOCKETS
from estimator.pricing.assumed import SUBJECTS
from estimator.survey.field_words import choices, keys

_STANDING = ("door", "window")
_SOLD = ("pack", "length", "coil", "remnant", "other")


def said_words() -> Iterator[str]:
    """Each of them, singular and plural."""
    for table in (DEVICES, SOCKETS):
        for one, several in table.values():
            yield from (one, several)
    yield from (*ROOMS, *SUBJECTS, *_STANDING, *_SOLD)
    yield from sorted(key.replace("_", " ") for key in keys())
    yield from sorted(choices())
    yield from _cables()


def _cables() -> Iterator[str]:
    """Kinds of cable, without the way they are sold in."""
    for units in ("us", "metric"):
        path = shipped_catalogs(units) / "materials.csv"  # type: ignore[arg-type]
        with path.open(encoding="utf-8", newline="") as file:
            for row in csv.DictReader(file):
                if row["sold_as"] == "length":
                    yield row["description"].rsplit(", ", 1)[0]
