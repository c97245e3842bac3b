"""What two job files state differently. Expected values worked by hand."""

from __future__ import annotations

import tomllib
from decimal import Decimal
from pathlib import Path

import pytest

from estimator.survey.differences import ChangedFact, changed_facts

SAMPLE = Path(__file__).parents[2] / "samples" / "nightstand.toml"
OLD = """
[job]
id = "7"
year_built = 1996
[[boxes]]
id = "source"
cables = ["14-2"]
[[boxes]]
id = "new"
height = "15 in"
[[runs]]
id = "1"
legs = [{ go = "up", length = "1 ft" }, { go = "along", length = "6 ft" }]
"""


def told(*changes: tuple[str, str]) -> list[tuple[str, str, str]]:
    """Facts said to differ after pieces of the file were replaced."""
    new = OLD
    for before, after in changes:
        assert before in new
        new = new.replace(before, after)
    found = changed_facts(tomllib.loads(OLD), tomllib.loads(new))
    return [(each.about, each.before, each.after) for each in found]


def test_the_same_file_has_no_changes() -> None:
    """Nothing is told of two files that say the same."""
    raw = tomllib.loads(SAMPLE.read_text(encoding="utf-8"))
    assert changed_facts(raw, raw) == ()


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (('"15 in"', '"4 ft"'), ("boxes new: height", "15 in", "4 ft")),
        (("1996", "1964"), ("job: year built", "1996", "1964")),
        (('["14-2"]', '["14-2", "14-3"]'), ("boxes source: cables", "14-2", "14-2, 14-3")),
        (('"6 ft"', '"8 ft"'), ("runs 1: legs 2: length", "6 ft", "8 ft")),
        (("year_built = 1996", ""), ("job: year built", "1996", "not stated")),
        (("[job]", "[finish]\npaint = true\n[job]"), ("finish: paint", "not stated", "yes")),
    ],
)
def test_one_fact_that_differs(change: tuple[str, str], said: tuple[str, str, str]) -> None:
    """A changed, dropped or added fact, as typed, with its place."""
    assert told(change) == [said]


def test_a_row_that_only_moved_is_no_change() -> None:
    """Boxes are matched by id, not by their place in the file."""
    old = {"boxes": [{"id": "a", "x": 1}, {"id": "b", "x": 2}]}
    new = {"boxes": [{"id": "b", "x": 2}, {"id": "a", "x": 1}]}
    assert changed_facts(old, new) == ()


def test_a_row_of_its_name_alone_is_told() -> None:
    """A box that states nothing but its id is still a box more."""
    found = changed_facts({"boxes": [{"id": "a"}]}, {"boxes": [{"id": "a"}, {"id": "b"}]})
    assert found == (ChangedFact("boxes b", "not stated", "listed"),)


def test_rows_without_names_are_numbered() -> None:
    """Two rows of one name are told apart by their number."""
    old = {"stock": [{"item": "x", "n": 1}, {"item": "x", "n": 2}]}
    new = {"stock": [{"item": "x", "n": 1}, {"item": "x", "n": Decimal("2.50")}]}
    assert changed_facts(old, new) == (ChangedFact("stock 2: n", "2", "2.50"),)


@pytest.mark.parametrize("table", ["settings", "versions", "books"])
def test_settings_and_versions_are_no_facts_of_the_house(table: str) -> None:
    """What belongs to the bid, and not to the house, is left out."""
    assert changed_facts({}, {table: {"x": 1}}) == ()
