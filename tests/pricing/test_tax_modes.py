"""What each tax mode takes as its base; tax paid at the counter; all of it worked by hand."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest

from estimator.money import round_money
from estimator.pricing.price_records import TaxedLine
from estimator.pricing.records import PriceBuild
from estimator.pricing.tax import build_tax, counter_rate_pct, line_taxes
from tests.pricing.made_books import plain
from tests.pricing.made_price import BASE, figures, price

FULL: dict[str, Any] = BASE | {
    "trips": 1, "trip_charge": "45", "supply_run_hours": "0.5", "overhead_pct": "10",
    "profit_pct": "5", "contingency_pct": "10", "minimum_charge": "900", "offer_step": "50",
    "offer_rounding": "up", "permit_cost": "75", "permit_handling": "25",
    "allowances": (("materials", "60"), ("labor", "40"), ("other", "20")),
}  # fmt: skip
"""400 + 150 + 45 + 50 = 645; 64.50; 35.48 (5 % of 709.50 = 35.475); contingency 10 % of labor
40.00; built up 784.98; minimum 900; offered 900; allowances 120; permit 100: 1,120.00."""


def lines(build: PriceBuild) -> dict[str, Decimal]:
    return {each.name: each.amount for each in build.tax_build.lines}


def test_the_full_price_before_any_tax() -> None:
    got = price(**FULL)
    assert (got.base, got.overhead, got.profit) == (645, Decimal("64.50"), Decimal("35.48"))
    assert (got.built_up, got.offered) == (Decimal("784.98"), Decimal("900.00"))
    assert (got.before_tax, got.tax, got.total) == (Decimal("1120.00"), 0, Decimal("1120.00"))


def test_materials_as_sold_and_their_allowances_are_taxed() -> None:
    """7.25 % of 150.00 + 60.00 = 15.225 -> 15.23."""
    got = price(**FULL, mode="materials-sold")
    assert lines(got) == {"materials": 150, "allowance: materials 1": 60}
    assert (got.tax_build.base, got.tax) == (210, Decimal("15.23"))


def test_the_work_is_taxed_and_tax_is_paid_at_the_counter() -> None:
    """Kansas: 6 % of 120.00 = 7.20 at the counter; 127.20 x 1.25 = 159.00 sold; overhead 10 % of
    654.00 = 65.40; profit 5 % of 719.40 = 35.97; contingency 40.00; built up 795.37; step 104.63.
    Work: 400 + 45 + 50 + 65.40 + 35.97 + 40 + 104.63 + 40 = 781.00; 7.25 % = 56.6225."""
    got = price(**FULL, mode="purchase-and-labor", purchase_rate_pct="6")
    assert (got.purchase_tax, got.materials_sell) == (Decimal("7.20"), Decimal("159.00"))
    assert list(lines(got)) == [
        "labor", "trips", "supply run", "overhead", "profit", "contingency", "minimum",
        "allowance: labor 2",
    ]  # fmt: skip
    assert (got.tax_build.base, got.tax) == (Decimal("781.00"), Decimal("56.62"))


@pytest.mark.parametrize("mode", ["whole-price", "gross-receipts", "vat", "part-of-price"])
def test_every_line_is_taxed(mode: str) -> None:
    got = price(**FULL, mode=mode)
    assert list(lines(got)) == [
        "materials", "labor", "trips", "supply run", "overhead", "profit", "contingency",
        "minimum", "allowance: materials 1", "allowance: labor 2", "allowance: other 3",
        "permit", "permit handling",
    ]  # fmt: skip
    assert sum(lines(got).values()) == got.tax_build.base == got.before_tax


def test_each_line_of_the_full_price_is_taxed_by_itself() -> None:
    """By hand at 7.25 %: 10.88 (10.875), 29.00, 3.26 (3.2625), 3.63 (3.625), 4.68 (4.67625),
    2.57 (2.5723), 2.90, 8.34 (8.33895), 4.35, 2.90, 1.45, 5.44 (5.4375), 1.81 (1.8125)."""
    by_line = price(**FULL, mode="whole-price", basis="line")
    taxes = "10.88 29.00 3.26 3.63 4.68 2.57 2.90 8.34 4.35 2.90 1.45 5.44 1.81"
    assert [each.tax for each in by_line.tax_build.lines] == [Decimal(one) for one in taxes.split()]
    assert by_line.tax == Decimal("81.21")
    assert price(**FULL, mode="whole-price").tax == Decimal("81.20")


def test_tax_on_all_receipts_with_tax_paid_at_the_counter() -> None:
    """South Dakota: 4.2 % of 120.00 = 5.04 at the counter; 125.04 x 1.25 = 156.30; 556.30 x 0.02
    / 0.98 = 11.353."""
    got = price(**BASE | {"rate_pct": "2"}, mode="gross-receipts", purchase_rate_pct="4.2")
    assert (got.purchase_tax, got.materials_sell) == (Decimal("5.04"), Decimal("156.30"))
    assert (got.tax, got.total) == (Decimal("11.35"), Decimal("567.65"))


def test_vat_on_net_prices() -> None:
    got = price(**BASE | {"rate_pct": "20"}, mode="vat")
    assert (got.tax, got.total) == (Decimal("110.00"), Decimal("660.00"))
    assert (got.input_tax, got.purchase_tax, got.purchase_rate_pct) == (0, 0, 0)


@pytest.mark.parametrize(
    ("purchase_rate", "input_tax", "cost", "tax"),
    [("0", "20.00", "100.00", "105.00"), ("5", "5.71", "114.29", "108.57")],
    ids=["same rate", "own rate"],
)
def test_vat_in_book_prices_is_taken_out(
    purchase_rate: str, input_tax: str, cost: str, tax: str
) -> None:
    """120.00 / 1.20 = 100.00, sold at 125.00; 120.00 / 1.05 = 114.29, at 142.86 (142.8625)."""
    got = price(
        **BASE | {"rate_pct": "20"}, mode="vat", prices_include_tax=True,
        purchase_rate_pct=purchase_rate,
    )  # fmt: skip
    assert (got.materials_listed, got.input_tax) == (120, Decimal(input_tax))
    assert (got.materials_cost, got.purchase_tax) == (Decimal(cost), 0)
    assert (got.tax, got.total) == (Decimal(tax), got.before_tax + Decimal(tax))


def test_tax_in_book_prices_where_it_is_a_cost() -> None:
    """128.70 holds 8.70; taken out and added again before the markup: 160.88 (160.875)."""
    got = price(
        **BASE | {"materials": "128.70"}, mode="paid-at-purchase", purchase_rate_pct="7.25",
        prices_include_tax=True,
    )  # fmt: skip
    assert (got.input_tax, got.materials_cost) == (Decimal("8.70"), Decimal("120.00"))
    assert (got.purchase_tax, got.materials_sell) == (Decimal("8.70"), Decimal("160.88"))


@pytest.mark.parametrize("mode", ["none", "materials-sold", "whole-price", "part-of-price"])
def test_no_counter_in_the_other_modes(mode: str) -> None:
    got = price(**BASE, mode=mode, prices_include_tax=True, purchase_rate_pct="6")
    assert (got.input_tax, got.purchase_tax, got.materials_cost) == (0, 0, 120)


@pytest.mark.parametrize(
    ("mode", "gross", "rate"),
    [
        ("paid-at-purchase", False, "6"), ("purchase-and-labor", False, "6"),
        ("gross-receipts", True, "6"), ("vat", True, "6"), ("vat", False, "0"),
        ("whole-price", True, "0"),
    ],
)  # fmt: skip
def test_the_rate_of_the_counter(mode: str, gross: bool, rate: str) -> None:
    tax = plain(mode=mode, prices_include_tax=gross, purchase_rate_pct=Decimal(6)).shop.tax
    assert counter_rate_pct(tax) == Decimal(rate)


@pytest.mark.parametrize("mode", ["none", "paid-at-purchase"])
def test_nothing_is_charged_to_the_customer(mode: str) -> None:
    built = price(**BASE, mode=mode).tax_build
    assert (built.lines, built.base, built.tax, built.factor_pct, built.rate_pct) == (
        (),
        0,
        0,
        0,
        0,
    )


def test_what_the_tax_record_says() -> None:
    built = price(
        **BASE, mode="whole-price", basis="line", rounding="half-even", taxed_share_pct="65"
    ).tax_build
    assert (built.mode, built.basis, built.rounding) == ("whole-price", "line", "half-even")
    assert (built.rate_pct, built.factor_pct) == (Decimal("7.25"), Decimal("7.25"))
    assert built.share_pct == 100
    assert built.lines[0] == TaxedLine("materials", Decimal("150.00"), Decimal("10.88"))


def test_shares_of_lines_are_rounded_before_they_are_taxed() -> None:
    """65 % of 0.01 is 0.0065 -> 0.01 on a line; of 0.02 together 0.013 -> 0.01."""
    tax = figures({"mode": "part-of-price", "taxed_share_pct": "65", "rate_pct": "50"})
    made = [("a", "other", Decimal("0.01")), ("b", "other", Decimal("0.01"))]
    by_line = build_tax(made, plain(**tax, basis="line").shop.tax, "USD")
    assert (by_line.base, by_line.tax) == (Decimal("0.02"), Decimal("0.02"))
    whole = build_tax(made, plain(**tax).shop.tax, "USD")
    assert (whole.base, whole.tax) == (Decimal("0.01"), Decimal("0.01"))


def test_a_price_rounded_down_takes_tax_off_and_never_below_nothing() -> None:
    terms = plain(mode="whole-price", rate_pct=Decimal(10)).shop.tax
    amounts = [Decimal(each) for each in ("1.00", "-0.40", "-3.00", "2.00")]
    want = [Decimal(each) for each in ("0.10", "-0.04", "-0.06", "0.20")]
    assert list(line_taxes(amounts, terms, "USD")) == want


@pytest.mark.parametrize("basis", ["invoice", "line"])
def test_work_rounded_away_is_not_taxed_below_nothing(basis: str) -> None:
    """Materials 130.00, no work, rounded down to 100: the work is -30.00."""
    got = price(
        materials="130", materials_markup_pct="0", offer_step="100", mode="purchase-and-labor",
        rate_pct="7", basis=basis,
    )  # fmt: skip
    assert (got.offered, got.offer_rounding) == (100, -30)
    assert (got.tax_build.base, got.tax, got.total) == (0, 0, 100)


def test_lines_without_an_amount_are_left_out() -> None:
    assert list(lines(price(**BASE, mode="vat"))) == ["materials", "labor"]


def test_a_currency_without_cents_is_taxed_in_whole_units() -> None:
    """JPY: 10 % of 1,235 is 123.5 -> 124, and 123 where it is rounded down."""
    made = [("a", "other", Decimal(1235))]
    up, down = (
        build_tax(made, plain(mode="vat", rate_pct=Decimal(10), rounding=how).shop.tax, "JPY")
        for how in ("half-up", "down")
    )
    assert (str(up.tax), str(down.tax)) == ("124", "123")
    assert round_money(Decimal("123.5"), "JPY") == 124


@pytest.mark.parametrize(
    ("basis", "base", "tax"), [("invoice", "803", "80"), ("line", "804", "80")]
)
def test_a_share_without_cents(basis: str, base: str, tax: str) -> None:
    """JPY, 65 % of 621 and 615: 403.65 -> 404 and 399.75 -> 400, together 803.4 -> 803; 10 % is
    40.4 -> 40 and 40 on the lines, 80.3 -> 80 in all."""
    own = {"mode": "part-of-price", "taxed_share_pct": "65", "rate_pct": "10", "basis": basis}
    made = [("a", "other", Decimal(621)), ("b", "other", Decimal(615))]
    got = build_tax(made, plain(**figures(own)).shop.tax, "JPY")
    assert (str(got.base), str(got.tax)) == (base, tax)


@pytest.mark.parametrize("basis", ["invoice", "line"])
def test_nothing_taxed_has_the_decimals_of_the_currency(basis: str) -> None:
    got = build_tax([], plain(mode="vat", rate_pct=Decimal(10), basis=basis).shop.tax, "USD")
    assert (str(got.base), str(got.tax)) == ("0.00", "0.00")


def test_a_mode_without_tax_takes_no_notice_of_the_rate() -> None:
    made = [("a", "other", Decimal(100))]
    assert build_tax(made, plain(mode="none", rate_pct=Decimal(10)).shop.tax, "USD").tax == 0


def test_the_rounding_of_the_offer_is_taxed_as_a_line_of_its_own() -> None:
    """550.00 up to 600.00."""
    got = price(**BASE, mode="whole-price", offer_step="100", offer_rounding="up")
    assert lines(got) == {"materials": 150, "labor": 400, "offer rounding": 50}
