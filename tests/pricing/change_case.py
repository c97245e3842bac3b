"""A job and its change with prices and hours that a hand can follow.

The first bid is the nightstand sample: one run bored through 4 studs, 119 in cut, 11 ft ordered.
In the changed job the new box stands 24 in further on: 6 studs, 143 in cut, 143 x 1.1 = 157.3 in
= 13.11, so 14 ft, and the strip is 97 in in place of 73 in long (8.083333 and 6.083333 ft).
"""

from __future__ import annotations

from pathlib import Path

from estimator.pricing.books_for import books_for
from estimator.pricing.change import change_order
from estimator.pricing.change_bought import PaidFile
from estimator.pricing.change_records import ChangeOrder
from estimator.pricing.engine import estimate
from estimator.survey.reader import job_from_text

SAMPLE = Path(__file__).parents[2] / "samples" / "nightstand.toml"
FURTHER = (('x = "8\' 9\\""', 'x = "10\' 9\\""'), ('right = "106 in"', 'right = "130 in"'))
FIGURES = """
[overrides.hours]
open-strip = 0.1
bore-member = 0.05
pull-bored = 0

[overrides.prices]
cable-14-2 = 0.50
screw-drywall = 0.05
{overrides}
[settings.price]
labor_rate_per_hour = 80
hours_basis = "likely"
materials_markup_pct = 30
small_items_pct = 5
minimum_charge = 0
{price}
[settings.change]
{change}
[settings.tax]
{tax}
"""


def figures(overrides: str = "", price: str = "", change: str = "", tax: str = "") -> str:
    """Settings of the case, with lines of one's own in each table."""
    return FIGURES.format(overrides=overrides, price=price, change=change, tax=tax)


def changed(
    added: str = "",
    changes: tuple[tuple[str, str], ...] = FURTHER,
    *,
    before: str | None = None,
    backwards: bool = False,
    paid: PaidFile | None = None,
) -> ChangeOrder:
    """The change order between the sample and the sample with pieces replaced.

    Args:
        added: settings of both files, as `figures` gives them.
        changes: what is replaced in the second file.
        before: settings of the first file where they differ.
        backwards: the changed file was bid, and the sample is what it turned out to be.
        paid: what was bought; left out: by the settings.
    """
    added = added or figures()
    text = SAMPLE.read_text(encoding="utf-8")
    after = text
    for old, new in changes:
        assert old in after, old
        after = after.replace(old, new)
    if backwards:
        text, after = after, text
    first = job_from_text(text + (added if before is None else before), SAMPLE)
    second = job_from_text(after + added, SAMPLE)
    bid = estimate(first.survey, books_for(first))
    return change_order(bid, second.survey, books_for(second), why="made up", paid=paid)
