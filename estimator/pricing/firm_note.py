"""Says when the firm's lines on the customer's page are still those that come along."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Final

from estimator.catalog.shipped import BOOK_FILES, Units, shipped_catalogs, shipped_samples
from estimator.pricing.records import Bid
from estimator.toml_files import read_toml

_LINES: Final = {"firm_name": "name", "firm_contact": "contact", "firm_license": "license"}
_UNITS: tuple[Units, ...] = ("us", "metric")


def firm_note(bid: Bid, path: Path) -> tuple[str, ...]:
    """One line where the firm is still the sample's; none for the samples themselves.

    Args:
        bid: the bid as priced.
        path: the job file it came from.
    """
    if path.resolve().parent == shipped_samples().resolve():
        return ()
    terms, shipped = bid.books.shop.terms, _shipped()
    still = [said for key, said in _LINES.items() if (key, getattr(terms, key)) in shipped]
    if not still:
        return ()
    return (
        f"Still the sample's firm {', '.join(still)} on the customer's page: "
        "estimator catalog copy, then [terms] in shop.toml.",
    )


@cache
def _shipped() -> frozenset[tuple[str, str]]:
    """The firm's lines in the books that come along."""
    name = BOOK_FILES["shop"]
    terms = [read_toml(shipped_catalogs(units) / name, name)["terms"] for units in _UNITS]
    return frozenset((key, each[key]) for each in terms for key in _LINES)
