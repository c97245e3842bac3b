"""The survey as a workbook to fill in: `estimator survey --form`, and how such files are read."""

from __future__ import annotations

import re
from pathlib import Path
from typing import TYPE_CHECKING, Any

from estimator.cli.jobs import job_path
from estimator.cli.terminal import say
from estimator.problems import InputError, Problem

if TYPE_CHECKING:
    from estimator.survey.reader import JobFile

SUFFIX = ".xlsx"
COUNTRY = "country:"
WORKBOOKS = (SUFFIX, ".xlsm", ".xls", ".ods")
"""Job files that are workbooks; all but the first are refused with what to do instead."""


def read_workbook(path: Path) -> JobFile:
    """Read a job that was filled into the form."""
    from estimator.form.reader import read_form

    return read_form(path)


def make_form(path: Path, job: str | None, *, replace: bool) -> None:
    """Write the form, filled in with a job where one is named, and say what to do with it.

    Raises:
        InputError: the job cannot be read, or the form not be written.
    """
    from estimator.outputs.form_book import write_form

    if path.suffix.lower() != SUFFIX:
        write = f"Name it such as my-job{SUFFIX}."
        raise InputError([Problem(str(path), f"a form is a workbook ({SUFFIX}).", write)])
    write_form(path, *_known(job), replace=replace)
    say([f"Form: {path}", f"Fill it in and save it, then: estimator bid {path}"])


def _known(job: str | None) -> tuple[dict[str, Any] | None, str]:
    """What is known of the house: the facts of a job, or its country alone (country:GB)."""
    from estimator.survey.reader import read_job
    from estimator.toml_files import read_toml

    if job is None:
        return None, ""
    if not job.startswith(COUNTRY):
        file = read_job(job_path(job))
        return read_toml(file.text, str(file.path)), ""
    country = job.removeprefix(COUNTRY)
    if not re.fullmatch("[A-Za-z]{2}", country):
        write = f"Write two letters, such as {COUNTRY}GB."
        raise InputError([Problem(job, "this is no country.", write)])
    return None, country


def print_job(job: str) -> None:
    """Print a job, from a form or a job file, as the text of a job file."""
    from estimator.survey.reader import read_job

    say([read_job(job_path(job)).text.rstrip("\n")])
