"""Change orders: what is added, dropped, bought and given back. All figures worked by hand."""

from __future__ import annotations

from decimal import Decimal

import pytest

from estimator.pricing.change_records import ChangedLine, ChangeOrder, ItemChange
from tests.pricing.change_case import changed, figures


def line(order: ChangeOrder, key: str) -> ChangedLine:
    """The changed line of one item or task."""
    return next(each for each in order.lines if each.key == key)


def item(order: ChangeOrder, key: str) -> ItemChange:
    """The cost of one item's change."""
    return next(each for each in order.items if each.item == key)


def test_no_change_costs_nothing() -> None:
    """Two equal jobs: no line, no item, no money, and no fee for a change order."""
    order = changed(figures(change="handling = 25"), changes=())
    assert (order.lines, order.items, order.price.total) == ((), (), Decimal(0))
    assert order.price.job_total == order.before.price.total


def test_lines_that_changed() -> None:
    """Two studs more at 0.05 h, 2 ft of strip more at 0.1 h."""
    order = changed()
    bored, strip = line(order, "bore-member"), line(order, "open-strip")
    assert (bored.quantity_before, bored.quantity_after, bored.status) == (
        Decimal(4),
        Decimal(6),
        "changed",
    )
    assert (bored.hours_added, bored.hours_dropped) == (Decimal("0.1"), Decimal(0))
    assert strip.hours_added == Decimal("0.2")


def test_price_of_more_work() -> None:
    """0.3 h x 80 = 24.00; 7.00 + 0.20 = 7.20 + 5 % 0.36 = 7.56 x 1.3 = 9.828 -> 9.83."""
    price = changed().price
    assert (price.hours_added, price.labor_added) == (Decimal("0.3"), Decimal("24.00"))
    assert (price.added.listed, price.added.small_items) == (Decimal("7.20"), Decimal("0.36"))
    assert price.added.sell == Decimal("9.83")
    assert (price.total, price.labor_credit) == (Decimal("33.83"), Decimal("0.00"))
    assert price.job_total - price.job_total_before == Decimal("33.83")


def test_cable_that_was_cut_to_length_is_bought_anew() -> None:
    """The 11 ft bought do not hold a cut of 143 in, so 14 ft are bought, none goes back."""
    cable = item(changed(), "cable-14-2")
    assert (cable.need_before, cable.need_after) == (Decimal(11), Decimal(14))
    assert (cable.cost_added, cable.cost_dropped) == (Decimal("7.00"), Decimal(0))


def test_parts_of_the_first_bid_that_are_enough() -> None:
    """20 screws were bought one by one; 24 are needed: 4 x 0.05 = 0.20 more."""
    screws = item(changed(), "screw-drywall")
    assert [(row.what, row.count, row.cost) for row in screws.rows] == [
        ("to buy", Decimal(4), Decimal("0.20"))
    ]


def test_nothing_bought_yet_is_the_difference_of_the_lists() -> None:
    """Cable 7.00 - 5.50 = 1.50; screws 24 x 0.05 - 20 x 0.05 = 0.20."""
    order = changed(figures(change="materials_bought = false"))
    cable = item(order, "cable-14-2")
    assert [(row.what, row.cost) for row in cable.rows] == [
        ("first list", Decimal("5.50")), ("new list", Decimal("7.00")),
    ]  # fmt: skip
    assert order.price.added.listed == Decimal("1.70")


@pytest.mark.parametrize(
    ("change", "labor", "materials"),
    [
        ("", "24.00", "9.83"),
        ("labor_rate_per_hour = 95", "28.50", "9.83"),  # 0.3 x 95
        ("materials_markup_pct = 50", "24.00", "11.34"),  # 7.56 x 1.5
    ],
)
def test_terms_of_its_own(change: str, labor: str, materials: str) -> None:
    """The rate and the markup for changes stand in for those of the bid."""
    price = changed(figures(change=change)).price
    assert (price.labor_added, price.added.sell) == (Decimal(labor), Decimal(materials))


