"""Rows of the Assumptions and sources sheet: what a clear bid states, and what this one does."""

from __future__ import annotations

from collections.abc import Iterator

from estimator.outputs import looks
from estimator.outputs.cells import Row, words
from estimator.outputs.clear_bid import StatedField, clear_bid
from estimator.outputs.draft import NOT_STATED, Draft
from estimator.tables.facts import sources

CLEAR_HEADERS = ("Line", "Field", "What this bid states", "How sure the source is", "Asked for by")


def clear_rows(draft: Draft) -> Iterator[Row]:
    """Each field of the list: what the bid says of it, and who asks for it."""
    for each in clear_bid(draft.bid):
        said = words(each.said) if each.said else words(NOT_STATED, looks.STRONG)
        yield [words(each.title), said, words(each.confidence), words(_asked_by(each))]


def _asked_by(each: StatedField) -> str:
    title = sources()[each.source]["title"]
    return f"{title}: {each.where}" if each.where else title
