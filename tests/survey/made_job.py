"""A small sound job as text, and ways to change it and read what is said of the change."""

from __future__ import annotations

import tomllib
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest

from estimator.problems import InputError, Problem
from estimator.survey.reader import JobFile, job_from_text
from estimator.survey.records import Survey

HERE = "# here"
"""Marks the line that a problem must name."""

NAME = Path("job.toml")

TEXT = """\
[job]
id = "J1"
title = "One more outlet"

[circuit]
breaker = 15
wire = "14"

[[walls]]
id = "north"
length = "12 ft"
height = "8 ft"
stud = "2x4"
spacing = "16 in"
layout_from = "16 in"

[[walls]]
id = "east"
length = "10 ft"

[[corners]]
walls = ["north", "east"]

[[tees]]
wall = "east"
at = "5 ft"

[[windows]]
wall = "east"
left = "6 ft"
width = "3 ft"
bottom = "3 ft"
height = "4 ft"

[[members]]
wall = "north"
kind = "nog"
height = "4 ft"

[[obstacles]]
wall = "north"
kind = "pipe"
left = "90 in"
right = "92 in"
bottom = "0 in"
top = "8 ft"

[[levels]]
kind = "attic"
accessible = "yes"
height = "100 in"

[[boxes]]
id = "source"
existing = true
wall = "north"
x = "34 in"
height = "15 in"
volume = "18 in3"
clamps = "no"
cables = ["14-2"]

[[boxes]]
id = "new"
wall = "north"
x = "105 in"
height = "15 in"

[[runs]]
id = "1"
from = "source"
to = "new"
cable = "14-2"
way = "wall"
stapled_at = ["source"]

[[openings]]
id = "strip"
wall = "north"
left = "33 in"
right = "106 in"
bottom = "0 in"
top = "4-1/2 in"

[finish]
scope = "painted"
"""


def changed(*swaps: tuple[str, str], text: str = TEXT) -> str:
    """The job with each old piece of text, the first of its kind, swapped for a new one."""
    for old, new in swaps:
        assert old in text, f"{old!r} is not in the job"
        text = text.replace(old, new, 1)
    return text


def read(text: str) -> JobFile:
    """Read a sound job."""
    return job_from_text(text, NAME)


def survey(text: str) -> Survey:
    """What a sound job says."""
    return read(text).survey


def problems(text: str) -> tuple[Problem, ...]:
    """Everything that is said of a job that is not sound."""
    with pytest.raises(InputError) as caught:
        job_from_text(text, NAME)
    return caught.value.problems


def lines_named(found: tuple[Problem, ...]) -> list[int]:
    """The line that each problem names."""
    return [int(each.where.split("line ")[1].split(",")[0]) for each in found]


def marked_lines(text: str) -> list[int]:
    """Lines that end in the mark."""
    return [row for row, line in enumerate(text.splitlines(), start=1) if line.endswith(HERE)]


def values(text: str) -> dict[str, Any]:
    """The job as plain values."""
    return tomllib.loads(text, parse_float=Decimal)
