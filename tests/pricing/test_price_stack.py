"""From cost to price: worked stacks, the minimum charge, tax, permit, deposit, other currencies."""

from __future__ import annotations

from decimal import ROUND_HALF_UP, Decimal

import pytest

from estimator.pricing.records import PriceBuild
from tests.pricing.made_books import bid, line, of_overrides, plain, with_terms


def price(hours: str = "0", materials: str = "0", trips: int = 0, **terms: object) -> PriceBuild:
    """The price of stated hours, materials and trips under plain terms and these."""
    figures = {
        key: Decimal(value) if isinstance(value, str) and value[0].isdigit() else value
        for key, value in terms.items()
    }
    books = plain(**figures)
    stated = {"labor_hours": Decimal(hours), "materials_cost": Decimal(materials), "trips": trips}
    return of_overrides(books, **stated).price


def test_the_worked_stack_of_labor_materials_trip_and_tax() -> None:
    """S23, worked by hand, what the plain form covers: 6.25 h at 92, 118.40 + 35 %, tax 6 %."""
    got = price(
        "6.25", "118.40", 1, labor_rate_per_hour="92.00", materials_markup_pct="35",
        trip_charge="45.00", mode="materials-sold", rate_pct="6",
    )  # fmt: skip
    assert got.labor == Decimal("575.00")
    assert got.materials_sell == Decimal("159.84")
    assert got.trips == Decimal("45.00")
    assert got.tax == Decimal("9.59")
    assert got.total == Decimal("789.43")
    assert round(got.margin_pct, 2) == Decimal("25.93")


def test_the_worked_permit_and_supply_run() -> None:
    """S23 with its permit, and the supply run as 0.75 h more of labor: 958.43 in all."""
    got = price(
        "7.00", "118.40", 1, labor_rate_per_hour="92.00", materials_markup_pct="35",
        trip_charge="45.00", mode="materials-sold", rate_pct="6", permit_cost="75",
        permit_handling="25", deposit_pct="30",
    )  # fmt: skip
    assert got.labor == Decimal("644.00")  # 575.00 + 69.00
    assert got.before_tax == Decimal("948.84")
    assert got.total == Decimal("958.43")
    assert (got.deposit, got.balance) == (Decimal("287.53"), Decimal("670.90"))


def test_the_minimum_charge_of_the_worked_closet() -> None:
    """S3, worked by hand: 1.75 x 85 = 148.75; 28.40 x 1.30 = 36.92; 185.67 < 225.00."""
    got = price(
        "1.75", "28.40", labor_rate_per_hour="85", materials_markup_pct="30",
        minimum_charge="225.00",
    )  # fmt: skip
    assert (got.labor, got.materials_sell) == (Decimal("148.75"), Decimal("36.92"))
    assert got.built_up == Decimal("185.67")
    assert (got.offered, got.total) == (Decimal("225.00"), Decimal("225.00"))
    assert got.minimum_governs


@pytest.mark.parametrize(
    ("hours", "offered", "governs"),
    [("2.24", "225.00", True), ("2.25", "225.00", False), ("2.26", "226.00", False)],
)
def test_the_minimum_just_under_at_and_over(hours: str, offered: str, governs: bool) -> None:
    got = price(hours, labor_rate_per_hour="100", minimum_charge="225.00")
    assert (got.offered, got.minimum_governs) == (Decimal(offered), governs)


def test_permit_and_tax_come_on_top_of_the_minimum() -> None:
    """Worked by hand: 225 + 75 + 25 + 6 % of 13.00 sold = 325.78."""
    got = price(
        "1", "10", labor_rate_per_hour="1", materials_markup_pct="30", minimum_charge="225",
        permit_cost="75", permit_handling="25", mode="materials-sold", rate_pct="6",
    )  # fmt: skip
    assert got.total == Decimal("325.78")


