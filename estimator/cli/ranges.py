"""`estimator range`: how far hours and total of a job may come out otherwise."""

from __future__ import annotations

import sys
from typing import Annotated

import typer

from estimator.cli.jobs import Priced, price_job
from estimator.cli.options import BooksOption, JobArgument, JsonOption
from estimator.cli.terminal import BAD_INPUT, say, tell, told
from estimator.settings_risk import LEAST_DRAWS, MOST_DRAWS, MOST_SEED

EXAMPLE = "Example: estimator range my-job.toml --draws 200000 --seed 7"

DrawsOption = Annotated[
    int | None,
    typer.Option(
        "--draws",
        min=LEAST_DRAWS,
        max=MOST_DRAWS,
        metavar="N",
        help="How often to draw the job by chance, in place of the setting.",
        show_default=False,
    ),
]
SeedOption = Annotated[
    int | None,
    typer.Option(
        "--seed",
        min=0,
        max=MOST_SEED,
        metavar="N",
        help="Another deal of chance; the same seed gives the same figures.",
        show_default=False,
    ),
]


def range_(
    job: JobArgument,
    draws: DrawsOption = None,
    seed: SeedOption = None,
    books: BooksOption = None,
    as_json: JsonOption = False,
) -> None:
    """Show how far hours and total may come out otherwise."""
    with told(as_json=as_json):
        priced = price_job(job, books)
        tell(priced.notes)
        say(_shown(priced, draws, seed, as_json=as_json))
        _end_if_stopped(priced)


def _shown(priced: Priced, draws: int | None, seed: int | None, *, as_json: bool) -> list[str]:
    from estimator.outputs.json_out import range_json
    from estimator.outputs.text_range import range_text
    from estimator.pricing.risk import price_range

    found = price_range(priced.bid, draws, seed)
    if as_json:
        return [range_json(priced.bid, found, priced.notes)]
    return range_text(priced.bid, found)


def _end_if_stopped(priced: Priced) -> None:
    from estimator.outputs.text_check import how_to_accept

    stopped = how_to_accept(priced.bid, str(priced.path))
    if stopped:
        tell(["", *stopped])
        sys.exit(BAD_INPUT)
