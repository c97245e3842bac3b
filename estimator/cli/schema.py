"""`estimator schema`: the JSON Schema of what `--json` prints."""

from __future__ import annotations

import json
from enum import StrEnum
from typing import Annotated

import typer

from estimator.cli.terminal import say, told

EXAMPLE = "Example: estimator schema bid > bid.schema.json"


class Document(StrEnum):
    """The documents that commands print with --json."""

    BID = "bid"
    TAKEOFF = "takeoff"
    SHOPPING_LIST = "shopping-list"
    CREW = "crew"
    CHECK = "check"
    COMPARE = "compare"
    RANGE = "range"
    CHANGE = "change"
    CLOSE_OUT = "close-out"
    BOOKS = "books"
    RATE = "rate"
    BATCH = "batch"
    CATALOG_CHECK = "catalog-check"
    CATALOG_SHOW = "catalog-show"
    CATALOG_UPDATE = "catalog-update"
    PROBLEMS = "problems"


def schema(
    name: Annotated[
        Document,
        typer.Argument(
            metavar="NAME",
            help=f"One of {', '.join(Document)}; problems is what bad input gives.",
            show_choices=False,
        ),
    ],
) -> None:
    """Print the JSON Schema of what a command prints with --json."""
    with told():
        from estimator.outputs.json_out import document_schema

        say([json.dumps(document_schema(name), indent=2)])
