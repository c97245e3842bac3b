"""Settings of price, labor rate, tax and payment: what is read, and every kind of fault."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest

from estimator.settings import PlannedPayment
from tests.catalog.test_shop_settings import METRIC, US, faults, shop


@pytest.mark.parametrize("base", [US, METRIC], ids=["us", "metric"])
def test_shipped_settings_add_nothing_to_a_price(base: str) -> None:
    price, tax = shop(base=base).price, shop(base=base).tax
    assert (price.supply_run_hours, price.contingency_pct, price.offer_step) == (0, 0, 0)
    assert (price.supply_run_policy, price.contingency_from) == ("line", "percent")
    assert (price.contingency_on, price.contingency_shown) == ("labor", True)
    assert (price.permit_visits, price.permit_filed_by) == (0, "to be agreed")
    assert (tax.mode, tax.rate_pct, tax.purchase_rate_pct) == ("none", 0, 0)
    assert (tax.basis, tax.rounding, tax.gross_factor_pct) == ("invoice", "half-up", None)
    assert (tax.taxed_share_pct, tax.materials_base) == (100, "sold")
    assert (tax.purchase_tax, tax.prices_include_tax) == ("before-markup", False)


@pytest.mark.parametrize("base", [US, METRIC], ids=["us", "metric"])
def test_shipped_terms_are_a_fixed_price_without_caps(base: str) -> None:
    terms = shop(base=base).terms
    assert (terms.price_form, terms.not_to_exceed_pct) == ("fixed", 15)
    assert (terms.deposit_of, terms.deposit_cap_pct, terms.deposit_cap_amount) == (
        "total", None, None,
    )  # fmt: skip
    assert (terms.payment_steps, terms.cancellation_file) == ((), None)


def test_the_path_to_one_more_outlet() -> None:
    """6 ft; 1.8 m is 1800 / 25.4 in."""
    assert shop().price.one_more_path_in == 72
    assert shop(base=METRIC).price.one_more_path_in == Fraction(18000, 254)


@pytest.mark.parametrize(
    ("line", "field", "want"),
    [
        ('labor_rate_per_hour = "built"', "labor_rate_per_hour", None),
        ('labor_rate_per_hour = "92.50"', "labor_rate_per_hour", Decimal("92.50")),
        ('one_more_path = "2 m"', "one_more_path_in", Fraction(2000 * 10, 254)),
        ("contingency_confidence_pct = 99.9", "contingency_confidence_pct", Decimal("99.9")),
        ('supply_run_policy = "in-labor"', "supply_run_policy", "in-labor"),
    ],
)
def test_settings_of_the_price(line: str, field: str, want: object) -> None:
    assert getattr(shop(f"[price]\n{line}\n").price, field) == want


def test_a_published_gross_factor() -> None:
    assert shop("[tax]\ngross_factor_pct = 2.041\n").tax.gross_factor_pct == Decimal("2.041")


def test_caps_and_a_plan_of_payments() -> None:
    plan = '[{when = "at once", pct = 40}, {when = " at the end ", pct = "60 %"}]'
    terms = shop(
        f"[terms]\ndeposit_cap_pct = 10\ndeposit_cap_amount = 1000\npayment_steps = {plan}\n"
    ).terms
    assert (terms.deposit_cap_pct, terms.deposit_cap_amount) == (10, 1000)
    assert terms.payment_steps == (
        PlannedPayment("at once", Decimal(40)),
        PlannedPayment("at the end", Decimal(60)),
    )


WRONG = [
    ("price", 'labor_rate_per_hour = "dear"', '"dear"', 'or "built".'),
    ("price", "one_more_path = 0", "is no length", "above zero"),
    ("price", "contingency_confidence_pct = 0", "is no confidence", "above 0 and below 100"),
    ("price", "contingency_confidence_pct = 100", "is all of it", "below 100"),
    ("price", 'supply_run_policy = "free"', '"free" is not one of', '"in-markup" or "in-labor"'),
    ("price", 'offer_rounding = "down"', "is not one of", '"nearest" or "up"'),
    ("rate", "paid_hours = 0", "is zero", "above zero"),
    ("rate", "billable_pct = 0", "is no share", "above 0"),
    ("rate", "profit_margin_pct = 100", "leaves nothing", "below 100"),
    ("tax", "rate_pct = 100", "is all of it", "below 100"),
    ("tax", "taxed_share_pct = 101", "more than 100 %", "at most 100"),
    ("tax", 'gross_factor_pct = "none"', '"none"', 'or "exact".'),
    ("tax", 'basis = "page"', "is not one of", '"invoice" or "line"'),
    ("terms", "deposit_cap_pct = 101", "is more than 100 %", 'at most 100, or "none".'),
    ("terms", 'deposit_cap_pct = "much"', '"much"', 'or "none".'),
    ("terms", 'price_form = "cheap"', "is not one of", '"time-and-material"'),
    ("terms", 'payment_steps = "later"', "is not a list of payments", "pct = 40"),
    ("terms", "cancellation_file = 3", "is not text", "quotes"),
]


@pytest.mark.parametrize(("section", "line", "says", "write"), WRONG, ids=[one[1] for one in WRONG])
def test_a_wrong_setting(section: str, line: str, says: str, write: str) -> None:
    ((where, read, hint),) = faults(f"[{section}]\n{line}\n")
    assert where.startswith("line 2, ")
    assert says in read
    assert write in hint


@pytest.mark.parametrize(
    ("steps", "says"),
    [
        ('{when = "a", pct = 50}', "adds up to 50 % and not to 100 %"),
        ('{when = "a", pct = 50}, {when = "b", pct = 50.1}', "adds up to 100.1 %"),
        ('{when = "a"}', "does not hold when and pct"),
        ('{when = "a", pct = 100, on = 1}', "does not hold when and pct"),
        ('{when = " ", pct = 100}', "does not say when"),
        ('{when = "a", pct = 0}', "is no share at all"),
        ("3", "does not hold when and pct"),
    ],
)
def test_a_wrong_plan_of_payments(steps: str, says: str) -> None:
    ((_, read, _),) = faults(f"[terms]\npayment_steps = [{steps}]\n")
    assert says in read


@pytest.mark.parametrize(("setting", "line"), [("payment_steps", "[]"), ("firm_license", '""')])
def test_a_setting_left_empty_is_shown_as_none(setting: str, line: str) -> None:
    assert shop(f"[terms]\n{setting} = {line}\n").shown[f"terms.{setting}"] == "none"
