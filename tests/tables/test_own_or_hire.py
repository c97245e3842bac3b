"""What money does not show: every topic for every country, and the source with each."""

from __future__ import annotations

import re

import pytest

from estimator.tables.own_or_hire import matters


def topics(country: str) -> list[str]:
    return [each.topic for each in matters(country)]


def test_a_country_without_its_own_words_gets_the_general_ones() -> None:
    assert topics("GB") == ["Permit", "Insurance", "Warranty", "Risk", "When you sell"]


def test_the_words_for_the_united_states_stand_in_place_of_the_general_ones() -> None:
    assert topics("US") == [
        "Permit", "Where owners may not", "Terms of a permit, in one state",
        "Work that fails the inspection, in one town", "Insurance", "Warranty", "Risk",
        "When you sell",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("topic", "says", "cite"),
    [
        ("Terms of a permit, in one state", "valid for one year", "24 Delaware Code 1417"),
        ("Work that fails the inspection, in one town", "a new fee", "Carlisle, Massachusetts"),
        ("Insurance", "a letter from the home insurer", "Carlisle, Massachusetts"),
        ("Where owners may not", "no owner may wire", "(from memory: check)"),
    ],
)
def test_what_was_read_is_told_with_its_source(topic: str, says: str, cite: str) -> None:
    """24 Del. C. 1417; the town page of Carlisle; secondary legal pages."""
    (row,) = (each for each in matters("US") if each.topic == topic)
    assert says in row.own
    assert cite in row.cite


@pytest.mark.parametrize("country", ["US", "CA", "GB"])
def test_no_row_takes_sides_or_promises(country: str) -> None:
    for each in matters(country):
        said = f"{each.own} {each.hire}".lower()
        assert not re.search(r"\b(safe|safer|better|worse|should not|approved?)\b", said)
        assert each.own and each.hire and each.cite


def test_nothing_of_the_united_states_is_told_elsewhere() -> None:
    said = " ".join(f"{each.own} {each.hire} {each.cite}" for each in matters("CA"))
    assert "Delaware" not in said and "Massachusetts" not in said
