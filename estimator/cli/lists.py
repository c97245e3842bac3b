"""`estimator takeoff`, `check` and `compare`: one priced job, three lists."""

from __future__ import annotations

import sys
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from estimator.cli.jobs import price_job
from estimator.cli.options import BooksOption, JobArgument, JsonOption, TestsOption
from estimator.cli.terminal import BAD_INPUT, say, tell, told

if TYPE_CHECKING:
    from estimator.pricing.records import Bid

    JsonList = Callable[[Bid, tuple[str, ...]], str]
    TextList = Callable[[Bid], list[str]]

TAKEOFF_EXAMPLE = "Example: estimator takeoff my-job.toml"
CHECK_EXAMPLE = "Example: estimator check my-job.toml --json"
COMPARE_EXAMPLE = "Example: estimator compare my-job.toml"


def takeoff(job: JobArgument, books: BooksOption = None, as_json: JsonOption = False) -> None:
    """List parts and work, each with the sum behind it."""
    with told(as_json=as_json):
        from estimator.outputs.json_out import takeoff_json
        from estimator.outputs.text_takeoff import takeoff_text

        list_job(job, books, takeoff_json if as_json else None, takeoff_text)


def check(
    job: JobArgument,
    books: BooksOption = None,
    tests: TestsOption = False,
    as_json: JsonOption = False,
) -> None:
    """List every finding of the rules, worst first."""
    with told(as_json=as_json):
        from estimator.outputs.json_out import check_json
        from estimator.outputs.text_check import check_text, list_of_tests

        list_job(
            job, books, check_json if as_json else None, list_of_tests if tests else check_text
        )


def compare(job: JobArgument, books: BooksOption = None, as_json: JsonOption = False) -> None:
    """Rank the ways, and set doing it yourself against hiring."""
    with told(as_json=as_json):
        from estimator.outputs.json_out import compare_json
        from estimator.outputs.text_compare import compare_text

        list_job(job, books, compare_json if as_json else None, compare_text)


def list_job(
    job: str,
    books: Path | None,
    to_json: JsonList | None,
    to_text: TextList,
    *,
    language: str = "",
) -> None:
    """Price the job, print one list of it, and end with 1 where a finding stops the bid."""
    from estimator.outputs.text_check import how_to_accept

    priced = price_job(job, books, language=language)
    tell(priced.notes)
    say([to_json(priced.bid, priced.notes)] if to_json else to_text(priced.bid))
    stopped = how_to_accept(priced.bid, str(priced.path))
    if stopped:
        tell(["", *stopped])
        sys.exit(BAD_INPUT)
