"""Figures typed into a saved workbook carry through: LibreOffice reckons what was worked by hand.

Each case types new figures into cells of a workbook; all of them are reckoned in one start.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from io import BytesIO
from typing import Any

import pytest
from openpyxl import Workbook

from estimator.outputs.workbook import bid_workbook
from tests.outputs.bid_factory import bid_of, full_file, sample_bid, sample_file
from tests.outputs.spreadsheet import opened, reckoned

Typed = Mapping[str, float | str]

NEW_RATES = """
[settings.price]
labor_rate_per_hour = 91.35
hours_basis = "likely"
materials_markup_pct = 42.5
small_items_pct = 3.75
minimum_charge = 130
trip_charge = 51.20
overhead_pct = 11.1
profit_pct = 7.7
permit_cost = 82.40
permit_handling = 20

[settings.tax]
mode = "materials-sold"
rate_pct = 8.875

[settings.terms]
deposit_pct = 33
"""
TYPED_RATES: Typed = {
    "labor_rate": 91.35, "hours_basis": "likely", "markup_rate": 0.425, "small_items_rate": 0.0375,
    "minimum_charge": 130, "trip_charge": 51.20, "overhead_rate": 0.111, "profit_rate": 0.077,
    "permit_cost": 82.40, "permit_handling": 20, "tax_mode": "materials-sold",
    "tax_rate": 0.08875, "deposit_rate": 0.33,
}  # fmt: skip
# S23, worked by hand: labor 6.25 h at 92, trip 45, supply run 0.75 h at 92 = 69, materials
# 118.40 with 35 %, permit 75 + 25, tax 6 %, deposit 30 %, not to exceed +15 %.
S23: Typed = {
    "hours_basis": "override", "hours_override": 6.25, "labor_rate_stated": 92,
    "supply_run_hours": 0.75, "materials_basis": "override", "materials_override": 118.40,
    "small_items_rate": 0, "markup_rate": 0.35, "work_trips": 1, "trip_charge": 45,
    "minimum_charge": 0, "permit_cost": 75, "permit_handling": 25, "tax_mode": "materials-sold",
    "tax_rate": 0.06, "deposit_rate": 0.30, "not_to_exceed_rate": 0.15,
}  # fmt: skip
S23_FOUND = {
    "labor_amount": 575.00, "supply_run": 69.00, "materials_sold": 159.84, "before_tax": 948.84,
    "tax_amount": 9.59, "bid_total": 958.43, "not_to_exceed_cap": 1102.19,
    "deposit_amount": 287.53, "balance_amount": 670.90, "margin_rate": 0.2593,
}  # fmt: skip
# S23 as a lump sum, worked by hand: tax at the counter 7.10, (118.40 + 7.10) x 1.35 = 169.43,
# half a cent up from 169.425; 169.43 + 789.00 = 958.43.
LUMP: Typed = {**S23, "tax_mode": "paid-at-purchase", "purchase_rate_set": 0.06}
LUMP_FOUND = {"purchase_tax": 7.10, "materials_sold": 169.43, "tax_amount": 0, "bid_total": 958.43}
# The base job of the published rules of tax, money worked by hand: materials 120 sold at 150,
# labor 400, rate 7.25 % unless another is typed.
JOB: Typed = {
    "hours_basis": "override", "hours_override": 5, "labor_rate_stated": 80,
    "materials_basis": "override", "materials_override": 120, "small_items_rate": 0,
    "markup_rate": 0.25, "work_trips": 0, "minimum_charge": 0, "tax_rate": 0.0725,
    "purchase_rate_set": 0.0725,
}  # fmt: skip
LOST: Typed = {**JOB, "tax_mode": "paid-at-purchase", "purchase_tax_how": "not-recovered"}
GROSS: Typed = {**JOB, "tax_mode": "gross-receipts", "tax_rate": 0.02, "purchase_rate_set": 0}
SHARE: Typed = {**JOB, "tax_mode": "part-of-price", "tax_rate": 0.086, "tax_share_set": 0.65}
OVERHEAD: Typed = {
    **JOB, "materials_override": 1000, "markup_rate": 0, "overhead_rate": 0.15,
    "profit_rate": 0.10, "tax_mode": "materials-sold", "materials_base": "before-profit",
}  # fmt: skip
BY_RULE = {
    # Texas lump sum: 8.70 of tax on 120.00 is the firm's, nothing is charged.
    "E1": (LOST, {"purchase_tax": 8.70, "tax_amount": 0, "bid_total": 550.00}),
    # Texas, materials apart: 10.875.
    "E2": ({**JOB, "tax_mode": "materials-sold"}, {"tax_amount": 10.88, "bid_total": 560.88}),
    # New York repair, Washington: 39.875.
    "E3": ({**JOB, "tax_mode": "whole-price"}, {"tax_amount": 39.88, "bid_total": 589.88}),
    # South Dakota: 550 x 0.02 / 0.98; the published 2.041 % gives a cent more.
    "E4": (GROSS, {"tax_amount": 11.22, "bid_total": 561.22}),
    "E4 published": ({**GROSS, "gross_factor": 0.02041}, {"tax_amount": 11.23}),
    # Arizona: 65 % of 550 is 357.50, at 8.6 % 30.745.
    "E6": (SHARE, {"tax_base": 357.50, "tax_amount": 30.75}),
    # California: taxed with the overhead, without the profit: 83.375.
    "E7": (OVERHEAD, {"tax_base": 1150.00, "tax_amount": 83.38}),
}
# Wage 30.38, burden 43.34 %, 2,080 h, 70 % billable, overhead 25,000, profit 10 %: 88.20.
BUILT: Typed = {**JOB, "labor_rate_from": "built"}
# S3, worked by hand: 1.75 h at 85 = 148.75; 28.40 x 1.30 = 36.92; 185.67 is under 225.
S3: Typed = {
    "hours_basis": "override", "hours_override": 1.75, "labor_rate": 85,
    "materials_basis": "override", "materials_override": 28.40, "small_items_rate": 0,
    "markup_rate": 0.30, "work_trips": 0, "minimum_charge": 225,
}  # fmt: skip


@dataclass(frozen=True)
class Case:
    """What is typed into a workbook, by defined name or place, and what must come out."""

    base: bytes
    typed: Typed
    found: Mapping[str, float | str]


def place_of(book: Workbook, name: str) -> tuple[str, str]:
    """Sheet and cell of a defined name, or of a place written as Sheet!E7."""
    target = book.defined_names[name].attr_text if name in book.defined_names else name
    sheet, place = target.rsplit("!", 1)
    return sheet.strip("'"), place.replace("$", "")


def retyped(data: bytes, typed: Typed) -> bytes:
    """The workbook after somebody typed other figures into it."""
    book, saved = opened(data), BytesIO()
    for name, value in typed.items():
        sheet, place = place_of(book, name)
        book[sheet][place] = value
    book.save(saved)
    return saved.getvalue()


def row_of(data: bytes, sheet: str, column: str, text: str) -> int:
    """Number of the first row with a text in a column."""
    cells = opened(data, values=True)[sheet][column]
    return next(cell.row for cell in cells if cell.value == text)


def totals(sample: str, more: str = "") -> dict[str, float]:
    """What the engine finds for a job, by defined name."""
    price = bid_of(sample, more=more).price
    names = {"base_amount": price.base, "offered": price.offered, "tax_amount": price.tax,
             "bid_total": price.total, "deposit_amount": price.deposit}  # fmt: skip
    return {name: float(value) for name, value in names.items()}


def unit_prices() -> str:
    """A price of one unit for every item of the nightstand job: packs cannot be chosen anew."""
    items = (line.item for line in sample_bid("nightstand").shopping)
    return "\n[overrides.prices]\n" + "\n".join(f'"{item}" = 1.37' for item in items)


@cache
def cases() -> dict[str, Case]:
    """All cases by name."""
    night, all_of_it = sample_file("nightstand"), full_file()
    tails = f"Takeoff!E{row_of(night, 'Takeoff', 'D', 'Tails')}"
    allowance = f"Takeoff!E{row_of(night, 'Takeoff', 'D', 'Allowance')}"
    order = f"Takeoff!E{row_of(night, 'Takeoff', 'D', 'To order')}"
    test = row_of(night, "Takeoff", "C", "test-outlet")
    labor = row_of(night, "Labor", "C", "Test and label one outlet")
    device = row_of(night, "Takeoff", "C", "receptacle-15")
    get = row_of(night, "Shopping list", "D", "receptacle-15")
    unpriced = row_of(all_of_it, "Shopping list", "D", "joint-tape")
    plain = bid_workbook(bid_of("nightstand", more=unit_prices()))
    priced = {f"Shopping list!I{unpriced}": 0.10}
    return {
        "S23": Case(night, S23, S23_FOUND),
        "S23 lump sum": Case(night, LUMP, LUMP_FOUND),
        **{name: Case(night, typed, found) for name, (typed, found) in BY_RULE.items()},
        "rate built up": Case(
            night, BUILT,
            {"rate_burdened": 43.55, "rate_billable_hours": 1456, "rate_labor": 62.21,
             "rate_overhead": 17.17, "rate_cost": 79.38, "labor_rate": 88.20,
             "labor_amount": 441.00},
        ),
        "S3": Case(night, S3, {"built_up": 185.67, "offered": 225, "bid_total": 225}),
        # 125.50 x 1.35 = 169.425, half a cent up.
        "half a cent": Case(
            night, {**S23, "materials_override": 125.50}, {"materials_sold": 169.43}
        ),
        # S1 with tails of 24 in: 95 + 48 = 143, x 1.1 = 157.3 in, 13.1 ft, 14 ft.
        "tails": Case(night, {tails: 48}, {order: 14}),
        # 119 x 1.2 = 142.8 in = 11.9 ft, 12 ft. 119 x 1.21 = 143.99. 119 x 1.22 = 145.18, 13 ft.
        "allowance": Case(night, {allowance: 20}, {order: 12}),
        "a foot more": Case(night, {allowance: 22}, {order: 13}),
        # Seven receptacles at 1.95 instead of one.
        "quantity": Case(
            night, {f"Takeoff!E{device}": 7},
            {f"Shopping list!E{get}": 7, f"Shopping list!J{get}": 13.65},
        ),
        "price": Case(night, {f"Shopping list!I{get}": 4.25}, {f"Shopping list!J{get}": 4.25}),
        # 40 outlets to test at 0.05, 0.10 and 0.20 h each.
        "work": Case(
            night, {f"Takeoff!E{test}": 40},
            {f"Labor!J{labor}": 2, f"Labor!K{labor}": 4, f"Labor!L{labor}": 8},
        ),
        # 23.5 ft of tape, by the foot: 24 at 0.10.
        "a price found": Case(
            all_of_it, priced, {f"Shopping list!J{unpriced}": 2.40, "unpriced_count": 1}
        ),
        "a price lost": Case(
            night, {f"Shopping list!I{get}": "unknown"},
            {f"Shopping list!J{get}": "unknown", "unpriced_count": 1},
        ),
        "no override typed": Case(
            night, {"hours_basis": "override"}, {"hours_charged": "fill in the override"}
        ),
        "rates": Case(night, TYPED_RATES, totals("nightstand", NEW_RATES)),
        "all of it": Case(
            plain, {**TYPED_RATES, tails: 40, allowance: 35},
            totals("nightstand", unit_prices() + NEW_RATES
                   + '\n[settings.practice]\ntail = "20 in"\nallowance_pct = 35\n'),
        ),
    }  # fmt: skip


@cache
def outcomes() -> dict[str, bytes]:
    """Every case as LibreOffice reckons it."""
    return reckoned({name: retyped(case.base, case.typed) for name, case in cases().items()})


CASES = (
    "S23", "S23 lump sum", *BY_RULE, "rate built up", "S3",
    "half a cent", "tails", "allowance", "a foot more", "quantity", "price", "work",
    "a price found", "a price lost", "no override typed", "rates", "all of it",
)  # fmt: skip


def found_in(data: bytes, names: Mapping[str, Any]) -> dict[str, Any]:
    book, shown = opened(data), opened(data, values=True)
    places = {name: place_of(book, name) for name in names}
    return {name: shown[sheet][place].value for name, (sheet, place) in places.items()}


@pytest.mark.parametrize("name", CASES)
def test_what_is_typed_carries_through(name: str) -> None:
    want = dict(cases()[name].found)
    assert found_in(outcomes()[name], want) == pytest.approx(want, abs=0.000_000_5)


@pytest.mark.parametrize("name", sorted(set(CASES) - {"no override typed"}))
def test_the_bid_page_and_the_books_follow_the_total(name: str) -> None:
    book = opened(outcomes()[name], values=True)
    total = found_in(outcomes()[name], {"bid_total": 0})["bid_total"]
    on_the_page = {row[0].value: row[2].value for row in book["Bid"].iter_rows(max_col=3)}
    assert on_the_page["Total"] == pytest.approx(total)
    assert "ties to the total" in {cell.value for row in book["Books"].iter_rows() for cell in row}


def test_typing_changes_what_the_cells_show() -> None:
    for name in ("rates", "all of it"):
        before = found_in(cases()[name].base, {"bid_total": 0})
        assert found_in(outcomes()[name], {"bid_total": 0}) != before


def test_every_case_is_tried() -> None:
    assert set(cases()) == set(CASES)
