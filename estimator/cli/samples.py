"""`estimator samples`: the jobs that come along."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from estimator.cli.jobs import SAMPLE, sample_files, sample_path
from estimator.cli.terminal import say, told
from estimator.files import replace_file
from estimator.problems import InputError, Problem

app = typer.Typer(help="List or copy the jobs that come along.", no_args_is_help=True)

LIST_EXAMPLE = "Example: estimator samples list"
COPY_EXAMPLE = "Example: estimator samples copy nightstand my-job.toml"


@app.command("list", epilog=LIST_EXAMPLE)
def list_samples() -> None:
    """List the sample jobs by the name to type in place of a job file."""
    with told():
        from estimator.survey.reader import read_job

        titles = {name: read_job(path).survey.job.title for name, path in sample_files().items()}
        say([f"{SAMPLE}{name:<20} {title}" for name, title in titles.items()])


@app.command("copy", epilog=COPY_EXAMPLE)
def copy_sample(
    name: Annotated[str, typer.Argument(metavar="NAME", help="Name of the sample.")],
    target: Annotated[
        Path | None,
        typer.Argument(
            metavar="FILE", help="Where to; without it NAME.toml here.", show_default=False
        ),
    ] = None,
) -> None:
    """Copy a sample job to a file of your own, to change."""
    with told():
        path = target or Path(f"{name}.toml")
        data = sample_path(name).read_bytes()
        if path.exists():
            raise InputError([Problem(str(path), "is already there.", "Choose another name.")])
        replace_file(path, data)
        say([f"Job file: {path}"])
