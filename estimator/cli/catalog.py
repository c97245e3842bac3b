"""`estimator catalog`: check, show and copy the books that prices come from."""

from __future__ import annotations

import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from estimator.cli.jobs import books_of
from estimator.cli.options import BooksOption, JsonOption
from estimator.cli.own_books import own_books
from estimator.cli.terminal import say, told
from estimator.problems import InputError
from estimator.user_folder import user_books, user_books_in

if TYPE_CHECKING:
    from estimator.catalog.shipped import Units

CHECK_EXAMPLE = "Example: estimator catalog check my-books"
SHOW_EXAMPLE = "Example: estimator catalog show box --books my-books"
COPY_EXAMPLE = """\
Example: estimator catalog copy

Or into a folder of your choice: estimator catalog copy my-books
"""

app = typer.Typer(help="Copy, check, show or update your books of prices.", no_args_is_help=True)

FolderArgument = Annotated[
    Path | None,
    typer.Argument(
        metavar="[FOLDER]",
        help="Folder with the books. Without it: your own, which every job then takes.",
        show_default=False,
    ),
]
MetricOption = Annotated[
    bool, typer.Option("--metric", help="The books that come along for metric jobs.")
]


@app.command("check", epilog=CHECK_EXAMPLE)
def check_catalog(
    folder: FolderArgument = None, metric: MetricOption = False, as_json: JsonOption = False
) -> None:
    """Check your books, and say which prices are old."""
    with told(as_json=as_json):
        from estimator.catalog.check import check_books, check_own
        from estimator.outputs.json_out import catalog_check_json
        from estimator.outputs.text_catalog import check_result

        today, units = datetime.date.today(), units_of(metric)
        if folder is None:
            found = check_own(own_books(), units, today)
        else:
            found = check_books(folder, today)
        if found.errors:
            raise InputError(found.errors)
        shown = str(folder or own_folder(units))
        if as_json:
            say([catalog_check_json(shown, found.warnings)])
        else:
            say(check_result(shown, found.warnings))


@app.command("show", epilog=SHOW_EXAMPLE)
def show_catalog(
    word: Annotated[
        str,
        typer.Argument(
            metavar="WORD", help="Show only rows that hold this word.", show_default=False
        ),
    ] = "",
    job: Annotated[
        str | None,
        typer.Option(
            "--job",
            metavar="JOB",
            help="The books as this job takes them.",
            show_default=False,
        ),
    ] = None,
    books: BooksOption = None,
    metric: MetricOption = False,
    as_json: JsonOption = False,
) -> None:
    """Show what the books hold, and from which files."""
    with told(as_json=as_json):
        from estimator.catalog.levels import read_own
        from estimator.outputs.json_out import catalog_json
        from estimator.outputs.text_catalog import catalog_text

        if job is None:
            read = read_own(books, own_books(), units_of(metric))
        else:
            read = books_of(job, books)
        say([catalog_json(read, word)] if as_json else catalog_text(read, word))


@app.command("copy", epilog=COPY_EXAMPLE)
def copy_catalog(folder: FolderArgument = None, metric: MetricOption = False) -> None:
    """Copy the books that come along into a folder, for you to edit."""
    with told():
        from estimator.catalog.shipped import copy_books

        units = units_of(metric)
        files = copy_books(folder or own_folder(units), units)
        say([f"Copied: {path}" for path in files])
        if folder is None:
            say(["", "Every job now takes these books. Next: estimator catalog check"])


def units_of(metric: bool) -> Units:
    """Which of the books that come along are meant."""
    return "metric" if metric else "us"


def own_folder(units: Units) -> Path:
    """The user's own folder for these units, there or not."""
    return user_books_in(units, user_books())