def test_overhead_and_profit_one_upon_the_other() -> None:
    """Worked by hand: 1000.00; 12.5 % = 125.00; 10 % of 1125.00 = 112.50."""
    got = price("10", labor_rate_per_hour="100", overhead_pct="12.5", profit_pct="10")
    assert (got.overhead, got.profit) == (Decimal("125.00"), Decimal("112.50"))
    assert got.built_up == Decimal("1237.50")


def test_each_step_is_rounded_before_the_next() -> None:
    """Worked by hand: 33.333 x 1.5 -> 50.00; 10.01 x 1.05 = 10.51 rounded; trips 0.01."""
    got = price(
        "33.333", "10.005", 1, labor_rate_per_hour="1.5", materials_markup_pct="5",
        trip_charge="0.005", overhead_pct="10",
    )  # fmt: skip
    assert got.labor == Decimal("50.00")
    assert got.materials_listed == Decimal("10.01")
    assert got.materials_sell == Decimal("10.51")
    assert got.trips == Decimal("0.01")
    assert got.overhead == Decimal("6.05")  # 10 % of 60.52 is 6.052


def test_half_a_cent_goes_up() -> None:
    """S23: 169.425 -> 169.43, where binary floats may give 169.42."""
    assert price(materials="125.50", materials_markup_pct="35").materials_sell == Decimal("169.43")


def test_small_items_are_a_share_of_what_is_listed() -> None:
    """On the list alone, and never on a sum that the job states."""
    made = bid(plain(small_items_pct=Decimal(5)))
    listed = sum(each.cost or 0 for each in made.shopping)
    assert made.price.materials_listed == listed
    assert made.price.small_items == round(listed / 20, 2)
    stated = price(materials="100", small_items_pct="5")
    assert (stated.small_items_pct, stated.small_items) == (0, 0)
    assert stated.materials_overridden


@pytest.mark.parametrize(("mode", "want"), [("none", "0.00"), ("materials-sold", "9.59")])
def test_tax_as_the_book_says(mode: str, want: str) -> None:
    got = price(materials="118.40", materials_markup_pct="35", mode=mode, rate_pct="6")
    assert got.tax == Decimal(want)


def test_handling_is_charged_only_with_a_permit() -> None:
    assert price(permit_handling="25").total == 0
    assert price(permit_handling="25", permit_cost="0").total == Decimal("25.00")


def test_trips_are_the_visits_unless_stated() -> None:
    opening = {"id": "o", "wall": "w", "left": 20, "right": 60, "bottom": 30, "top": 34}
    books = plain(trip_charge=Decimal(45))
    made = bid(books, openings=[opening])
    assert (made.price.trips_count, made.price.trips) == (4, Decimal("180.00"))
    stated = bid(books, openings=[opening], overrides={"trips": 2})
    assert stated.price.trips == Decimal("90.00")


def test_a_price_nobody_knows_is_named_and_left_out() -> None:
    """The box has no row in a book without boxes: unknown, and not zero."""
    known = bid()
    items = {key: rows for key, rows in plain().materials.items() if key != "receptacle-15"}
    books = plain()
    made = bid(type(books)(items, books.labor, books.accounts, books.shop, books.files))
    assert made.price.unpriced_items == ("receptacle-15",)
    unknown = line(made, "receptacle-15")
    assert (unknown.cost, unknown.packs, unknown.to_buy) == (None, (), 1)
    assert "not in the materials book" in unknown.why
    spent = line(known, "receptacle-15").cost or 0
    assert made.price.materials_listed == known.price.materials_listed - spent


def test_a_currency_without_cents() -> None:
    """JPY has no minor unit: every figure is whole, half up (worked by hand)."""
    books = with_terms(
        plain(
            labor_rate_per_hour=Decimal(4500), materials_markup_pct=Decimal("12.5"),
            mode="materials-sold", rate_pct=Decimal(10), deposit_pct=Decimal(33),
        ),
        currency="JPY",
    )  # fmt: skip
    stated = {"labor_hours": Decimal("1.1111"), "materials_cost": Decimal(1236), "trips": 0}
    got = of_overrides(books, **stated).price
    assert got.labor == 5000  # 4999.95
    assert got.materials_sell == 1391  # 1390.5
    assert got.tax == 139  # 139.1
    assert (got.total, got.deposit, got.balance) == (6530, 2155, 4375)
    assert str(got.total) == "6530"


