"""`estimator catalog`: check, show and copy the books that prices come from."""

from __future__ import annotations

import datetime
from pathlib import Path
from typing import Annotated

import typer

from estimator.cli.options import JsonOption
from estimator.cli.terminal import say, told
from estimator.problems import InputError

CHECK_EXAMPLE = "Example: estimator catalog check my-books"
SHOW_EXAMPLE = "Example: estimator catalog show box --books my-books"
COPY_EXAMPLE = "Example: estimator catalog copy my-books"

app = typer.Typer(help="Check, show or copy the books of prices and hours.", no_args_is_help=True)

FolderArgument = Annotated[
    Path, typer.Argument(metavar="FOLDER", help="Folder with the books.", show_default=False)
]
MetricOption = Annotated[
    bool, typer.Option("--metric", help="The books that come along for metric jobs.")
]


@app.command("check", epilog=CHECK_EXAMPLE)
def check_catalog(folder: FolderArgument, as_json: JsonOption = False) -> None:
    """Check your books, and say which prices are old."""
    with told(as_json=as_json):
        from estimator.catalog.check import check_books
        from estimator.outputs.json_out import catalog_check_json
        from estimator.outputs.text_catalog import check_result

        found = check_books(folder, datetime.date.today())
        if found.errors:
            raise InputError(found.errors)
        if as_json:
            say([catalog_check_json(str(folder), found.warnings)])
        else:
            say(check_result(str(folder), found.warnings))


@app.command("show", epilog=SHOW_EXAMPLE)
def show_catalog(
    word: Annotated[
        str,
        typer.Argument(
            metavar="WORD", help="Show only rows that hold this word.", show_default=False
        ),
    ] = "",
    books: Annotated[
        Path | None,
        typer.Option(
            "--books",
            metavar="FOLDER",
            help="Your books, in place of those that come along.",
            show_default=False,
        ),
    ] = None,
    metric: MetricOption = False,
    as_json: JsonOption = False,
) -> None:
    """Show what the books hold: items, tasks, accounts and settings."""
    with told(as_json=as_json):
        from estimator.catalog.books import read_books
        from estimator.catalog.shipped import shipped_catalogs
        from estimator.outputs.json_out import catalog_json
        from estimator.outputs.text_catalog import catalog_text

        read = read_books(books or shipped_catalogs("metric" if metric else "us"))
        say([catalog_json(read, word)] if as_json else catalog_text(read, word))


@app.command("copy", epilog=COPY_EXAMPLE)
def copy_catalog(folder: FolderArgument, metric: MetricOption = False) -> None:
    """Copy the books that come along into a folder, for you to edit."""
    with told():
        from estimator.catalog.shipped import copy_books

        files = copy_books(folder, "metric" if metric else "us")
        say([f"Copied: {path}" for path in files])
