"""All commands, and what is said when none is typed."""

from __future__ import annotations

from typing import Annotated

import typer

from estimator import __version__
from estimator.cli import (
    batch,
    bid,
    books,
    catalog,
    catalog_update,
    change,
    close_out,
    crew,
    lists,
    ranges,
    rate,
    samples,
    schema,
    shopping,
    survey,
)
from estimator.cli.own_books import leave_aside
from estimator.cli.survey_form import WORKBOOKS, read_workbook
from estimator.cli.terminal import say
from estimator.survey.kinds import read_kind

WELCOME = """\
estimator turns a survey of a finished house into a bid for extending a
branch circuit: takeoff, checks, shopping list, hours, price, and a workbook.

Try it now, with a job that comes along:
  estimator bid sample:nightstand

Start your own job:
  estimator survey
  (about 20 questions; every answer is saved in my-job.toml)
  estimator bid my-job.toml

Put your own prices and rates in, once, for every job from then on:
  estimator catalog copy

After the bid: estimator shopping-list, change, close-out and books.
For a whole folder of jobs: estimator batch.

See every command:
  estimator --help"""

EPILOG = """\
Example: estimator bid my-job.toml -o smith.xlsx

Exit codes: 0 done, 1 bad input or a finding that stops the bid, 2 wrong usage.
"""

for _suffix in WORKBOOKS:
    read_kind(_suffix, read_workbook)

app = typer.Typer(
    name="estimator",
    help="From a survey of a finished house to a priced bid for extending a branch circuit.",
    epilog=EPILOG,
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
    context_settings={"help_option_names": ["-h", "--help"]},
)


@app.callback(invoke_without_command=True)
def welcome(
    context: typer.Context,
    version: Annotated[bool, typer.Option("--version", help="Print the version.")] = False,
    no_user_books: Annotated[
        bool,
        typer.Option(
            "--no-user-books", help="Leave your own folder of books aside (before the command)."
        ),
    ] = False,
) -> None:
    """From a survey of a finished house to a priced bid for extending a branch circuit."""
    leave_aside(no_user_books)
    if version:
        say([f"estimator {__version__}"])
        raise typer.Exit
    if context.invoked_subcommand is None:
        say([WELCOME])


app.command("bid", epilog=bid.EXAMPLE)(bid.bid)
app.command("takeoff", epilog=lists.TAKEOFF_EXAMPLE)(lists.takeoff)
app.command("shopping-list", epilog=shopping.EXAMPLE)(shopping.shopping_list)
app.command("crew", epilog=crew.EXAMPLE)(crew.crew)
app.command("check", epilog=lists.CHECK_EXAMPLE)(lists.check)
app.command("change", epilog=change.EXAMPLE)(change.change)
app.command("compare", epilog=lists.COMPARE_EXAMPLE)(lists.compare)
app.command("range", epilog=ranges.EXAMPLE)(ranges.range_)
app.command("batch", epilog=batch.EXAMPLE)(batch.batch)
app.command("close-out", epilog=close_out.EXAMPLE)(close_out.close_out)
app.command("books", epilog=books.EXAMPLE)(books.books)
app.command("rate", epilog=rate.EXAMPLE)(rate.rate)
app.command("survey", epilog=survey.EXAMPLE)(survey.survey)
app.add_typer(samples.app, name="samples")
catalog.app.command("update", epilog=catalog_update.EXAMPLE)(catalog_update.update_catalog)
app.add_typer(catalog.app, name="catalog")
app.command("schema", epilog=schema.EXAMPLE)(schema.schema)
