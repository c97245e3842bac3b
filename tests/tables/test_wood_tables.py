"""Figures of wood and house: every row has a source, a confidence and sane bounds."""

from __future__ import annotations

from fractions import Fraction

import pytest

from estimator.tables.facts import editions, lumber_depths_in, rows, sources
from estimator.tables.limits import LIMIT_TABLES, limit

TABLES = ("limits_house", "limits_wood")
CONFIDENCE = {"seen", "memory", "inferred", "common practice"}
UNITS = {"%", "in", "in2", "of depth", "of span", "count", "ft2", "year", "days"}
IRC = ("irc-2015", "irc-2018", "irc-2021")


@pytest.mark.parametrize("table", TABLES)
def test_tables_of_figures_are_read_and_sorted(table: str) -> None:
    keys = [(row["figure"], row["edition"]) for row in rows(table)]
    assert table in LIMIT_TABLES
    assert keys == sorted(set(keys))


@pytest.mark.parametrize("table", TABLES)
def test_every_figure_has_a_source_and_a_confidence(table: str) -> None:
    for row in rows(table):
        assert row["source"] in sources(), row
        assert row["confidence"] in CONFIDENCE, row
        assert row["unit"] in UNITS, row
        assert row["edition"] == "all" or row["edition"] in editions(), row
        assert row["where"], row


def test_figures_are_within_sane_bounds() -> None:
    for row in (row for table in TABLES for row in rows(table)):
        value, most = (
            Fraction(row["value"]),
            {"%": 60, "year": 1980, "in": 72, "in2": 100, "ft2": 100}.get(row["unit"], 30),
        )
        assert 0 < value <= most, row


def test_what_was_read_in_2018_is_from_memory_in_the_other_editions() -> None:
    told = {row["edition"]: set() for row in rows("limits_wood") if row["edition"] in IRC}
    for row in rows("limits_wood"):
        if row["edition"] in IRC and row["figure"] != "garage-board":
            told[row["edition"]].add(row["confidence"])
    assert told == {"irc-2015": {"memory"}, "irc-2018": {"seen"}, "irc-2021": {"memory"}}


@pytest.mark.parametrize("edition", IRC)
def test_the_garage_board_is_from_memory(edition: str) -> None:
    found = limit("garage-board", edition)
    assert (found.value, found.confidence) == (Fraction(1, 2), "memory")


# Building.md 1.3, 1.5, 1.6, 5.1 and 5.2, second reading.
@pytest.mark.parametrize(
    ("figure", "value"),
    [
        ("stud-hole-edge", "5/8"),
        ("stud-depth-least", "5/2"),
        ("stud-depth-most", "29/4"),
        ("plate-cut", "50"),
        ("plate-tie", "0.054"),
        ("joist-hole", "1/3"),
        ("joist-hole-edge", "2"),
        ("joist-notch", "1/6"),
        ("joist-notch-length", "1/3"),
        ("joist-end-notch", "1/4"),
        ("joist-middle", "1/3"),
        ("rated-box-apart", "24"),
        ("rated-box", "16"),
        ("rated-boxes", "100"),
        ("rated-boxes-within", "100"),
        ("joist-thick", "4"),
        ("steel-plate", "1/16"),
        ("lead-year", "1978"),
        ("lead-room", "6"),
        ("lead-outdoors", "20"),
        ("lead-near", "4"),
        ("lead-days", "30"),
        ("asbestos-year", "1980"),
    ],
)
def test_figures_as_in_the_sources(figure: str, value: str) -> None:
    assert {limit(figure, edition).value for edition in IRC} == {Fraction(value)}


def test_slimmest_and_deepest_stud_are_sizes_on_file() -> None:
    depths = lumber_depths_in()
    assert limit("stud-depth-least", "irc-2021").value == depths["2x3"]
    assert limit("stud-depth-most", "irc-2021").value == depths["2x8"]
