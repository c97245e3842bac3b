"""A materials book of millions of rows: columns in memory, records made only when asked for."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator, Mapping
from pathlib import Path

import numpy as np
import pandas as pd

from estimator.catalog import materials as small
from estimator.catalog.cells import Habits
from estimator.catalog.columns import Fault, habits_of, read_texts, refused
from estimator.catalog.csv_table import Heading, read_heading
from estimator.catalog.large_columns import (
    MOST_PROBLEMS,
    Column,
    Mask,
    Rows,
    read_columns,
    read_values,
)
from estimator.catalog.records import Material
from estimator.problems import Problem
from estimator.reading import MeasureError
from estimator.text_files import decode_text

_START_BYTES = 1_000_000
_SAME_PACK = ("item", "supplier", "pack_size", "sold_as")


class LargeMaterials(Mapping[str, tuple[Material, ...]]):
    """Ways to buy an item by item key; the records are made anew at each look-up."""

    def __init__(self, columns: Mapping[str, Column], rows: Rows, right: Rows) -> None:
        """Group the positions that may be used.

        Args:
            columns: values by column key.
            rows: row in the file of each position.
            right: positions without a fault, in file order.
        """
        self._columns, self._rows = columns, rows
        codes = columns["item"].codes[right]
        order = np.argsort(codes, kind="stable")
        self._positions = right[order]
        found, starts = np.unique(codes[order], return_index=True)
        groups = zip(found, starts, np.append(starts, len(right))[1:], strict=True)
        items = columns["item"].values
        self._slices = {
            items[code]: slice(start, end)
            for code, start, end in sorted(groups, key=lambda group: self._positions[group[1]])
        }

    def __getitem__(self, item: str) -> tuple[Material, ...]:
        """Make the records of one item, in file order."""
        return tuple(
            material_at(self._columns, self._rows, position)
            for position in self._positions[self._slices[item]]
        )

    def __iter__(self) -> Iterator[str]:
        """Give the item keys in file order."""
        return iter(self._slices)

    def __len__(self) -> int:
        """Count the items."""
        return len(self._slices)


def material_at(columns: Mapping[str, Column], rows: Rows, position: np.intp) -> Material:
    """Make the record at one position."""
    values = {key: column.values[column.codes[position]] for key, column in columns.items()}
    return small.make_material(values, int(rows[position]))


def read_large(
    path: Path, name: str, wanted: Collection[str] | None, expected: Habits
) -> small.MaterialsRead:
    """Read a large materials book; arguments and errors are those of `read_materials`.

    Rows that are wrong are left out and reported, at most 200 of them one by one.
    """
    heading = _read_start(path, name)
    columns, rows = read_columns(path, name, heading, wanted)
    faults = _Faults(heading, columns, rows)
    _read_cells(columns, heading, expected, faults)
    for find in (_unsaid, _mixed_units, _duplicates):
        find(faults)
    materials = LargeMaterials(columns, rows, np.flatnonzero(faults.right))
    return small.MaterialsRead(materials, tuple(faults.problems(name)), large=True)


def _read_start(path: Path, name: str) -> Heading:
    """Read the heading row from the start of the file."""
    with path.open("rb") as file:
        start = file.read(_START_BYTES)
    whole_lines = start[: start.rfind(b"\n") + 1] or start
    return read_heading(decode_text(whole_lines, name), name, small.KNOWN, small.NEEDED)


class _Faults:
    """Which positions are right, and the first faults found at the others."""

    def __init__(self, heading: Heading, columns: dict[str, Column], rows: Rows) -> None:
        self.heading, self.columns, self.rows = heading, columns, rows
        self.right: Mask = np.ones(len(rows), dtype=np.bool_)
        self._count = 0
        self._told: list[Fault] = []

    def add(self, wrong: Mask, tell: Callable[[np.intp], Fault]) -> None:
        """Leave out the wrong positions; `tell` gives the fault at one of them."""
        self.right &= ~wrong
        positions = np.flatnonzero(wrong)
        self._count += len(positions)
        self._told += [tell(position) for position in positions[:MOST_PROBLEMS]]

    def material(self, position: np.intp) -> Material:
        """Make the record at a position, to tell about it."""
        return material_at(self.columns, self.rows, position)

    def problems(self, name: str) -> Iterator[Problem]:
        """Give the problems in row order; beyond the most that are told, only their number."""
        for fault in sorted(self._told)[:MOST_PROBLEMS]:
            yield fault.problem(name, self.heading)
        more = self._count - MOST_PROBLEMS
        if more > 0:
            yield Problem(name, f"{more} more problems like these.", "Mend these first.")


def _read_cells(
    columns: dict[str, Column], heading: Heading, expected: Habits, faults: _Faults
) -> None:
    """Turn the columns of texts into values; cells that are refused become faults."""
    numbers = (text for key in small.NUMBERS if key in columns for text in columns[key].values)
    dates: Iterable[str] = columns["priced_on"].values if "priced_on" in columns else ()
    readers = small.material_readers(habits_of(expected, heading, numbers, dates))
    for key in readers.keys() & columns.keys():
        texts = columns[key]
        columns[key] = read_values(texts, read_texts(readers[key], texts.values))
        _tell_refused(key, columns[key], faults)


def _tell_refused(key: str, column: Column, faults: _Faults) -> None:
    """Add the faults of one column's cells."""
    codes = [code for code, value in enumerate(column.values) if isinstance(value, MeasureError)]
    place = faults.heading.keys.index(key)

    def tell(position: np.intp) -> Fault:
        return refused(int(faults.rows[position]), place, column.values[column.codes[position]])

    if codes:
        faults.add(column.where(codes), tell)


