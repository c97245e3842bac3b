"""What stands in two files, or is half a cent, is counted once and as the books post it."""

from __future__ import annotations

from decimal import Decimal

import pytest

from estimator.ledger.compare import compare
from estimator.ledger.entries import entries_of
from estimator.problems import InputError
from tests.ledger.made_close_out import S19, changed, closed

OTHER = changed(S19, ('"S19"', '"S20"'), ("R-1", "R-2"), ("C-1", "C-2"), ('"job:S20"', '"job:S19"'))
PAID = """
[[invoices]]
date = 2026-03-15
doc_no = "1"
other = 20.02

[[payments]]
date = 2026-03-16
doc_no = "a"
kind = "deposit"
amount = 10.005

[[payments]]
date = 2026-03-16
doc_no = "b"
kind = "deposit"
amount = 10.005
"""


def test_the_lines_of_another_job_s_papers_are_counted_once() -> None:
    """77.20, and of the other receipt 41.05 with its 3.39 of tax."""
    others = [closed(OTHER, "other.toml").file]
    materials = compare(closed(), others).costs[0]
    assert materials.actual == Decimal("121.64")


@pytest.mark.parametrize("texts", [(S19,), (OTHER, OTHER)])
def test_a_file_that_is_there_twice_is_refused(texts: tuple[str, ...]) -> None:
    with pytest.raises(InputError, match="stands already in"):
        compare(closed(), [closed(text, "again.toml").file for text in texts])


def test_half_cents_paid_come_in_as_the_books_post_them() -> None:
    """10.005 is posted as 10.01, twice: 20.02, and nothing is owed."""
    job = closed(S19 + PAID)
    bank = [each.debit for each in entries_of([job]) if each.doc_type == "deposit received"]
    assert sum(bank) == Decimal("20.02")
    made = compare(job)
    assert (made.deposit.received, made.balance_due) == (Decimal("20.02"), Decimal("0.00"))
