"""Columns of the table that the shopping list page writes, as the page and its reader know them."""

from __future__ import annotations

from typing import Final

from estimator.saying import said

COLUMNS: Final = (
    said("what"), said("item"), said("quantity"), said("unit"), said("shop"), said("expected"),
    said("paid"), said("got"), said("had"),
    said("receipt"), said("date"), said("tax of the receipt"),
)  # fmt: skip
YES, NO = said("yes"), said("no")
