"""Close-out files for tests: S19 as worked by hand, and the double entry of one invented job."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from estimator.catalog.books import read_books
from estimator.catalog.records import Books
from estimator.catalog.shipped import shipped_catalogs
from estimator.ledger.closing import open_job
from estimator.ledger.estimated import Closed
from estimator.ledger.reader import close_out_from_text

SAMPLE = Path(__file__).parents[2] / "samples" / "close-out" / "nightstand.toml"

S19 = """
[close_out]
job = "S19"
date = 2026-03-20
title = "Worked close-out"
customer = "Sample customer"
labor_cost_per_hour = 38.00

[estimate]
price = 640.00
materials = 84.00
labor_hours = 5.5

[deposit]
asked_pct = 30
cap_pct = 10
cap_amount = 1000

[[receipts]]
date = 2026-03-10
supplier = "Sample supply house"
doc_no = "R-1"
tax_rate_pct = 8.25
lines = [
  { description = "Parts", amount = 62.10 },
  { description = "Parts, other job", amount = 41.05, for = "job:S20" },
  { description = "Cable for the truck", amount = 22.50, for = "truck-stock" },
  { description = "Hand tool", amount = 9.52, for = "own-tool" },
]

[[returns]]
date = 2026-03-12
supplier = "Sample supply house"
doc_no = "C-1"
tax_rate_pct = 8.25
lines = [{ description = "One part", amount = 7.85 }]

[[stock]]
date = 2026-03-11
what = "Cable"
quantity = 42
unit = "ft"
unit_cost = 0.44

[[hours]]
date = 2026-03-11
phase = "rough-in"
hours = 7.25
"""

# Cost 120.00 bought without tax, sold at 150.00; labor 400.00; tax 7.25 % on the materials;
# deposit of 33 %: 185.09.
DOUBLE_ENTRY = """
[close_out]
job = "B1"
date = 2026-04-30
customer = "Sample customer"
labor_cost_per_hour = 40

[estimate]
price = 550.00
materials = 120.00
labor_hours = 0

[[receipts]]
date = 2026-04-02
supplier = "Sample supply house"
doc_no = "R-9"
paid = "on account"
lines = [{ description = "Parts", amount = 120.00 }]

[[invoices]]
date = 2026-04-10
doc_no = "14"
materials = 150.00
labor = 400.00
tax_rate_pct = 7.25
taxed = "materials"

[[payments]]
date = 2026-04-01
doc_no = "check 1"
kind = "deposit"
amount = 185.09

[[payments]]
date = 2026-04-15
doc_no = "check 2"
amount = 375.79

[[paid_out]]
date = 2026-04-20
doc_no = "transfer 1"
to = "tax office"
amount = 10.88
"""


@cache
def us_books() -> Books:
    """The books that come along."""
    return read_books(shipped_catalogs())


def closed(text: str = S19, name: str = "close-out.toml") -> Closed:
    """A close-out file with a typed estimate, and the books that come along."""
    return Closed(close_out_from_text(text, Path(name)), us_books(), None)


def changed(text: str, *changes: tuple[str, str]) -> str:
    """A text with pieces replaced; each must be there to replace."""
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new)
    return text


@cache
def sample() -> Closed:
    """The close-out that ships, with its job file."""
    return open_job(SAMPLE)
