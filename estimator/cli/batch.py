"""`estimator batch`: all jobs below a folder, one summary workbook."""

from __future__ import annotations

import os
import sys
import time
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from estimator.cli.bid import SUFFIX, ReplaceOption, workbook_name
from estimator.cli.options import BooksOption, JsonOption
from estimator.cli.own_books import own_books
from estimator.cli.terminal import BAD_INPUT, say, tell, told

if TYPE_CHECKING:
    from estimator.outputs.batch import BatchRow

EXAMPLE = "Example: estimator batch my-jobs -o summary.xlsx --workbooks bids"
BETWEEN_DRAWINGS_S = 0.1

FolderArgument = Annotated[
    Path,
    typer.Argument(
        metavar="FOLDER", help="Folder with job files and filled forms.", show_default=False
    ),
]
OutputOption = Annotated[
    Path,
    typer.Option(
        "-o",
        "--output",
        metavar="FILE.xlsx",
        help="Where to write the summary.",
        callback=workbook_name,
    ),
]
WorkbooksOption = Annotated[
    Path | None,
    typer.Option(
        "--workbooks",
        metavar="FOLDER",
        help="Write the bid workbook of each job into this folder, too.",
        show_default=False,
    ),
]
JobsOption = Annotated[
    int | None,
    typer.Option(
        "--jobs",
        metavar="N",
        min=1,
        help="How many to price at a time. Without it: one for each core.",
        show_default=False,
    ),
]


def batch(
    folder: FolderArgument,
    *,
    output: OutputOption = Path(f"summary{SUFFIX}"),
    workbooks: WorkbooksOption = None,
    jobs: JobsOption = None,
    books: BooksOption = None,
    replace: ReplaceOption = False,
    as_json: JsonOption = False,
) -> None:
    """Price all jobs below a folder into one summary.

    Jobs are text files (.toml) and filled survey forms (.xlsx). Bid workbooks and other workbooks
    are left alone, and listed as passed over.
    """
    with told(as_json=as_json):
        from estimator.outputs.batch import BatchPlan, job_files, price_all
        from estimator.outputs.batch_book import Spool, batch_workbook
        from estimator.outputs.batch_totals import BatchTotals, batch_json
        from estimator.outputs.text_batch import batch_text, failures_text
        from estimator.outputs.workbook import write_file

        files = job_files(folder)
        plan = BatchPlan(folder, books, own_books(), workbooks, replace)
        totals, spool = BatchTotals(), Spool()
        for row in _watched(price_all(files, plan, jobs or os.cpu_count() or 1), len(files)):
            totals.add(row)
            spool.add(row)
        tell(failures_text(totals))
        write_file(output, lambda: batch_workbook(spool.rows(), totals), replace=replace)
        spool.close()
        shown = str(output)
        say([batch_json(totals, str(folder), shown)] if as_json else batch_text(totals, shown))
        if totals.none_priced:
            sys.exit(BAD_INPUT)


def _watched(rows: Iterable[BatchRow], of: int) -> Iterator[BatchRow]:
    """Draw a bar on stderr while rows go by; nothing where stderr is no terminal."""
    from estimator.outputs.text_batch import bar

    if not sys.stderr.isatty():
        yield from rows
        return
    drawn = 0.0
    try:
        for done, row in enumerate(rows, start=1):
            yield row
            if done == of or time.monotonic() - drawn > BETWEEN_DRAWINGS_S:
                drawn = time.monotonic()
                print(f"\r{bar(done, of)}", end="", file=sys.stderr, flush=True)
    finally:
        print(file=sys.stderr, flush=True)
