"""`estimator close-out`: what a job really cost, against its estimate."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from estimator.cli.bid import ReplaceOption, workbook_name
from estimator.cli.jobs import close_out_path
from estimator.cli.options import BooksOption, JsonOption
from estimator.cli.own_books import own_books
from estimator.cli.terminal import say, told

if TYPE_CHECKING:
    from estimator.ledger.comparison import Comparison
    from estimator.ledger.labor_update import LaborUpdate

EXAMPLE = """\
Example: estimator close-out my-job.close-out.toml -o my-job.close-out.xlsx

Example: estimator close-out my-job.close-out.toml --update-labor labor.csv
"""

FileArgument = Annotated[
    str,
    typer.Argument(
        metavar="FILE",
        help="Close-out file (TOML), or one that comes along, such as sample:nightstand.",
        show_default=False,
    ),
]
OutputOption = Annotated[
    Path | None,
    typer.Option(
        "-o",
        "--output",
        metavar="FILE.xlsx",
        help="Where to write the workbook. Without it none is written.",
        callback=workbook_name,
        show_default=False,
    ),
]
WithOption = Annotated[
    list[str] | None,
    typer.Option(
        "--with",
        metavar="FILE",
        help="Close-out file of another job whose receipts hold lines for this one.",
        show_default=False,
    ),
]
LaborOption = Annotated[
    Path | None,
    typer.Option(
        "--update-labor",
        metavar="labor.csv",
        help="Show how the hours would move this labor book. Written only with --yes.",
        show_default=False,
    ),
]
YesOption = Annotated[bool, typer.Option("--yes", help="Write the labor book.")]


def close_out(
    file: FileArgument,
    *,
    output: OutputOption = None,
    others: WithOption = None,
    update_labor: LaborOption = None,
    yes: YesOption = False,
    books: BooksOption = None,
    replace: ReplaceOption = False,
    as_json: JsonOption = False,
) -> None:
    """Hold what a job cost against its estimate."""
    with told(as_json=as_json):
        from estimator.ledger.closing import open_job, other_files
        from estimator.ledger.compare import compare
        from estimator.ledger.labor_update import labor_update

        user = own_books()
        closed = open_job(close_out_path(file), books, user)
        job = compare(closed, other_files(closed, map(close_out_path, others or ()), books, user))
        update = labor_update(closed, update_labor) if update_labor is not None else None
        if output is not None:
            _write_workbook(job, output, replace=replace)
        written = yes and update is not None and bool(update.changes)
        if written and update is not None:
            _write_labor(update)
        _say(job, output, (update, written), as_json=as_json)


def _write_workbook(job: Comparison, path: Path, *, replace: bool) -> None:
    from estimator.outputs.close_out_workbook import close_out_workbook
    from estimator.outputs.workbook import write_file

    write_file(path, lambda: close_out_workbook(job), replace=replace)


def _write_labor(update: LaborUpdate) -> None:
    from estimator.files import replace_file

    replace_file(update.path, update.data)


def _say(
    job: Comparison,
    output: Path | None,
    labor: tuple[LaborUpdate | None, bool],
    *,
    as_json: bool,
) -> None:
    """Print the comparison, as text or as JSON."""
    from estimator.outputs.ledger_documents import close_out_json
    from estimator.outputs.text_close_out import close_out_text, labor_text

    update, written = labor
    if as_json:
        path = None if output is None else str(output)
        say([close_out_json(job, path, update, written=written)])
        return
    lines = close_out_text(job)
    lines += labor_text(update, written=written) if update is not None else []
    say([*lines, *([] if output is None else ["", f"Workbook: {output}"])])
