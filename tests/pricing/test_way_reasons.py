"""Why each way has its rank; costs as in S14, worked by hand."""

from __future__ import annotations

from decimal import Decimal
from functools import partial
from typing import cast

import pytest

from estimator.money import show_money
from estimator.pricing.way_reasons import reasons_for
from estimator.pricing.ways import finding_counts
from estimator.pricing.work import Work
from estimator.rules.records import Finding
from tests.pricing.made_ways import DOLLARS, Cost, Way, way

EUROS = partial(show_money, currency="EUR", locale="de_DE")
A, B, C = way("168.49", "14.26"), way("542.13", "32.86"), way("133.07", "8.68")
SHUT = way("133.07", "8.68", blocked="level-access:run C")


def test_the_reasons_of_the_worked_ways() -> None:
    """S14: A 182.75, B 574.99, C 141.75; differences 41.00 and 433.24."""
    assert reasons_for([("C", C), ("A", A), ("B", B)], DOLLARS) == (
        "costs $41.00 less than A (labor -$35.42, materials -$5.58)",
        "costs $41.00 more than C (labor +$35.42, materials +$5.58)",
        "costs $433.24 more than C (labor +$409.06, materials +$24.18)",
    )


def test_a_way_that_is_blocked_says_by_what() -> None:
    first, second, third = reasons_for([("A", A), ("B", B), ("C", SHUT)], DOLLARS)
    assert first == "costs $392.24 less than B (labor -$373.64, materials -$18.60)"
    assert second == "costs $392.24 more than A (labor +$373.64, materials +$18.60)"
    assert third == (
        "blocked by level-access:run C; costs $41.00 less than A (labor -$35.42, materials -$5.58)"
    )


def test_the_only_way_that_is_open() -> None:
    assert reasons_for([("A", A), ("C", SHUT)], DOLLARS)[0] == "the only way that no finding blocks"


def test_every_way_is_blocked() -> None:
    first, _ = reasons_for([("C", SHUT), ("D", SHUT)], DOLLARS)
    assert first == "every way is blocked; blocked by level-access:run C"


@pytest.mark.parametrize(
    ("only", "want"),
    [
        (A, "the only way in this survey"),
        (SHUT, "the only way in this survey; blocked by level-access:run C"),
        (
            way("1", "2", unpriced="glue"),
            "the only way in this survey; its cost leaves out what has no price: glue",
        ),
    ],
)
def test_one_way(only: Work, want: str) -> None:
    assert reasons_for([("the only way", only)], DOLLARS) == (want,)


def test_items_without_a_price_are_named() -> None:
    half = way("100.00", "8.68", unpriced="glue")
    first, second = reasons_for([("A", A), ("D", half)], DOLLARS)
    assert first == (
        "the only way whose every item has a price; "
        "costs $74.07 more than D (labor +$68.49, materials +$5.58)"
    )
    assert second == (
        "costs $74.07 less than A (labor -$68.49, materials -$5.58); "
        "its cost leaves out what has no price: glue"
    )


def test_where_no_way_is_priced_in_full_the_best_says_so_too() -> None:
    half, more = way("100.00", "8.00", unpriced="glue"), way("101.00", "8.00", unpriced="glue")
    assert reasons_for([("D", half), ("E", more)], DOLLARS)[0] == (
        "costs $1.00 less than E (labor -$1.00); its cost leaves out what has no price: glue"
    )


def test_the_only_open_way_that_is_not_priced_in_full() -> None:
    half = way("100.00", "8.00", unpriced="glue")
    assert reasons_for([("D", half), ("C", SHUT)], DOLLARS)[0] == (
        "the only way that no finding blocks; its cost leaves out what has no price: glue"
    )


def test_several_findings_and_items_are_parted_by_commas() -> None:
    cost = Cost(Decimal(1), Decimal(2), ("glue", "nails"))
    odd = cast(Work, Way(cost, ("one:run 1", "two:run 2")))
    assert reasons_for([("the only way", odd)], DOLLARS) == (
        "the only way in this survey; blocked by one:run 1, two:run 2",
    )
    both = cast(Work, Way(cost))
    assert reasons_for([("the only way", both)], DOLLARS) == (
        "the only way in this survey; its cost leaves out what has no price: glue, nails",
    )


def test_amounts_stand_as_the_locale_of_the_job_writes_them() -> None:
    """1,041.00 more of labor; the euro stands behind, after a space that does not break."""
    dear = way("1174.07", "8.68")
    assert reasons_for([("C", C), ("D", dear)], EUROS)[1] == (
        "costs 1.041,00\u00a0€ more than C (labor +1.041,00\u00a0€)"
    )


def test_ways_of_one_cost() -> None:
    assert reasons_for([("A", A), ("D", A)], EUROS) == (
        "costs the same as D",
        "costs the same as A",
    )


def found(verdict: str, **more: object) -> Finding:
    return Finding("rule", "job", verdict, "", "", "", **more)  # type: ignore[arg-type]


def test_findings_are_counted_by_what_became_of_them() -> None:
    counts = finding_counts([
        found("fail"), found("fail", remedied=True), found("fail", remedied=True, accepted="yes"),
        found("fail", accepted="yes"), found("fail", accepted="yes"), found("fail", accepted="yes"),
        *[found("unknown")] * 4, *[found("note")] * 5, *[found("pass")] * 6,
    ])  # fmt: skip
    assert (counts.failed, counts.put_right, counts.accepted) == (1, 2, 3)
    assert (counts.unknown, counts.notes, counts.passed) == (4, 5, 6)
