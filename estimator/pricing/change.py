"""A change order: the job as it was bid against the job as the house turned out to be."""

from __future__ import annotations

from estimator.catalog.records import Books
from estimator.pricing.change_items import item_changes, with_first_parts
from estimator.pricing.change_lines import changed_lines, rechecks
from estimator.pricing.change_price import price_change
from estimator.pricing.change_records import ChangeOrder
from estimator.pricing.engine import estimate
from estimator.pricing.records import Bid, ShoppingLine
from estimator.pricing.shopping import shopping_list
from estimator.problems import InputError, Problem
from estimator.survey.differences import ChangedFact
from estimator.survey.records import Survey


def change_order(
    before: Bid, survey: Survey, books: Books, *, facts: tuple[ChangedFact, ...] = (), why: str = ""
) -> ChangeOrder:
    """Work out what a change adds, drops and costs; every stage is gone through again.

    Args:
        before: the bid that was accepted.
        survey: the job as it now stands.
        books: that price it; their [change] settings are the terms of the change.
        facts: what the two job files state differently.
        why: the reason, as somebody gave it.

    Raises:
        InputError: the two are in different currencies, or what no stage can go on with.
    """
    _refuse_two_currencies(before, books)
    after = estimate(survey, books)
    bought = books.shop.change.materials_bought
    lines = changed_lines(before, after)
    items = item_changes(before, _list_after(before, after, bought=bought), bought=bought)
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
    )


def _refuse_two_currencies(before: Bid, books: Books) -> None:
    """Amounts of two currencies are never taken from each other."""
    old, new = before.books.shop.currency, books.shop.currency
    if old != new:
        read = f"the job that was bid is in {old}, and the changed one is in {new}"
        raise InputError([Problem("shop.currency", read, "Price both in one currency.")])


def _list_after(before: Bid, after: Bid, *, bought: bool) -> tuple[ShoppingLine, ...]:
    """The shopping list of the changed job, beyond what is bought already."""
    if not bought:
        return after.shopping
    return shopping_list(with_first_parts(after.survey, before), after.takeoff, after.books)
