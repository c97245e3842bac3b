"""What is offered: its rounding, allowances, permit visits, and the form of the price."""

from __future__ import annotations

from decimal import Decimal

import pytest

from estimator.pricing.forms import price_form, rounded_offer
from estimator.pricing.price_records import AllowanceLine
from tests.pricing.made_books import bid, plain
from tests.pricing.made_price import BASE, price


@pytest.mark.parametrize(
    ("labor", "step", "how", "offered", "rounding"),
    [
        ("948.84", "0", "nearest", "948.84", "0.00"),
        ("948.84", "5", "nearest", "950.00", "1.16"),
        ("947.49", "5", "nearest", "945.00", "-2.49"),
        ("947.50", "5", "nearest", "950.00", "2.50"),
        ("942.50", "5", "nearest", "945.00", "2.50"),
        ("945.01", "5", "up", "950.00", "4.99"),
        ("945.00", "5", "up", "945.00", "0.00"),
        ("1.00", "5", "nearest", "5.00", "4.00"),
        ("0.00", "5", "nearest", "0.00", "0.00"),
        ("10.03", "0.05", "nearest", "10.05", "0.02"),
        ("10.03", "0.004", "nearest", "10.03", "0.00"),
    ],
)
def test_rounding_of_the_offer(
    labor: str, step: str, how: str, offered: str, rounding: str
) -> None:
    """Worked by hand; something is never rounded to nothing, a step below a cent is none."""
    got = price(labor, labor_rate_per_hour="1", offer_step=step, offer_rounding=how)
    assert (got.offered, got.offer_rounding) == (Decimal(offered), Decimal(rounding))
    assert got.built_up == Decimal(labor)


@pytest.mark.parametrize(
    ("labor", "minimum", "offered", "governs"),
    [
        ("100", "222", "225.00", True),
        ("100", "221", "225.00", True),
        ("221.50", "221", "225.00", False),
        ("221.50", "220", "220.00", False),
    ],
)
def test_rounding_never_undercuts_the_minimum(
    labor: str, minimum: str, offered: str, governs: bool
) -> None:
    """In steps of 5 the nearest to 222 is 220, below the minimum: it goes up."""
    got = price(labor, labor_rate_per_hour="1", minimum_charge=minimum, offer_step="5")
    assert (got.offered, got.minimum_governs) == (Decimal(offered), governs)


def test_steps_minimum_and_cap_in_a_currency_without_cents() -> None:
    """JPY: a step of 49.6 is 50 and a minimum of 1,000.4 is 1,000, so 1,010 may go down to it;
    1,005 and 15 % are 1,155.75."""
    own = {"offer_step": Decimal("49.6"), "minimum_charge": Decimal("1000.4")}
    shop = plain(price_form="not-to-exceed", **own).shop
    assert str(rounded_offer(Decimal(1010), shop.price, "JPY")) == "1000"
    assert str(price_form(shop.terms, Decimal(1005), "JPY").cap) == "1156"


def test_the_offer_says_its_step() -> None:
    got = price("1", labor_rate_per_hour="1", offer_step="5", offer_rounding="up")
    assert (got.offer_step, got.offer_rounding_how) == (5, "up")


def test_allowances_come_after_the_price_offered() -> None:
    """550.00 + 80.00 + 20.005 -> 20.01."""
    got = price(**BASE, allowances=(("materials", "80"), ("other", "20.005")))
    assert got.allowances == (
        AllowanceLine("materials 1", "materials", Decimal("80.00")),
        AllowanceLine("other 2", "other", Decimal("20.01")),
    )
    assert (got.offered, got.allowances_total) == (550, Decimal("100.01"))
    assert got.before_tax == Decimal("650.01")


def test_each_allowance_is_a_line_in_the_books() -> None:
    lines = [{"name": "light", "amount": Decimal(60)}, {"name": "fan", "amount": Decimal(90)}]
    made = bid(plain(), allowances=lines)
    rows = [each for each in made.book_lines if each.line_kind == "allowance"]
    assert [(each.description, each.price, each.account_code) for each in rows] == [
        ("Allowance: light", 60, "4060"),
        ("Allowance: fan", 90, "4060"),
    ]


def test_visits_for_a_permit_are_trips() -> None:
    """One visit of the job and two inspections at 45.00; a job that states its trips keeps them."""
    books = plain(trip_charge=Decimal(45), permit_visits=2, permit_filed_by="the owner")
    got = bid(books).price
    assert (got.trips_count, got.permit_visits, got.trips) == (3, 2, 135)
    assert got.permit_filed_by == "the owner"
    stated = bid(books, overrides={"trips": 1}).price
    assert (stated.trips_count, stated.permit_visits, stated.trips) == (1, 0, 45)


@pytest.mark.parametrize(
    ("kind", "sentence", "cap"),
    [
        ("fixed", "Fixed price: the price for the scope above", None),
        ("time-and-material", "Time and material: you pay for the hours worked", None),
        ("not-to-exceed", "Not to exceed: you pay for the hours worked", "632.50"),
    ],
)
def test_three_price_forms(kind: str, sentence: str, cap: str | None) -> None:
    """550.00 x 1.15 = 632.50; each form in one sentence, from one and the same job."""
    got = price(**BASE, price_form=kind)
    assert (got.form.kind, got.form.not_to_exceed_pct, got.total) == (kind, 15, 550)
    assert got.form.sentence.startswith(sentence)
    assert got.form.cap == (None if cap is None else Decimal(cap))
    assert got.form.sentence.count(". ") == 0
