"""Tax examples: who asks for which rule, the sums worked out in decimals by hand.

The rule of each was read in the source that its test names; the money of the base job
(materials cost 120.00, sold at 150.00, labor 400.00, rate 7.25 %) is made up.
"""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest

from estimator.money import round_money
from estimator.pricing.price_records import TaxBuild
from estimator.pricing.tax import build_tax, factor_pct, rounded_tax, tax_inside, without_tax
from estimator.settings import TaxTerms
from tests.pricing.made_books import plain
from tests.pricing.made_price import BASE, figures, price


def terms(**own: Any) -> TaxTerms:
    return plain(**figures(own)).shop.tax


def taxed(amounts: str, **own: Any) -> TaxBuild:
    """The tax on lines of materials."""
    lines = [(f"line {at}", "materials", Decimal(each)) for at, each in enumerate(amounts.split())]
    return build_tax(lines, terms(**({"mode": "whole-price"} | own)), "USD")


def test_e1_paid_at_purchase_and_not_recovered() -> None:
    """E1 (Texas lump sum, Arizona MRRA, Nebraska option 2): 8.70 is cost, invoice 550.00."""
    got = price(
        **BASE, mode="paid-at-purchase", purchase_rate_pct="7.25", purchase_tax="not-recovered"
    )
    assert (got.purchase_tax, got.tax, got.total) == (Decimal("8.70"), 0, Decimal("550.00"))
    assert got.materials_sell == Decimal("150.00")
    assert got.tax_build.lines == ()


def test_e1_recovered_where_cost_is_set_to_128_70_before_the_markup() -> None:
    """E1, its bracket: 128.70 x 1.25 = 160.875 -> 160.88, and 400.00."""
    got = price(**BASE, mode="paid-at-purchase", purchase_rate_pct="7.25")
    assert (got.materials_sell, got.total) == (Decimal("160.88"), Decimal("560.88"))


def test_e2_charged_on_materials_as_sold() -> None:
    """E2 (Texas separated contract, Nebraska option 1): 10.875 -> 10.88, invoice 560.88."""
    got = price(**BASE, mode="materials-sold")
    assert (got.tax, got.total) == (Decimal("10.88"), Decimal("560.88"))
    assert (got.tax_build.base, got.purchase_tax) == (Decimal("150.00"), 0)


def test_e3_charged_on_the_whole_price() -> None:
    """E3 (New York repair, Washington): 7.25 % of 550.00 = 39.875 -> 39.88, invoice 589.88."""
    got = price(**BASE, mode="whole-price")
    assert (got.tax, got.total) == (Decimal("39.88"), Decimal("589.88"))


@pytest.mark.parametrize(
    ("factor", "tax"),
    [(None, "11.22"), ("2.041", "11.23")],
    ids=["exact 0.02 / 0.98", "published 2.041 %"],
)
def test_e4_south_dakota_bid_factor(factor: str | None, tax: str) -> None:
    """E4 (South Dakota, contractor's excise 2 %): 550.00 grossed up; 2 % of 561.22 = 11.22."""
    got = price(**BASE | {"rate_pct": "2"}, mode="gross-receipts", gross_factor_pct=factor)
    assert (got.tax, got.total) == (Decimal(tax), 550 + Decimal(tax))
    assert round_money(Decimal("561.22") * 2 / 100) == Decimal("11.22")


def test_e5_why_the_factor_is_2_041() -> None:
    """E5: 0.02 / (1 - 0.02) = 0.0204082."""
    exact = factor_pct(terms(mode="gross-receipts", rate_pct="2", gross_factor_pct=None))
    assert round(exact, 5) == Decimal("2.04082")
    stated = terms(mode="gross-receipts", rate_pct="2", gross_factor_pct="2.041")
    assert factor_pct(stated) == Decimal("2.041")


def test_e6_arizona_taxes_65_percent() -> None:
    """E6 (Arizona prime contracting, 35 % off): 357.50 x 8.6 % = 30.745 -> 30.75."""
    got = price(**BASE | {"rate_pct": "8.6"}, mode="part-of-price", taxed_share_pct="65")
    assert (got.tax_build.base, got.tax) == (Decimal("357.50"), Decimal("30.75"))
    assert (got.tax_build.share_pct, got.total) == (65, Decimal("580.75"))


@pytest.mark.parametrize(
    ("base", "taxed_base", "tax"),
    [("before-profit", "1150.00", "83.38"), ("sold", "1000.00", "72.50")],
)
def test_e7_california_taxes_before_profit(base: str, taxed_base: str, tax: str) -> None:
    """E7 (California annotation 190.2500): 1,000.00 + 15 % overhead is taxed, 1,265.00 is not."""
    got = price(
        materials="1000.00", materials_markup_pct="0", overhead_pct="15", profit_pct="10",
        mode="materials-sold", rate_pct="7.25", materials_base=base,
    )  # fmt: skip
    assert got.before_tax == Decimal("1265.00")
    assert (got.tax_build.base, got.tax) == (Decimal(taxed_base), Decimal(tax))


