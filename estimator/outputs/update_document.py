"""The document that `estimator catalog update --json` prints."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from estimator.catalog.supplier_rows import LeftRow
from estimator.catalog.update import MaterialsUpdate, UpdatedRow


@dataclass(frozen=True, slots=True)
class CatalogUpdateDocument:
    """What `estimator catalog update --json` prints.

    Attributes:
        written: whether the book was changed; without --yes it never is.
        same_count: rows whose price stays.
        left: rows of the supplier's file that are not taken.
    """

    schema: Literal["estimator-catalog-update-1"]
    book: str
    written: bool
    currency: str
    changed: tuple[UpdatedRow, ...]
    added: tuple[UpdatedRow, ...]
    same_count: int
    left: tuple[LeftRow, ...]


def update_json(update: MaterialsUpdate, *, written: bool) -> str:
    """Write what a supplier's file changes."""
    from estimator.outputs.json_out import written as document

    return document(
        CatalogUpdateDocument(
            "estimator-catalog-update-1", str(update.path), written, update.currency,
            update.changed, update.added, update.same_count, update.left,
        )
    )  # fmt: skip
