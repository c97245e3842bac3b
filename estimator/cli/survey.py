"""`estimator survey`: guided questions that fill a job file, and a job file to start from."""

from __future__ import annotations

import json
from importlib.resources import files
from pathlib import Path
from typing import Annotated

import typer

from estimator.cli.options import BooksOption
from estimator.cli.survey_edit import edit_job
from estimator.cli.survey_talk import USUAL, talk
from estimator.cli.terminal import WRONG_USAGE, say, tell, told

EXAMPLE = """\
Example: estimator survey smith.toml

Example: estimator survey --edit smith.toml source_volume=20

Example: estimator survey --template > smith.toml
"""
STARTER = "starter.toml"


JobArgument = Annotated[
    Path,
    typer.Argument(metavar="[JOB]", help="Job file to fill.", show_default=True),
]
ChangeArgument = Annotated[
    str,
    typer.Argument(
        metavar="[CHANGE]",
        help="With --edit: the number of an answer, or key=value.",
        show_default=False,
    ),
]


def survey(
    job: JobArgument = Path(USUAL),
    change: ChangeArgument = "",
    edit: Annotated[
        bool, typer.Option("--edit", help="Show the answers by number, and change one.")
    ] = False,
    template: Annotated[
        bool, typer.Option("--template", help="Print a job file with comments, to fill in.")
    ] = False,
    schema: Annotated[
        bool, typer.Option("--schema", help="Print the JSON Schema of a job file.")
    ] = False,
    books: BooksOption = None,
) -> None:
    """Ask about a job, one question at a time, and fill its job file.

    Each answer is saved at once; the same command goes on where it was left.
    """
    with told():
        if template + schema + edit > 1 or (change and not edit):
            tell(["Say one thing: JOB, or --edit JOB CHANGE, or --template, or --schema."])
            raise typer.Exit(WRONG_USAGE)
        if template or schema:
            say([_template() if template else _schema()])
        elif edit:
            edit_job(job, change)
        else:
            talk(job, books)


def _template() -> str:
    text = files(__package__).joinpath(STARTER).read_text(encoding="utf-8")
    return text.rstrip("\n")


def _schema() -> str:
    from estimator.survey.reader import job_schema

    return json.dumps(job_schema(), indent=2)
