"""Columns of a very large CSV file: each text is kept once, each cell is a number for its text."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from pathlib import Path
from typing import Any, NamedTuple

import numpy as np
import numpy.typing as npt
import pandas as pd

from estimator.catalog.columns import too_wide
from estimator.catalog.csv_table import Heading, wide_rows
from estimator.problems import InputError, Problem
from estimator.text_files import decode_text, read_bytes

CHUNK_ROWS = 50_000
MOST_PROBLEMS = 200
# Nearly every row has its own, so looking for repeats would only cost time.
_FREE_TEXT = "description"

Codes = npt.NDArray[np.int32]
Mask = npt.NDArray[np.bool_]
Rows = npt.NDArray[np.intp]


class Column(NamedTuple):
    """One column: `values[codes[position]]` is the value at a position."""

    values: Sequence[Any]
    codes: Codes

    def where(self, codes: Collection[int]) -> Mask:
        """Tell at which positions one of these codes stands."""
        chosen = np.zeros(len(self.values), dtype=np.bool_)
        chosen[list(codes)] = True
        return chosen[self.codes]


def read_columns(
    path: Path, name: str, heading: Heading, wanted: Collection[str] | None
) -> tuple[dict[str, Column], Rows]:
    """Read a file in chunks.

    Args:
        path: the file, in UTF-8.
        name: what to call it in problems.
        heading: its heading row; columns without a heading are passed over.
        wanted: item keys to keep, in lower case; None keeps every row that is not blank.

    Returns:
        The texts of each column, stripped, and the row in the file of each position.

    Raises:
        InputError: rows with too many cells, quotes out of place, or not UTF-8.
    """
    collector = _Collector(heading, wanted)
    try:
        with pd.read_csv(
            path, sep=heading.delimiter, header=None, names=range(len(heading.keys) + 1),
            dtype=object, na_filter=False, skiprows=heading.lines, skip_blank_lines=False,
            encoding="utf-8", chunksize=CHUNK_ROWS, low_memory=False,
        ) as chunks:  # fmt: skip
            for chunk in chunks:
                collector.take(chunk)
    except (pd.errors.ParserError, UnicodeDecodeError):
        raise _why_unreadable(path, name, heading) from None
    return collector.columns(), collector.rows()


def _why_unreadable(path: Path, name: str, heading: Heading) -> InputError:
    """Look with the plain reader for the rows that stopped the reading."""
    lines = decode_text(read_bytes(path, name), name).splitlines(keepends=True)
    faults = [too_wide(row) for row in wide_rows(lines, name, heading)]
    problems = [fault.problem(name, heading) for fault in faults[:MOST_PROBLEMS]]
    return InputError(problems or [Problem(name, "cannot be read as a table.", "Export it anew.")])


class _Collector:
    """Takes chunk after chunk and keeps what it met."""

    def __init__(self, heading: Heading, wanted: Collection[str] | None) -> None:
        self._places = {key: place for place, key in enumerate(heading.keys) if key}
        self._width = len(heading.keys)
        self._wanted = None if wanted is None else frozenset(wanted)
        self._seen: dict[str, dict[str, int]] = {key: {} for key in self._places}
        self._codes: dict[str, list[Codes]] = {key: [] for key in self._places}
        self._free: list[str] = []
        self._rows: list[Rows] = []
        self._next_row = heading.row + 1

    def take(self, chunk: pd.DataFrame) -> None:
        """Keep the rows of one chunk that are wanted."""
        rows = np.arange(self._next_row, self._next_row + len(chunk), dtype=np.intp)
        self._next_row += len(chunk)
        if chunk[self._width].any():
            raise pd.errors.ParserError
        keep = self._kept(chunk)
        if not keep.all():
            chunk, rows = chunk[keep], rows[keep]
        self._rows.append(rows)
        for key, place in self._places.items():
            if key == _FREE_TEXT:
                self._free += [text.strip() for text in chunk[place]]
                continue
            codes, texts = _factorize(chunk, place)
            seen = self._seen[key]
            known = [seen.setdefault(text, len(seen)) for text in texts]
            self._codes[key].append(np.array(known, dtype=np.int32)[codes])

    def _kept(self, chunk: pd.DataFrame) -> Mask:
        """Tell which rows are of wanted items; without a choice, those that are not blank."""
        codes, texts = _factorize(chunk, self._places["item"])
        if self._wanted is not None:
            chosen = [text.lower() in self._wanted for text in texts]
            return np.array(chosen, dtype=np.bool_)[codes]
        keep = np.array([bool(text) for text in texts], dtype=np.bool_)[codes]
        for position in np.flatnonzero(~keep):
            keep[position] = any(str(cell).strip() for cell in chunk.iloc[position])
        return keep

    def columns(self) -> dict[str, Column]:
        """Give what was kept."""
        columns = {
            key: Column(list(seen), _joined(self._codes[key], np.int32))
            for key, seen in self._seen.items()
        }
        if _FREE_TEXT in columns:
            columns[_FREE_TEXT] = Column(self._free, np.arange(len(self._free), dtype=np.int32))
        return columns

    def rows(self) -> Rows:
        """Give the row in the file of each position."""
        return _joined(self._rows, np.intp)


def _joined(parts: list[Any], dtype: type[np.generic]) -> npt.NDArray[Any]:
    """Join arrays; no arrays give an empty one."""
    return np.concatenate([np.empty(0, dtype=dtype), *parts])


def _factorize(chunk: pd.DataFrame, place: int) -> tuple[npt.NDArray[np.intp], list[str]]:
    """Codes and texts of one column of a chunk; the texts are stripped, and may repeat."""
    codes, texts = pd.factorize(chunk[place].to_numpy())
    return codes, [text.strip() for text in texts]


def read_values(column: Column, read: Mapping[str, object]) -> Column:
    """Turn a column of texts into one of values; equal values get one code.

    Args:
        column: texts.
        read: the value of each text, or the error that reading it gave.
    """
    codes: dict[object, int] = {}
    known = [codes.setdefault(read[text], len(codes)) for text in column.values]
    return Column(list(codes), np.array(known, dtype=np.int32)[column.codes])
