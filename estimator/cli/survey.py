"""`estimator survey`: guided questions that fill a job file, and a job file to start from."""

from __future__ import annotations

import json
from importlib.resources import files
from pathlib import Path
from typing import Annotated

import typer

from estimator.cli.options import BooksOption
from estimator.cli.survey_edit import edit_job
from estimator.cli.survey_form import make_form, print_job
from estimator.cli.survey_talk import USUAL, talk
from estimator.cli.terminal import WRONG_USAGE, say, tell, told

EXAMPLE = """\
Example: estimator survey smith.toml

Example: estimator survey --edit smith.toml source_volume=20

Example: estimator survey --edit smith.toml breaker=20 "new_x=7 ft"

Example: estimator survey --form smith.xlsx

Example: estimator survey --form smith.xlsx country:GB

Example: estimator survey --template > smith.toml
"""
STARTER = "starter.toml"
ONE_THING = (
    "Say one thing: JOB, --edit JOB CHANGE ..., --form FILE.xlsx, --text, --template or --schema."
)


JobArgument = Annotated[
    Path,
    typer.Argument(metavar="[JOB]", help="Job file to fill.", show_default=True),
]
ChangeArgument = Annotated[
    list[str] | None,
    typer.Argument(
        metavar="[CHANGE]",
        help="With --edit: the number of an answer, or key=value; several at once where you like.",
        show_default=False,
    ),
]


FormOption = Annotated[
    Path | None,
    typer.Option(
        "--form",
        metavar="FILE.xlsx",
        help="Write a workbook to fill in, with the facts of JOB where you name one, or in "
        "metres and the words of a country with country:GB as JOB.",
        show_default=False,
    ),
]


def survey(
    context: typer.Context,
    job: JobArgument = Path(USUAL),
    change: ChangeArgument = None,
    *,
    edit: Annotated[
        bool, typer.Option("--edit", help="Show the answers by number, and change some.")
    ] = False,
    template: Annotated[
        bool, typer.Option("--template", help="Print a job file with comments, to fill in.")
    ] = False,
    schema: Annotated[
        bool, typer.Option("--schema", help="Print the JSON Schema of a job file.")
    ] = False,
    form: FormOption = None,
    replace: Annotated[
        bool, typer.Option("--replace", help="With --form: write over a file that is there.")
    ] = False,
    text: Annotated[
        bool, typer.Option("--text", help="Print JOB, a filled form, as a job file.")
    ] = False,
    books: BooksOption = None,
) -> None:
    """Ask about a job, question by question, and fill its file.

    Each answer is saved at once; the same command goes on where it was left.
    """
    with told():
        ways = template + schema + edit + text + (form is not None)
        if ways > 1 or (change and not edit) or (replace and form is None):
            tell([ONE_THING])
            raise typer.Exit(WRONG_USAGE)
        if template or schema:
            say([_template() if template else _schema()])
        elif edit:
            edit_job(job, change or ())
        elif text:
            print_job(str(job))
        elif form is not None:
            make_form(form, str(job) if _is_typed(context, "job") else None, replace=replace)
        else:
            talk(job, books)


def _is_typed(context: typer.Context, name: str) -> bool:
    """True for an argument that stood on the command line."""
    source = context.get_parameter_source(name)
    return source is not None and source.name == "COMMANDLINE"


def _template() -> str:
    text = files(__package__).joinpath(STARTER).read_text(encoding="utf-8")
    return text.rstrip("\n")


def _schema() -> str:
    from estimator.survey.reader import job_schema

    return json.dumps(job_schema(), indent=2)
