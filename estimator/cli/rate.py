"""`estimator rate`: what an hour costs, and what it must be sold for."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from estimator.cli.catalog import MetricOption
from estimator.cli.options import JsonOption
from estimator.cli.terminal import say, told

EXAMPLE = "Example: estimator rate --books my-books"

FolderOption = Annotated[
    Path | None,
    typer.Option(
        "--books",
        metavar="FOLDER",
        help="Your books, in place of those that come along.",
        show_default=False,
    ),
]


def rate(
    books: FolderOption = None, metric: MetricOption = False, as_json: JsonOption = False
) -> None:
    """Build the labor rate, from wage to price of an hour."""
    with told(as_json=as_json):
        from estimator.catalog.books import read_books
        from estimator.catalog.shipped import shipped_catalogs
        from estimator.outputs.json_rate import rate_json
        from estimator.outputs.text_rate import rate_text

        shop = read_books(books or shipped_catalogs("metric" if metric else "us")).shop
        say([rate_json(shop)] if as_json else rate_text(shop))
