"""Modes and policies typed anew into a workbook give what the engine gives for that setting.

Every case begins from the same plain workbook; what is typed is the setting, nothing else.
All of them are reckoned in one start of LibreOffice. Figures marked "by hand" were worked by
hand; the others are held against the engine, whose own figures have their own tests.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

import pytest

from estimator.outputs.workbook import bid_workbook
from estimator.pricing.records import PriceBuild
from tests.outputs.bid_factory import bid_of
from tests.outputs.spreadsheet import opened, reckoned
from tests.outputs.test_workbook_changed import Typed, found_in, retyped

BASE = """
[[allowances]]
name = "Light of your choice"
amount = 120

[[allowances]]
name = "Cover plates"
amount = 33.35
kind = "labor"

[settings.price]
permit_cost = 75
permit_handling = 25
overhead_pct = 11.1
profit_pct = 7.7
supply_run_hours = 0.75
contingency_pct = 12.5

[settings.tax]
rate_pct = 8.875
purchase_rate_pct = 6.5
"""
# Defined name of a cell, and how the price says the same.
FOUND = {
    "labor_amount": "labor", "supply_run": "supply_run.amount", "materials_sold": "materials_sell",
    "materials_cost": "materials_cost", "purchase_tax": "purchase_tax", "input_tax": "input_tax",
    "contingency": "contingency.amount", "built_up": "built_up", "offered": "offered",
    "offer_rounding": "offer_rounding", "before_tax": "before_tax", "tax_base": "tax_build.base",
    "tax_amount": "tax", "bid_total": "total", "deposit_amount": "deposit",
    "balance_amount": "balance", "labor_rate": "labor_rate_per_hour",
}  # fmt: skip
TAX = {
    "none": {"mode": "none"},
    "A": {"mode": "paid-at-purchase"},
    "A after the markup": {"mode": "paid-at-purchase", "purchase_tax": "after-markup"},
    "A not recovered": {"mode": "paid-at-purchase", "purchase_tax": "not-recovered"},
    "A from gross prices": {"mode": "paid-at-purchase", "prices_include_tax": True},
    "B": {"mode": "materials-sold"},
    "B before profit": {"mode": "materials-sold", "materials_base": "before-profit"},
    "B by lines": {"mode": "materials-sold", "basis": "line"},
    "C": {"mode": "whole-price"},
    "C by lines": {"mode": "whole-price", "basis": "line"},
    "C down": {"mode": "whole-price", "rounding": "down"},
    "C by lines, down": {"mode": "whole-price", "basis": "line", "rounding": "down"},
    "C to even": {"mode": "whole-price", "rounding": "half-even"},
    "C by lines, to even": {"mode": "whole-price", "basis": "line", "rounding": "half-even"},
    "D": {"mode": "purchase-and-labor"},
    "D by lines": {"mode": "purchase-and-labor", "basis": "line"},
    "E": {"mode": "gross-receipts"},
    "E published": {"mode": "gross-receipts", "gross_factor_pct": 2.041},
    "E by lines": {"mode": "gross-receipts", "basis": "line"},
    "F": {"mode": "part-of-price", "taxed_share_pct": 65},
    "F by lines": {"mode": "part-of-price", "taxed_share_pct": 65, "basis": "line"},
    "G": {"mode": "vat"},
    "G from gross prices": {"mode": "vat", "prices_include_tax": True},
    "G down by lines": {"mode": "vat", "basis": "line", "rounding": "down"},
}  # fmt: skip
PRICE = {
    "run in the markup": {"supply_run_policy": "in-markup"},
    "run in the labor": {"supply_run_policy": "in-labor"},
    "contingency on the price": {"contingency_on": "built-up"},
    "rate built up": {"labor_rate_per_hour": "built"},
    "offer up": {"offer_step": 25, "offer_rounding": "up"},
    "offer nearest": {"offer_step": 25},
    "offer nearest, odd step": {"offer_step": 0.35},
    "offer nearest, not below the minimum": {"offer_step": 1000, "minimum_charge": 1100},
    "offer nearest, not nothing": {"offer_step": 5000},
    "the minimum": {"minimum_charge": 2000},
}  # fmt: skip
TERMS = {
    "by time": {"price_form": "time-and-material"},
    "capped": {"price_form": "not-to-exceed", "not_to_exceed_pct": 12.5},
    "deposit of the materials": {"deposit_of": "materials", "deposit_pct": 50},
    "deposit capped": {"deposit_cap_pct": 10, "deposit_cap_amount": 1000},
    "deposit capped by the amount": {"deposit_cap_pct": 90, "deposit_cap_amount": 64},
}  # fmt: skip
RATE = {
    "all of the rate": {"wage_per_hour": 41.27, "burden_pct": 39.5, "paid_hours": 1960,
                        "billable_pct": 63, "overhead_per_year": 31850, "profit_margin_pct": 12.5},
}  # fmt: skip
SECTIONS: Mapping[str, Mapping[str, Mapping[str, object]]] = {
    "tax": TAX, "price": PRICE, "terms": TERMS, "rate": RATE,
}  # fmt: skip
CELLS = {
    "mode": "tax_mode", "rate_pct": "tax_rate", "purchase_tax": "purchase_tax_how",
    "basis": "tax_basis", "rounding": "tax_rounding", "gross_factor_pct": "gross_factor",
    "taxed_share_pct": "tax_share_set", "offer_rounding": "offer_rounding_how",
    "labor_rate_per_hour": "labor_rate_from", "not_to_exceed_pct": "not_to_exceed_rate",
    "deposit_pct": "deposit_rate", "deposit_cap_pct": "deposit_cap_rate",
    "wage_per_hour": "rate_wage", "burden_pct": "rate_burden", "paid_hours": "rate_paid_hours",
    "billable_pct": "rate_billable", "overhead_per_year": "rate_overhead_year",
    "profit_margin_pct": "rate_profit",
}  # fmt: skip
NAMES = [name for section in SECTIONS.values() for name in section]


def settings(name: str) -> tuple[str, Mapping[str, object]]:
    return next((section, cases[name]) for section, cases in SECTIONS.items() if name in cases)


def typed_for(changes: Mapping[str, object]) -> Typed:
    """What a person types into the sheet for the same settings: percentages as fractions."""
    typed: dict[str, float | str] = {}
    for key, value in changes.items():
        cell = CELLS.get(key, key)
        if isinstance(value, bool):
            typed[cell] = "yes" if value else "no"
        elif isinstance(value, str):
            typed[cell] = value
        else:
            assert isinstance(value, int | float)
            typed[cell] = value / 100 if key.endswith("_pct") else value
    return typed


def written(changes: Mapping[str, object]) -> str:
    """The same settings as a job file writes them."""
    shown = {True: "true", False: "false"}
    values = (
        (key, shown[value] if isinstance(value, bool) else repr(value).replace("'", '"'))
        for key, value in changes.items()
    )
    return "".join(f"{key} = {value}\n" for key, value in values)


@cache
def priced(name: str) -> PriceBuild:
    """What the engine makes of the settings of a case."""
    section, changes = settings(name)
    more = BASE
    if section == "rate":
        more = more.replace(
            "[settings.price]\n", '[settings.price]\nlabor_rate_per_hour = "built"\n'
        )
    head = f"[settings.{section}]\n"
    own = written(changes)
    more = more.replace(head, head + own) if head in more else f"{more}\n{head}{own}"
    return bid_of("nightstand", more=more).price


def amount(price: PriceBuild, path: str) -> float:
    found: object = price
    for part in path.split("."):
        found = getattr(found, part)
    return float(str(found))


@cache
def plain() -> bytes:
    return bid_workbook(bid_of("nightstand", more=BASE))


@cache
def outcomes() -> dict[str, bytes]:
    """Every case as LibreOffice reckons it, all in one start."""
    made = {}
    for name in NAMES:
        section, changes = settings(name)
        typed = typed_for(changes)
        if section == "rate":
            typed = {**typed, "labor_rate_from": "built"}
        made[name] = retyped(plain(), typed)
    return reckoned(made)


@pytest.mark.parametrize("name", NAMES)
def test_a_setting_typed_into_the_sheet_gives_what_the_engine_gives(name: str) -> None:
    want = {cell: amount(priced(name), path) for cell, path in FOUND.items()}
    assert found_in(outcomes()[name], want) == pytest.approx(want, abs=0.000_000_5)


@pytest.mark.parametrize("name", [*TAX, *PRICE])
def test_the_setting_moves_the_price_or_has_a_reason_not_to(name: str) -> None:
    """So that no case passes because its setting is not looked at."""
    before, after = amount(priced("none"), "total"), amount(priced(name), "total")
    # Tax out of gross prices and back into the cost, marked up with it, is the gross price again.
    same = {"none", "A not recovered", "A from gross prices"}
    assert (before == after) == (name in same)


@pytest.mark.parametrize("name", NAMES)
def test_the_books_tie_whatever_is_typed(name: str) -> None:
    book = opened(outcomes()[name], values=True)
    assert "ties to the total" in {cell.value for row in book["Books"].iter_rows() for cell in row}


def said(name: str, label: str) -> tuple[object, object]:
    """Words and amount of a line of the Bid after the typing."""
    page = opened(outcomes()[name], values=True)["Bid"]
    return next((row[1].value, row[2].value) for row in page.iter_rows() if row[0].value == label)


@pytest.mark.parametrize(
    ("name", "want"),
    [
        ("none", "no tax is charged"),
        ("A", "tax on materials is inside the price: the firm pays it when it buys them"),
        ("B", "8.875 % on the materials as sold"),
        ("C", "8.875 % on the whole price before tax"),
        ("D", "8.875 % on the work; tax on materials is inside the price"),
        ("E", "8.875 % tax on all that the firm receives for this job, this tax too"),
        ("F", "8.875 % on 65 % of the price before tax"),
        ("G", "8.875 % value added tax on the whole price before it"),
    ],
)
def test_the_customer_reads_the_tax_in_words_by_its_mode(name: str, want: str) -> None:
    assert said(name, "Tax")[0] == want


def test_the_cap_and_the_sentence_follow_the_price_form() -> None:
    words, cap = said("capped", "Not to exceed")
    assert words == "the most that is paid for the work above"
    assert cap == pytest.approx(float(priced("capped").form.cap or 0))
    assert str(said("capped", "Price form")[0]).startswith("Not to exceed:")
    assert str(said("by time", "Price form")[0]).startswith("Time and material:")
    assert said("by time", "Not to exceed")[1] == "none"
    assert said("none", "Rates")[0] == "none: the price is fixed"
    assert str(said("by time", "Rates")[0]).startswith("85 USD an hour of one person")


@pytest.mark.parametrize(
    ("name", "over"), [("deposit capped", True), ("deposit capped by the amount", True),
                       ("none", False)],
)  # fmt: skip
def test_a_deposit_over_the_cap_is_flagged_and_left_as_it_is(name: str, over: bool) -> None:
    words, deposit = said(name, "Deposit")
    assert ("CHECK BEFORE SENDING" in str(words)) == over
    assert deposit == pytest.approx(float(priced(name).deposit))