@pytest.mark.parametrize(
    ("own", "sold", "total"),
    [
        ({"mode": "materials-sold", "rate_pct": "6"}, "120.00", "127.20"),
        ({"mode": "paid-at-purchase", "purchase_tax": "after-markup"}, "126.00", "126.00"),
        ({"mode": "paid-at-purchase", "purchase_tax": "before-markup"}, "127.20", "127.20"),
    ],
    ids=["tax on the marked-up price", "fee on pre-tax cost", "fee on cost with tax"],
)
def test_e8_order_of_markup_and_tax(own: dict[str, Any], sold: str, total: str) -> None:
    """E8 (a builders' forum): 100 of material, 20 % fee, 6 % tax, in three orders."""
    got = price(materials="100", materials_markup_pct="20", purchase_rate_pct="6", **own)
    assert (got.materials_sell, got.total) == (Decimal(sold), Decimal(total))


@pytest.mark.parametrize(
    ("rate", "basis", "taxes", "tax"),
    [
        ("7.25", "line", "0.36 0.91 0.03 0.16", "1.46"),
        ("7.25", "invoice", "0.36 0.91 0.03 0.16", "1.45"),
        ("8.875", "line", "0.44 1.11 0.03 0.19", "1.77"),
        ("8.875", "invoice", "0.44 1.11 0.03 0.19", "1.78"),
    ],
    ids=["E9 line", "E9 invoice", "E10 line", "E10 invoice"],
)
def test_e9_e10_line_against_invoice(rate: str, basis: str, taxes: str, tax: str) -> None:
    """E9, E10 (SSUTA 324, either basis may be chosen): 4.97, 12.49, 0.38, 2.19; 20.03 in all."""
    got = taxed("4.97 12.49 0.38 2.19", rate_pct=rate, basis=basis)
    assert [each.tax for each in got.lines] == [Decimal(each) for each in taxes.split()]
    assert (got.base, got.tax) == (Decimal("20.03"), Decimal(tax))


@pytest.mark.parametrize(
    ("amount", "rate", "tax"),
    [
        ("10.50", "7", "0.74"),
        ("0.07", "6.25", "0.00"),
        ("0.08", "6.25", "0.01"),
        ("1.00", "4.49", "0.04"),
        ("1.00", "4.50", "0.05"),
    ],
)
def test_e11_third_decimal(amount: str, rate: str, tax: str) -> None:
    """E11 (SSUTA 324; N.D. Admin. Code 81-04.1-01-29): a third decimal above 4 goes up."""
    assert taxed(amount, rate_pct=rate).tax == Decimal(tax)


def test_e12_no_binary_floats() -> None:
    """E12: 1.15 x 10 % = 0.115 -> 0.12 and 2.675 -> 2.68; Python's round() gives 0.11, 2.67."""
    assert taxed("1.15", rate_pct="10").tax == Decimal("0.12")
    assert rounded_tax(Decimal("2.675"), "half-up", "USD") == Decimal("2.68")
    assert (round(1.15 * 0.10, 2), round(2.675, 2)) == (0.11, 2.67)


@pytest.mark.parametrize(
    ("basis", "rounding", "tax"),
    [
        ("line", "half-up", "0.66"),
        ("invoice", "half-up", "0.67"),
        ("invoice", "down", "0.67"),
    ],
)
def test_e13_vat_by_line_and_invoice(basis: str, rounding: str, tax: str) -> None:
    """E13 (HMRC VATREC12010 and 12030, Notice 700 17.5): 3 x 1.12 at 20 %, 0.672 in all."""
    got = taxed("1.12 1.12 1.12", mode="vat", rate_pct="20", basis=basis, rounding=rounding)
    assert got.tax == Decimal(tax)


@pytest.mark.parametrize(
    ("exact", "rounding", "tax"),
    [
        ("0.679", "down", "0.67"),
        ("0.675", "half-up", "0.68"),
        ("0.675", "half-even", "0.68"),
        ("0.665", "half-even", "0.66"),
        ("0.665", "half-up", "0.67"),
        ("0.6651", "half-even", "0.67"),
    ],
)
def test_three_roundings(exact: str, rounding: Any, tax: str) -> None:
    """Worked by hand; a credit is its charge with a minus, and nothing has no sign."""
    assert rounded_tax(Decimal(exact), rounding, "USD") == Decimal(tax)
    assert rounded_tax(-Decimal(exact), rounding, "USD") == -Decimal(tax)
    assert str(rounded_tax(Decimal("-0.001"), rounding, "USD")) == "0.00"


@pytest.mark.parametrize(
    ("gross", "rate", "net", "inside"),
    [
        ("107.25", "7.25", "100.00", "7.25"),
        ("589.88", "7.25", "550.00", "39.88"),
        ("100.00", "20", "83.33", "16.67"),
        ("100.00", "0", "100.00", "0.00"),
    ],
)
def test_e14_tax_inside_a_price(gross: str, rate: str, net: str, inside: str) -> None:
    """E14: 107.25 / 1.0725; 589.88 / 1.0725; the VAT in 100.00 at 20 %."""
    assert without_tax(Decimal(gross), Decimal(rate), "USD") == Decimal(net)
    assert tax_inside(Decimal(gross), Decimal(rate), "USD") == Decimal(inside)


def test_e15_a_public_schedule_of_rates() -> None:
    """E15 (Sri Lanka, Building Schedule of Rates 2017, T001): 1,934.00 + 9 %, labor 315 + 225."""
    got = price("540", "1934.00", labor_rate_per_hour="1", materials_markup_pct="9")
    assert got.materials_sell == Decimal("1934.00") + Decimal("174.06")
    assert got.total == Decimal("2648.06")
