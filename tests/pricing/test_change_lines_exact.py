"""Quantities, hours and findings of two bids side by side; all of it worked by hand."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal
from functools import cache

import pytest

from estimator.pricing.change_lines import changed_lines, rechecks
from estimator.pricing.change_records import ChangedLine, Recheck
from estimator.pricing.records import Bid
from estimator.rules.records import Finding, Verdict
from tests.pricing.change_case import changed, figures


@cache
def nightstand(basis: str = "expected") -> Bid:
    """Nothing is built on its lists here but what each test puts in."""
    return changed(figures().replace('"likely"', f'"{basis}"'), changes=()).before


def tasks(bid: Bid, *hours: str, task: str = "set-up") -> Bid:
    """The bid with lines of one task only: quantity 2, and hours low, likely, high in one word."""
    lines = []
    for each in hours:
        low, likely, high = (Decimal(one) for one in each.split())
        lines.append(
            replace(
                bid.labor[0], task=task, description="Work", unit="job", quantity=Decimal(2),
                hours_low=low, hours_likely=likely, hours_high=high,
            )
        )  # fmt: skip
    return replace(bid, labor=tuple(lines))


@pytest.mark.parametrize(("basis", "hours"), [("expected", "5.5"), ("likely", "4")])
def test_two_lines_of_one_task_are_added_on_the_basis_charged(basis: str, hours: str) -> None:
    """(1 + 4 x 2 + 6) / 6 = 2.5, and (1 + 8 + 9) / 6 = 3."""
    bid = nightstand(basis)
    (line,) = changed_lines(tasks(bid), tasks(bid, "1 2 6", "1 2 9"))
    assert line == ChangedLine(
        "work", "set-up", "Work", "job", Decimal(0), Decimal(4), Decimal(0), Decimal(hours)
    )
    assert (line.status, line.hours_added, line.hours_dropped) == (
        "added",
        Decimal(hours),
        Decimal(0),
    )


def test_a_task_that_is_gone_keeps_its_words_and_unit() -> None:
    bid = nightstand()
    (line,) = changed_lines(tasks(bid, "1 2 3"), tasks(bid))
    assert line == ChangedLine(
        "work", "set-up", "Work", "job", Decimal(2), Decimal(0), Decimal(2), Decimal(0)
    )
    assert (line.status, line.hours_added, line.hours_dropped) == (
        "dropped",
        Decimal(0),
        Decimal(2),
    )


@pytest.mark.parametrize(("old", "new"), [((2, 3), (4,)), ((4,), ()), ((), (1, 1))])
def test_parts_of_one_item_are_added(old: Sequence[int], new: Sequence[int]) -> None:
    bid = nightstand()

    def parts(counts: Sequence[int]) -> Bid:
        made = bid.takeoff.parts[0]
        lines = tuple(
            replace(made, item="x", description="Part", unit="each", quantity=Decimal(count))
            for count in counts
        )
        return replace(bid, takeoff=replace(bid.takeoff, parts=lines))

    zero = Decimal(0)
    want = ChangedLine(
        "part", "x", "Part", "each", Decimal(sum(old)), Decimal(sum(new)), zero, zero
    )
    assert changed_lines(parts(old), parts(new)) == (want,)


def finding(rule: str, verdict: Verdict = "pass", figures: str = "1", **more: object) -> Finding:
    made = Finding(rule, "job", verdict, figures, "cite", "nec-2023", "do this", title=f"On {rule}")
    return replace(made, **more)  # type: ignore[arg-type]


def compared(old: Sequence[Finding], new: Sequence[Finding]) -> tuple[Recheck, ...]:
    bid = nightstand()
    return rechecks(replace(bid, findings=tuple(old)), replace(bid, findings=tuple(new)))


def test_findings_that_moved_came_or_went_are_told_whole() -> None:
    """One says the same and is left out."""
    got = compared(
        [finding("a"), finding("b", "fail", "2"), finding("same")],
        [finding("same"), finding("b", "fail", "3"), finding("c", "unknown", "4")],
    )
    assert got == (
        Recheck("c:job", "On c", "", "", "unknown", "4", "do this", stops=False),
        Recheck("a:job", "On a", "pass", "1", "", "", "", stops=False),
        Recheck("b:job", "On b", "fail", "2", "fail", "3", "do this", stops=False),
    )


@pytest.mark.parametrize("rule", ["box-fill", "box-fill-canada", "lead-paint"])
def test_some_findings_are_told_though_nothing_moved(rule: str) -> None:
    assert [each.finding_id for each in compared([finding(rule)], [finding(rule)])] == [
        f"{rule}:job"
    ]


def test_what_stops_the_job_comes_first_then_what_moved() -> None:
    got = compared(
        [finding("box-fill"), finding("moved")],
        [finding("box-fill"), finding("moved", "unknown"), finding("stop", "fail", blocking=True)],
    )
    assert [each.finding_id for each in got] == ["stop:job", "moved:job", "box-fill:job"]
    assert [each.stops for each in got] == [True, False, False]


def test_a_finding_that_was_put_right_says_so() -> None:
    (got,) = compared([finding("a", "fail")], [finding("a", "fail", "2", remedied=True)])
    assert (got.verdict_before, got.verdict_after) == ("fail", "put right")