@pytest.mark.parametrize(
    ("change", "total"),
    [
        ("handling = 15", "48.83"),  # 33.83 + 15.00
        ("minimum_charge = 50", "50.00"),
        ("minimum_charge = 33.83", "33.83"),
        ("minimum_charge = 33.84", "33.84"),
    ],
)
def test_fee_and_least_charge(change: str, total: str) -> None:
    """A fee is added; the least charge stands in where the change costs less."""
    assert changed(figures(change=change)).price.total == Decimal(total)


def test_overhead_and_profit_as_in_the_bid() -> None:
    """33.83 x 10 % = 3.383 -> 3.38; 37.21 x 8 % = 2.9768 -> 2.98; together 40.19."""
    price = changed(figures(price="overhead_pct = 10\nprofit_pct = 8")).price
    assert (price.overhead, price.profit) == (Decimal("3.38"), Decimal("2.98"))
    assert price.total == Decimal("40.19")


@pytest.mark.parametrize(
    ("credit", "labor"), [("", "24.00"), ("credit_pct = 50", "12.00"), ("credit_pct = 0", "0.00")]
)
def test_work_that_is_dropped(credit: str, labor: str) -> None:
    """0.3 h fewer at 80; 14 ft were cut to length and stay, 4 of 24 screws go back."""
    price = changed(figures(change=credit), backwards=True).price
    assert (price.hours_added, price.hours_dropped) == (Decimal(0), Decimal("0.3"))
    assert price.labor_credit == Decimal(labor)
    assert (price.added.listed, price.dropped.listed) == (Decimal("0.00"), Decimal("0.20"))


def test_a_change_that_gives_back_is_below_zero() -> None:
    """0.20 + 0.01 = 0.21 x 1.3 = 0.273 -> 0.27; 24.00 + 0.27 back; no least charge on it."""
    price = changed(figures(change="minimum_charge = 50"), backwards=True).price
    assert (price.dropped.sell, price.total) == (Decimal("0.27"), Decimal("-24.27"))


def test_screws_that_go_back() -> None:
    """Bought 24, needed 20: 4 go back."""
    order = changed(backwards=True)
    screws = item(order, "screw-drywall")
    assert [(row.what, row.count) for row in screws.rows] == [("goes back", Decimal(4))]
    assert item(order, "cable-14-2").rows == ()


def test_another_cable_altogether() -> None:
    """12-2 in place of 14-2: all of the new kind is bought; what was cut to length stays."""
    overrides = "cable-12-2 = 1.00"
    order = changed(figures(overrides), changes=(('cable = "14-2"', 'cable = "12-2"'),))
    old, new = item(order, "cable-14-2"), item(order, "cable-12-2")
    assert (line(order, "cable-14-2").status, old.cost_dropped) == ("dropped", Decimal(0))
    assert (line(order, "cable-12-2").status, new.cost_added) == ("added", Decimal("11.00"))


def test_hours_that_a_job_states_are_compared_whole() -> None:
    """5 h stated before, 6.25 h now: 1.25 h x 80 = 100.00."""
    price = changed(
        figures("\n[overrides]\nlabor_hours = 6.25\n"),
        before=figures("\n[overrides]\nlabor_hours = 5\n"),
    ).price
    assert (price.hours_added, price.labor_added) == (Decimal("1.25"), Decimal("100.00"))


def test_materials_that_a_job_states_are_compared_whole() -> None:
    """60.00 stated before, 50.00 now: 10.00 dropped."""
    price = changed(
        figures("\n[overrides]\nmaterials_cost = 50\n"),
        before=figures("\n[overrides]\nmaterials_cost = 60\n"),
    ).price
    assert (price.added.listed, price.dropped.listed) == (Decimal("0.00"), Decimal("10.00"))


