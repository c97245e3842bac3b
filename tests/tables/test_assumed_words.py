"""What is taken where a finding is not known: words for rules and facts that there are."""

from __future__ import annotations

from typing import get_args

import pytest

from estimator.rules.facts import rule_rows
from estimator.tables.assumed import assumed_words
from estimator.tables.facts import rows
from estimator.takeoff.records import Fact

MOST_LETTERS = 105


@pytest.mark.parametrize("row", rows("assumed"), ids=lambda row: str(row["finding"]))
def test_a_row_is_of_a_rule_and_of_facts_that_there_are(row: dict[str, str]) -> None:
    assert row["finding"].partition(":")[0] in rule_rows()
    assert set(row["facts"].split("|")) <= set(get_args(Fact))
    assert row["about"] and row["taken"]


@pytest.mark.parametrize("row", rows("assumed"), ids=lambda row: str(row["finding"]))
def test_it_fits_a_line_of_the_bid(row: dict[str, str]) -> None:
    assert len(row["about"] + row["taken"]) <= MOST_LETTERS


def test_a_subject_may_have_words_of_its_own() -> None:
    of_the_visit = assumed_words("permit", "inspection", "Permit and inspection")
    assert of_the_visit.finding == "permit:inspection"
    assert assumed_words("permit", "job", "Permit and inspection").finding == "permit"


def test_facts_are_named_one_by_one() -> None:
    assert assumed_words("breaker-wire", "circuit", "").facts == ("breaker", "wire", "metal")
    assert assumed_words("multiwire", "circuit", "").facts == ()


def test_a_rule_without_a_row_is_called_by_its_title() -> None:
    words = assumed_words("new-rule", "job", "Some New Rule")
    assert (words.finding, words.about) == ("new-rule", "some New Rule")
    assert words.taken == "as the rule asks"
