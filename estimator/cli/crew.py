"""`estimator crew`: the sheet for the people who do the work, without any price."""

from __future__ import annotations

import sys
from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from estimator.cli.bid import ReplaceOption
from estimator.cli.jobs import Priced, price_job
from estimator.cli.options import BooksOption, JobArgument, JsonOption
from estimator.cli.own_books import own_books
from estimator.cli.terminal import BAD_INPUT, say, tell, told
from estimator.language import CODES, LanguageCode

if TYPE_CHECKING:
    from estimator.language import Language

EXAMPLE = """\
Example: estimator crew my-job.toml --language both

A name that ends in .xlsx gives a workbook: ... -o crew.xlsx
"""
_PAGES, _WORKBOOK = (".html", ".htm"), ".xlsx"
_BOTH: tuple[LanguageCode, ...] = ("en", "es")


class Tongue(StrEnum):
    """What a crew reads."""

    ENGLISH = "en"
    SPANISH = "es"
    FRENCH = "fr"
    BOTH = "both"


def sheet_name(output: Path | None) -> Path | None:
    """Refuse a name that is neither a page nor a workbook."""
    if output is not None and output.suffix.lower() not in (*_PAGES, _WORKBOOK):
        raise typer.BadParameter("the name must end in .html or .xlsx, such as crew.html")
    return output


OutputOption = Annotated[
    Path | None,
    typer.Option(
        "-o",
        "--output",
        metavar="FILE",
        help="Where to write it: .html for a page, .xlsx for a sheet. Without it: JOB.crew.html.",
        callback=sheet_name,
        show_default=False,
    ),
]
LanguageOption = Annotated[
    Tongue | None,
    typer.Option(
        "--language",
        help="both: English and Spanish side by side. Without it: crew_language of shop.toml.",
        show_default=False,
    ),
]
TextOption = Annotated[bool, typer.Option("--text", help="Print it here; no file is written.")]


def crew(
    job: JobArgument,
    output: OutputOption = None,
    language: LanguageOption = None,
    text: TextOption = False,
    books: BooksOption = None,
    *,
    replace: ReplaceOption = False,
    as_json: JsonOption = False,
) -> None:
    """Write the sheet for those who do the work: no price is on it."""
    if sum((output is not None, text, as_json)) > 1:
        raise typer.BadParameter("choose one of -o, --text and --json")
    with told(as_json=as_json):
        priced = price_job(job, books)
        tell(priced.notes)
        languages = _languages(priced, books, language)
        stopped = _stopped(priced)
        if as_json:
            _say_json(priced, languages)
        elif text and not stopped:
            _say_text(priced, languages)
        elif not stopped:
            _write(priced, languages, output, replace=replace)
        if stopped:
            tell(["No crew sheet is written for a job that a finding stops.", "", *stopped])
            sys.exit(BAD_INPUT)


def _languages(priced: Priced, books: Path | None, asked: Tongue | None) -> list[Language]:
    """The languages asked for, else those of the settings, with the user's own words."""
    from estimator.pricing.books_for import language_for

    code = asked or priced.bid.books.shop.terms.crew_language
    codes = tuple(each for each in CODES if each == code) or _BOTH
    return [language_for(priced.file, each, books, own_books()) for each in codes]


def _stopped(priced: Priced) -> list[str]:
    from estimator.outputs.text_check import how_to_accept

    return how_to_accept(priced.bid, str(priced.path))


def _say_json(priced: Priced, languages: list[Language]) -> None:
    from estimator.outputs.crew_sheet import crew_sheets
    from estimator.outputs.json_out import crew_json

    say([crew_json(priced.bid, crew_sheets(priced.bid, languages), priced.notes)])


def _say_text(priced: Priced, languages: list[Language]) -> None:
    from estimator.outputs.crew_sheet import crew_sheets
    from estimator.outputs.text_crew import crew_text

    say(crew_text(crew_sheets(priced.bid, languages)))


def _write(
    priced: Priced, languages: list[Language], output: Path | None, *, replace: bool
) -> None:
    """Write a workbook where the name asks for one, else a page."""
    path = output or Path(f"{priced.path.stem}.crew.html")
    if path.suffix.lower() == _WORKBOOK:
        from estimator.outputs.crew_book import crew_workbook
        from estimator.outputs.workbook import write_file

        write_file(path, lambda: crew_workbook(priced.bid, languages), replace=replace)
    else:
        from estimator.outputs.crew_page import crew_page
        from estimator.outputs.own_page import write_page

        write_page(path, crew_page(priced.bid, languages), replace=replace)
    say([f"Crew sheet: {path}"])
