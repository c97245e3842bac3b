"""`estimator bid`: the workbook and a short summary."""

from __future__ import annotations

import sys
from dataclasses import replace as replace_in
from pathlib import Path
from typing import Annotated

import typer

from estimator.cli.jobs import Priced, price_job
from estimator.cli.options import BooksOption, JobArgument, JsonOption, LanguageOption, page_name
from estimator.cli.terminal import BAD_INPUT, say, tell, told

EXAMPLE = """\
Example: estimator bid my-job.toml -o smith.xlsx --page smith.html

For a customer who reads Spanish: estimator bid my-job.toml --language es
"""
SUFFIX = ".xlsx"


def workbook_name(output: Path | None) -> Path | None:
    """Refuse a name that no spreadsheet program would open."""
    if output is not None and output.suffix.lower() != SUFFIX:
        raise typer.BadParameter(f"the name must end in {SUFFIX}, such as bid{SUFFIX}")
    return output


OutputOption = Annotated[
    Path | None,
    typer.Option(
        "-o",
        "--output",
        metavar="FILE.xlsx",
        help="Where to write the workbook. Without it: JOB.bid.xlsx in this folder.",
        callback=workbook_name,
        show_default=False,
    ),
]
ReplaceOption = Annotated[
    bool, typer.Option("--replace", help="Replace a file that this tool did not write.")
]
PageOption = Annotated[
    Path | None,
    typer.Option(
        "--page",
        metavar="FILE.html",
        help="Write the customer's page as well, with the wall drawing, to mail or print.",
        callback=page_name,
        show_default=False,
    ),
]


def bid(
    job: JobArgument,
    *,
    output: OutputOption = None,
    page: PageOption = None,
    books: BooksOption = None,
    language: LanguageOption = "",
    replace: ReplaceOption = False,
    as_json: JsonOption = False,
) -> None:
    """Price a job, write its bid workbook and print a summary."""
    with told(as_json=as_json):
        priced = _with_firm_note(price_job(job, books, one_more=True, language=language))
        tell(priced.notes)
        if _blocked(priced):
            _say_blocked(priced, as_json=as_json)
            sys.exit(BAD_INPUT)
        path = output or Path(f"{priced.path.stem}.bid{SUFFIX}")
        _write(priced, path, page, replace=replace)
        _say_done(priced, path, page, as_json=as_json)


def _with_firm_note(priced: Priced) -> Priced:
    """Add a note where the customer would read the sample's firm."""
    from estimator.pricing.firm_note import firm_note

    return replace_in(priced, notes=(*priced.notes, *firm_note(priced.bid, priced.path)))


def _blocked(priced: Priced) -> bool:
    return any(finding.stops_the_bid for finding in priced.bid.findings)


def _write(priced: Priced, path: Path, page: Path | None, *, replace: bool) -> None:
    from estimator.outputs.bid_page import bid_page
    from estimator.outputs.own_page import write_page
    from estimator.outputs.workbook import write_bid

    if page is not None:
        write_page(page, bid_page(priced.bid), replace=replace)
    write_bid(priced.bid, path, replace=replace)


def _say_done(priced: Priced, path: Path, page: Path | None, *, as_json: bool) -> None:
    """Print the summary, or the whole bid as JSON."""
    from estimator.outputs.json_out import bid_json
    from estimator.outputs.text_bid import bid_summary

    if as_json:
        say([bid_json(priced.bid, str(path), priced.notes)])
    else:
        written = [f"Workbook: {path}", *([f"Page: {page}"] if page else [])]
        say([*bid_summary(priced.bid), "", *written])


def _say_blocked(priced: Priced, *, as_json: bool) -> None:
    """Say what stops the bid and how to accept it."""
    from estimator.outputs.json_out import bid_json
    from estimator.outputs.text_check import how_to_accept

    tell(how_to_accept(priced.bid, str(priced.path)))
    if as_json:
        say([bid_json(priced.bid, None, priced.notes)])
