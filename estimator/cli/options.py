"""Arguments and options that several commands share."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from estimator.language import CODES

_PAGE_SUFFIXES = (".html", ".htm")
_ANY_CODE = " or ".join([", ".join(CODES[:-1]), CODES[-1]])


def page_name(page: Path | None) -> Path | None:
    """Refuse a name that no phone would open as a page."""
    if page is not None and page.suffix.lower() not in _PAGE_SUFFIXES:
        raise typer.BadParameter("the name must end in .html, such as list.html")
    return page


def language_code(code: str) -> str:
    """Refuse a language that nothing is told in."""
    if code and code not in CODES:
        raise typer.BadParameter(f'"{code}" is not a language on file. Write {_ANY_CODE}.')
    return code


JobArgument = Annotated[
    str,
    typer.Argument(
        metavar="JOB",
        help="Job file (TOML or a filled form), or a shipped sample, such as sample:nightstand.",
        show_default=False,
    ),
]
BooksOption = Annotated[
    Path | None,
    typer.Option(
        "--books",
        metavar="FOLDER",
        help="Only the books in this folder, in place of your own and of the job's.",
        show_default=False,
    ),
]
LanguageOption = Annotated[
    str,
    typer.Option(
        "--language",
        metavar="|".join(CODES),
        help=f"What the customer reads: {_ANY_CODE}; without it what the settings say.",
        callback=language_code,
        show_default=False,
    ),
]
TestsOption = Annotated[
    bool, typer.Option("--tests", help="Print the list of tests and cautions of the job instead.")
]
JsonOption = Annotated[
    bool, typer.Option("--json", help="Print JSON on stdout; messages go to stderr.")
]
