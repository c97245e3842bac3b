"""Close-out files with anything in them: problems in words, never a traceback."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from estimator.ledger.compare import compare
from estimator.ledger.entries import entries_of
from estimator.ledger.estimated import Closed
from estimator.ledger.reader import close_out_from_text
from estimator.problems import InputError
from tests.ledger.made_close_out import S19, us_books

LINES = [line for line in S19.splitlines() if line]
JUNK = [
    *("1", "-1", "0", '""', '"x"', "true", "[]", "[1]", "{}", "{ a = 1 }", "2026-13-45"),
    *("2026-03-20", "1e30", "0.0000001", "inf", "[[1]]", '["job"]', "1979-05-27T07:32:00Z"),
]


def used(text: str) -> None:
    """Read a file and use all of it, or get problems that print."""
    try:
        job = Closed(close_out_from_text(text, Path("c.toml")), us_books(), None)
        if job.file.record.estimate is not None:
            compare(job)
        entries_of([job])
    except InputError as error:
        assert all(each.where and each.read.isprintable() for each in error.problems)


@settings(max_examples=300, deadline=None)
@given(st.integers(0, len(LINES) - 1), st.sampled_from(JUNK))
def test_any_value_may_be_anything(at: int, junk: str) -> None:
    line = re.sub(r"= .*", f"= {junk}", LINES[at]) if "=" in LINES[at] else LINES[at]
    used("\n".join([*LINES[:at], line, *LINES[at + 1 :]]))


@settings(max_examples=100, deadline=None)
@given(st.integers(0, len(LINES) - 1))
def test_any_line_may_be_missing(at: int) -> None:
    used("\n".join([*LINES[:at], *LINES[at + 1 :]]))


@pytest.mark.parametrize(
    "text",
    ["", "x", "close_out = 1", "[[close_out]]", "[close_out]", "receipts = 5", "runs = []",
     '[close_out]\njob = 1\nestimate = 2', "[close_out]\n[receipts]\na = 1",
     "[close_out]\n[[receipts]]\nlines = 5\n[[receipts]]\nlines = [5]",
     '[close_out]\njob = "a"\ndate = 2026-01-01\n[estimate]\nprice = 1e9\nmaterials = 1e9\n'
     "labor_hours = 1e9"],
)  # fmt: skip
def test_odd_files(text: str) -> None:
    used(text)
