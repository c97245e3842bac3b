"""Whatever the terms: the lines for the books add up to the total, and the parts to the whole."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from estimator.money import minor_unit
from estimator.pricing.book_lines import book_lines
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
    assert problem.read == 'no account for lines of kind "labor"'
    assert problem.where == "shipped accounts.csv"
    assert problem.write == "Add a row with its account code and name."


def test_books_without_a_name_for_their_accounts_are_named_after_the_file() -> None:
    books = plain()
    bare = type(books)(books.materials, books.labor, {}, books.shop, {})
    with pytest.raises(InputError) as caught:
        book_lines(bid().price, bare)
    assert {each.where for each in caught.value.problems} == {"accounts.csv"}


FULL = {
    "labor_rate_per_hour": Decimal(100), "materials_markup_pct": Decimal(25),
    "trip_charge": Decimal(45), "supply_run_hours": Decimal("0.5"), "overhead_pct": Decimal(10),
    "profit_pct": Decimal(5), "contingency_pct": Decimal(10), "minimum_charge": Decimal(880),
    "offer_step": Decimal(50), "offer_rounding": "up", "permit_cost": Decimal(75),
    "permit_handling": Decimal(25), "mode": "purchase-and-labor", "purchase_rate_pct": Decimal(6),
    "rate_pct": Decimal("7.25"),
}  # fmt: skip


def test_every_line_with_its_cost_and_price() -> None:
    """By hand: 7.20 at the counter on 120.00, (127.20) x 1.25 = 159.00; base 654.00; 65.40; 5 % of
    719.40; labor's 10 %; 795.37 up to 880.00, and to 900.00; the work is 741.00, 7.25 % of it
    53.7225."""
    stated = {"labor_hours": 4, "materials_cost": 120, "trips": 1}
    lines = [{"name": "light", "amount": 60}]
    made = bid(plain(**FULL), overrides=stated, allowances=lines)
    rows = [
        f"{each.line_kind} {each.account_code} {each.quantity} {each.unit} {each.cost} {each.price}"
        for each in made.book_lines
    ]
    assert rows == [
        "materials 4010 None  120.00 159.00",
        "purchase-tax 5010 None  7.20 0.00",
        "labor 4020 4 h None 400.00",
        "supply-run 4020 0.5 h None 50.00",
        "trips 4030 1 trip None 45.00",
        "overhead 4040 None  None 65.40",
        "profit 4040 None  None 35.97",
        "contingency 4040 None  None 40.00",
        "minimum 4040 None  None 84.63",
        "rounding 4040 None  None 20.00",
        "allowance 4060 None  None 60.00",
        "permit 4050 None  75.00 100.00",
        "tax 2200 None  None 53.72",
    ]
    assert [each.description for each in made.book_lines] == [
        "Materials as sold", "Tax paid at the counter", "Labor", "Supply run", "Trips", "Overhead",
        "Profit", "Contingency", "Step up to the minimum charge", "Rounding of the price offered",
        "Allowance: light", "Permit and handling", "Tax collected",
    ]  # fmt: skip
    assert [each.account_name for each in made.book_lines[:3]] == [
        "Sales, materials", "Job materials", "Sales, labor",
    ]  # fmt: skip
    assert sum(each.price for each in made.book_lines) == made.price.total == Decimal("1113.72")


def test_lines_without_cost_or_price_are_left_out() -> None:
    made = of_overrides(plain(), labor_hours=Decimal(1), materials_cost=Decimal(0), trips=0)
    assert [each.line_kind for each in made.book_lines] == ["labor"]
