"""`estimator change`: two job files, what differs, and what the difference costs."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from estimator.cli.bid import SUFFIX, ReplaceOption, workbook_name
from estimator.cli.jobs import job_path, left_out
from estimator.cli.options import BooksOption, JsonOption, LanguageOption
from estimator.cli.own_books import own_books
from estimator.cli.terminal import BAD_INPUT, say, tell, told

if TYPE_CHECKING:
    from estimator.pricing.change_records import ChangeOrder

EXAMPLE = """\
Example: estimator change job.toml job-plaster.toml --why "The wall is plaster"

With what the shopping list page saved: ... --bought paid-S1.toml
"""

OldArgument = Annotated[
    str, typer.Argument(metavar="OLD", help="The job file that was bid.", show_default=False)
]
NewArgument = Annotated[
    str,
    typer.Argument(
        metavar="NEW", help="A copy of it, changed to what the house is.", show_default=False
    ),
]
BoughtOption = Annotated[
    Path | None,
    typer.Option(
        "--bought",
        metavar="FILE",
        help="What was bought: saved by the shopping list page (lines or table), or a close-out"
        " file. All else is still to buy. Without it: [change] materials_bought.",
        show_default=False,
    ),
]
WhyOption = Annotated[
    str, typer.Option("--why", metavar="TEXT", help="The reason, for the change order.")
]
OutputOption = Annotated[
    Path | None,
    typer.Option(
        "-o",
        "--output",
        metavar="FILE.xlsx",
        help="Where to write the change order. Without it: NEW.change.xlsx in this folder.",
        callback=workbook_name,
        show_default=False,
    ),
]


def change(
    old: OldArgument,
    new: NewArgument,
    *,
    why: WhyOption = "",
    bought: BoughtOption = None,
    output: OutputOption = None,
    books: BooksOption = None,
    language: LanguageOption = "",
    replace: ReplaceOption = False,
    as_json: JsonOption = False,
) -> None:
    """Price a change to a job that was bid, with its order."""
    with told(as_json=as_json):
        order, notes = _order((old, new), why, bought, books, language)
        tell(notes)
        path = output or Path(f"{Path(new).stem.removeprefix('sample:')}.change{SUFFIX}")
        stopped = bool(order.stopped_by)
        written = not stopped and order.changes_anything
        if written:
            _write(order, path, replace=replace)
        _say(order, str(path) if written else None, notes, as_json=as_json)
        if stopped:
            names = ", ".join(order.stopped_by)
            tell(["", f"No change order was written: the changed job is stopped by {names}."])
            tell(["Change the job, or accept the finding in it; estimator check says how."])
            sys.exit(BAD_INPUT)


def _order(
    jobs: tuple[str, str],
    why: str,
    bought: Path | None,
    books_folder: Path | None,
    language: str,
) -> tuple[ChangeOrder, tuple[str, ...]]:
    """Read both jobs, and what was bought, and work the change out."""
    from estimator.ledger.paid import read_paid
    from estimator.pricing.books_for import books_for
    from estimator.pricing.change import change_order
    from estimator.pricing.engine import estimate
    from estimator.survey.differences import changed_facts
    from estimator.survey.reader import read_job
    from estimator.toml_files import read_toml

    first, second = (read_job(job_path(each)) for each in jobs)
    raw = [read_toml(each.text, str(each.path)) for each in (first, second)]
    user = own_books()
    before = estimate(first.survey, books_for(first, books_folder, user))
    books = books_for(second, books_folder, user, language=language)
    paid = None if bought is None else read_paid(bought, before)
    facts = changed_facts(raw[0], raw[1])
    order = change_order(before, second.survey, books, facts=facts, why=why, paid=paid)
    return order, (*second.notes, *left_out(books))


def _write(order: ChangeOrder, path: Path, *, replace: bool) -> None:
    from estimator.outputs.change_book import write_change

    write_change(order, path, replace=replace)


def _say(order: ChangeOrder, path: str | None, notes: tuple[str, ...], *, as_json: bool) -> None:
    """Print the change, or the whole of it as JSON."""
    from estimator.outputs.json_out import change_json
    from estimator.outputs.text_change import change_text

    if as_json:
        say([change_json(order, path, notes)])
    else:
        say([*change_text(order), *(["", f"Change order: {path}"] if path else [])])
