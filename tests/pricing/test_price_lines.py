"""Whatever the terms: the lines for the books add up to the total, and the parts to the whole."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from estimator.money import minor_unit
from estimator.pricing.records import Bid
from estimator.problems import InputError
from tests.pricing.made_books import bid, of_overrides, plain, with_terms

percent = st.decimals(0, 200, places=3)
money = st.decimals(0, 2000, places=4)
hours = st.decimals(0, 100, places=6)


@st.composite
def bids(draw: Any) -> Bid:
    """A job of stated hours and materials under any terms."""
    currency = draw(st.sampled_from(["USD", "JPY", "KWD"]))
    books = with_terms(
        currency=currency,
        labor_rate_per_hour=draw(money),
        hours_basis=draw(st.sampled_from(["likely", "expected"])),
        materials_markup_pct=draw(percent),
        small_items_pct=draw(percent),
        minimum_charge=draw(money),
        trip_charge=draw(money),
        overhead_pct=draw(percent),
        profit_pct=draw(percent),
        permit_cost=draw(st.one_of(st.none(), money)),
        permit_handling=draw(money),
        mode=draw(st.sampled_from(["none", "materials-sold"])),
        rate_pct=draw(percent),
        deposit_pct=draw(st.decimals(0, 100, places=2)),
    )
    stated = {"labor_hours": draw(hours), "materials_cost": draw(money), "trips": draw(
        st.integers(0, 5)
    )}  # fmt: skip
    kept = draw(st.sets(st.sampled_from(sorted(stated))))
    return of_overrides(books, **{key: stated[key] for key in kept})


@settings(max_examples=150, deadline=None)
@given(bids())
def test_book_lines_add_up_to_the_total(made: Bid) -> None:
    assert sum(each.price for each in made.book_lines) == made.price.total


@settings(max_examples=150, deadline=None)
@given(bids())
def test_parts_add_up_to_wholes_in_whole_cents(made: Bid) -> None:
    got, places = made.price, minor_unit(made.books.shop.currency)
    assert got.base == got.labor + got.materials_sell + got.trips
    assert got.built_up == got.base + got.overhead + got.profit
    assert got.total == got.offered + got.permit_cost + got.permit_handling + got.tax
    assert got.deposit + got.balance == got.total
    assert got.offered >= got.built_up >= 0
    for amount in (got.labor, got.materials_cost, got.trips, got.tax, got.total, got.deposit):
        assert amount == round(amount, places)
        assert amount >= 0


def test_lines_name_their_accounts() -> None:
    made = bid(plain(mode="materials-sold", rate_pct=Decimal(6), minimum_charge=Decimal(5000)))
    kinds = [each.line_kind for each in made.book_lines]
    assert kinds == ["materials", "labor", "minimum", "tax"]
    assert all(each.account_code and each.account_name for each in made.book_lines)


def test_a_kind_of_line_without_an_account_is_a_problem() -> None:
    books = plain()
    accounts = {key: row for key, row in books.accounts.items() if key != "labor"}
    bare = type(books)(books.materials, books.labor, accounts, books.shop, books.files)
    with pytest.raises(InputError) as caught:
        bid(bare)
    (problem,) = caught.value.problems
    assert 'no account for lines of kind "labor"' in problem.read
    assert problem.where.endswith("accounts.csv")
