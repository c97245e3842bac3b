"""`estimator shopping-list`: for the terminal, as a message, or as a page for a phone."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Annotated

import typer

from estimator.cli.bid import ReplaceOption
from estimator.cli.jobs import Priced, price_job
from estimator.cli.lists import list_job
from estimator.cli.options import (
    BooksOption,
    JobArgument,
    JsonOption,
    LanguageOption,
    page_name,
)
from estimator.cli.terminal import BAD_INPUT, say, tell, told

EXAMPLE = """\
Example: estimator shopping-list my-job.toml --page list.html

--text gives short lines for a message: ... --text > list.txt

In Spanish: ... --language es (--json stays English)
"""

PageOption = Annotated[
    Path | None,
    typer.Option(
        "--page",
        metavar="FILE.html",
        help="Write one page for a phone: ticks that remember, prices paid. No network needed.",
        callback=page_name,
        show_default=False,
    ),
]
TextOption = Annotated[bool, typer.Option("--text", help="Print short lines for a message.")]


def shopping_list(
    job: JobArgument,
    page: PageOption = None,
    text: TextOption = False,
    *,
    language: LanguageOption = "",
    books: BooksOption = None,
    replace: ReplaceOption = False,
    as_json: JsonOption = False,
) -> None:
    """List what to buy at least cost, by aisle."""
    if sum((page is not None, text, as_json)) > 1:
        raise typer.BadParameter("choose one of --page, --text and --json")
    with told(as_json=as_json):
        if page is not None:
            _write(price_job(job, books, language=language), page, replace=replace)
            return
        from estimator.outputs.json_out import shopping_json
        from estimator.outputs.text_message import message_text
        from estimator.outputs.text_shopping import shopping_text

        to_text = message_text if text else shopping_text
        list_job(job, books, shopping_json if as_json else None, to_text, language=language)


def _write(priced: Priced, page: Path, *, replace: bool) -> None:
    """Write the page, and end with 1 where a finding stops the bid, as the list does."""
    from estimator.outputs.own_page import write_page
    from estimator.outputs.shopping_page import shopping_page
    from estimator.outputs.text_check import how_to_accept

    tell(priced.notes)
    write_page(page, shopping_page(priced.bid, priced.path.name), replace=replace)
    say([f"Page: {page}"])
    if stopped := how_to_accept(priced.bid, str(priced.path)):
        tell(["", *stopped])
        sys.exit(BAD_INPUT)
