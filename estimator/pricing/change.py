"""A change order: the job as it was bid against the job as the house turned out to be."""

from __future__ import annotations

from estimator.catalog.records import Books
from estimator.pricing.change_bought import (
    BoughtPart,
    CountedAsBought,
    PaidFile,
    list_parts,
    paid_parts,
    with_parts,
)
from estimator.pricing.change_items import OnHand, item_changes
from estimator.pricing.change_lines import changed_lines, rechecks
from estimator.pricing.change_price import price_change
from estimator.pricing.change_records import ChangeOrder, ItemChange
from estimator.pricing.engine import estimate
from estimator.pricing.records import Bid, ShoppingLine
from estimator.pricing.shopping import shopping_list
from estimator.problems import InputError, Problem
from estimator.survey.differences import ChangedFact
from estimator.survey.records import Survey


def change_order(
    before: Bid,
    survey: Survey,
    books: Books,
    *,
    facts: tuple[ChangedFact, ...] = (),
    why: str = "",
    paid: PaidFile | None = None,
) -> ChangeOrder:
    """Work out what a change adds, drops and costs; every stage is gone through again.

    Args:
        before: the bid that was accepted.
        survey: the job as it now stands.
        books: that price it; their [change] settings are the terms of the change.
        facts: what the two job files state differently.
        why: the reason, as somebody gave it.
        paid: what was bought; left out: all of the first list, or nothing, by the settings.

    Raises:
        InputError: the two are different jobs or in different currencies, or what no stage can
            go on with.
    """
    _refuse_another_job(before, survey)
    _refuse_two_currencies(before, books)
    after = estimate(survey, books)
    bought = books.shop.change.materials_bought or paid is not None
    lines = changed_lines(before, after)
    counted = None if paid is None else _counted(before, paid)
    items = _items(before, after, counted) if bought else _difference(before, after)
    return ChangeOrder(
        before=before,
        after=after,
        why=why,
        materials_bought=bought,
        facts=facts,
        lines=lines,
        items=items,
        rechecks=rechecks(before, after),
        price=price_change(before, after, lines, items),
        bought=counted,
    )


def _refuse_another_job(before: Bid, survey: Survey) -> None:
    """A job is changed, not exchanged for another one."""
    old, new = before.survey.job.id, survey.job.id
    if old != new:
        read = f'the job that was bid is "{old}", and this one is "{new}"'
        write = (
            f'Name the changed copy of job "{old}"; if it is that job, write id = "{old}" in it.'
        )
        raise InputError([Problem("job.id", read, write)])


def _refuse_two_currencies(before: Bid, books: Books) -> None:
    """Amounts of two currencies are never taken from each other."""
    old, new = before.books.shop.currency, books.shop.currency
    if old != new:
        read = f"the job that was bid is in {old}, and the changed one is in {new}"
        raise InputError([Problem("shop.currency", read, "Price both in one currency.")])


def _counted(before: Bid, paid: PaidFile) -> CountedAsBought:
    return CountedAsBought(paid.name, paid_parts(before, paid), paid.notes)


def _difference(before: Bid, after: Bid) -> tuple[ItemChange, ...]:
    """Nothing is bought yet."""
    return item_changes(before, after.shopping, bought=False)


def _items(before: Bid, after: Bid, counted: CountedAsBought | None) -> tuple[ItemChange, ...]:
    """What the changed job buys beyond what is bought already, and what goes back."""
    parts = list_parts(before) if counted is None else counted.parts
    cables = frozenset(order.item for bid in (before, after) for order in bid.takeoff.cable)

    def list_of(bid: Bid, there: tuple[BoughtPart, ...]) -> tuple[ShoppingLine, ...]:
        return shopping_list(with_parts(bid.survey, there, cables), bid.takeoff, bid.books)

    beyond = list_of(after, parts)
    if counted is None:
        return item_changes(before, beyond, bought=True)
    first = tuple(part for part in parts if not part.beyond)
    without = beyond if first == parts else list_of(after, first)
    pressing = frozenset(line.item for line in without if line.packs or line.cost is None)
    on_hand = OnHand(parts, list_of(before, parts), pressing)
    return item_changes(before, beyond, bought=True, on_hand=on_hand)