def _unsaid(faults: _Faults) -> None:
    """Find cable rows that do not say whether a pack is one piece."""
    item, unit = faults.columns["item"], faults.columns["unit"]
    cable = item.where([code for code, key in enumerate(item.values) if small.is_cable(key)])
    counted = unit.where([code for code, name in enumerate(unit.values) if name == "ea"])
    wrong = faults.right & cable & ~counted
    if "sold_as" in faults.columns:
        sold = faults.columns["sold_as"]
        said = [code for code, word in enumerate(sold.values) if word in small.ONE_PIECE]
        wrong &= ~sold.where(said)
    faults.add(wrong, lambda position: small.unsaid(faults.heading, faults.material(position)))


def _mixed_units(faults: _Faults) -> None:
    """Find items that are sold in one unit here and in another there."""
    items, units = faults.columns["item"].codes, faults.columns["unit"].codes
    right = np.flatnonzero(faults.right)
    found, first = np.unique(items[right], return_index=True)
    first_of = np.zeros(len(faults.columns["item"].values), dtype=np.intp)
    first_of[found] = right[first]
    wrong = faults.right & (units != units[first_of[items]])

    def tell(position: np.intp) -> Fault:
        other = faults.material(first_of[items[position]])
        return small.mixed_unit(faults.heading, faults.material(position), other)

    faults.add(wrong, tell)


def _duplicates(faults: _Faults) -> None:
    """Find rows that sell the same pack of the same item at the same supplier."""
    codes = [faults.columns[key].codes for key in _SAME_PACK if key in faults.columns]
    right = np.flatnonzero(faults.right)
    packs = pd.DataFrame({place: one[right] for place, one in enumerate(codes)})
    alike = packs[packs.duplicated(keep=False)]
    first: dict[object, np.intp] = {}
    for position, pack in zip(right[alike.index], alike.itertuples(index=False), strict=True):
        first.setdefault(pack, position)
    wrong = np.zeros(len(faults.rows), dtype=np.bool_)
    wrong[right[alike.index]] = True
    wrong[list(first.values())] = False

    def tell(position: np.intp) -> Fault:
        one = faults.material(position)
        pack = tuple(column[position] for column in codes)
        return small.duplicate(faults.heading, one.row, one.item, int(faults.rows[first[pack]]))

    faults.add(wrong, tell)
