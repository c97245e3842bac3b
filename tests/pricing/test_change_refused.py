"""A change where book prices hold tax, and one between two currencies; worked by hand."""

from __future__ import annotations

from decimal import Decimal

import pytest

from estimator.problems import InputError
from tests.pricing.change_case import changed, figures

STATED = "\n[overrides]\nlabor_hours = 2\nmaterials_cost = {}\ntrips = 1\n"
GROSS = 'mode = "{}"\npurchase_rate_pct = 10\nprices_include_tax = true\npurchase_tax = "{}"'


@pytest.mark.parametrize("mode", ["paid-at-purchase", "purchase-and-labor", "gross-receipts"])
@pytest.mark.parametrize(
    ("how", "sell"),
    [("before-markup", "143.00"), ("after-markup", "140.00"), ("not-recovered", "130.00")],
)
def test_tax_in_book_prices_is_not_paid_twice(mode: str, how: str, sell: str) -> None:
    """110.00 more holds 10.00 of tax: (100 + 10) x 1.3, 100 x 1.3 + 10, and 100 x 1.3."""
    tax = GROSS.format(mode, how)
    before, after = (figures(STATED.format(cost), tax=tax) for cost in (100, 210))
    added = changed(after, before=before).price.added
    taken = (added.input_tax, added.cost, added.purchase_tax)
    assert taken == (Decimal("10.00"), Decimal("100.00"), Decimal("10.00"))
    assert added.sell == Decimal(sell)


def test_two_currencies_are_refused() -> None:
    euros = figures() + '\n[settings.shop]\ncurrency = "EUR"\n'
    with pytest.raises(InputError) as raised:
        changed(euros, before=figures())
    (problem,) = raised.value.problems
    assert problem.read == "the job that was bid is in USD, and the changed one is in EUR"


def test_another_job_is_no_change() -> None:
    with pytest.raises(InputError) as raised:
        changed(changes=(('id = "S1"', 'id = "S2"'),))
    (problem,) = raised.value.problems
    assert problem.read == 'the job that was bid is "S1", and this one is "S2"'
    assert 'write id = "S1"' in problem.write
