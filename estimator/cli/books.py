"""`estimator books`: closed jobs as balanced entries, and the year they add up to."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from estimator.cli.bid import ReplaceOption
from estimator.cli.jobs import close_out_path
from estimator.cli.options import BooksOption, JsonOption
from estimator.cli.own_books import own_books
from estimator.cli.terminal import say, tell, told
from estimator.problems import InputError, Problem

if TYPE_CHECKING:
    from estimator.ledger.account_map import AccountMap
    from estimator.ledger.entries import Entry
    from estimator.ledger.estimated import Closed

EXAMPLE = """\
Example: estimator books jobs/*.close-out.toml --year 2026 -o books-2026.csv

Example: estimator books sample:nightstand -o books.xlsx --map schedule-c-2024
"""
CSV, XLSX = ".csv", ".xlsx"
_FIRST_YEAR, _LAST_YEAR = 1900, 2999


def _export_name(output: Path | None) -> Path | None:
    """Refuse a name that is neither of the two kinds of file."""
    if output is not None and output.suffix.lower() not in (CSV, XLSX):
        raise typer.BadParameter(f"the name must end in {CSV} or {XLSX}, such as books{CSV}")
    return output


FilesArgument = Annotated[
    list[str],
    typer.Argument(
        metavar="FILE...",
        help="Close-out files (TOML). A bid posts nothing, so job files have no place here.",
        show_default=False,
    ),
]
YearOption = Annotated[
    int | None,
    typer.Option(
        "--year",
        min=_FIRST_YEAR,
        max=_LAST_YEAR,
        help="Only entries of this year.",
        show_default=False,
    ),
]
OutputOption = Annotated[
    Path | None,
    typer.Option(
        "-o",
        "--output",
        metavar="FILE",
        help="Where to write: .csv or .xlsx. Without it a summary is printed.",
        callback=_export_name,
        show_default=False,
    ),
]
MapOption = Annotated[
    str | None,
    typer.Option(
        "--map",
        metavar="NAME",
        help="Add the names of a map: schedule-c-2024, or a CSV file of your own.",
        show_default=False,
    ),
]


def books(
    files: FilesArgument,
    *,
    year: YearOption = None,
    output: OutputOption = None,
    map_name: MapOption = None,
    books_folder: BooksOption = None,
    replace: ReplaceOption = False,
    as_json: JsonOption = False,
) -> None:
    """Export closed jobs as balanced entries, and add them up."""
    with told(as_json=as_json):
        from estimator.ledger.account_map import read_map
        from estimator.ledger.roll_up import roll_up
        from estimator.outputs.ledger_documents import books_json
        from estimator.outputs.text_books import NOTHING_WRITTEN, books_text, other_years

        account_map = None if map_name is None else read_map(map_name)
        entries, locale = _entries(files, books_folder, year)
        totals = roll_up(entries, account_map)
        if account_map is not None:
            tell(other_years(entries, account_map))
        if output is not None:
            _write(entries, locale, account_map, output, replace=replace)
        if as_json:
            path = None if output is None else str(output)
            say([books_json(entries, totals, path, year, account_map)])
        else:
            end = NOTHING_WRITTEN if output is None else f"Written: {output}"
            say([*books_text(entries, totals, locale, account_map), "", end])


def _entries(
    files: Sequence[str], folder: Path | None, year: int | None
) -> tuple[tuple[Entry, ...], str]:
    """The entries of all files, and the locale of the first; problems of all come at once."""
    from estimator.ledger.closing import open_job
    from estimator.ledger.entries import entries_of, in_year

    jobs: list[Closed] = []
    problems: list[Problem] = []
    for file in files:
        try:
            jobs.append(open_job(close_out_path(file), folder, own_books()))
        except InputError as error:
            problems += error.problems
    if problems:
        raise InputError(problems)
    entries = in_year(entries_of(jobs), year)
    if not entries:
        when = "" if year is None else f" in {year}"
        read = f"there is nothing to book{when} in these files"
        raise InputError([Problem(", ".join(files), read, "Name other files, or another year.")])
    return entries, jobs[0].locale


def _write(
    entries: Sequence[Entry],
    locale: str,
    account_map: AccountMap | None,
    path: Path,
    *,
    replace: bool,
) -> None:
    from estimator.outputs.ledger_csv import books_csv, write_csv
    from estimator.outputs.ledger_workbook import books_workbook
    from estimator.outputs.workbook import write_file

    if path.suffix.lower() == CSV:
        write_csv(path, books_csv(entries, account_map), replace=replace)
    else:
        write_file(path, lambda: books_workbook(entries, locale, account_map), replace=replace)
