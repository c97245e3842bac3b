"""The documents that `close-out --json` and `books --json` print, and their writers."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from estimator.ledger.account_map import AccountMap
from estimator.ledger.comparison import Comparison
from estimator.ledger.entries import Entry
from estimator.ledger.labor_update import LaborChange, LaborUpdate
from estimator.ledger.roll_up import RollUp
from estimator.outputs.json_shape import shape_of


@dataclass(frozen=True, slots=True)
class LaborBookChange:
    """What the hours of a closed job change in a labor book.

    Attributes:
        written: whether the file was changed; without consent it never is.
        left: tasks whose row stays as it is, each with the reason.
    """

    file: str
    written: bool
    changes: tuple[LaborChange, ...]
    left: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class CloseOutDocument:
    """What `estimator close-out --json` prints: a closed job against its estimate.

    Attributes:
        workbook: where the workbook was written; null where none was asked for.
        labor_book: null where no labor book was named.
    """

    schema: Literal["estimator-close-out-1"]
    workbook: str | None
    close_out: Comparison
    labor_book: LaborBookChange | None


@dataclass(frozen=True, slots=True)
class BooksDocument:
    """What `estimator books --json` prints: entries, and what they add up to.

    Attributes:
        file: where the export was written; null where none was asked for.
        year: of the entries; null where all years are there.
        account_map: name of the map that totals.by_map goes by; null without one.
    """

    schema: Literal["estimator-books-1"]
    file: str | None
    year: int | None
    account_map: str | None
    entries: tuple[Entry, ...]
    totals: RollUp


def close_out_json(
    job: Comparison, workbook: str | None, update: LaborUpdate | None, *, written: bool
) -> str:
    """Write a closed job, and what it changes in the labor book."""
    book = None
    if update is not None:
        book = LaborBookChange(str(update.path), written, update.changes, update.left)
    return _written(CloseOutDocument("estimator-close-out-1", workbook, job, book))


def books_json(
    entries: Sequence[Entry],
    totals: RollUp,
    file: str | None,
    year: int | None,
    account_map: AccountMap | None,
) -> str:
    """Write entries and their totals."""
    title = None if account_map is None else account_map.title
    document = BooksDocument("estimator-books-1", file, year, title, tuple(entries), totals)
    return _written(document)


def _written(document: object) -> str:
    return json.dumps(shape_of(type(document), "").write(document, "us"), indent=2)
