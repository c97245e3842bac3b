"""Lines for the bookkeeper: what the bid would be, by account; a bid posts nothing."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from estimator.catalog.records import Books
from estimator.pricing.records import BookLine, PriceBuild
from estimator.problems import InputError, Problem

_Row = tuple[str, str, Decimal | None, str, Decimal | None, Decimal]


def book_lines(price: PriceBuild, books: Books) -> tuple[BookLine, ...]:
    """Priced lines that add up to the total.

    Raises:
        InputError: kinds of line that accounts.csv maps to no account, all of them.
    """
    rows = [row for row in _rows(price) if row[5] or row[4]]
    unmapped = dict.fromkeys(row[0] for row in rows if row[0] not in books.accounts)
    if unmapped:
        where = books.files.get("accounts", "accounts.csv")
        write = "Add a row with its account code and name."
        raise InputError(
            Problem(where, f'no account for lines of kind "{kind}"', write) for kind in unmapped
        )
    return tuple(_line(row, books) for row in rows)


def _line(row: _Row, books: Books) -> BookLine:
    account = books.accounts[row[0]]
    return BookLine(row[0], account.account_code, account.account_name, *row[1:])


def _rows(price: PriceBuild) -> Iterator[_Row]:
    """Kind, description, quantity, unit, cost and price; the cost of hours is not known here.

    Tax paid at the counter is a cost with no price of its own: what the customer pays of it is
    in the materials as sold. Tax taken out of gross prices comes back and is no cost.
    """
    materials, zero = price.materials_cost, price.offered - price.offered
    yield "materials", "Materials as sold", None, "", materials, price.materials_sell
    yield "purchase-tax", "Tax paid at the counter", None, "", price.purchase_tax or None, zero
    yield "labor", "Labor", price.labor_hours, "h", None, price.labor
    run = price.supply_run
    yield "supply-run", "Supply run", run.hours, "h", None, run.amount
    yield "trips", "Trips", Decimal(price.trips_count), "trip", None, price.trips
    yield "overhead", "Overhead", None, "", None, price.overhead
    yield "profit", "Profit", None, "", None, price.profit
    yield "contingency", "Contingency", None, "", None, price.contingency.amount
    step = price.offered - price.offer_rounding - price.built_up
    yield "minimum", "Step up to the minimum charge", None, "", None, step
    yield "rounding", "Rounding of the price offered", None, "", None, price.offer_rounding
    for each in price.allowances:
        yield "allowance", f"Allowance: {each.name}", None, "", None, each.amount
    permit = price.permit_cost + price.permit_handling
    yield "permit", "Permit and handling", None, "", price.permit_cost, permit
    yield "tax", "Tax collected", None, "", None, price.tax
