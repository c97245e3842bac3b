"""The rows of the books that hold a word, for the terminal and for JSON alike."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from estimator.catalog.records import Account, Books, LaborUnit, Material


class CatalogRows(NamedTuple):
    """Rows of the four books, in the order of the files; `origins` has the file of each setting."""

    materials: tuple[Material, ...]
    labor: tuple[LaborUnit, ...]
    accounts: tuple[Account, ...]
    settings: Mapping[str, str]
    origins: Mapping[str, str]

    @property
    def hold(self) -> bool:
        """Tell whether any row is there."""
        return any((self.materials, self.labor, self.accounts, self.settings))


def rows_with(books: Books, word: str) -> CatalogRows:
    """Pick the rows whose key or words hold `word`, capitals or not; all for an empty word."""
    sought = word.casefold()

    def has(texts: Iterable[str]) -> bool:
        return any(sought in text.casefold() for text in texts)

    ways = [way for ways in books.materials.values() for way in ways]
    return CatalogRows(
        tuple(way for way in ways if has((way.item, way.description, way.supplier, way.aisle))),
        tuple(task for task in books.labor.values() if has((task.task, task.description))),
        tuple(
            each
            for each in books.accounts.values()
            if has((each.line_kind, each.account_code, each.account_name))
        ),
        {key: value for key, value in books.shop.shown.items() if has((key,))},
        {key: name for key, name in books.shop.origin.items() if has((key,))},
    )