@pytest.mark.parametrize(
    ("more", "trips"),
    [(("trips = 1", "trips = 3"), "80.00"), (("trips = 3", "trips = 1"), "-45.00")],
)
def test_trips_more_and_fewer(more: tuple[str, str], trips: str) -> None:
    """Two more at the change's 40.00; two fewer at half of the bid's 45.00 each."""
    terms = "trip_charge = 40\ncredit_pct = 50"
    price = changed(
        figures(f"\n[overrides]\n{more[1]}\n", change=terms),
        before=figures(f"\n[overrides]\n{more[0]}\n"),
    ).price
    assert price.trips == Decimal(trips)


def test_permit_that_the_change_brings() -> None:
    """No permit before; 75 + 25 for it now."""
    permit = figures(price="permit_cost = 75\npermit_handling = 25")
    price = changed(permit, changes=(), before=figures()).price
    assert (price.permit, price.total) == (Decimal("100.00"), Decimal("100.00"))


@pytest.mark.parametrize(
    ("tax", "taxed", "amount"),
    [
        ('mode = "none"', "0.00", "0.00"),
        ('mode = "materials-sold"\nrate_pct = 6', "9.83", "0.59"),
        ('mode = "whole-price"\nrate_pct = 6', "33.83", "2.03"),
        ('mode = "purchase-and-labor"\nrate_pct = 6', "24.00", "1.44"),
        ('mode = "part-of-price"\nrate_pct = 10\ntaxed_share_pct = 65', "21.99", "2.20"),
        ('mode = "vat"\nrate_pct = 20', "33.83", "6.77"),
        ('mode = "gross-receipts"\nrate_pct = 2', "33.83", "0.69"),
    ],
)
def test_tax_on_the_change(tax: str, taxed: str, amount: str) -> None:
    """By the mode of the bid, on what the change adds."""
    price = changed(figures(tax=tax)).price
    assert (price.taxed, price.tax) == (Decimal(taxed), Decimal(amount))


def test_tax_paid_at_the_counter_is_in_the_materials() -> None:
    """7.56 x 6 % = 0.4536 -> 0.45; (7.56 + 0.45) x 1.3 = 10.413 -> 10.41."""
    price = changed(figures(tax='mode = "paid-at-purchase"\npurchase_rate_pct = 6')).price
    assert (price.added.purchase_tax, price.added.sell) == (Decimal("0.45"), Decimal("10.41"))


def test_tax_that_a_change_gives_back() -> None:
    """24.27 back, 20 % of it is 4.854 -> 4.85 back as well."""
    price = changed(figures(tax='mode = "vat"\nrate_pct = 20'), backwards=True).price
    assert (price.tax, price.total) == (Decimal("-4.85"), Decimal("-29.12"))


def test_checks_are_made_again() -> None:
    """14.0 in3 fit the old box of 16.0, 18.0 do not: it is replaced, and the check says so."""
    order = changed(changes=(('volume = "18.0 in3"', 'volume = "16.0 in3"'),))
    fill = next(each for each in order.rechecks if each.finding_id == "box-fill:source")
    assert "old box: 16.0 in3 for 14.0 before the work" in fill.figures_after
    assert line(order, "replace-box").status == "added"


def test_box_fill_is_told_even_where_it_has_not_moved() -> None:
    """Whoever signs a change sees the figures of the boxes again."""
    order = changed()
    assert any(each.finding_id == "box-fill:new" for each in order.rechecks)


def test_a_change_that_a_finding_stops() -> None:
    """The job is stopped, and the order says by what, first."""
    order = changed(changes=(('grounded = "yes"', 'grounded = "no"'),))
    assert order.stopped_by
    assert order.rechecks[0].stops


def test_a_cap_moves_with_the_job() -> None:
    """First bid and 33.83 more, and 15 % on the sum; a fixed price has no cap."""
    form = '\n[settings.terms]\nprice_form = "not-to-exceed"\nnot_to_exceed_pct = 15\n'
    stated = figures("\n[overrides]\nlabor_hours = 6\nmaterials_cost = 0\ntrips = 0\n") + form
    before = stated.replace("labor_hours = 6", "labor_hours = 5")
    price = changed(stated, before=before).price
    assert (price.job_total, price.cap) == (Decimal("480.00"), Decimal("552.00"))
    assert changed().price.cap is None
