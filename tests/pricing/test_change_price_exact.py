"""The price of a change, term by term; worked by hand on the case of change_case."""

from __future__ import annotations

from decimal import Decimal

import pytest

from estimator.pricing.change import change_order
from estimator.pricing.change_price import price_change
from estimator.pricing.change_records import ItemChange, Sold
from estimator.survey.differences import ChangedFact
from tests.pricing.change_case import changed, figures

ALLOWED = '\n[[allowances]]\nname = "{}"\nkind = "{}"\namount = {}\n'


def allowances(**amounts: str) -> str:
    """Figures of the case with allowances, by kind."""
    lines = [ALLOWED.format(f"for {kind}", kind, amount) for kind, amount in amounts.items()]
    return figures() + "".join(lines)


def test_allowances_that_moved_by_kind() -> None:
    """80 - 50, 30 - 0, and 45 - 20: 85.00 more."""
    price = changed(
        allowances(materials="80", labor="30", other="45"),
        changes=(),
        before=allowances(materials="50", other="20"),
    ).price
    moved = (price.allowances_materials, price.allowances_labor, price.allowances_other)
    assert moved == (Decimal(30), Decimal(30), Decimal(25))
    assert (price.offered, price.total) == (Decimal(0), Decimal("85.00"))


def test_a_permit_that_costs_more_than_before() -> None:
    """90 + 25 against 40 + 10."""
    price = changed(
        figures(price="permit_cost = 90\npermit_handling = 25"),
        changes=(),
        before=figures(price="permit_cost = 40\npermit_handling = 10"),
    ).price
    assert (price.permit, price.total) == (Decimal("65.00"), Decimal("65.00"))


@pytest.mark.parametrize(
    ("before", "after", "trips", "charge", "amount"),
    [("1", "3", 2, "40", "80.00"), ("2", "2", 0, "40", "0.00"), ("3", "2", -1, "45", "-45.00")],
)
def test_trips_and_what_each_is_charged_at(
    before: str, after: str, trips: int, charge: str, amount: str
) -> None:
    """More of them at the change's 40.00; fewer at the 45.00 of the bid."""
    price = changed(
        figures(f"\n[overrides]\ntrips = {after}\n", change="trip_charge = 40"),
        changes=(),
        before=figures(f"\n[overrides]\ntrips = {before}\n"),
    ).price
    assert (price.trips_more, price.trip_charge) == (trips, Decimal(charge))
    assert (price.trips, price.total) == (Decimal(amount), Decimal(amount))


def test_vat_in_book_prices_is_taken_out_of_the_added_parts() -> None:
    """7.20 + 0.36 = 7.56; 7.56 / 1.2 = 6.30, so 1.26 comes back; 6.30 x 1.3 = 8.19."""
    tax = 'mode = "vat"\nrate_pct = 20\nprices_include_tax = true'
    assert changed(figures(tax=tax)).price.added == Sold(
        listed=Decimal("7.20"), small_items_pct=Decimal(5), small_items=Decimal("0.36"),
        input_tax=Decimal("1.26"), cost=Decimal("6.30"), purchase_tax=Decimal(0),
        markup_pct=Decimal(30), sell=Decimal("8.19"),
    )  # fmt: skip


@pytest.mark.parametrize(
    ("how", "sell"),
    [("before-markup", "10.41"), ("after-markup", "10.28"), ("not-recovered", "9.83")],
)
def test_tax_of_the_counter_before_or_after_the_markup_or_not(how: str, sell: str) -> None:
    """0.45 on 7.56: 8.01 x 1.3 = 10.413; 9.83 + 0.45; 9.83."""
    tax = f'mode = "paid-at-purchase"\npurchase_rate_pct = 6\npurchase_tax = "{how}"'
    price = changed(figures(tax=tax)).price
    assert (price.added.purchase_tax, price.added.sell) == (Decimal("0.45"), Decimal(sell))
    assert (price.counter_rate_pct, price.counter_how) == (Decimal(6), how)


@pytest.mark.parametrize(
    ("base", "taxed", "tax"), [("sold", "9.83", "0.59"), ("before-profit", "10.81", "0.65")]
)
def test_materials_taxed_with_their_overhead(base: str, taxed: str, tax: str) -> None:
    """9.83, or with 10 % of it (0.98) 10.81; at 6 %: 0.5898 and 0.6486."""
    own = f'mode = "materials-sold"\nrate_pct = 6\nmaterials_base = "{base}"'
    price = changed(figures(price="overhead_pct = 10", tax=own)).price
    assert (price.taxed, price.tax) == (Decimal(taxed), Decimal(tax))


def test_the_overhead_of_materials_leaves_the_work_where_work_is_taxed() -> None:
    """33.83 + 3.38 less 9.83: 27.38 of work; 6 % is 1.6428."""
    own = 'mode = "purchase-and-labor"\nrate_pct = 6\nmaterials_base = "before-profit"'
    price = changed(figures(price="overhead_pct = 10", tax=own)).price
    assert (price.taxed, price.tax) == (Decimal("27.38"), Decimal("1.64"))


def test_what_is_taxed_of_a_change_that_gives_back_is_below_zero() -> None:
    price = changed(figures(tax='mode = "vat"\nrate_pct = 20'), backwards=True).price
    assert (price.taxed, price.tax) == (Decimal("-24.27"), Decimal("-4.85"))
    assert (price.tax_mode, price.tax_share_pct, price.tax_rounding) == (
        "vat",
        Decimal(100),
        "half-up",
    )
    assert price.tax_factor_pct == 20


def test_items_whose_cost_is_not_known_are_named() -> None:
    """2.00 of the other: with 5 % and 30 % on it, 2.10 x 1.3 = 2.73."""
    order = changed(changes=())
    items = tuple(
        ItemChange(name, name, "each", Decimal(0), Decimal(1), (), cost, Decimal(0), "")
        for name, cost in (("known", Decimal(2)), ("unknown", None))
    )
    price = price_change(order.before, order.after, (), items)
    assert (price.unpriced_items, price.total) == (("unknown",), Decimal("2.73"))


def test_a_change_holds_its_reason_and_the_facts_that_moved() -> None:
    order = changed()
    assert (order.why, order.facts, order.materials_bought) == ("made up", (), True)
    facts = (ChangedFact("walls north: finish", "gypsum board", "plaster"),)
    again = change_order(order.before, order.before.survey, order.before.books, facts=facts)
    assert (again.why, again.facts, again.stopped_by) == ("", facts, ())


def test_only_findings_that_stop_are_named_as_such() -> None:
    order = changed(changes=(('grounded = "yes"', 'grounded = "no"'),))
    stops = [each.finding_id for each in order.rechecks if each.stops]
    assert list(order.stopped_by) == stops
    assert len(stops) < len(order.rechecks)
