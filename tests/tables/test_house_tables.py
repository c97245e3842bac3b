"""Cautions and the test and safety list: sources, countries, words."""

from __future__ import annotations

import re

import pytest

from estimator.tables.facts import NotOnFile, rows, sources
from estimator.tables.house import ANY, caution, safety_lines

CONFIDENCE = {"seen", "memory", "inferred", "common practice"}
US_LAW = re.compile(r"EPA|OSHA|CFR|NEC|IRC|\b811\b|CPSC|GFCI|AFCI|AWG|\bft\b|\bin\b \d|\d in\b")
PROMISES = re.compile(r"\b(safe|safely|approved|guaranteed)\b", re.IGNORECASE)


@pytest.mark.parametrize("table", ["cautions", "safety_list"])
def test_every_row_has_a_source_and_a_confidence(table: str) -> None:
    for row in rows(table):
        assert row["source"] in sources(), row
        assert row["confidence"] in CONFIDENCE, row
        assert row["country"] in ("US", ANY), row
        assert row["text"].endswith("."), row


def test_common_practice_is_marked_as_such() -> None:
    for row in (*rows("cautions"), *rows("safety_list")):
        trade = row["source"] == "common-practice"
        assert trade == (row["confidence"] == "common practice"), row


def test_cautions_are_sorted_and_single() -> None:
    keys = [(row["caution"], row["country"]) for row in rows("cautions")]
    assert keys == sorted(set(keys))


def test_lines_are_numbered_in_order() -> None:
    numbers = [row["line"] for row in rows("safety_list")]
    assert numbers == [f"{number:02d}" for number in range(1, len(numbers) + 1)]


@pytest.mark.parametrize("table", ["cautions", "safety_list"])
def test_general_rows_name_no_us_law_and_no_us_unit(table: str) -> None:
    for row in rows(table):
        if row["country"] == ANY:
            said = row["text"] + (sources()[row["source"]]["title"] if table == "cautions" else "")
            assert not US_LAW.search(said), row


@pytest.mark.parametrize("table", ["cautions", "safety_list"])
def test_no_row_promises_anything(table: str) -> None:
    assert not [row for row in rows(table) if PROMISES.search(row["text"])]


def test_a_caution_in_the_words_of_the_country() -> None:
    assert "call 811" in caution("digging", "US").text
    assert "call 811" not in caution("digging", "GB").text
    assert caution("plaster", "US") == caution("plaster", "GB")


def test_a_caution_is_cited_with_its_confidence() -> None:
    assert caution("lead-tested", "US").cite.endswith(", 745.82 (from memory: check)")
    assert caution("lead-over", "US").text.endswith(" (from memory: check)")
    assert caution("digging", "US").cite == "811, guidance for homeowners who dig"
    assert caution("digging", "US").text.endswith("not marked.")


def test_a_caution_that_is_not_on_file() -> None:
    with pytest.raises(NotOnFile, match="'lead-over in GB' is not on file; on file are asbestos"):
        caution("lead-over", "GB")


def test_a_line_of_the_country_goes_before_the_general_one() -> None:
    us, other = ([each.text for each in safety_lines(country)] for country in ("US", "GB"))
    assert "Call 811 two to three business days before any digging." in us
    assert "Have buried lines marked before any digging." not in us
    assert "Have buried lines marked before any digging." in other
    assert not [text for text in other if US_LAW.search(text)]


def test_lines_from_memory_say_so() -> None:
    said = [each.text for each in safety_lines("US") if each.text.startswith("Nor does it see")]
    assert said == [
        "Nor does it see neutral and ground swapped, or a poor ground. (from memory: check)"
    ]