def test_a_currency_with_three_decimals() -> None:
    books = with_terms(plain(labor_rate_per_hour=Decimal("7.5")), currency="KWD")
    got = of_overrides(books, labor_hours=Decimal("1.1111"), materials_cost=Decimal(0), trips=0)
    assert str(got.price.labor) == "8.333"  # 8.33325


def test_small_items_and_tax_are_rounded_in_the_currency() -> None:
    """KWD, three decimals: what is listed, its 5 %, and both together, taxed at the counter."""
    own = {"small_items_pct": Decimal(5), "mode": "paid-at-purchase"}
    books = plain(**own, purchase_rate_pct=Decimal("7.25"))
    got = bid(with_terms(books, currency="KWD")).price
    mil = Decimal("0.001")
    small = (got.materials_listed * Decimal("0.05")).quantize(mil, ROUND_HALF_UP)
    assert got.small_items == small
    assert got.materials_cost == got.materials_listed + small
    tax = (got.materials_cost * Decimal("0.0725")).quantize(mil, ROUND_HALF_UP)
    assert got.purchase_tax == tax


def test_nothing_has_the_decimals_of_its_currency() -> None:
    stated = {"labor_hours": Decimal(0), "materials_cost": Decimal("10.4"), "trips": 0}
    got = of_overrides(with_terms(plain(), currency="JPY"), **stated).price
    shown = (got.materials_listed, got.purchase_tax, got.allowances_total, got.tax, got.permit_cost)
    assert [str(each) for each in shown] == ["10", "0", "0", "0", "0"]
    assert str(got.supply_run.amount) == "0"


def test_an_allowance_is_rounded_in_the_currency() -> None:
    lines = [{"name": "light", "amount": Decimal("60.5")}]
    got = bid(with_terms(plain(), currency="JPY"), allowances=lines).price
    assert [str(each.amount) for each in got.allowances] == ["61"]


def test_tax_taken_out_is_put_back_as_it_was() -> None:
    """At 50 %: 1.00 holds 0.67 and 0.33; half of 0.67 again would be 0.34."""
    got = price(
        materials="1.00", materials_markup_pct="0", mode="paid-at-purchase",
        purchase_rate_pct="50", prices_include_tax=True,
    )  # fmt: skip
    assert (got.materials_cost, got.purchase_tax) == (Decimal("0.67"), Decimal("0.33"))
    assert got.total == Decimal("1.00")


def test_the_price_says_its_rates() -> None:
    got = price(
        trips=1, trip_charge="45", mode="paid-at-purchase", rate_pct="6", purchase_rate_pct="7",
        purchase_tax="after-markup", deposit_pct="30",
    )  # fmt: skip
    assert (got.trip_charge, got.deposit_pct) == (45, 30)
    assert (got.tax_mode, got.tax_rate_pct) == ("paid-at-purchase", 6)
    assert (got.purchase_rate_pct, got.purchase_tax_how) == (7, "after-markup")


def test_permit_and_minimum_are_rounded_in_the_currency() -> None:
    """JPY: 75.5 is 76, 24.6 is 25, a minimum of 999.6 is 1,000."""
    books = plain(
        permit_cost=Decimal("75.5"), permit_handling=Decimal("24.6"),
        minimum_charge=Decimal("999.6"),
    )  # fmt: skip
    stated = {"labor_hours": Decimal(0), "materials_cost": Decimal(0), "trips": 0}
    got = of_overrides(with_terms(books, currency="JPY"), **stated).price
    assert (str(got.permit_cost), str(got.permit_handling)) == ("76", "25")
    assert str(got.offered) == "1000"
