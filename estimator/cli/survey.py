"""`estimator survey`: a job file to start from, and the rules it obeys."""

from __future__ import annotations

import json
from importlib.resources import files
from typing import Annotated

import typer

from estimator.cli.terminal import WRONG_USAGE, say, tell, told

EXAMPLE = "Example: estimator survey --template > my-job.toml"
STARTER = "starter.toml"


def survey(
    template: Annotated[
        bool, typer.Option("--template", help="Print a job file with comments, to fill in.")
    ] = False,
    schema: Annotated[
        bool, typer.Option("--schema", help="Print the JSON Schema of a job file.")
    ] = False,
) -> None:
    """Print a job file to fill in, or the JSON Schema of one."""
    with told():
        if template == schema:
            tell(["Say what to print: estimator survey --template, or estimator survey --schema."])
            raise typer.Exit(WRONG_USAGE)
        say([_template() if template else _schema()])


def _template() -> str:
    text = files(__package__).joinpath(STARTER).read_text(encoding="utf-8")
    return text.rstrip("\n")


def _schema() -> str:
    from estimator.survey.reader import job_schema

    return json.dumps(job_schema(), indent=2)
