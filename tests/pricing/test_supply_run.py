"""The supply run under its three policies, and S23 to the cent in both of its forms."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest

from tests.pricing.made_books import bid, plain
from tests.pricing.made_price import STACK, figures, price

SEPARATED = STACK | {"mode": "materials-sold", "rate_pct": "6"}
LUMP_SUM = STACK | {"mode": "paid-at-purchase", "purchase_rate_pct": "6"}


def test_s23_in_separated_form() -> None:
    """S23, worked by hand: 159.84 + 575.00 + 45.00 + 69.00 + 100.00 = 948.84; tax 9.5904."""
    got = price(**SEPARATED)
    assert (got.labor, got.materials_sell) == (Decimal("575.00"), Decimal("159.84"))
    assert (got.trips, got.supply_run.amount) == (Decimal("45.00"), Decimal("69.00"))
    assert (got.permit_cost, got.permit_handling) == (Decimal("75.00"), Decimal("25.00"))
    assert (got.base, got.before_tax) == (Decimal("848.84"), Decimal("948.84"))
    assert (got.tax, got.total) == (Decimal("9.59"), Decimal("958.43"))


def test_s23_as_a_lump_sum() -> None:
    """S23: 7.104 -> 7.10 at the counter; 125.50 x 1.35 = 169.425 -> 169.43; + 789.00."""
    got = price(**LUMP_SUM)
    assert (got.purchase_tax, got.materials_sell) == (Decimal("7.10"), Decimal("169.43"))
    assert (got.tax, got.total) == (0, Decimal("958.43"))


@pytest.mark.parametrize("form", [SEPARATED, LUMP_SUM], ids=["separated", "lump sum"])
def test_s23_cap_deposit_balance_and_margin(form: dict[str, Any]) -> None:
    """S23: 958.43 x 1.15 = 1,102.1945; 30 % = 287.529; 35 / 135 = 25.93 %."""
    got = price(**form, price_form="not-to-exceed", not_to_exceed_pct="15")
    assert got.form.cap == Decimal("1102.19")
    assert (got.deposit, got.balance) == (Decimal("287.53"), Decimal("670.90"))
    assert round(got.margin_pct, 2) == Decimal("25.93")


def test_s23_expected_hours() -> None:
    """S23: (4.5 + 4 x 6.25 + 10.5) / 6 = 6.667."""
    from estimator.pricing.hours import three_point

    expected = three_point(Decimal("4.5"), Decimal("6.25"), Decimal("10.5"))
    assert round(expected, 3) == Decimal("6.667")


@pytest.mark.parametrize(
    ("policy", "labor", "amount", "labor_hours", "total"),
    [
        ("line", "575.00", "69.00", "6.25", "958.43"),
        ("in-labor", "644.00", "0.00", "7.00", "958.43"),
        ("in-markup", "575.00", "0.00", "6.25", "889.43"),
    ],
)
def test_three_policies(policy: str, labor: str, amount: str, labor_hours: str, total: str) -> None:
    """S23: 0.75 h at 92.00 is 69.00 whatever the policy; in the markup it is not charged again."""
    got = price(**SEPARATED, supply_run_policy=policy)
    run = got.supply_run
    assert (run.policy, run.hours, run.worth) == (policy, Decimal("0.75"), Decimal("69.00"))
    assert (got.labor, run.amount) == (Decimal(labor), Decimal(amount))
    assert (got.labor_hours, got.hours_charged) == (Decimal(labor_hours), Decimal("6.25"))
    assert run.labor_hours == got.labor_hours - got.hours_charged
    assert got.total == Decimal(total)


@pytest.mark.parametrize(
    ("policy", "why"),
    [
        ("line", "charged at the labor rate, as a line of its own"),
        ("in-labor", "added to the hours charged, no line of its own"),
        ("in-markup", "nothing is added: the markup on materials is taken to hold it"),
    ],
)
def test_each_policy_says_what_it_does(policy: str, why: str) -> None:
    assert price(**SEPARATED, supply_run_policy=policy).supply_run.why == why


def test_no_supply_run_says_nothing_and_costs_nothing() -> None:
    run = price(**SEPARATED | {"supply_run_hours": "0"}).supply_run
    assert (run.worth, run.amount, run.why) == (0, 0, "")


def test_overhead_and_profit_lie_on_the_supply_run_too() -> None:
    """100 h at 1: base 110.00 with 10 h of run; 10 % = 11.00; 5 % of 121.00 = 6.05."""
    got = price(
        "100", labor_rate_per_hour="1", supply_run_hours="10", overhead_pct="10", profit_pct="5"
    )
    assert (got.base, got.overhead, got.profit) == (110, 11, Decimal("6.05"))


def test_hours_in_labor_are_rounded_once_with_the_others() -> None:
    """0.5 h + 0.5 h at 0.01: 0.005 would go up twice; 1 h is 0.01."""
    own = {"hours": "0.5", "labor_rate_per_hour": "0.01", "supply_run_hours": "0.5"}
    assert price(**own, supply_run_policy="line").base == Decimal("0.02")
    assert price(**own, supply_run_policy="in-labor").base == Decimal("0.01")


def test_the_books_show_the_run_and_the_hours() -> None:
    def rows(policy: str) -> dict[str, tuple[Decimal | None, Decimal]]:
        terms = {key: SEPARATED[key] for key in ("supply_run_hours", "labor_rate_per_hour")}
        books = plain(**figures(terms), supply_run_policy=policy)
        made = bid(books, overrides={"labor_hours": Decimal("6.25"), "trips": 0})
        return {each.line_kind: (each.quantity, each.price) for each in made.book_lines}

    assert rows("line")["supply-run"] == (Decimal("0.75"), Decimal("69.00"))
    assert rows("line")["labor"] == (Decimal("6.25"), Decimal("575.00"))
    assert rows("in-labor")["labor"] == (Decimal("7.00"), Decimal("644.00"))
    assert "supply-run" not in rows("in-labor")
