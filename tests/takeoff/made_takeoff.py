"""Takeoffs of small houses, with the shipped settings and a few boxes and connectors on file."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import replace
from decimal import Decimal
from functools import cache
from pathlib import Path
from typing import Any

from estimator.catalog.books import read_books
from estimator.pricing.stock import stock_of
from estimator.route.paths import run_paths
from estimator.settings import Practice
from estimator.survey.records import Survey
from estimator.takeoff.records import PartLine, Takeoff, TaskLine
from estimator.takeoff.stock import BoxOnFile, ConnectorOnFile, Stock
from estimator.takeoff.take_off import take_off

CATALOGS = Path(__file__).parents[2] / "catalogs"


@cache
def shipped_practice(units: str = "us") -> Practice:
    """The conventions that come along."""
    folder = CATALOGS / "metric" if units == "metric" else CATALOGS
    return read_books(folder).shop.practice


@cache
def shipped_stock(units: str = "us") -> Stock:
    """The boxes and connectors that come along."""
    return stock_of(read_books(CATALOGS / "metric" if units == "metric" else CATALOGS))


def on_file(
    item: str, volume: str | None, gangs: int = 1, *, clamps: bool = True, metal: bool = False,
    mount: str = "old-work",
) -> BoxOnFile:  # fmt: skip
    """One box in the book."""
    volume_in3 = None if volume is None else Decimal(volume)
    return BoxOnFile(item, item, volume_in3, gangs, clamps, metal, None, mount)


CONNECTORS = (
    ConnectorOnFile("small", "small", {"14": (2, 3), "12": (2, 2)}),
    ConnectorOnFile("large", "large", {"14": (3, 6), "12": (3, 5)}),
)


def stock(*boxes: BoxOnFile) -> Stock:
    """A book with these boxes and two connectors."""
    return Stock(boxes, CONNECTORS, {}, {})


def taken(survey: Survey, book: Stock | None = None, **practice: Any) -> Takeoff:
    """Take off a survey; `practice` changes the shipped conventions."""
    units = survey.job.units
    own = replace(shipped_practice(units), **practice)
    return take_off(survey, run_paths(survey), own, book or shipped_stock(units))


def parts(made: Takeoff) -> dict[str, Decimal]:
    """Quantity of each item, its lines added up."""
    sums: dict[str, Decimal] = defaultdict(Decimal)
    for line in made.parts:
        sums[line.item] += line.quantity
    return dict(sums)


def tasks(made: Takeoff) -> dict[str, Decimal]:
    """Quantity of each task, its lines added up."""
    sums: dict[str, Decimal] = defaultdict(Decimal)
    for line in made.tasks:
        sums[line.task] += line.quantity
    return dict(sums)


def part(made: Takeoff, item: str) -> PartLine:
    """The one line of an item."""
    (line,) = (each for each in made.parts if each.item == item)
    return line


def task(made: Takeoff, name: str) -> TaskLine:
    """The one line of a task."""
    (line,) = (each for each in made.tasks if each.task == name)
    return line
