"""Deposit, cap, balance and steps; worked by hand."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import Any

import pytest

from estimator.pricing.payment import deposit_cap, payment, planned_steps
from estimator.pricing.price_records import Payment, PaymentStep
from estimator.settings import PlannedPayment
from tests.pricing.made_books import plain
from tests.pricing.made_price import price


def paid(total: str = "640", materials: str = "0", **terms: Any) -> Payment:
    """How a price of labor and materials without markup is paid."""
    return price(
        total, materials, labor_rate_per_hour="1", materials_markup_pct="0", **terms
    ).payment


def plan(*shares: str) -> tuple[PlannedPayment, ...]:
    return tuple(PlannedPayment(f"step {at}", Decimal(pct)) for at, pct in enumerate(shares))


@pytest.mark.parametrize(
    ("pct", "amount", "cap", "over"),
    [
        ("10", "1000", "64.00", True),
        ("10", "50", "50.00", True),
        ("10", None, "64.00", True),
        (None, "1000", "1000.00", False),
        (None, "192", "192.00", False),
        (None, "191.99", "191.99", True),
        ("30", None, "192.00", False),
        (None, None, None, False),
    ],
)
def test_s19_a_deposit_over_the_cap_is_flagged_and_not_changed(
    pct: str | None, amount: str | None, cap: str | None, over: bool
) -> None:
    """S19: 30 % of 640.00 = 192.00; cap the lesser of 1,000 and 10 % = 64.00: flag."""
    got = paid(deposit_pct="30", deposit_cap_pct=pct, deposit_cap_amount=amount)
    assert got.deposit == Decimal("192.00")
    assert got.cap == (None if cap is None else Decimal(cap))
    assert got.over_cap is over
    assert (got.cap_pct, got.cap_amount) == tuple(
        None if each is None else Decimal(each) for each in (pct, amount)
    )


def test_two_steps_unless_planned() -> None:
    """30 % of 99.99 is 29.997 -> 30.00; the balance is the rest."""
    got = paid("99.99", deposit_pct="30")
    assert got.steps == (
        PaymentStep("on acceptance", Decimal("30.00"), Decimal("30.00")),
        PaymentStep("on completion", Decimal("70.00"), Decimal("69.99")),
    )
    assert got.deposit_of == "total"


@pytest.mark.parametrize(("pct", "when"), [("0", "on completion"), ("100", "on acceptance")])
def test_one_step_where_all_is_due_at_once(pct: str, when: str) -> None:
    (step,) = paid(deposit_pct=pct).steps
    assert (step.when, step.pct, step.amount) == (when, 100, 640)


def test_half_a_hundredth_of_a_percent_goes_up() -> None:
    """123.45 of 1,000.00 is 12.345 %, shown as 12.35; the rest is 87.655 %, shown as 87.66."""
    assert [each.pct for each in paid("1000", deposit_pct="12.345").steps] == [
        Decimal("12.35"),
        Decimal("87.66"),
    ]


def test_nothing_to_pay_has_no_steps() -> None:
    assert paid("0", deposit_pct="30").steps == ()


def test_a_deposit_of_the_materials() -> None:
    """Half of 118.41 as sold is 59.205 -> 59.21."""
    got = paid("500", "118.41", deposit_of="materials", deposit_pct="50")
    assert (got.deposit_of, got.deposit) == ("materials", Decimal("59.21"))


def test_a_deposit_is_never_more_than_the_total() -> None:
    """136.92 of materials, offered at 100.00."""
    own = {"deposit_of": "materials", "deposit_pct": "100", "offer_step": "100"}
    got = price(materials="136.92", materials_markup_pct="0", **own)
    assert (got.total, got.deposit, got.balance) == (100, 100, 0)


@pytest.mark.parametrize(
    ("total", "shares", "amounts"),
    [
        ("100.01", ("50", "25", "25"), ("50.01", "25.00", "25.00")),
        ("0.10", ("33", "33", "34"), ("0.03", "0.03", "0.04")),
        ("10.00", ("33.3", "33.3", "33.4"), ("3.33", "3.33", "3.34")),
        ("0.01", ("50", "50"), ("0.01", "0.00")),
    ],
)
def test_steps_by_largest_remainder(
    total: str, shares: tuple[str, ...], amounts: tuple[str, ...]
) -> None:
    """50.005, 25.0025, 25.0025: the cent left over goes to the first; a tie to the earlier."""
    got = paid(total, payment_steps=plan(*shares))
    assert [each.amount for each in got.steps] == [Decimal(each) for each in amounts]
    assert [each.when for each in got.steps] == [f"step {at}" for at in range(len(shares))]
    assert sum(each.amount for each in got.steps) == Decimal(total)


def test_the_first_step_of_a_plan_is_the_deposit() -> None:
    """40 % of 640.00; deposit_pct is not asked, and the cap is held against it."""
    own = {"payment_steps": plan("40", "60"), "deposit_cap_pct": "30", "deposit_pct": "5"}
    built = price("640", labor_rate_per_hour="1", **own)
    assert (built.payment.deposit_of, built.payment.over_cap) == ("plan", True)
    assert (built.deposit, built.balance) == (256, 384)
    assert [each.pct for each in built.payment.steps] == [40, 60]


def test_steps_in_a_currency_without_cents() -> None:
    """JPY 1,001 in halves: 501 and 500."""
    steps = planned_steps(plan("50", "50"), Decimal(1001), "JPY")
    assert [str(each.amount) for each in steps] == ["501", "500"]


def test_cap_and_deposit_in_a_currency_without_cents() -> None:
    """10 % of 1,005 is 100.5 -> 101; an amount of 100.4 is 100; 30 % is 301.5 -> 302."""
    terms = plain(
        deposit_cap_pct=Decimal(10), deposit_cap_amount=None, deposit_pct=Decimal(30)
    ).shop.terms
    assert str(deposit_cap(terms, Decimal(1005), "JPY")) == "101"
    terms = replace(terms, deposit_cap_amount=Decimal("100.4"))
    assert str(deposit_cap(terms, Decimal(1005), "JPY")) == "100"
    assert str(payment(terms, Decimal(1005), Decimal(0), "JPY").deposit) == "302"
