"""S19, the bookkeeper closes a job; worked by hand to the cent."""

from __future__ import annotations

from decimal import Decimal

import pytest

from estimator.ledger.bought import bought_lines
from estimator.ledger.compare import compare
from estimator.ledger.comparison import CompareLine
from estimator.ledger.reader import CloseOutFile
from tests.ledger.made_close_out import S19, changed, closed

JOB = compare(closed())
LINES = {line.name: line for line in (*JOB.costs, JOB.total, JOB.price)}


def receipt(file: CloseOutFile) -> list[Decimal]:
    return [line.tax for line in bought_lines(file, "USD") if line.paper == "receipts"]


def test_the_receipt_with_its_tax() -> None:
    """135.17 x 8.25 % = 11.1515 -> 11.15; with it 146.32."""
    lines = [line for line in bought_lines(closed().file, "USD") if line.paper == "receipts"]
    assert sum(line.net for line in lines) == Decimal("135.17")
    assert sum(line.gross for line in lines) == Decimal("146.32")


def test_the_tax_is_split_by_largest_remainder() -> None:
    """Rounding each line alone gives 1,116 cents, one too many."""
    assert [tax * 100 for tax in receipt(closed().file)] == [512, 339, 186, 78]


def test_the_return_with_its_tax() -> None:
    (line,) = (line for line in bought_lines(closed().file, "USD") if line.paper == "returns")
    assert (line.net, line.tax, line.gross) == (Decimal("7.85"), Decimal("0.65"), Decimal("8.50"))


def test_what_the_materials_of_the_job_are_made_of() -> None:
    """62.10 + 5.12 - 8.50 + 18.48 = 77.20."""
    amounts = [part.amount for part in JOB.parts]
    assert amounts == [Decimal("67.22"), Decimal("-8.50"), Decimal("18.48")]


@pytest.mark.parametrize(
    ("name", "estimated", "actual", "difference", "pct"),
    [
        ("materials", "84.00", "77.20", "-6.80", "-8.1"),
        ("labor", "209.00", "275.50", "66.50", "31.8"),
        ("all costs", "293.00", "352.70", "59.70", "20.4"),
        ("price", "640.00", "640.00", "0.00", "0.0"),
    ],
)
def test_each_line_against_the_estimate(
    name: str, estimated: str, actual: str, difference: str, pct: str
) -> None:
    figures = map(Decimal, (estimated, actual, difference, pct))
    assert LINES[name] == CompareLine(name, *figures)


def test_the_margin_before_and_after() -> None:
    before, after = JOB.estimated_margin, JOB.actual_margin
    assert (before.amount, before.pct) == (Decimal("347.00"), Decimal("54.2"))
    assert (after.amount, after.pct) == (Decimal("287.30"), Decimal("44.9"))


def test_the_deposit_is_over_the_lesser_cap() -> None:
    """30 % of 640.00 is 192.00; the cap is the lesser of 1,000 and 10 %: 64.00."""
    check = JOB.deposit
    assert (check.asked, check.cap, check.over) == (Decimal("192.00"), Decimal("64.00"), True)


@pytest.mark.parametrize(("asked", "over"), [("10", False), ("10.01", True)])
def test_a_deposit_at_the_cap_is_not_over_it(asked: str, over: bool) -> None:
    """10.01 % of 640.00 is 64.064 -> 64.06."""
    job = compare(closed(changed(S19, ("asked_pct = 30", f"asked_pct = {asked}"))))
    assert job.deposit.over is over


def test_hours_of_the_whole_job() -> None:
    (phase,) = JOB.phases
    assert (phase.hours.estimated, phase.hours.actual) == (Decimal("5.5"), Decimal("7.25"))
    assert phase.hours.difference_pct == Decimal("31.8")
